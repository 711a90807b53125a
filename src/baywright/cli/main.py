"""The program without a window: reads the command line, does the job, answers with an exit code.

Laws: never a traceback for bad input; results on standard output, messages on standard error.
"""

import argparse
import sys
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path

from baywright.app.files import FileTrouble
from baywright.app.result import complete_result, result_schema
from baywright.app.session import Session
from baywright.cli.importing import import_inventory
from baywright.cli.parser import make_parser
from baywright.cli.text import conflicts_text, plan_text, schedule_csv, schedule_text
from baywright.model.plan import PlanStatus

DONE, ANSWER_IS_NO, CANNOT_READ, CANNOT_WRITE, INTERRUPTED = 0, 1, 3, 4, 130


@dataclass(frozen=True)
class Surroundings:
    """What the command line needs from where the program is put together."""

    open_window: Callable[[Path | None], int]
    demo_file: Callable[[], Path]


class _Ended(Exception):
    """The job cannot go on; the message goes to standard error."""

    def __init__(self, code: int, message: str) -> None:
        super().__init__(message)
        self.code = code


def run(arguments: Sequence[str], surroundings: Surroundings) -> int:
    """Does what the arguments ask for; returns the exit code (see `baywright --help`)."""
    options = make_parser().parse_args(arguments)
    try:
        return _JOBS[options.command or "open"](options, surroundings)
    except _Ended as end:
        print(end, file=sys.stderr)
        return end.code
    except KeyboardInterrupt:
        print("Stopped.", file=sys.stderr)
        return INTERRUPTED


def opened(path: Path) -> Session:
    """A session on a project file; ends the job with a message where it cannot be read."""
    session = Session(synchronous=True)
    try:
        session.open(path)
    except FileTrouble as trouble:
        raise _Ended(CANNOT_READ, str(trouble)) from None
    return session


def _write(action: Callable[[], None]) -> None:
    try:
        action()
    except FileTrouble as trouble:
        raise _Ended(CANNOT_WRITE, str(trouble)) from None


def _planned(session: Session) -> None:
    """Plans; ends the job with the reasons where no plan keeps every limit."""
    session.request_plan()
    if session.plan is None or session.plan.arrangement is None:
        raise _Ended(ANSWER_IS_NO, plan_text(session.plan) if session.plan else "No plan was found.")


def _arranged(path: Path) -> Session:
    session = opened(path)
    if not session.project.arrangement.placements:
        _planned(session)
    return session


def _open(options: argparse.Namespace, surroundings: Surroundings) -> int:
    demo = getattr(options, "demo", False)
    return surroundings.open_window(surroundings.demo_file() if demo else getattr(options, "file", None))


def _plan(options: argparse.Namespace, _: Surroundings) -> int:
    session = opened(options.file)
    session.request_plan()
    result = session.plan
    if result is None:
        raise _Ended(ANSWER_IS_NO, "No plan was found.")
    print(plan_text(result))
    if session.manufacture is not None and result.arrangement is not None:
        print(schedule_text(session.manufacture.schedule, session.project.unit))
        if options.save is not None:
            target = options.file if options.save == Path() else options.save
            _write(lambda: session.save_as(target))
            print(f"Saved in {target}", file=sys.stderr)
    return ANSWER_IS_NO if result.status in (PlanStatus.IMPOSSIBLE, PlanStatus.STOPPED) else DONE


def _workbook(options: argparse.Namespace, surroundings: Surroundings) -> int:
    if options.demo:
        source, folder = surroundings.demo_file(), Path.cwd()
        session = opened(source)
        _planned(session)
    else:
        source, folder = options.file, options.file.parent
        session = _arranged(source)
    target: Path = options.output or folder
    if target.is_dir():
        target = target / f"{source.stem}.xlsx"
    _write(lambda: session.export_workbook(target))
    print(target.resolve())
    return DONE


def _schedule(options: argparse.Namespace, _: Surroundings) -> int:
    session = _arranged(options.file)
    lines = session.manufacture.schedule if session.manufacture else ()
    print(schedule_csv(lines) if options.csv else schedule_text(lines, session.project.unit))
    return DONE


def _result(options: argparse.Namespace, _: Surroundings) -> int:
    session = opened(options.file)
    if options.plan or not session.project.arrangement.placements:
        session.request_plan()
    text = complete_result(session).model_dump_json(indent=2)
    if options.output is None:
        print(text)
    else:
        _write(lambda: session.write_text(options.output, text + "\n"))
    is_impossible = session.plan is not None and session.plan.status is PlanStatus.IMPOSSIBLE
    return ANSWER_IS_NO if is_impossible else DONE


def _result_schema(_: argparse.Namespace, __: Surroundings) -> int:
    print(result_schema())
    return DONE


def _check(options: argparse.Namespace, _: Surroundings) -> int:
    session = opened(options.file)
    report = session.report
    if report.unplaced:
        labels = ", ".join(f"“{session.project.box(box_id).label}”" for box_id in report.unplaced[:5])
        more = f" and {len(report.unplaced) - 5} more" if len(report.unplaced) > 5 else ""
        print(f"Without a drawer: {labels}{more}.")
    if report.conflicts:
        print(conflicts_text(report.conflicts))
    if report.conflicts or report.unplaced:
        return ANSWER_IS_NO
    print(f"Nothing is wrong: {report.drawers} drawers, {report.rows_used} rows used, {report.rows_free} free.")
    return DONE


def _import(options: argparse.Namespace, _: Surroundings) -> int:
    session = opened(options.file)
    try:
        changed = import_inventory(session, options)
    except FileTrouble as trouble:
        raise _Ended(CANNOT_READ, str(trouble)) from None
    if changed:
        _write(session.save)
    return DONE


_JOBS: dict[str, Callable[[argparse.Namespace, Surroundings], int]] = {
    "open": _open,
    "plan": _plan,
    "workbook": _workbook,
    "schedule": _schedule,
    "result": _result,
    "result-schema": _result_schema,
    "check": _check,
    "import": _import,
}
