"""Seeks sets of boards that cost less and still hold everything, or, where the stock does not suffice, hold more."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from baywright.making.cutting.sheets.costs import Needs
from baywright.making.cutting.sheets.course import STEPS_AT_ONCE, Course, reached
from baywright.making.cutting.sheets.filling import Place
from baywright.making.cutting.sheets.search import Attempt, Slot
from baywright.making.cutting.sheets.stock import Solution, weight
from baywright.making.cutting.sheets.targets import cheaper

FIRST_SLICE = 300
"""Steps for each set of boards in the first round; each round goes on with fewer and takes twice as many."""


def saved(course: Course, best: Solution, needs: Needs, bound: int) -> Solution | None:
    """A solution that costs less, by trying sets of boards in turn; None where none was found before the end."""
    cost = best.cost(course.kinds)
    targets = cheaper(best.counts(course.kinds), course.kinds, needs, bound)
    attempts = [_attempt(course, best, target) for target in targets]
    steps = FIRST_SLICE
    while attempts and not course.is_over():
        for attempt in attempts:
            if course.tries(attempt, steps):
                return reached(attempt)
        attempts = _promising(course, attempts, cost)
        steps *= 2
    return None


def _promising(course: Course, attempts: list[Attempt], cost: int) -> list[Attempt]:
    """Those with the least area out, and those with the least for what they save, a third each."""
    out = [weight(each.out, course.table) for each in attempts]
    saving = [cost - course.cost(each) for each in attempts]
    numbers = range(len(attempts))
    share = max(1, len(attempts) // 3)
    nearest = sorted(numbers, key=lambda number: out[number])[:share]
    worthiest = sorted(numbers, key=lambda number: out[number] / saving[number])[:share]
    return [attempts[number] for number in sorted({*nearest, *worthiest})]


def placing_more(course: Course, best: Solution) -> Iterator[Solution]:
    """With all the boards there are: what is reached after every few steps, until everything is placed."""
    attempt = _attempt(course, best, [board.available or 0 for board in course.kinds])
    while attempt.out and not course.is_over():
        course.tries(attempt, STEPS_AT_ONCE)
        yield reached(attempt)


def _attempt(course: Course, best: Solution, target: Sequence[int]) -> Attempt:
    """An attempt with the target's boards, beginning with those of the best solution, the fullest of a kind first."""
    wanted = list(target)
    slots: list[Slot] = []
    places: list[Place | None] = []
    for each in sorted(best.boards, key=lambda each: -weight(each.place[2], course.table)):
        if wanted[each.kind]:
            wanted[each.kind] -= 1
            slots.append(course.slot(each.kind))
            places.append(each.place)
    for kind, count in enumerate(wanted):
        slots += [course.slot(kind)] * count
        places += [None] * count
    return course.attempt(slots, places)
