"""The choice of shapes: against trying everything in mm, measured plans, shapes that planning keeps."""

import random
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import product

import pytest

from baywright.model.arrangement import Arrangement, Lock
from baywright.model.change import changed
from baywright.model.construction import Uprights
from baywright.model.inventory import Box, BoxSize, Use
from baywright.model.option import Option
from baywright.model.project import Built, Project
from baywright.planner import plan, report
from baywright.planner.choices.options import Purchase, options
from tests.oracle.measure import faults
from tests.oracle.stacking import least_shape

NOTHING_FITS = (7, 11, 20, 29, 30, 34)
"""Seeds whose wall is too short for their boxes."""
HEIGHTS = (75, 120, 170, 220)
SIZES = tuple(
    BoxSize(id=f"h-{height}", name=f"{height}", width_mm=300, depth_mm=200, height_mm=height) for height in HEIGHTS
)


def shop(seed: int) -> Project:
    """Up to seven boxes before a wall for a few bays, with overhangs that leave something to gain."""
    chance = random.Random(seed)
    boxes = tuple(
        Box(
            id=f"box-{n}",
            label=f"Box {n}",
            size_id=chance.choice(SIZES).id,
            loaded_mass_kg=n,
            use=chance.choice([*Use]),
        )
        for n in range(1, chance.randint(2, 7))
    )
    plain = Project()
    top = plain.construction.top.replace(
        overhang_front_mm=chance.choice([0, 20, 45]), overhang_side_mm=chance.choice([0, 0, 30, 120])
    )
    return plain.replace(
        box_sizes=SIZES,
        boxes=boxes,
        construction=plain.construction.replace(top=top, uprights=chance.choice([*Uprights])),
        space=plain.space.replace(
            length_mm=chance.randint(500, 2400), depth_mm=chance.choice([330, 365, 400]), height_limit_mm=1000
        ),
        limits=plain.limits.replace(drawers_per_bay=chance.choice([None, 2, 3])),
    )


@dataclass(frozen=True)
class Shape:
    """A shape as a person with a rule would measure it."""

    bays: int
    rows: int
    uprights: Uprights
    front: float
    side: float
    height: float
    left_over: float
    runner: float

    def figures(self, now: Project) -> tuple[float, ...]:
        """What is weighed, less is better."""
        top = now.construction.top
        found = (
            self.bays,
            self.height,
            -self.left_over,
            -self.runner,
            abs(self.front - top.overhang_front_mm),
            abs(self.side - top.overhang_side_mm),
            self.uprights is Uprights.SHARED,
        )
        return tuple(round(figure, 6) for figure in found)


def unbeaten(shapes: Iterable[Shape], now: Project) -> set[Shape]:
    """The shapes that no other one equals or beats in everything, by comparing each with all that were left so far."""
    left: dict[Shape, tuple[float, ...]] = {}
    for shape in shapes:
        mine = shape.figures(now)
        if any(all(a <= b for a, b in zip(other, mine, strict=True)) for other in left.values()):
            continue
        left = {s: o for s, o in left.items() if not all(a <= b for a, b in zip(mine, o, strict=True))}
        left[shape] = mine
    return set(left)


def rows_by_bays(project: Project) -> dict[int, int]:
    """For 1 to 6 bays the fewest rows that take all boxes, found by trying everything."""
    found, rows = dict.fromkeys(range(1, 7), 10_000), 10_000
    while (shape := least_shape(project, 6, rows - 1)) is not None:
        first, rows = shape
        found.update(dict.fromkeys(range(first, 7), rows))
    return found


def every_shape(project: Project) -> Iterator[Shape]:
    """Every number of bays and rows, every front overhang in whole mm up to the present one; at the sides the present
    one, none, and what just lets a further bay in, for runs that have that bay.
    """
    construction, space = project.construction, project.space
    boards, drawers, runners, now = construction.boards, construction.drawers, construction.runners, construction.top
    clear = 300 + 2 * drawers.lateral_play_mm + 2 * boards.drawer_side_mm + 2 * runners.thickness_mm
    fits = rows_by_bays(project)
    for bays, uprights in product(range(1, 7), Uprights):
        own = uprights is Uprights.OWN
        length = bays * clear + (2 * bays if own else bays + 1) * boards.upright_mm
        widest = (space.length_mm - length) / 2
        if widest < 0:
            continue
        most = now.overhang_side_mm if widest >= now.overhang_side_mm else float(int(widest))
        sides = {0.0, most}
        for side, front in product(sides, range(round(now.overhang_front_mm) + 1)):
            room = space.depth_mm - front - runners.rear_gap_mm
            runner = max((length for length in runners.lengths_mm if length <= room), default=0)
            if runner - 2 * boards.drawer_side_mm < 200 + drawers.stop_mm:
                continue
            left_over = max(0.0, 2 * (widest - side) - (2 if own else 1) * boards.upright_mm)
            for rows in range(fits[bays], 31):
                height = construction.standing.height_mm + boards.base_mm + 32 * rows + boards.top_mm
                if height <= space.height_limit_mm:
                    yield Shape(bays, rows, uprights, front, side, height, round(left_over, 6), runner)


def as_measured(option: Option) -> Shape:
    return Shape(
        option.bays,
        option.rows,
        option.uprights,
        option.overhang_front_mm,
        option.overhang_side_mm,
        round(option.unit_height_mm, 6),
        round(option.left_over_mm, 6),
        option.runner_length_mm,
    )


@pytest.mark.parametrize("seed", range(40))
def test_they_are_what_trying_everything_leaves_unbeaten(seed: int) -> None:
    project = shop(seed)
    found = options(project)
    assert bool(found) == (seed not in NOTHING_FITS)
    assert {as_measured(option) for option in found} == unbeaten(every_shape(project), project)
    assert all(option.is_lowest for option in found)


@pytest.mark.parametrize("seed", range(10))
def test_every_plan_fits_when_it_is_measured_and_planning_keeps_its_shape(seed: int) -> None:
    project = shop(seed)
    for option in options(project):
        chosen = changed(project, option.changes)
        assert faults(chosen.replace(arrangement=option.arrangement)) == []
        again = plan(chosen)
        assert again.arrangement is not None
        assert (again.arrangement.bay_count, again.arrangement.upright_rows) == (option.bays, option.rows)
        assert faults(chosen.replace(arrangement=again.arrangement)) == []
        handling = next(goal for goal in again.goals if goal.goal.value == "handling")
        assert option.handling == pytest.approx(handling.value)


def test_what_is_fixed_is_only_one_of_the_choices() -> None:
    project = shop(3)
    free = options(project)
    fixed = changed(project, free[0].changes)
    assert {option.id for option in options(fixed)} == {option.id for option in free}


def test_the_present_shape_is_marked_and_told_even_where_it_is_beaten() -> None:
    project = shop(1)
    best = options(project)[0]
    standing = changed(project, best.changes).replace(arrangement=best.arrangement)
    marked = [option for option in options(standing) if option.is_present]
    assert [option.id for option in marked] == [best.id]
    assert marked[0].arrangement == best.arrangement
    assert not marked[0].is_beaten
    assert marked[0].is_lowest

    higher = best.arrangement.replace(upright_rows=best.rows + 1)
    found = options(project.replace(arrangement=higher))
    assert [(o.bays, o.rows, o.is_beaten) for o in found if o.is_present] == [(best.bays, best.rows + 1, True)]
    assert not any(o.is_beaten for o in found if not o.is_present)


def test_an_arrangement_that_breaks_a_limit_is_no_option() -> None:
    project = shop(1)
    best = options(project)[0]
    broken = best.arrangement.replace(placements=best.arrangement.placements[1:])
    found = options(project.replace(arrangement=broken))
    assert all(option.arrangement != broken for option in found)
    assert all(
        not report(changed(project, option.changes).replace(arrangement=option.arrangement)).unplaced
        for option in found
    )


def test_locks_hold_in_every_option() -> None:
    project = shop(5)
    first = plan(project).arrangement
    assert first is not None
    held = first.placements[0].replace(lock=Lock.DRAWER)
    locked = project.replace(arrangement=first.replace(placements=(held, *first.placements[1:])))
    found = options(locked)
    assert found
    assert all(option.arrangement.placement_of(held.box_id) == held for option in found)


def test_there_are_none_where_nothing_fits_and_where_there_is_nothing() -> None:
    project = shop(1)
    assert options(project.replace(space=project.space.replace(length_mm=200))) == ()
    assert options(project.replace(boxes=(), arrangement=Arrangement())) == ()


def test_stopped_at_once_there_are_none_and_stopped_later_there_are_some() -> None:
    project = shop(2)
    assert options(project, stop=lambda: True) == ()
    seen: list[tuple[Option, ...]] = []
    found = options(project, stop=lambda: bool(seen), progress=seen.append)
    assert found == seen[-1]
    assert 0 < len(found) <= len(options(project))


def test_the_same_document_gives_the_same_options_and_tells_them_as_they_are_found() -> None:
    project = shop(4)
    seen: list[tuple[Option, ...]] = []
    found = options(project, progress=seen.append)
    assert seen[-1] == found == options(project)
    assert len(seen) >= len(found)


def test_sheets_and_cost_are_not_known_until_somebody_works_them_out_and_then_weighed() -> None:
    project = shop(1)
    assert all(option.sheets is None and option.cost is None for option in options(project))

    def dear_when_own(shaped: Project) -> Purchase:
        own = shaped.construction.uprights is Uprights.OWN
        return Purchase(sheets=9 if own else 4, cost=900.0 if own else 400.0)

    weighed = options(project, purchases=dear_when_own)
    assert {(option.sheets, option.cost) for option in weighed} == {(4, 400.0), (9, 900.0)}


def test_where_bays_stand_the_run_is_built_on_as_it_was_begun() -> None:
    project = shop(3)
    first = plan(project).arrangement
    assert first is not None
    planned = project.replace(arrangement=first)
    another = project.boxes[0].replace(id="new", label="New")
    grown = planned.replace(boxes=(*planned.boxes, another), built=Built(bays=(0,), project=planned))
    found = options(grown)
    assert found
    assert {option.rows for option in found} == {first.upright_rows}
    assert {(option.uprights, option.overhang_front_mm, option.overhang_side_mm) for option in found} == {
        (
            project.construction.uprights,
            project.construction.top.overhang_front_mm,
            project.construction.top.overhang_side_mm,
        )
    }
    for option in found:
        assert faults(changed(grown, option.changes).replace(arrangement=option.arrangement)) == []


def test_the_worktop_s_wished_range_is_kept_and_spare_rows_stay_free() -> None:
    project = shop(3)
    free = options(project)
    least = min(option.unit_height_mm for option in free) + 100
    limits = project.limits.replace(worktop_least_mm=least, worktop_most_mm=least + 200, spare_rows=4)
    found = options(project.replace(limits=limits))
    assert found
    assert all(least <= option.unit_height_mm <= least + 200 for option in found)
    assert all(option.free_rows >= 4 for option in found)


def test_bays_of_several_widths_and_shared_drawers_are_planned_in_every_shape() -> None:
    project = shop(5)
    wide = BoxSize(id="wide", name="Wide", width_mm=500, depth_mm=200, height_mm=120)
    small = BoxSize(id="small", name="Small", width_mm=140, depth_mm=95, height_mm=75, most_abreast=2, most_behind=2)
    boxes = (
        *project.boxes,
        Box(id="wide-1", label="Wide", size_id="wide", loaded_mass_kg=3),
        *(Box(id=f"small-{n}", label=f"Small {n}", size_id="small", loaded_mass_kg=2) for n in range(4)),
    )
    mixed = project.replace(
        box_sizes=(*project.box_sizes, wide, small),
        boxes=boxes,
        space=project.space.replace(length_mm=2400.0, depth_mm=400.0),
        limits=project.limits.replace(other_box_widths_mm=(300.0,)),
    )
    found = options(mixed)
    assert len(found) > 1
    assert any(option.arrangement.box_widths_mm for option in found)
    for option in found:
        chosen = changed(mixed, option.changes)
        assert faults(chosen.replace(arrangement=option.arrangement)) == []
        again = plan(chosen).arrangement
        assert again is not None
        assert (again.bay_count, again.upright_rows) == (option.bays, option.rows)
