"""Layouts of invented jobs are really sawn, in true measures: with kerf, trim, grain, several boards and offcuts.

The saw (`tests.oracle.saw`) finds its cuts from the rectangles alone; the cutting tree is walked as well, and the cuts
that it stands for, made one after the other, give every part where it is said to lie.
"""

import random
from collections import Counter
from dataclasses import dataclass

import pytest
from hypothesis import given
from hypothesis import strategies as st

from baywright.making.cutting.packing import Board, Layout, Node, Packing, Piece, Rules, pack
from tests.oracle.saw import Lying, Plank, Stroke, Wanted, check_parts, cut_apart, replayed


@dataclass(frozen=True)
class Job:
    """Parts to cut in true measures, boards as bought with cost and number, and how the saw is set."""

    wanted: tuple[Wanted, ...]
    planks: tuple[tuple[Plank, int, int | None], ...]
    stages: int | None = None
    rest_least: tuple[int, int] = (0, 0)

    def pieces(self) -> list[Piece]:
        kerf = self.planks[0][0].kerf
        return [
            Piece(number, part.length + kerf, part.width + kerf, part.may_turn)
            for number, part in enumerate(self.wanted)
        ]

    def boards(self) -> list[Board]:
        return [
            Board(
                number,
                plank.length - 2 * plank.trim + plank.kerf,
                plank.width - 2 * plank.trim + plank.kerf,
                cost,
                available,
            )
            for number, (plank, cost, available) in enumerate(self.planks)
        ]

    def packed(self, effort: int, seed: int = 0) -> Packing:
        rules = Rules(self.stages, self.rest_least)
        return pack(self.pieces(), self.boards(), rules, effort=effort, seed=seed)


def check(job: Job, packing: Packing) -> None:
    """Everything that a person would find at the saw, and that cost, bound and what is left over are as told."""
    boards = job.boards()
    cut: list[tuple[object, int, int]] = []
    for layout in packing.layouts:
        plank = job.planks[layout.board][0]
        lying = [
            Lying(
                each.piece, plank.trim + each.x, plank.trim + each.y, each.length - plank.kerf, each.width - plank.kerf
            )
            for each in layout.placed
        ]
        assert lying, "a board is taken and nothing is cut from it"
        sawn = cut_apart(plank, lying)
        cut += sawn.parts
        assert sawn.stages_before_trimming <= layout.stages
        assert job.stages is None or layout.stages <= job.stages
        check_tree(layout, boards[layout.board])
        check_cuts_of_tree(layout, plank, lying)
    left = set(packing.unplaced)
    check_parts(
        [
            Wanted(number, part.length, part.width, part.may_turn)
            for number, part in enumerate(job.wanted)
            if number not in left
        ],
        cut,
    )
    used = Counter(layout.board for layout in packing.layouts)
    assert packing.cost == sum(boards[number].cost * count for number, count in used.items())
    for number, count in used.items():
        available = boards[number].available
        assert available is None or count <= available
    there = [plank for plank, _, available in job.planks if available != 0]
    hopeless = [n for n, part in enumerate(job.wanted) if not any(goes_on(part, plank) for plank in there)]
    assert sorted(packing.unplaceable) == hopeless
    if left == set(hopeless):
        assert packing.bound <= packing.cost


def goes_on(part: Wanted, plank: Plank) -> bool:
    """Whether a part by itself can be cut from a board."""
    usable = plank.length - 2 * plank.trim, plank.width - 2 * plank.trim
    ways = [(part.length, part.width)] + ([(part.width, part.length)] if part.may_turn else [])
    return any(length <= usable[0] and width <= usable[1] for length, width in ways)


def check_tree(layout: Layout, board: Board) -> None:
    """The tree fills the board without gaps, its cuts change direction, and its leaves are the placed pieces."""
    root = layout.tree
    assert (root.x, root.y, root.length, root.width) == (0, 0, board.length, board.width)
    found: list[tuple[int, int, int, int, int]] = []

    def walk(node: Node) -> None:
        assert node.length > 0
        assert node.width > 0
        if not node.children:
            if node.piece is not None:
                found.append((node.piece, node.x, node.y, node.length, node.width))
            return
        assert node.piece is None
        at = node.x if node.across else node.y
        for child in node.children:
            assert not child.children or child.across != node.across
            if node.across:
                assert (child.x, child.y, child.width) == (at, node.y, node.width)
                at += child.length
            else:
                assert (child.x, child.y, child.length) == (node.x, at, node.length)
                at += child.width
            walk(child)
        assert at == (node.x + node.length if node.across else node.y + node.width)

    walk(root)
    assert sorted(found) == sorted((p.piece, p.x, p.y, p.length, p.width) for p in layout.placed)


def check_cuts_of_tree(layout: Layout, plank: Plank, lying: list[Lying]) -> None:
    """The cuts of the tree, one after the other through the panel in hand, give the parts where they lie."""
    strokes: list[Stroke] = []

    def saw(node: Node, name: object) -> None:
        """Cut a panel apart. A strip is handed in with the kerf behind it; one no wider than that is dust."""
        if node.piece is not None:
            names[name] = node.piece
        for number, child in enumerate(node.children):
            here = child.x if node.across else child.y
            near = here + (child.length if node.across else child.width)
            end = node.x + node.length if node.across else node.y + node.width
            first, second = (name, "part", number), (name, "more", number)
            if near == end:
                saw(child, name)
                break
            first_is_left, second_is_left = near - here > plank.kerf, end - near > plank.kerf
            strokes.append(
                Stroke(
                    name,
                    node.across,
                    plank.trim + near - plank.kerf,
                    first if first_is_left else None,
                    second if second_is_left else None,
                )
            )
            if first_is_left:
                saw(child, first)
            if not second_is_left:
                break
            name = second

    names: dict[object, int] = {}
    saw(layout.tree, "board")
    in_hand = replayed(plank, "board", strokes)
    got = [Lying(names[name], at.x, at.y, at.length, at.width) for name, at in in_hand.items() if name in names]
    assert sorted(got, key=lambda part: str(part.name)) == sorted(lying, key=lambda part: str(part.name))


def invented(seed: int, parts: int) -> Job:
    """Parts of cabinets in mm, boards of two sizes and offcuts; kerf, trim, stages and what to keep by chance."""
    chance = random.Random(seed)
    kerf, trim = chance.choice((0, 3, 4)), chance.choice((0, 0, 10))
    wanted: list[Wanted] = []
    while len(wanted) < parts:
        length, width = chance.randint(80, 1200), chance.randint(60, 700)
        grained = chance.random() < 0.6
        count = min(chance.choice((1, 2, 4, 8)), parts - len(wanted))
        wanted += [Wanted(len(wanted) + n, length, width, not grained) for n in range(count)]
    planks: list[tuple[Plank, int, int | None]] = [
        (Plank(2500, 1250, kerf, trim), 86, None),
        (Plank(1525, 1525, kerf, trim), 59, None),
    ]
    planks += [
        (Plank(chance.randint(300, 1300), chance.randint(200, 900), kerf, 0), chance.randint(0, 5), 1)
        for _ in range(chance.randint(0, 6))
    ]
    return Job(tuple(wanted), tuple(planks), chance.choice((None, None, 3, 2)), chance.choice(((0, 0), (400, 150))))


@pytest.mark.parametrize("seed", range(12))
def test_the_parts_of_a_cabinet_are_sawn_as_they_lie(seed: int) -> None:
    job = invented(seed, parts=20 + 5 * seed)
    packing = job.packed(effort=150, seed=seed)
    check(job, packing)
    assert packing.unplaced == ()


measures = st.integers(1, 60)


@given(
    wanted=st.lists(st.tuples(measures, measures, st.booleans()), min_size=1, max_size=14),
    planks=st.lists(
        st.tuples(
            st.integers(12, 110),
            st.integers(12, 110),
            st.integers(0, 9),
            st.one_of(st.none(), st.integers(0, 3)),
        ),
        min_size=1,
        max_size=4,
    ),
    kerf=st.integers(0, 4),
    trim=st.integers(0, 5),
    stages=st.sampled_from((None, 2, 3)),
    rest_least=st.sampled_from(((0, 0), (20, 10))),
)
def test_whatever_is_asked_the_layouts_can_be_sawn(
    wanted: list[tuple[int, int, bool]],
    planks: list[tuple[int, int, int, int | None]],
    kerf: int,
    trim: int,
    stages: int | None,
    rest_least: tuple[int, int],
) -> None:
    job = Job(
        tuple(Wanted(n, length, width, may_turn) for n, (length, width, may_turn) in enumerate(wanted)),
        tuple((Plank(length, width, kerf, trim), cost, available) for length, width, cost, available in planks),
        stages,
        rest_least,
    )
    check(job, job.packed(effort=40))
