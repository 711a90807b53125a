"""Parts that a change of the run asks for, and those that lie idle."""

import pytest

from baywright.making import manufacture
from baywright.making.difference import part_changes
from baywright.model.arrangement import Arrangement, Placement
from baywright.model.construction import Uprights
from baywright.model.difference import PartChange
from baywright.model.inventory import Box, BoxSize
from baywright.model.project import Built, Project

SIZE = BoxSize(id="euro-120", name="Euro 120", width_mm=396, depth_mm=297, height_mm=120)


def run(bays: int, boxes: int, rows: int = 24) -> Project:
    """So many bays with so many boxes, four to a bay."""
    names = [f"box-{n}" for n in range(boxes)]
    placements = tuple(Placement(box_id=name, bay=n // 4, row=5 * (n % 4)) for n, name in enumerate(names))
    return Project(
        box_sizes=(SIZE,),
        boxes=tuple(Box(id=name, label=name, size_id=SIZE.id) for name in names),
        arrangement=Arrangement(bay_count=bays, upright_rows=rows, placements=placements),
    )


def built(project: Project, *bays: int) -> Built:
    return Built(bays=bays, project=project)


def counts(changes: tuple[PartChange, ...]) -> dict[str, int]:
    found: dict[str, int] = {}
    for change in changes:
        found[change.name] = found.get(change.name, 0) + change.quantity
    return found


def test_nothing_changed_asks_for_nothing() -> None:
    assert part_changes(run(2, 8), run(2, 8)) == ((), ())


def test_one_more_box_asks_for_one_drawer() -> None:
    to_cut, idle = part_changes(run(2, 7), run(2, 8))
    assert counts(to_cut) == {"Drawer side": 2, "Drawer rail, front and rear": 2, "Drawer bottom": 1}
    assert idle == ()
    assert counts(part_changes(run(2, 8), run(2, 7))[1]) == counts(to_cut)


def test_before_anything_is_arranged_everything_is_to_cut() -> None:
    after = run(2, 8)
    to_cut, idle = part_changes(Project(), after)
    assert (sum(counts(to_cut).values()), idle) == (sum(p.quantity for p in manufacture(after).parts), ())


def test_a_higher_run_asks_for_longer_uprights_and_the_others_lie_idle() -> None:
    to_cut, idle = part_changes(run(2, 8), run(2, 8, rows=26))
    names = {"Upright, left", "Upright, inner", "Upright, drawers and shelves", "Upright, right of the shelves"}
    assert counts(to_cut).keys() == counts(idle).keys() <= {*names, "Upright, right"}
    assert {change.note for change in to_cut} == {""}


def test_what_is_too_long_now_can_give_the_shorter_piece() -> None:
    to_cut, idle = part_changes(run(2, 8), run(2, 8, rows=22))
    assert all("can come out of" in change.note for change in to_cut)
    assert sum(change.quantity for change in to_cut) == sum(change.quantity for change in idle)


def test_only_the_bays_that_stand_count_as_cut() -> None:
    plan = run(3, 12)
    to_cut, idle = part_changes(plan, plan.replace(built=built(plan, 0)))
    found = counts(to_cut)
    assert found["Drawer bottom"] == 8
    assert found["Upright, inner"] == 1
    assert "Upright, left" not in found
    assert "Top" not in found
    assert idle == ()
    assert part_changes(plan, plan.replace(built=built(plan, 0, 1, 2))) == ((), ())


def test_with_own_uprights_each_carcass_that_stands_has_its_boards() -> None:
    plan = run(3, 12)
    plan = plan.replace(construction=plan.construction.replace(uprights=Uprights.OWN))
    found = counts(part_changes(plan, plan.replace(built=built(plan, 0, 1)))[0])
    assert (found["Upright, left"], found["Upright, right"]) == (1, 1)
    every = sum(part.quantity for part in manufacture(plan).parts if part.name == "Base")
    assert found["Base"] == every - 2


@pytest.mark.parametrize("rows", [22, 26])
def test_before_and_after_trade_what_they_ask_for(rows: int) -> None:
    one, other = run(2, 8), run(3, 9, rows)
    assert counts(part_changes(one, other)[0]) == counts(part_changes(other, one)[1])
