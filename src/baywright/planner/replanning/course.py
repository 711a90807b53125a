"""The order of the tasks: whatever can be done is done; where boxes wait in a circle, one is set aside.

Laws: every task is done once and after all it waits for; a box is set aside only when nothing else can be done, and
comes from the bench as soon as its place is ready; a drawer that is no longer needed and in nobody's way stays for
the end. The order is the same on every run.
"""

from collections import defaultdict, deque
from collections.abc import Mapping
from heapq import heappop, heappush

from baywright.planner.replanning.bench import set_aside_in_order
from baywright.planner.replanning.tasks import Task, TaskKind

SET_ASIDE = True
"""Marks the event of a box that goes to the bench; the other events are tasks that are done."""


def order_of(tasks: list[Task]) -> list[tuple[Task, bool]]:
    """The tasks in an order that can be followed, with those boxes that are set aside before their own turn comes."""
    return _Course(tasks).run()


class _Course:
    def __init__(self, tasks: list[Task]) -> None:
        self._tasks = tasks
        self._asked_to_leave: dict[int, list[int]] = defaultdict(list)
        self._asked_to_arrive: dict[int, list[int]] = defaultdict(list)
        for i, task in enumerate(tasks):
            for j in task.left:
                self._asked_to_leave[j].append(i)
            for j in task.arrived:
                self._asked_to_arrive[j].append(i)
        self._open = [len(task.left) + len(task.arrived) for task in tasks]
        self._left: set[int] = set()
        self._done: set[int] = set()
        self._ready: list[tuple[tuple[int, ...], int]] = []
        self._to_set_aside: deque[int] = deque()
        self._events: list[tuple[Task, bool]] = []
        self._at_the_end = {
            i for i, task in enumerate(tasks) if task.kind is TaskKind.IDLE_DRAWER and not self._asked_to_leave[i]
        }

    def run(self) -> list[tuple[Task, bool]]:
        """The events in order."""
        for i in range(len(self._tasks)):
            if not self._open[i]:
                self._offer(i)
        while len(self._done) + len(self._at_the_end) < len(self._tasks):
            if self._ready:
                self._do(heappop(self._ready)[1])
            else:
                self._set_one_aside()
        return [*self._events, *((self._tasks[i], False) for i in sorted(self._at_the_end))]

    def _offer(self, i: int) -> None:
        if i in self._at_the_end:
            return
        task = self._tasks[i]
        place = task.after or task.before or (0, 0)
        rank = -1 if i in self._left else int(task.kind)  # what is on the bench goes before everything else
        heappush(self._ready, ((rank, *place), i))

    def _do(self, i: int) -> None:
        self._done.add(i)
        self._events.append((self._tasks[i], False))
        self._leave(i)
        self._meet(self._asked_to_arrive[i])

    def _leave(self, i: int) -> None:
        if i not in self._left:
            self._left.add(i)
            self._meet(self._asked_to_leave[i])

    def _meet(self, waiting: list[int]) -> None:
        for j in waiting:
            self._open[j] -= 1
            if not self._open[j]:
                self._offer(j)

    def _set_one_aside(self) -> None:
        if not self._to_set_aside:
            self._to_set_aside.extend(self._next_to_set_aside())
        i = self._to_set_aside.popleft()
        self._events.append((self._tasks[i], SET_ASIDE))
        self._leave(i)

    # What to set aside

    def _next_to_set_aside(self) -> list[int]:
        """The boxes to set aside in all circles that wait for no other, one circle after another."""
        needs = self._needs()
        found: list[int] = []
        for circle in _circles(needs):
            if all(needs[i] <= circle for i in circle):
                order = set_aside_in_order({str(i): frozenset(map(str, needs[i])) for i in sorted(circle)})
                found += map(int, order)
        if not found:
            raise RuntimeError("The steps of a change wait for each other without a box to set aside.")
        return found

    def _needs(self) -> dict[int, set[int]]:
        """For each box that has not left the boxes that must leave before it, also where only its drawer waits."""
        through: dict[int, set[int]] = {}
        return {
            i: self._boxes_before(i, through)
            for i, task in enumerate(self._tasks)
            if task.kind is TaskKind.BOX and i not in self._left
        }

    def _boxes_before(self, i: int, through: dict[int, set[int]]) -> set[int]:
        task = self._tasks[i]
        found: set[int] = set()
        for j in (task.left - self._left) | (task.arrived - self._done):
            if self._tasks[j].is_box:
                found.add(j)
            else:
                if j not in through:
                    through[j] = self._boxes_before(j, through)  # drawers never wait in a circle, so this ends
                found |= through[j]
        return found


def _circles(needs: Mapping[int, set[int]]) -> list[set[int]]:
    """The sets of boxes that all wait for one another (strongly connected components), smallest number first.

    After R. Tarjan, Depth-first search and linear graph algorithms, SIAM Journal on Computing 1 (1972), without
    recursion.
    """
    index: dict[int, int] = {}
    low: dict[int, int] = {}
    stack: list[int] = []
    on_stack: set[int] = set()
    found = []
    for root in needs:
        if root in index:
            continue
        calls = [(root, iter(sorted(needs[root])))]
        index[root] = low[root] = len(index)
        stack.append(root)
        on_stack.add(root)
        while calls:
            node, others = calls[-1]
            for other in others:
                if other not in index:
                    index[other] = low[other] = len(index)
                    stack.append(other)
                    on_stack.add(other)
                    calls.append((other, iter(sorted(needs[other]))))
                    break
                if other in on_stack:
                    low[node] = min(low[node], index[other])
            else:
                calls.pop()
                if calls:
                    low[calls[-1][0]] = min(low[calls[-1][0]], low[node])
                if low[node] == index[node]:
                    circle: set[int] = set()
                    while node not in circle:
                        circle.add(stack.pop())
                    on_stack -= circle
                    found.append(circle)
    return sorted(found, key=min)
