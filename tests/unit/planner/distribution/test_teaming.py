"""Items folded into drawers beforehand and unfolded again."""

from baywright.planner.distribution.budget import Budget
from baywright.planner.distribution.cheapest import improved
from baywright.planner.distribution.problem import Item, Kind, Place, Problem, Shape, Span, Team, drawers_of, is_kept
from baywright.planner.distribution.search import holds
from baywright.planner.distribution.teaming import folded
from baywright.planner.framing.frame import Framer
from tests.benchmarks.workshops import workshop

SPAN = Span(5, 0, 5)


def problem(items: int, bays: int, *teams: int) -> Problem:
    shapes = (Shape((SPAN,)),)
    all_items = tuple(Item(f"item-{n}", 0, n) for n in range(items))
    return Problem((Kind(bays, 10),), shapes, all_items, tuple(Team((0,) * size, (SPAN,)) for size in teams))


def test_the_team_that_saves_most_is_formed_first() -> None:
    found = folded(problem(5, 1, 2, 3))
    assert found is not None
    assert sorted(map(len, found.crews)) == [2, 3]
    assert sorted(item for crew in found.crews for item in crew) == [0, 1, 2, 3, 4]


def test_unfolded_every_item_has_the_place_of_its_drawer() -> None:
    found = folded(problem(2, 1, 2))
    assert found is not None
    assert found.unfold([Place(0, 0, 0, 5)]) == (Place(0, 0, 0, 5), Place(1, 0, 0, 5))


def test_without_a_team_nothing_is_folded() -> None:
    assert folded(problem(3, 1)) is None
    assert folded(problem(1, 1, 2)) is None


def test_the_first_try_fills_shared_drawers_without_the_solver() -> None:
    packed = problem(12, 2, 3)
    answer = holds(packed, Budget(0.0))
    assert answer.holds
    assert is_kept(packed, answer.places)
    assert holds(problem(13, 2, 3), Budget(0.0)).holds is False


def test_easiest_handling_of_shared_drawers_is_proved_with_little_effort() -> None:
    project = workshop(60, drawers_per_bay=6)
    sizes = tuple(
        size.replace(width_mm=190, most_abreast=2) if size.height_mm < 150 else size for size in project.box_sizes
    )
    framer = Framer(project.replace(box_sizes=sizes))
    frame = framer.frame(14, 33)
    budget = Budget(3.0)
    first = holds(frame.problem, budget)
    assert first.holds
    best = improved(frame.problem, first.places, {}, budget)
    assert frame.problem.cost(best.places) == best.bound
    assert len(drawers_of(best.places)) < 60
    assert is_kept(frame.problem, best.places)
