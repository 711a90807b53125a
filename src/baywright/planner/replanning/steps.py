"""The steps of a change in words, in an order that a person can follow.

Laws: what leaves for good is taken out first, after what must be cut; a runner pair moves only once what stands there
is out; a new drawer hangs before its box comes; a box stands in a drawer or on the bench at every moment, and on the
bench only where boxes wait for each other in a circle. Bays and rows are told from 1.
"""

from collections.abc import Mapping, Sequence

from baywright.model.arrangement import Placement
from baywright.model.difference import Place, Step, StepKind
from baywright.planner.replanning.course import order_of
from baywright.planner.replanning.tasks import Task, TaskKind, tasks_between
from baywright.planner.replanning.wall import Spot, Wall

_ORDINALS = ("first", "second", "third")


def preparations(new: Sequence[Spot], bays: Sequence[int]) -> tuple[Step, ...]:
    """What comes before everything else: cutting what new drawers are made of, and putting up bays."""
    found = []
    if new:
        what = "a new drawer" if len(new) == 1 else f"{len(new)} new drawers"
        found.append(Step(kind=StepKind.CUT, text=f"Cut and join the parts of {what}."))
    if bays:
        numbers = [str(bay + 1) for bay in bays]
        which = f"bay {numbers[0]}" if len(bays) == 1 else f"bays {', '.join(numbers[:-1])} and {numbers[-1]}"
        found.append(Step(kind=StepKind.PUT_UP, text=f"Put up {which}."))
    return tuple(found)


def steps(
    there: Wall,
    then: Wall,
    runners: Mapping[Spot, Spot],
    new: tuple[Spot, ...],
    idle: tuple[Spot, ...],
    labels: Mapping[str, str],
) -> tuple[Step, ...]:
    """The steps from one wall to another; `labels` are the names of all boxes by id."""
    told = _Told(then, labels)
    found: list[Step] = []
    aside: set[str] = set()
    for task, is_set_aside in order_of(tasks_between(there, then, runners, new, idle)):
        if is_set_aside:
            aside.add(task.box_id)
            found.append(told.set_aside(task))
        elif task.kind is TaskKind.BOX and task.box_id in aside:
            found.append(told.from_bench(task))
        elif task.kind is not TaskKind.BOX or task.before != task.after:
            found.append(told.done(task))
    return tuple(found)


class _Told:
    """Tasks as steps."""

    def __init__(self, then: Wall, labels: Mapping[str, str]) -> None:
        self._labels = labels
        self._then = then
        self._members = then.contents

    def set_aside(self, task: Task) -> Step:
        text = f"Set {self._name(task)} from {_where(task.before)} aside on the bench."
        return Step(kind=StepKind.SET_ASIDE, text=text, box_id=task.box_id, before=_place(task.before))

    def from_bench(self, task: Task) -> Step:
        text = f"Put {self._name(task)} from the bench into {self._goal(task)}."
        return Step(kind=StepKind.PUT, text=text, box_id=task.box_id, after=_place(task.after))

    def done(self, task: Task) -> Step:
        """The step of a task that is done at its turn."""
        kind, text = self._words(task)
        return Step(
            kind=kind, text=text, box_id=task.box_id, before=_place(task.before), after=_place(task.after)
        )  # fmt: skip

    def _words(self, task: Task) -> tuple[StepKind, str]:
        old, new = _where(task.before), _where(task.after)
        match task.kind:
            case TaskKind.GONE_BOX:
                return StepKind.TAKE_OUT, f"Take {self._name(task)} out of {old}; it leaves the run."
            case TaskKind.BOX:
                return StepKind.PUT, f"Move {self._name(task)} from {old} to {self._goal(task)}."
            case TaskKind.NEW_BOX:
                return StepKind.PUT, f"Put {self._name(task)} into {self._goal(task)}."
            case TaskKind.RUNNERS:
                return StepKind.SCREW, f"Take the drawer and its runners off {old} and screw them on at {new}."
            case TaskKind.LAY_OFF:
                return StepKind.SCREW, f"Take the drawer and its runners off {old} and keep them at hand."
            case TaskKind.LAID_ON:
                return StepKind.SCREW, f"Screw the runners that are at hand on at {new} and hang their drawer."
            case TaskKind.NEW_DRAWER:
                return StepKind.HANG, f"Screw new runners on at {new} and hang a new drawer."
            case TaskKind.IDLE_DRAWER:
                return StepKind.REMOVE, f"Take the drawer and its runners off {old}; they are no longer needed there."

    def _name(self, task: Task) -> str:
        return f"“{self._labels[task.box_id]}”"

    def _goal(self, task: Task) -> str:
        """Where a box goes, with its place in a drawer that it shares."""
        if task.after is None:
            return ""
        members = [self._then.boxes[box_id] for box_id in self._members[task.after]]
        return _where(task.after) + _place_within(self._then.boxes[task.box_id], members)


def _place_within(placement: Placement, members: list[Placement]) -> str:
    if len(members) == 1:
        return ""
    if any(other.behind for other in members):
        return f", {_ORDINALS[placement.behind]} from the front"
    return f", {_ORDINALS[placement.abreast]} from the left"


def _where(spot: Spot | None) -> str:
    return "" if spot is None else f"bay {spot[0] + 1} row {spot[1] + 1}"


def _place(spot: Spot | None) -> Place | None:
    return None if spot is None else Place(bay=spot[0], row=spot[1])
