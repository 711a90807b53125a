"""What the numbers allow: barred rows, shared drawers, drawers counted once, rows kept free."""

import pytest

from baywright.planner.distribution.problem import (
    Item,
    Kind,
    Place,
    Problem,
    Shape,
    Span,
    Team,
    drawers_of,
    is_kept,
    room_used,
)

ALONE = Shape((Span(4, 0, 6),))
LOW = Shape((Span(2, 0, 8),))
PAIR = Team((0, 1), (Span(4, 0, 6),))


def problem(kind: Kind, shapes: tuple[int, ...], teams: tuple[Team, ...] = (PAIR,), spare: int = 0) -> Problem:
    items = tuple(Item(f"item-{n}", shape) for n, shape in enumerate(shapes))
    return Problem((kind,), (ALONE, LOW), items, teams, spare)


def at(*rows: int) -> tuple[Place, ...]:
    return tuple(Place(item, 0, 0, row) for item, row in enumerate(rows))


def test_a_drawer_may_not_start_at_a_barred_row_but_may_reach_over_it() -> None:
    kind, span = Kind(1, 10), Span(4, 0, 6, (2, 3))
    assert kind.starts(span) == (0, 1, 4, 5, 6)


def test_two_at_one_row_share_a_drawer_where_they_are_a_team() -> None:
    assert is_kept(problem(Kind(1, 10), (0, 1)), at(3, 3))
    assert not is_kept(problem(Kind(1, 10), (0, 1), ()), at(3, 3))
    assert not is_kept(problem(Kind(1, 10), (1, 1)), at(3, 3))
    assert drawers_of(at(3, 3)) == {(0, 0, 3): [0, 1]}


def test_a_shared_drawer_takes_the_rows_of_the_team_and_stands_where_the_team_may() -> None:
    assert not is_kept(problem(Kind(1, 10), (0, 1, 1)), at(0, 0, 3))
    assert is_kept(problem(Kind(1, 10), (0, 1, 1)), at(0, 0, 4))
    assert not is_kept(problem(Kind(1, 10), (0, 1)), at(7, 7))


def test_a_shared_drawer_counts_once() -> None:
    kind = Kind(1, 10, drawers=1)
    assert is_kept(problem(kind, (0, 1)), at(0, 0))
    assert not is_kept(problem(kind, (0, 1)), at(0, 4))


@pytest.mark.parametrize(("spare", "kept"), [(0, True), (2, True), (3, False)])
def test_spare_rows_stay_free(spare: int, kept: bool) -> None:
    kind = Kind(1, 10, usable=(0, 8))
    placed = problem(kind, (0, 1), spare=spare)
    assert room_used(placed, at(0, 4)) == 6
    assert is_kept(placed, at(0, 4)) is kept


def test_room_beyond_the_usable_rows_and_blocked_rows_are_no_room() -> None:
    kind = Kind(3, 10, blocked=((2, 4),), usable=(1, 9))
    assert kind.room == 3 * 6
    assert kind.room_taken(0, 4) == 3
    assert kind.room_taken(7, 4) == 2


def test_every_item_has_one_place() -> None:
    placed = problem(Kind(1, 10), (0, 1))
    assert not is_kept(placed, (Place(0, 0, 0, 0), Place(0, 0, 0, 4)))
    assert not is_kept(placed, (Place(0, 0, 0, 0),))
