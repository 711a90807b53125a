"""The order of the cuts: trimmed first, panels named after the one they come from, the fence set to what comes off."""

from baywright.making.cutting.packing import Node
from baywright.making.cutting.sequence import Ground, gathered, leaves, saw_cuts
from tests.oracle.saw import Plank, Stroke, replayed

KERF, TRIM = 3, 10
GROUND = Ground(1020, 520, TRIM, KERF)
USABLE = (1000 + KERF, 500 + KERF)
NAMES = {1: "U1", 2: "U1", 3: "B1"}


def tree() -> Node:
    """Two strips across: one of two U1 and a rest between them, one of B1 and a large rest."""
    first = (
        Node(0, 0, 403, 153, piece=1),
        Node(0, 153, 403, 100),
        Node(0, 253, 403, 153, piece=2),
        Node(0, 406, 403, 97),
    )
    second = (Node(403, 0, 600, 203, piece=3), Node(403, 203, 600, 300))
    return Node(0, 0, *USABLE, across=True, children=(
        Node(0, 0, 403, USABLE[1], children=first), Node(403, 0, 600, USABLE[1], children=second),
    ))  # fmt: skip


def test_rests_beside_one_another_are_put_together() -> None:
    strip = gathered(tree()).children[0]
    assert [(child.piece, child.y, child.width) for child in strip.children] == [
        (1, 0, 153),
        (2, 153, 153),
        (None, 306, 197),
    ]
    assert [leaf.piece for leaf in leaves(gathered(tree()))] == [1, 2, None, 3, None]


def test_a_cut_that_holds_one_panel_only_is_no_cut() -> None:
    piece = Node(0, 0, *USABLE, piece=1)
    assert gathered(Node(0, 0, *USABLE, across=True, children=(piece,))) == piece


def test_the_cuts_replayed_give_the_pieces_and_the_rest_worth_keeping() -> None:
    cuts = saw_cuts(gathered(tree()), GROUND, NAMES, lambda node: node.length > 500)
    assert [(cut.panel, cut.gives) for cut in cuts] == [
        *[("sheet", ("waste", "sheet")), ("sheet", ("sheet", "waste"))] * 2,
        ("sheet", ("1", "2")),
        ("1", ("U1", "1")),
        ("1", ("U1", "waste")),
        ("2", ("B1", "rest")),
    ]
    assert [cut.is_across for cut in cuts] == [True, True, False, False, True, False, False, False]
    assert [round(cut.measure_mm * 100) for cut in cuts] == [1010, 1000, 510, 500, 400, 150, 150, 200]
    strokes = [
        Stroke(
            cut.panel, cut.is_across, round(cut.at_mm * 100),
            *(None if name == "waste" else (name, cut.number) if name in ("U1", "B1", "rest") else name
              for name in cut.gives),
        )
        for cut in cuts
    ]  # fmt: skip
    in_hand = replayed(Plank(1020, 520, KERF), "sheet", strokes)
    assert {name: (at.x, at.y, at.length, at.width) for name, at in in_hand.items()} == {
        ("U1", 6): (10, 10, 400, 150),
        ("U1", 7): (10, 163, 400, 150),
        ("B1", 8): (413, 10, 597, 200),
        ("rest", 8): (413, 213, 597, 297),
    }


def test_every_cut_tells_the_panel_in_hand() -> None:
    cuts = saw_cuts(gathered(tree()), GROUND, NAMES, lambda _node: False)
    places = [[round(each * 100) for each in (c.x_mm, c.y_mm, c.length_mm, c.width_mm)] for c in cuts]
    assert places == [
        [0, 0, 1020, 520],
        [10, 0, 1010, 520],
        [10, 0, 1000, 520],
        [10, 10, 1000, 510],
        [10, 10, 1000, 500],
        [10, 10, 400, 500],
        [10, 163, 400, 347],
        [413, 10, 597, 500],
    ]


def test_a_sheet_that_is_one_piece_is_only_trimmed_or_not_cut_at_all() -> None:
    whole = Node(0, 0, *USABLE, piece=1)
    assert saw_cuts(whole, GROUND, NAMES, lambda _node: False)[-1].gives == ("U1", "waste")
    bare = Node(0, 0, 1020 + KERF, 520 + KERF, piece=1)
    assert saw_cuts(bare, Ground(1020, 520, 0, KERF), NAMES, lambda _node: False) == ()
