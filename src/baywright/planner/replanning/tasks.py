"""What must be done to come from one wall to another, task by task, and what each task waits for.

Laws: a task is one box, one runner pair or one new drawer; it waits for others to have *left* their old place, or for
its drawer to have *arrived*; a drawer leaves only empty; nothing goes where something that leaves still is. Drawers
alone never wait in a circle: where they would, one is taken off first and screwed on later.
"""

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from enum import IntEnum

from baywright.planner.replanning.wall import Spot, Wall


class TaskKind(IntEnum):
    """What a task is about; of several that can be done, the first kind is done first."""

    GONE_BOX = 0
    BOX = 1
    RUNNERS = 2
    LAY_OFF = 3
    """Runners and drawer taken off, to be screwed on later."""
    LAID_ON = 4
    NEW_DRAWER = 5
    NEW_BOX = 6
    IDLE_DRAWER = 7


@dataclass
class Task:
    """A task, and the numbers of the tasks that it waits for."""

    kind: TaskKind
    before: Spot | None
    after: Spot | None
    box_id: str = ""
    left: set[int] = field(default_factory=set)
    """Those that must have left their old place."""
    arrived: set[int] = field(default_factory=set)
    """Those that must have come to their new place."""

    @property
    def is_box(self) -> bool:
        """Whether it is about a box, not about a drawer."""
        return bool(self.box_id)


def tasks_between(
    there: Wall, then: Wall, runners: Mapping[Spot, Spot], new: Iterable[Spot], idle: Iterable[Spot]
) -> list[Task]:
    """The tasks that lead from `there` to `then`: runner pairs from old to new place, new drawers, idle ones, boxes."""
    tasks = [Task(TaskKind.RUNNERS, old, place) for old, place in sorted(runners.items())]
    tasks += [Task(TaskKind.NEW_DRAWER, None, place) for place in sorted(new)]
    tasks += [Task(TaskKind.IDLE_DRAWER, place, None) for place in sorted(idle)]
    going = {task.before: i for i, task in enumerate(tasks) if task.before is not None}
    coming = {task.after: i for i, task in enumerate(tasks) if task.after is not None}
    tasks += _boxes(there, then, going.keys() | coming.keys())
    _wait_for_room(tasks, there, then)
    _share_meanwhile(tasks, there, then, going.keys() | coming.keys())
    for i, task in enumerate(tasks):
        if task.is_box and task.before in going:
            tasks[going[task.before]].left.add(i)
        if task.is_box and task.after in coming:
            task.arrived.add(coming[task.after])
    _break_circles_of_drawers(tasks)
    return tasks


def _boxes(there: Wall, then: Wall, changing: Iterable[Spot]) -> list[Task]:
    changed = set(changing)
    found = []
    for box_id in [*there.boxes, *(box_id for box_id in then.boxes if box_id not in there.boxes)]:
        before, after = _spot(there, box_id), _spot(then, box_id)
        if before is None:
            found.append(Task(TaskKind.NEW_BOX, None, after, box_id))
        elif after is None:
            found.append(Task(TaskKind.GONE_BOX, before, None, box_id))
        elif before != after or after in changed or there.rows[box_id] != then.rows[box_id]:
            found.append(Task(TaskKind.BOX, before, after, box_id))
    return found


def _spot(wall: Wall, box_id: str) -> Spot | None:
    placement = wall.boxes.get(box_id)
    return None if placement is None else (placement.bay, placement.row)


def _wait_for_room(tasks: list[Task], there: Wall, then: Wall) -> None:
    leaving: dict[int, list[tuple[int, int, int]]] = defaultdict(list)
    for i, task in enumerate(tasks):
        if task.before is not None:
            bay, row = task.before
            leaving[bay].append((row, row + _rows(task, there), i))
    for i, task in enumerate(tasks):
        if task.after is not None:
            bay, row = task.after
            end = row + _rows(task, then)
            task.left |= {j for first, last, j in leaving[bay] if first < end and row < last and j != i}


def _share_meanwhile(tasks: list[Task], there: Wall, then: Wall, changing: Iterable[Spot]) -> None:
    """Where a drawer that stays takes all boxes that ever stand in it, nobody waits for who leaves it."""
    changed, old, new = set(changing), there.contents, then.contents
    for task in tasks:
        spot = task.after
        if task.is_box and spot is not None and spot not in changed:
            in_it = {j for j in task.left if tasks[j].is_box and tasks[j].before == spot}
            if in_it and then.takes(spot, {*old.get(spot, ()), *new.get(spot, ())}):
                task.left -= in_it


def _rows(task: Task, wall: Wall) -> int:
    return wall.rows[task.box_id] if task.is_box else wall.empty_rows


def _break_circles_of_drawers(tasks: list[Task]) -> None:
    waiting = {
        i: {j for j in task.left if not tasks[j].is_box} for i, task in enumerate(tasks) if not task.is_box
    }  # fmt: skip
    while waiting:
        free = [i for i, its in waiting.items() if not its & waiting.keys()]
        for i in free:
            del waiting[i]
        if not free:
            i = _in_circle(waiting)
            _lay_off(tasks, i)
            del waiting[i]


def _in_circle(waiting: Mapping[int, set[int]]) -> int:
    """One of the tasks that wait in a circle, where every one waits for another."""
    i, met = min(waiting), set[int]()
    while i not in met:
        met.add(i)
        i = min(waiting[i] & waiting.keys())
    return i


def _lay_off(tasks: list[Task], i: int) -> None:
    """Makes two tasks of a runner pair's: taken off as soon as its drawer is empty, screwed on when there is room."""
    whole = tasks[i]
    on = Task(TaskKind.LAID_ON, None, whole.after, left={j for j in whole.left if tasks[j].before != whole.before})
    on.arrived.add(i)
    off = Task(TaskKind.LAY_OFF, whole.before, None)
    off.left = {j for j in whole.left if tasks[j].is_box and tasks[j].before == whole.before}
    tasks[i] = off
    tasks.append(on)
    for task in tasks:
        if i in task.arrived and task is not on:
            task.arrived.remove(i)
            task.arrived.add(len(tasks) - 1)
