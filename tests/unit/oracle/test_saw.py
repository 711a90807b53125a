"""The saw of the tests is itself shown to cut what can be cut, and to refuse what cannot."""

import pytest

from tests.oracle.saw import (
    Lying,
    NotSawn,
    Plank,
    Stroke,
    Wanted,
    check_parts,
    cut_apart,
    replayed,
)

PINWHEEL = (
    Lying("a", 0, 0, 2, 1),
    Lying("b", 2, 0, 1, 2),
    Lying("c", 1, 2, 2, 1),
    Lying("d", 0, 1, 1, 2),
)


def test_a_full_board_needs_no_cut() -> None:
    sawn = cut_apart(Plank(10, 6), [Lying("a", 0, 0, 10, 6)])
    assert (sawn.parts, sawn.cuts, sawn.stages) == ((("a", 10, 6),), 0, 0)


def test_an_empty_board_gives_nothing() -> None:
    assert cut_apart(Plank(10, 6), []).parts == ()


def test_strips_and_parts_of_strips_take_two_stages_and_the_rest_is_trimmed_in_a_third() -> None:
    lying = [Lying("a", 0, 0, 4, 3), Lying("b", 4, 0, 6, 3), Lying("c", 0, 3, 10, 3)]
    sawn = cut_apart(Plank(10, 6), lying)
    assert (sawn.cuts, sawn.stages, sawn.stages_before_trimming) == (2, 2, 2)
    lower = [*lying[:1], Lying("b", 4, 0, 6, 2), *lying[2:]]
    sawn = cut_apart(Plank(10, 6), lower)
    assert (sawn.cuts, sawn.stages, sawn.stages_before_trimming) == (3, 3, 2)
    assert sorted(sawn.parts) == [("a", 4, 3), ("b", 6, 2), ("c", 10, 3)]


def test_a_part_in_the_corner_takes_two_cuts_and_one_of_them_trims() -> None:
    sawn = cut_apart(Plank(10, 6), [Lying("a", 0, 0, 4, 3)])
    assert (sawn.cuts, sawn.stages, sawn.stages_before_trimming) == (2, 2, 1)
    sawn = cut_apart(Plank(10, 6), [Lying("a", 3, 1, 4, 3)])
    assert (sawn.cuts, sawn.stages) == (4, 2)


def test_a_pinwheel_has_no_cut_from_edge_to_edge() -> None:
    with pytest.raises(NotSawn, match="no cut goes from edge to edge"):
        cut_apart(Plank(3, 3), PINWHEEL)


def test_a_pinwheel_beside_another_part_is_found() -> None:
    with pytest.raises(NotSawn, match="no cut goes from edge to edge"):
        cut_apart(Plank(5, 3), [*PINWHEEL, Lying("e", 3, 0, 2, 3)])


def test_between_parts_the_blade_needs_its_full_width_and_at_an_edge_it_does_not() -> None:
    cut_apart(Plank(10, 5, kerf=3), [Lying("a", 0, 0, 4, 5), Lying("b", 7, 0, 3, 5)])
    cut_apart(Plank(11, 5, kerf=3), [Lying("a", 1, 0, 4, 4), Lying("b", 8, 0, 2, 5)])
    with pytest.raises(NotSawn, match="with 3 for the blade"):
        cut_apart(Plank(10, 5, kerf=3), [Lying("a", 0, 0, 4, 5), Lying("b", 6, 0, 3, 5)])


def test_parts_that_lie_over_each_other_are_not_sawn() -> None:
    with pytest.raises(NotSawn):
        cut_apart(Plank(10, 6), [Lying("a", 0, 0, 5, 6), Lying("b", 4, 0, 5, 6)])
    with pytest.raises(NotSawn):
        cut_apart(Plank(10, 6), [Lying("a", 0, 0, 5, 6), Lying("b", 0, 0, 5, 6)])


@pytest.mark.parametrize(("x", "y"), [(9, 10), (10, 9), (71, 10), (10, 51)])
def test_what_reaches_into_the_trimmed_edge_is_refused(x: int, y: int) -> None:
    plank = Plank(100, 80, trim=10)
    cut_apart(plank, [Lying("a", 70, 50, 20, 20)])
    with pytest.raises(NotSawn, match="over the edge"):
        cut_apart(plank, [Lying("a", x, y, 20, 20)])


def test_a_part_without_width_is_refused() -> None:
    with pytest.raises(NotSawn, match="has no width"):
        cut_apart(Plank(10, 6), [Lying("a", 0, 0, 5, 0)])


def test_every_wanted_part_is_counted_once_in_its_measures_and_its_grain() -> None:
    wanted = [Wanted("a", 4, 3), Wanted("b", 5, 2, may_turn=True), Wanted("c", 2, 2)]
    check_parts(wanted, [("c", 2, 2), ("a", 4, 3), ("b", 2, 5)])
    for got, reason in (
        ([("a", 4, 3), ("b", 5, 2)], "not cut exactly once"),
        ([("a", 4, 3), ("b", 5, 2), ("c", 2, 2), ("c", 2, 2)], "not cut exactly once"),
        ([("a", 3, 4), ("b", 5, 2), ("c", 2, 2)], "across the grain"),
        ([("a", 4, 2), ("b", 5, 2), ("c", 2, 2)], "and not 4 × 3"),
        ([("a", 4, 3), ("b", 5, 2), ("c", 2, 2), ("d", 1, 1)], "nobody wants it"),
    ):
        with pytest.raises(NotSawn, match=reason):
            check_parts(wanted, got)


def test_a_list_of_cuts_gives_what_the_blade_leaves() -> None:
    strokes = [
        Stroke("board", across=False, at=35, first="strip", second="rest"),
        Stroke("strip", across=True, at=45, first="a", second="strip"),
        Stroke("strip", across=True, at=88, first="b", second=None),
    ]
    in_hand = replayed(Plank(120, 80, kerf=3, trim=5), "board", strokes)
    assert in_hand == {
        "a": Lying("a", 5, 5, 40, 30),
        "b": Lying("b", 48, 5, 40, 30),
        "rest": Lying("rest", 5, 38, 110, 37),
    }


def test_trimming_may_stand_in_the_list() -> None:
    strokes = [
        Stroke("board", across=True, at=2, first=None, second="board"),
        Stroke("board", across=True, at=95, first="board", second=None),
    ]
    assert replayed(Plank(100, 50, kerf=3), "board", strokes) == {"board": Lying("board", 5, 0, 90, 50)}


@pytest.mark.parametrize(
    ("stroke", "reason"),
    [
        (Stroke("nothing", across=True, at=3, first="a", second="b"), "there is no piece"),
        (Stroke("board", across=True, at=11, first="a", second="b"), "does not go through"),
        (Stroke("board", across=True, at=0, first="a", second="b"), "does not go through"),
        (Stroke("board", across=True, at=9, first="a", second="b"), "nothing is left for b"),
        (Stroke("board", across=False, at=1, first="a", second="b"), "nothing is left for a"),
        (Stroke("board", across=True, at=4, first="a", second="a"), "in hand already"),
    ],
)
def test_a_cut_that_cannot_be_made_is_found(stroke: Stroke, reason: str) -> None:
    with pytest.raises(NotSawn, match=reason):
        replayed(Plank(12, 12, kerf=2, trim=1), "board", [stroke])
