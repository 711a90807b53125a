"""Which boxes have to stand on the bench for a while, when several wait for each other's places.

Box by box it is known which boxes must have left their places before it can go to its own. A box goes straight there
as soon as they have; only where boxes wait in a circle must one be set aside, which then comes back as soon as its own
place is free. What is sought: the fewest boxes on the bench at once, then the fewest in all.

Laws: nothing is set aside while another box can move; small circles are solved by trying everything, so that the
fewest is the fewest; large ones by a rule that takes the box which lets most others go.
"""

from collections.abc import Iterable, Mapping
from heapq import heappop, heappush

MOST_TRIALS = 60_000
"""Looks at a box that trying everything may cost before the rule takes over."""

Needs = Mapping[str, frozenset[str]]
"""For each box those that must have left before it can arrive; itself where its drawer must go with it."""


def set_aside_in_order(needs: Needs) -> tuple[str, ...]:
    """The boxes to set aside, each when nothing else can move any more; every box that is needed waits itself."""
    circle = _Circle(needs)
    for most in range(1, len(needs) + 1):
        order = circle.with_at_most(most)
        if order is not None:
            return order
        if circle.trials > MOST_TRIALS:
            break
    return _by_rule(needs)


class _Circle:
    """Boxes as bits of one number, so that a state, which boxes have left, is one number."""

    def __init__(self, needs: Needs) -> None:
        self._names = sorted(needs)
        bit = {name: 1 << i for i, name in enumerate(self._names)}
        self._boxes = [(bit[name], sum(bit[other] for other in needs[name])) for name in self._names]
        self._asked: list[list[int]] = [[] for _ in self._names]
        """For each box the numbers of those that wait for it."""
        number = {name: i for i, name in enumerate(self._names)}
        for i, name in enumerate(self._names):
            for other in needs[name]:
                self._asked[number[other]].append(i)
        self._all = (1 << len(self._names)) - 1
        self.trials = 0

    def with_at_most(self, most: int) -> tuple[str, ...] | None:
        """The fewest boxes to set aside with at most `most` on the bench at once; None where that cannot be, or where
        the trials are used up.
        """
        start = self._after_moves(0, range(len(self._boxes)))
        known = {start}
        states: list[tuple[int, tuple[int, ...], int]] = [(0, (), start)]
        while states and self.trials <= MOST_TRIALS:
            count, order, gone = heappop(states)
            if gone == self._all:
                return tuple(self._names[i] for i in order)
            if self._on_bench(gone) >= most:
                continue
            for i, (box, _) in enumerate(self._boxes):
                if self.trials > MOST_TRIALS:
                    return None
                if not box & gone and (after := self._after_moves(gone | box, self._asked[i])) not in known:
                    known.add(after)
                    heappush(states, (count + 1, (*order, i), after))
        return None

    def _after_moves(self, gone: int, waiting: Iterable[int]) -> int:
        """Which boxes have left once everything has moved that can go straight to its place; `waiting` are those for
        which that may be so now.
        """
        todo = list(waiting)
        while todo:
            i = todo.pop()
            self.trials += 1
            box, needed = self._boxes[i]
            if not box & gone and needed & gone == needed:
                gone |= box
                todo += self._asked[i]
        return gone

    def _on_bench(self, gone: int) -> int:
        return sum(bool(box & gone) and needed & gone != needed for box, needed in self._boxes)


def _by_rule(needs: Needs) -> tuple[str, ...]:
    """The better of two rules: the box that lets most others go, or one that the box waiting for fewest waits for."""
    return min((_Followed(needs, narrow).order() for narrow in (False, True)), key=lambda found: found[:2])[2]


class _Followed:
    """Boxes that move, are set aside and come back by a rule."""

    def __init__(self, needs: Needs, narrow: bool) -> None:
        self._waiting = {box: set(needs[box]) for box in sorted(needs)}
        """What each box that has not arrived still waits for."""
        self._asked: dict[str, list[str]] = {box: [] for box in self._waiting}
        for box in self._waiting:
            for other in needs[box]:
                self._asked[other].append(box)
        self._narrow = narrow
        self._stay = set(self._waiting)
        self._bench: set[str] = set()
        self._ready = [box for box, its in self._waiting.items() if not its]

    def order(self) -> tuple[int, int, tuple[str, ...]]:
        """Most on the bench at once, how many are set aside, and which."""
        found: list[str] = []
        most = 0
        while self._stay:
            if self._ready:
                self._leave(self._ready.pop())
                continue
            box = min(self._choice(), key=lambda b: (*self._promise(b), b))
            found.append(box)
            self._bench.add(box)
            most = max(most, len(self._bench))
            self._leave(box)
        return most, len(found), tuple(found)

    def _choice(self) -> set[str]:
        if not self._narrow:
            return self._stay
        nearest = min(self._stay | self._bench, key=lambda b: (len(self._waiting[b]), b not in self._bench, b))
        return self._waiting[nearest]

    def _leave(self, box: str) -> None:
        if box not in self._stay:
            return
        self._stay.remove(box)
        for other in self._asked[box]:
            waiting = self._waiting[other]
            waiting.discard(box)
            if not waiting:
                self._bench.discard(other)
                if other in self._stay:
                    self._ready.append(other)

    def _promise(self, box: str) -> tuple[int, int, int]:
        """What setting a box aside promises, best first: it must go anyway; boxes that could then move; that ask."""
        at_once = sum(self._waiting[other] == {box} for other in self._asked[box] if other != box)
        return -(box in self._waiting[box]), -at_once, -len(self._asked[box])
