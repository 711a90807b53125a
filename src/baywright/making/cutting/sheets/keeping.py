"""At equal cost: a larger rest that can be kept, then fewer cuts.

For the rest one board, the emptiest first, is made shorter (so that a rest over its full width is left) or narrower,
by halving steps, and the search tries to get everything onto the boards with that one smaller. For the cuts the
pieces of each board are filled anew a number of times.
"""

from __future__ import annotations

from collections.abc import Generator, Iterator

from baywright.making.cutting.sheets.course import Course, reached
from baywright.making.cutting.sheets.filling import STAGES, Place
from baywright.making.cutting.sheets.search import Slot
from baywright.making.cutting.sheets.stock import Filled, Solution, weight

BOARDS_TRIED = 3
"""The rest is sought on so many boards, the emptiest ones."""
HALVINGS = 6
"""So many sizes of the rest are tried on a board, each one between what was reached and what was not."""
SHARE_OF_EFFORT = 24
"""Each try may take this part of the steps that are left, …"""
MOST_STEPS = 3_000
"""… and never more than so many."""
FILLINGS = 60
"""So often each board is filled anew for fewer cuts …"""
FEW_STAGES = (0, 2 * STAGES, 2 * STAGES + 1, 3 * STAGES, 3 * STAGES + 1)
"""… beginning in these states in turn, where the stages have no limit."""


def larger_rests(course: Course, best: Solution) -> Iterator[Solution]:
    """Solutions of the same boards with ever larger rests; the caller keeps those that are better."""
    steps = max(1, min(MOST_STEPS, course.left // SHARE_OF_EFFORT))
    least, most = sorted(course.rules.rest_least)
    if not most:
        return
    boards = sorted(best.boards, key=lambda each: _filled_share(course, each))
    for index in range(min(BOARDS_TRIED, len(boards))):
        for shorter in (True, False):
            board = course.kinds[boards[index].kind]
            across, along = (board.width, board.length) if shorter else (board.length, board.width)
            if across >= (most if along < most else least):
                yield from _shrunk(course, boards, index, shorter, steps)


def _filled_share(course: Course, each: Filled) -> float:
    board = course.kinds[each.kind]
    return weight(each.place[2], course.table) / (board.length * board.width)


def _shrunk(course: Course, boards: list[Filled], index: int, shorter: bool, steps: int) -> Iterator[Solution]:
    """Makes one board shorter, or else narrower, as far as everything still fits."""
    board = course.kinds[boards[index].kind]
    side, other = (board.length, board.width) if shorter else (board.width, board.length)
    free = sum(course.kinds[each.kind].length * course.kinds[each.kind].width for each in boards)
    free -= sum(course.table.areas)
    fits, fails = 0, min(side, free // other + 1)
    for _ in range(HALVINGS):
        if course.is_over() or fails - fits < 2:
            return
        rest = (fits + fails) // 2
        slots = [course.slot(each.kind) for each in boards]
        slots[index] = _smaller(course, boards[index].kind, rest, shorter)
        places: list[Place | None] = [each.place for each in boards]
        places[index] = None
        attempt = course.attempt(slots, places)
        if course.tries(attempt, steps):
            fits = rest
            yield reached(attempt)
        else:
            fails = rest


def _smaller(course: Course, kind: int, rest: int, shorter: bool) -> Slot:
    """A board without the rest; the cut that takes the rest off must be one of its first stage."""
    _, length, width, states = course.slot(kind)
    if states != (0,):
        states = tuple(state for state in states if bool(state % STAGES) != shorter)
    return Slot(kind, length - rest, width, states) if shorter else Slot(kind, length, width - rest, states)


def fewer_cuts(course: Course, best: Solution) -> Generator[Solution, Solution | None, None]:
    """Solutions with one board's pieces laid out differently; the caller sends back the best one so far."""
    _, fill = course.tools
    for index in range(len(best.boards)):
        for filling in range(FILLINGS):
            if course.is_over():
                return
            course.left -= 1
            course.tools[0]()
            kind, (length, width, mask, *_, state) = best.boards[index].kind, best.boards[index].place
            if course.states == (0,):
                state = FEW_STAGES[filling % len(FEW_STAGES)]
            place = fill(length, width, mask, state)
            if place and place[2] == mask:
                boards = (*best.boards[:index], Filled(kind, place), *best.boards[index + 1 :])
                best = (yield Solution(boards, best.out)) or best
