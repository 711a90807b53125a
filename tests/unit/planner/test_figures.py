"""The figures of goals: counted by hand on small arrangements, and the same however an arrangement came about."""

import random

from baywright.model.arrangement import Arrangement, Placement
from baywright.model.goals import Goal
from baywright.model.inventory import Box, BoxSize, BoxStatus, Use
from baywright.model.project import Project
from baywright.planner.figures import Scale, Tally, figures, longest_free, usable_rows
from baywright.planner.replanning.standing import standing_of


def _project() -> Project:
    low = BoxSize(id="low", name="Low", width_mm=300, depth_mm=200, height_mm=60)
    high = BoxSize(id="high", name="High", width_mm=300, depth_mm=200, height_mm=220)
    boxes = (
        Box(id="a", label="A", size_id="low", loaded_mass_kg=10, group="glue", use=Use.WEEKLY),
        Box(id="b", label="B", size_id="low", loaded_mass_kg=10, group="glue", use=Use.WEEKLY),
        Box(id="c", label="C", size_id="high", loaded_mass_kg=20, use=Use.DAILY),
        Box(id="d", label="D", size_id="high", loaded_mass_kg=20, status=BoxStatus.WISHED),
    )
    return Project().replace(box_sizes=(low, high), boxes=boxes)


def _arrangement(**spots: tuple[int, int]) -> Arrangement:
    placements = tuple(Placement(box_id=box_id, bay=bay, row=row) for box_id, (bay, row) in spots.items())
    return Arrangement(bay_count=2, upright_rows=30, placements=placements)


def _values(project: Project, arrangement: Arrangement, before: Arrangement | None = None) -> dict[Goal, float]:
    standing = None if before is None else standing_of(project, before)
    return {goal.goal: goal.value for goal in figures(project, arrangement, standing)}


def test_without_a_standing_run_no_changes_are_counted() -> None:
    values = _values(_project(), _arrangement(a=(0, 3), b=(1, 3), c=(0, 10), d=(1, 10)))
    assert list(values) == [Goal.BAYS, Goal.ROWS, Goal.HANDLING, Goal.GROUPS, Goal.FREE_PIECE]
    assert (values[Goal.BAYS], values[Goal.ROWS]) == (2, 30)
    assert values[Goal.GROUPS] == 1


def test_a_group_in_one_bay_is_not_split() -> None:
    assert _values(_project(), _arrangement(a=(0, 3), b=(0, 8), c=(1, 3), d=(1, 20)))[Goal.GROUPS] == 0


def test_moves_are_boxes_that_change_their_bay_or_row() -> None:
    before = _arrangement(a=(0, 3), b=(0, 8), d=(1, 20))
    after = _arrangement(a=(0, 4), b=(0, 8), c=(1, 3), d=(1, 12))
    assert _values(_project(), after, before)[Goal.MOVES] == 1  # c is new, d is only wished for


def test_runners_are_screwed_anew_only_where_they_serve_again() -> None:
    before = _arrangement(a=(0, 3), b=(0, 8))
    after = _arrangement(a=(0, 4), b=(0, 8), c=(1, 3), d=(1, 12))
    assert _values(_project(), after, before)[Goal.RESCREWS] == 1  # one given up serves again, one is a new drawer
    swapped = _arrangement(a=(0, 8), b=(0, 3))
    values = _values(_project(), swapped, before)
    assert (values[Goal.MOVES], values[Goal.RESCREWS]) == (2, 0)


def test_boxes_in_one_drawer_are_one_runner_pair() -> None:
    before = _arrangement(a=(0, 3), b=(0, 3), c=(1, 3))
    assert _values(_project(), _arrangement(a=(0, 5), b=(0, 5), c=(1, 3)), before)[Goal.RESCREWS] == 1


def test_the_longest_free_stretch_counts_usable_rows_only() -> None:
    assert longest_free(range(1, 30), []) == 29
    assert longest_free(range(1, 30), [(1, 5), (9, 20)]) == 10
    assert longest_free(range(1, 30), [(1, 5), (28, 40)]) == 23
    assert longest_free(range(1, 30), [(1, 40)]) == 0


def test_putting_boxes_one_by_one_gives_the_figures_of_the_whole() -> None:
    chance = random.Random(5)
    project = _project()
    before = _arrangement(a=(0, 3), b=(0, 8), c=(1, 3))
    scale = Scale(project, standing_of(project, before))
    usable = usable_rows(project, scale.grid, before)
    tally = Tally(scale, 30, usable, {})
    for _ in range(300):
        box_id = chance.choice("abcd")
        tally.put(box_id, chance.choice([None, (chance.randrange(2), chance.randrange(1, 25))]))
        whole = Tally(scale, 30, usable, dict(sorted(tally.places.items())))
        assert tally.whole_numbers() == whole.whole_numbers()
