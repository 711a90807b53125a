"""Where a box could go: every place answered, in the order of the goals, with exact figures."""

import pytest

from baywright.model.arrangement import Arrangement, Placement
from baywright.model.destination import Destination
from baywright.model.difference import Place
from baywright.model.goals import Goal
from baywright.model.inventory import Box, BoxSize, BoxStatus
from baywright.model.project import Project
from baywright.planner import destinations, place_conflicts

SIZE = BoxSize(id="euro-120", name="Euro 120", width_mm=396, depth_mm=297, height_mm=120)


def workshop(**statuses: BoxStatus) -> Project:
    """Two bays; pumps and tubes of one group stand in the first, bells have no place."""
    return Project(
        box_sizes=(SIZE,),
        boxes=tuple(
            Box(id=name, label=name.capitalize(), size_id=SIZE.id, loaded_mass_kg=4, group=group,
                status=statuses.get(name, BoxStatus.OWNED))
            for name, group in (("pumps", "air"), ("tubes", "air"), ("bells", ""))
        ),
        arrangement=Arrangement(
            bay_count=2, upright_rows=20,
            placements=(Placement(box_id="pumps", bay=0, row=0), Placement(box_id="tubes", bay=0, row=8)),
        ),
    )  # fmt: skip


def at(found: tuple[Destination, ...], bay: int, row: int) -> Destination:
    return next(each for each in found if each.place == Place(bay=bay, row=row))


def test_every_bay_and_row_is_answered_once_in_order() -> None:
    places = [each.place for each in destinations(workshop(), "pumps")]
    assert places == [Place(bay=bay, row=row) for bay in range(2) for row in range(20)]


def test_a_place_tells_what_every_goal_would_come_to_in_the_order_of_the_goals() -> None:
    project = workshop()
    project = project.replace(goals=(Goal.GROUPS, Goal.HANDLING, Goal.MOVES, Goal.RESCREWS, Goal.FREE_PIECE))
    changes = at(destinations(project, "tubes"), 1, 15).changes
    assert [change.goal for change in changes] == [Goal.BAYS, Goal.ROWS, *project.goals]
    told = {change.goal: (change.before, change.after) for change in changes}
    assert told[Goal.GROUPS] == (0, 1)
    assert told[Goal.MOVES] == (0, 1)
    assert told[Goal.RESCREWS] == (0, 1)
    assert told[Goal.FREE_PIECE] == (19, 15)


def test_a_drawer_that_may_be_shared_is_a_place_and_asks_for_no_runners() -> None:
    narrow = BoxSize(id="half", name="Half", width_mm=190, depth_mm=297, height_mm=120, most_abreast=2, may_turn=True)
    project = workshop()
    boxes = tuple(box.replace(size_id="half") if box.id != "pumps" else box for box in project.boxes)
    shared = project.replace(box_sizes=(SIZE, narrow), boxes=boxes)
    beside = at(destinations(shared, "bells"), 0, 8)
    assert (beside.conflicts, beside.abreast, beside.behind, beside.turned) == ((), 1, 0, False)
    told = {change.goal: change.after - change.before for change in beside.changes}
    assert (told[Goal.RESCREWS], told[Goal.FREE_PIECE]) == (0, 0)
    alone = at(destinations(shared, "bells"), 0, 0)
    assert alone.changes == ()
    assert "drawer of its own" in alone.conflicts[0].message


def test_where_it_stands_nothing_changes() -> None:
    here = at(destinations(workshop(), "tubes"), 0, 8)
    assert here.conflicts == ()
    assert all(change.before == change.after for change in here.changes)


def test_a_place_that_cannot_be_says_why_and_promises_nothing() -> None:
    project = workshop()
    for each in destinations(project, "bells"):
        assert each.conflicts == place_conflicts(project, "bells", each.place.bay, each.place.row)
        assert bool(each.conflicts) != bool(each.changes)
    assert "Tubes" in at(destinations(project, "bells"), 0, 9).conflicts[0].message


def test_a_box_that_is_only_wished_for_moves_no_box_and_no_runner() -> None:
    changes = at(destinations(workshop(tubes=BoxStatus.WISHED), "tubes"), 1, 15).changes
    told = {change.goal: change.after - change.before for change in changes}
    assert (told[Goal.MOVES], told[Goal.RESCREWS]) == (0, 0)


def test_a_box_kept_elsewhere_goes_nowhere_and_one_that_is_not_there_is_no_box() -> None:
    assert destinations(workshop(bells=BoxStatus.ELSEWHERE), "bells") == ()
    assert destinations(workshop().replace(arrangement=Arrangement()), "bells") == ()
    with pytest.raises(KeyError):
        destinations(workshop(), "horns")
