"""Planning on the command line, so that it can be stopped from the keyboard at any moment.

Law: the search runs in a thread of its own while this one waits, for a solver's call is deaf to the keyboard; a search
that was stopped from the keyboard changes nothing.
"""

import queue
from collections.abc import Callable
from pathlib import Path
from typing import TypeVar

from baywright.app.notices import (
    CuttingEnded,
    CuttingFailed,
    Notice,
    OptionsFailed,
    OptionsFound,
    PlanningEnded,
    PlanningFailed,
)
from baywright.app.session import Session
from baywright.model.cost import Cost
from baywright.model.cutting import CuttingPlan
from baywright.model.option import Option
from baywright.model.plan import PlanResult

_Answer = TypeVar("_Answer")

_WAIT_SECONDS = 0.1


class PlannerTrouble(Exception):
    """The search broke off on a defect; the message is the session's."""


class Desk:
    """A session on one project file, and the calls that its search hands back to this thread."""

    def __init__(self, path: Path) -> None:
        self._calls: queue.SimpleQueue[Callable[[], None]] = queue.SimpleQueue()
        self.session = Session(deliver=self._calls.put)
        self.session.open(path)

    def plan(self, *, keep: bool = False) -> PlanResult:
        """The planner's answer, with `keep` for the fewest changes; a plan that is found is taken into the session.
        Raises `PlannerTrouble`.
        """

        def read(notice: Notice) -> PlanResult | str | None:
            match notice:
                case PlanningEnded(result=result):
                    return result
                case PlanningFailed(message=message):
                    return message
            return None

        return self._answer(self.session.request_replan if keep else self.session.request_plan, read)

    def options(self) -> tuple[Option, ...]:
        """The shapes that the run could have. Raises `PlannerTrouble`."""

        def read(notice: Notice) -> tuple[Option, ...] | str | None:
            match notice:
                case OptionsFound(options=found):
                    return found
                case OptionsFailed(message=message):
                    return message
            return None

        return self._answer(self.session.options.request, read)

    def cutting(self) -> tuple[CuttingPlan, Cost | None]:
        """How the parts are cut, and what the run costs then. Raises `PlannerTrouble`."""

        def read(notice: Notice) -> tuple[CuttingPlan, Cost | None] | str | None:
            match notice:
                case CuttingEnded(plan=plan) if plan is not None:
                    return plan, self.session.cutting.cost
                case CuttingFailed(message=message):
                    return message
            return None

        return self._answer(self.session.cutting.request, read)

    def _answer(self, ask: Callable[[], None], read: Callable[[Notice], _Answer | str | None]) -> _Answer:
        """What a notice tells after `ask`, as `read` takes it out; a text is what went wrong. Ends the session."""
        answers: list[_Answer | str] = []

        def listen(notice: Notice) -> None:
            if (answer := read(notice)) is not None:
                answers.append(answer)

        end_listening = self.session.subscribe(listen)
        try:
            ask()
            while not answers:
                self._take_call()
        finally:
            end_listening()
            self.session.close()
        if isinstance(answers[0], str):
            raise PlannerTrouble(answers[0])
        return answers[0]

    def _take_call(self) -> None:
        """Runs the next call handed back; returns soon without one, so that the keyboard is heard."""
        try:
            call = self._calls.get(timeout=_WAIT_SECONDS)
        except queue.Empty:
            return
        call()
