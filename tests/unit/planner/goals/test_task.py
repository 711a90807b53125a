"""A task tells every bay apart, and counts what is locked in every figure."""

from baywright.model.goals import Goal
from baywright.planner.goals.task import rank
from tests.unit.planner.goals.given import box, locked, run, spots_of, task


def test_every_bay_is_a_kind_of_its_own() -> None:
    given = task(run(box("a"), box("b"), bays=3, a=(0, 0), b=(2, 3)))
    assert [kind.bays for kind in given.problem.kinds] == [1, 1, 1]
    assert given.present == ((0, 0), (2, 3))
    assert given.stood == (None, None)  # changes do not count here


def test_spots_and_places_are_two_ways_to_say_the_same() -> None:
    given = task(run(box("a"), box("b"), bays=3, a=(0, 0), b=(2, 3)))
    spots = spots_of(given, a=(1, 4), b=(2, 0))
    assert given.spots(given.places(spots)) == spots
    assert given.is_legal(spots)
    assert not given.is_legal(spots_of(given, a=(1, 4), b=(1, 5)))


def test_what_is_locked_counts_in_the_figures() -> None:
    project = locked(run(box("a", group="g"), box("b", group="g"), a=(0, 0), b=(0, 3)), "a")
    given = task(project, keep=True)
    assert [b.id for b in given.boxes] == ["b"]
    figures = given.figures(((1, 3),))
    assert (figures[Goal.MOVES], figures[Goal.RESCREWS], figures[Goal.GROUPS]) == (1, 1, 1)


def test_less_is_better_but_of_the_free_piece() -> None:
    assert rank({Goal.MOVES: 1, Goal.FREE_PIECE: 4}) < rank({Goal.MOVES: 1, Goal.FREE_PIECE: 3})
    assert rank({Goal.MOVES: 1, Goal.FREE_PIECE: 3}) < rank({Goal.MOVES: 2, Goal.FREE_PIECE: 9})
