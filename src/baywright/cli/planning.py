"""Planning on the command line, so that it can be stopped from the keyboard at any moment.

Law: the search runs in a thread of its own while this one waits, for a solver's call is deaf to the keyboard; a search
that was stopped from the keyboard changes nothing.
"""

import queue
from collections.abc import Callable
from pathlib import Path

from baywright.app.notices import Notice, OptionsFailed, OptionsFound, PlanningEnded, PlanningFailed
from baywright.app.session import Session
from baywright.model.option import Option
from baywright.model.plan import PlanResult

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
        answers: list[PlanResult | str] = []

        def listen(notice: Notice) -> None:
            match notice:
                case PlanningEnded(result=result):
                    answers.append(result)
                case PlanningFailed(message=message):
                    answers.append(message)

        end_listening = self.session.subscribe(listen)
        try:
            if keep:
                self.session.request_replan()
            else:
                self.session.request_plan()
            while not answers:
                self._take_call()
        finally:
            end_listening()
            self.session.close()
        if isinstance(answers[0], str):
            raise PlannerTrouble(answers[0])
        return answers[0]

    def options(self) -> tuple[Option, ...]:
        """The shapes that the run could have. Raises `PlannerTrouble`."""
        answers: list[tuple[Option, ...] | str] = []

        def listen(notice: Notice) -> None:
            match notice:
                case OptionsFound(options=found):
                    answers.append(found)
                case OptionsFailed(message=message):
                    answers.append(message)

        end_listening = self.session.subscribe(listen)
        try:
            self.session.options.request()
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
