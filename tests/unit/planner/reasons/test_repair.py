"""Every kind of single change: offered where it helps, the least step of its kind, made and undone as one edit."""

from collections.abc import Callable

import pytest

from baywright.app.edits.repair import ApplyRepair
from baywright.app.session import Session
from baywright.model.arrangement import Arrangement, Lock, Placement
from baywright.model.change import changed
from baywright.model.construction import Uprights
from baywright.model.inventory import Box, BoxSize, BoxStatus
from baywright.model.length import LengthUnit
from baywright.model.limits import BayWish
from baywright.model.project import Built, Project
from baywright.model.repair import FieldChange, FieldValue, Repair
from baywright.model.space import Zone, ZoneEffect
from baywright.planner import why_not

LOW = BoxSize(id="low", name="Low", width_mm=396, depth_mm=297, height_mm=120)
"""Takes 5 rows of 32 mm with 12 mm clearance: 17 seat + 120 + 12 = 149."""
HIGH = BoxSize(id="high", name="High", width_mm=396, depth_mm=297, height_mm=270)
"""Takes 10 rows: 17 + 270 + 12 = 299."""


def shop(low: int = 0, high: int = 0, **limits: object) -> Project:
    """So many boxes, before a wall that holds 4 bays of up to 33 rows unless a test says otherwise."""
    boxes = [Box(id=f"low-{n}", label=f"Low {n}", size_id="low", loaded_mass_kg=n) for n in range(1, low + 1)]
    boxes += [Box(id=f"high-{n}", label=f"High {n}", size_id="high", loaded_mass_kg=n) for n in range(1, high + 1)]
    plain = Project()
    return plain.replace(
        space=plain.space.replace(length_mm=1_950.0),
        limits=plain.limits.replace(**limits),
        box_sizes=(LOW, HIGH),
        boxes=tuple(boxes),
    )


def built_with(project: Project, part: str, **changes: object) -> Project:
    """The project with some fields of one part of its construction changed."""
    construction = project.construction
    return project.replace(construction=construction.replace(**{part: getattr(construction, part).replace(**changes)}))


def locked(project: Project, rows: int, **places: tuple[int, int, Lock]) -> Project:
    """The project with boxes locked; a box is named by its id with `_` for `-`."""
    placements = tuple(
        Placement(box_id=name.replace("_", "-"), bay=bay, row=row, lock=lock)
        for name, (bay, row, lock) in places.items()
    )
    return project.replace(arrangement=Arrangement(bay_count=1, upright_rows=rows, placements=placements))


def with_size(project: Project, size_id: str, **changes: object) -> Project:
    """The project with a box size changed."""
    return project.replace(
        box_sizes=tuple(size.replace(**changes) if size.id == size_id else size for size in project.box_sizes)
    )


def zoned(project: Project, effect: ZoneEffect, **measures: float) -> Project:
    """The project with a zone named Pipe across the whole wall."""
    zone = Zone.model_validate(
        {"id": "pipe", "label": "Pipe", "effect": effect, "left_mm": 0, "width_mm": 5_000, **measures}
    )
    return project.replace(space=project.space.replace(zones=(zone,)))


def _height() -> Project:
    project = shop(low=9, bay_count=1)  # 45 rows
    return project.replace(space=project.space.replace(height_limit_mm=1_200.0))


def _two_locks() -> Project:
    return locked(shop(low=4, bay_count=1, upright_rows=21), 21, low_1=(0, 2, Lock.DRAWER), low_2=(0, 10, Lock.DRAWER))


def _built() -> Project:
    small = shop(low=4, bay_count=1, upright_rows=20)
    arrangement = Arrangement(
        bay_count=1,
        upright_rows=20,
        placements=tuple(Placement(box_id=f"low-{n}", bay=0, row=5 * (n - 1)) for n in range(1, 5)),
    )
    standing = small.replace(arrangement=arrangement)
    grown = shop(low=5).replace(arrangement=arrangement)
    return grown.replace(space=grown.space.replace(length_mm=500.0), built=Built(bays=(0,), project=standing))


CASES: dict[str, tuple[Callable[[], Project], str, FieldValue]] = {
    # 4 rows each are 128 mm: 17 seat + 106 box and the 2 mm under the lowest leave 3 mm.
    "clearance": (
        lambda: with_size(shop(low=4, bay_count=1, upright_rows=16), "low", height_mm=106),
        "construction.drawers.clearance_mm", 3.0,
    ),
    # With the line 20 mm over the edge the first row (16 mm) is lost; at 14 the gap of 2 mm is kept.
    "line offset": (
        lambda: built_with(shop(low=4, bay_count=1, upright_rows=20), "runners", line_offset_mm=20.0),
        "construction.runners.line_offset_mm", 14.0,
    ),
    "rows": (lambda: shop(low=4, bay_count=1, upright_rows=18), "limits.upright_rows", 20),
    # 33 rows fit under 1200 mm.
    "fewer rows": (lambda: shop(low=4, upright_rows=36), "limits.upright_rows", 33),
    "fewer bays": (lambda: shop(low=4, bay_count=6), "limits.bay_count", 4),
    "as high as the run": (
        lambda: shop(low=4, bay_count=2, bays=(BayWish(rows=36),)), "limits.bays[0].rows", None,
    ),
    # 46 rows less one: 80 + 18 + 45 × 32 + 27
    "height": (_height, "space.height_limit_mm", 1_565.0),
    "drawers": (lambda: shop(low=9, bay_count=3, drawers_per_bay=2), "limits.drawers_per_bay", 3),
    "drawers of one bay": (lambda: shop(low=4, bay_count=1, drawers_per_bay=3), "limits.bays[0].drawers", 4),
    "own drawers of a bay": (
        lambda: shop(low=4, bay_count=1, bays=(BayWish(drawers=3),)), "limits.bays[0].drawers", 4,
    ),
    "bays": (lambda: shop(low=9, bay_count=2, drawers_per_bay=4), "limits.bay_count", 3),
    # 5 bays: 5 × (396 + 4 + 30 + 25.4) + 6 × 18
    "wall": (lambda: shop(low=17, drawers_per_bay=4), "space.length_mm", 2_385.0),
    "uprights": (
        lambda: (p := shop(low=16, drawers_per_bay=4)).replace(
            construction=p.construction.replace(uprights=Uprights.OWN)
        ),
        "construction.uprights", "shared",
    ),
    "unlocked within the bay": (_two_locks, "arrangement.placements[low-1].lock", "bay"),
    "unlocked": (
        lambda: locked(shop(low=4, bay_count=2, upright_rows=10), 10, **{
            f"low_{n}": (0, 0, Lock.BAY) for n in (1, 2, 3)
        }),
        "arrangement.placements[low-1].lock", "none",
    ),
    "elsewhere": (lambda: shop(low=5, bay_count=1, upright_rows=20), "boxes[low-1].status", "elsewhere"),
    "spare rows": (lambda: shop(low=4, bay_count=1, upright_rows=24, spare_rows=7), "limits.spare_rows", 4),
    # 20 rows are 80 + 18 + 640 + 27
    "higher worktop": (lambda: shop(low=4, bay_count=1, worktop_most_mm=740.0), "limits.worktop_most_mm", 765.0),
    # 18 rows are 80 + 18 + 576 + 27
    "lower worktop": (
        lambda: shop(low=3, bay_count=1, upright_rows=18, worktop_least_mm=720.0), "limits.worktop_least_mm", 701.0,
    ),
    "rows of a bay": (
        lambda: shop(low=5, bay_count=1, upright_rows=30, bays=(BayWish(rows=22),)), "limits.bays[0].rows", 25,
    ),
    "width of the bays": (
        lambda: with_size(shop(low=2, high=1, bay_box_width_mm=396.0), "high", width_mm=596),
        "limits.bay_box_width_mm", 596.0,
    ),
    "some wider bays": (
        lambda: with_size(shop(low=2, high=1, bay_box_width_mm=396.0), "high", width_mm=596),
        "limits.other_box_widths_mm[0]", 596.0,
    ),
    "width of a bay": (
        lambda: with_size(
            shop(low=2, high=1, bay_count=1, bays=(BayWish(box_width_mm=396),)), "high", width_mm=596
        ),
        "limits.bays[0].box_width_mm", 596.0,
    ),
    # 360 deep + 5 stop + 2 × 15 rails ask for a 400 runner: 400 + 10 behind it + 20 overhang
    "depth": (lambda: with_size(shop(low=1), "low", depth_mm=360), "space.depth_mm", 430.0),
    "runner": (
        lambda: built_with(shop(low=1), "runners", length_mm=300.0), "construction.runners.length_mm", 350.0,
    ),
    "turning": (
        lambda: with_size(shop(low=1, bay_box_width_mm=300.0), "low", width_mm=310, depth_mm=300),
        "box_sizes[low].may_turn", True,
    ),
    "side by side": (
        lambda: with_size(shop(low=5, bay_count=1, bay_box_width_mm=396.0, upright_rows=20), "low", width_mm=190),
        "box_sizes[low].most_abreast", 2,
    ),
    "one behind another": (
        lambda: with_size(shop(low=5, bay_count=1, upright_rows=20), "low", depth_mm=150),
        "box_sizes[low].most_behind", 2,
    ),
    # 2 bays end at 2 × 455.4 + 3 × 18 = 964.8; the shelf bay and its upright have the rest of 1950.
    "shelf bay": (
        lambda: shop(low=8, bay_count=2, drawers_per_bay=4, shelf_bay_clear_width_mm=1_000.0),
        "limits.shelf_bay_clear_width_mm", 967.0,
    ),
    "no shelf bay": (
        lambda: shop(low=16, drawers_per_bay=4, shelf_bay_clear_width_mm=1_000.0), "limits.shelf_bay", False,
    ),
    # 297 + 5 + 30 ask for a 350 runner, 10 behind it, 20 overhang: 20 of 400 are left.
    "flatter zone": (
        lambda: zoned(shop(low=1), ZoneEffect.STAY_IN_FRONT, depth_mm=60, height_mm=3_000),
        "space.zones[pipe].depth_mm", 20.0,
    ),
    "higher zone": (
        lambda: zoned(shop(low=16), ZoneEffect.END_BELOW, bottom_mm=740),
        "space.zones[pipe].bottom_mm", 765.0,
    ),
    "built": (_built, "built", None),
}  # fmt: skip
"""For each kind a request that it alone can mend, the field that is changed and the value that is just enough."""


@pytest.fixture(params=CASES)
def case(request: pytest.FixtureRequest) -> tuple[Project, FieldChange]:
    make, path, value = CASES[request.param]
    return make(), FieldChange(path=path, value=value)


def _offer(project: Project, change: FieldChange) -> Repair:
    answer = why_not(project)
    assert answer is not None
    told = [(repair.text, repair.changes) for repair in answer.repairs]
    found = [repair for repair in answer.repairs if repair.changes == (change,)]
    assert len(found) == 1, (told, answer.conflicts)
    return found[0]


def test_a_change_of_every_kind_is_offered_made_by_one_edit_and_undone_by_one(
    case: tuple[Project, FieldChange],
) -> None:
    project, change = case
    repair = _offer(project, change)
    session = Session()
    session.new_project(project)
    session.do(ApplyRepair(repair))
    assert session.project != project
    assert why_not(session.project) is None
    session.undo()
    assert session.project == project


def _now(project: Project, path: str) -> object:
    """The present value at a path; None where there is none."""
    value: object = project
    for step in path.split("."):
        name, _, member = step.rstrip("]").partition("[")
        value = getattr(value, name)
        if member and isinstance(value, tuple):
            by_name = {getattr(one, "id", str(number)): one for number, one in enumerate(value)}
            value = by_name.get(member)
        if value is None:
            return None
    return value


def test_a_smaller_step_would_not_do(case: tuple[Project, FieldChange]) -> None:
    project, change = case
    if isinstance(change.value, bool | str) or change.value is None:
        return
    now = _now(project, change.path)
    is_less = isinstance(now, int | float) and change.value < now
    is_length_of_a_list = change.path.endswith(("box_width_mm", "widths_mm[0]", "runners.length_mm"))
    if not is_length_of_a_list:
        smaller = change.value + 1 if is_less else change.value - 1
        assert why_not(changed(project, [change.model_copy(update={"value": smaller})])) is not None


def test_the_offers_stand_from_light_to_heavy_and_no_field_is_offered_twice() -> None:
    answer = why_not(shop(low=9, bay_count=2, drawers_per_bay=4))
    assert answer is not None
    weights = [repair.weight for repair in answer.repairs]
    assert weights == sorted(weights)
    paths = [repair.changes[0].path for repair in answer.repairs]
    assert len(set(paths)) == len(paths)
    assert len(paths) >= 3


def test_lengths_are_offered_as_the_project_shows_them() -> None:
    answer = why_not(_height().replace(unit=LengthUnit.INCH))
    assert answer is not None
    text = next(r.text for r in answer.repairs if r.changes[0].path == "space.height_limit_mm")
    assert '61 5/8"' in text


def test_a_box_that_is_only_wished_for_is_given_up_before_one_that_is_owned() -> None:
    project = shop(low=5, bay_count=1, upright_rows=20)
    wished = project.boxes[3].replace(status=BoxStatus.WISHED)
    project = project.replace(boxes=(*project.boxes[:3], wished, *project.boxes[4:]))
    repair = _offer(project, FieldChange(path="boxes[low-4].status", value="elsewhere"))
    assert repair.text == "Keep no room for “Low 4”."


def test_a_box_too_heavy_for_any_runner_can_be_kept_elsewhere_and_no_rating_is_invented() -> None:
    project = shop(low=4)
    heavy = project.boxes[1].replace(loaded_mass_kg=90.0)
    project = project.replace(boxes=(project.boxes[0], heavy, *project.boxes[2:]))
    _offer(project, FieldChange(path="boxes[low-2].status", value="elsewhere"))
    answer = why_not(project)
    assert answer is not None
    assert "maker" in answer.conflicts[0].mend
    assert not any("load" in change.path for repair in answer.repairs for change in repair.changes)


def test_where_no_single_change_does_one_for_each_clash_is_offered_together() -> None:
    project = shop(low=8, drawers_per_bay=2, bay_count=3)
    heavy = [box.replace(loaded_mass_kg=90.0) if box.id in ("low-1", "low-2") else box for box in project.boxes]
    project = project.replace(boxes=tuple(heavy), limits=project.limits.replace(drawers_per_bay=1))
    answer = why_not(project)
    assert answer is not None
    assert len(answer.conflicts) >= 2
    for repair in answer.repairs:
        assert len(repair.changes) >= 2
        assert why_not(changed(project, repair.changes)) is None
    assert answer.repairs


def test_where_the_least_changes_are_not_enough_together_they_are_sought_one_after_the_other() -> None:
    """16 boxes in 1 bay of 20 rows, on a wall for 4 bays; 10 rows are to stay free of the 80 that there could be."""
    project = shop(low=16, bay_count=1, upright_rows=20, spare_rows=10)
    answer = why_not(project)
    assert answer is not None
    assert len(answer.conflicts) == 2
    (repair,) = answer.repairs
    assert len({change.path for change in repair.changes}) == len(repair.changes) >= 2
    assert why_not(changed(project, repair.changes)) is None
