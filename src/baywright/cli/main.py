"""The program without a window: reads the command line, does the job, answers with an exit code.

Laws: never a traceback; results on standard output, messages on standard error; what is to be saved is saved before
anything is printed, so that a reader who goes away cannot prevent it.
"""

import argparse
import io
import os
import sys
import traceback
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path

from baywright.app.commands import EditRefused, SetField
from baywright.app.edits.built import ForgetBuilt, MarkBuilt
from baywright.app.edits.repair import ApplyRepair
from baywright.app.edits.rests import KeepRests
from baywright.app.files import FileTrouble
from baywright.app.papers import Paper, write_paper
from baywright.app.proposal import work_of
from baywright.app.refusal import refusal
from baywright.app.result import complete_result, result_schema
from baywright.app.session import Session
from baywright.cli.catalogue import import_catalogue
from baywright.cli.change import built_text, difference_text
from baywright.cli.cutting import NOT_KEPT, cutting_text, has_left_over
from baywright.cli.importing import import_inventory
from baywright.cli.matching import MatchTrouble
from baywright.cli.options import NOTHING_FITS, options_text
from baywright.cli.parser import make_parser
from baywright.cli.places import BoxTrouble, box_meant, places_text, refusals_text
from baywright.cli.planning import Desk, PlannerTrouble
from baywright.cli.refusal import clash_text, conflicts_text
from baywright.cli.safety import findings_text, is_broken
from baywright.cli.text import caution_text, plan_text, schedule_csv, schedule_text
from baywright.model.inventory import BoxStatus
from baywright.model.plan import PlanResult, PlanStatus

DONE, ANSWER_IS_NO, CANNOT_UNDERSTAND, CANNOT_READ, CANNOT_WRITE, DEFECT = 0, 1, 2, 3, 4, 5
INTERRUPTED, READER_GONE = 130, 141


@dataclass(frozen=True)
class Surroundings:
    """What the command line needs from where the program is put together."""

    open_window: Callable[[Path | None, bool], int]
    """Opens the window on a file; without one on a copy of the demo (True) or on a new project."""
    demo_file: Callable[[], Path]


class _Ended(Exception):
    """The job cannot go on; the message goes to standard error."""

    def __init__(self, code: int, message: str) -> None:
        super().__init__(message)
        self.code = code


def run(arguments: Sequence[str], surroundings: Surroundings) -> int:
    """Does what the arguments ask for; returns the exit code (see `baywright --help`)."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="replace")  # a terminal that knows no “×” shows “?” instead of ending the job
    options = make_parser().parse_args(arguments)
    try:
        return _JOBS[options.command or "open"](options, surroundings)
    except _Ended as end:
        return _end(end.code, str(end))
    except KeyboardInterrupt:
        return _end(INTERRUPTED, "Stopped.")
    except BrokenPipeError:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())  # or Python would complain at its end
        return READER_GONE
    except Exception as error:  # the last guard: a defect must end with words and a code of its own
        place = traceback.extract_tb(error.__traceback__)[-1]
        where = f"{Path(place.filename).name}, line {place.lineno}"
        return _end(DEFECT, f"This is a defect of the program: {type(error).__name__}: {error} ({where}).")


def _end(code: int, message: str) -> int:
    print(message, file=sys.stderr)
    return code


def _say(text: str) -> None:
    """Prints a result; ends the job where the output cannot be written (a full disk)."""
    try:
        print(text, flush=True)
    except BrokenPipeError:
        raise
    except OSError as trouble:
        raise _Ended(CANNOT_WRITE, f"The output cannot be written: {trouble.strerror}.") from None


def _opened(path: Path) -> Desk:
    """A session on a project file; ends the job with a message where it cannot be read."""
    try:
        return Desk(path)
    except FileTrouble as trouble:
        raise _Ended(CANNOT_READ, str(trouble)) from None


def _write(action: Callable[[], None]) -> None:
    try:
        action()
    except FileTrouble as trouble:
        raise _Ended(CANNOT_WRITE, str(trouble)) from None


def _answer(desk: Desk, *, keep: bool = False) -> PlanResult:
    """The planner's answer to the session's document, with `keep` a re-plan; a plan that is found is taken in."""
    try:
        return desk.plan(keep=keep)
    except PlannerTrouble as trouble:
        raise _Ended(DEFECT, str(trouble)) from None


def _code_of(result: PlanResult) -> int:
    return ANSWER_IS_NO if result.status in (PlanStatus.IMPOSSIBLE, PlanStatus.STOPPED) else DONE


def _arranged(path: Path, anew: bool = False) -> Desk:
    """A desk with an arrangement; ends the job with the reasons where there is none and no plan can be found."""
    desk = _opened(path)
    if anew or not desk.session.project.arrangement.placements:
        result = _answer(desk)
        if result.arrangement is None:
            raise _Ended(ANSWER_IS_NO, plan_text(result))
    return desk


def _caution(session: Session) -> None:
    """Tells on standard error that what was made comes from an arrangement with faults, where it does."""
    if told := caution_text(session.report):
        print(told, file=sys.stderr)


def _open(options: argparse.Namespace, surroundings: Surroundings) -> int:
    try:
        return surroundings.open_window(getattr(options, "file", None), getattr(options, "demo", False))
    except ImportError as trouble:
        raise _Ended(
            CANNOT_READ,
            f"The window cannot be opened, for a part of the system is missing: {trouble}. “installer/start” sets up "
            "what is missing; the other sub-commands work without a window (baywright --help).",
        ) from None


def _plan(options: argparse.Namespace, _: Surroundings) -> int:
    desk = _opened(options.file)
    session, result = desk.session, _answer(desk)
    if options.repair is not None and result.status is not PlanStatus.IMPOSSIBLE:
        print("No change was made: there is a plan without one.", file=sys.stderr)
    elif options.repair is not None:
        _say(plan_text(result))
        result = _repaired(desk, result, options.repair)
    is_found = session.manufacture is not None and result.arrangement is not None
    if is_found:
        _save(session, options)
    _say(plan_text(result))
    if session.manufacture is not None and is_found:
        _say(schedule_text(session.manufacture.schedule, session.project.unit))
    return _code_of(result)


def _repaired(desk: Desk, refused: PlanResult, number: int) -> PlanResult:
    """The answer once the repair of that number, from 1, is made; ends the job where there is none of that number."""
    if not 1 <= number <= len(refused.repairs):
        offered = f"they are numbered 1 to {len(refused.repairs)}" if refused.repairs else "none was found"
        raise _Ended(CANNOT_UNDERSTAND, f"There is no change number {number}: {offered}.")
    repair = refused.repairs[number - 1]
    desk.session.do(ApplyRepair(repair))
    _say(f"Changed: {repair.text}")
    return _answer(desk)


def _save(session: Session, options: argparse.Namespace) -> None:
    """Saves what was planned, where that was asked for."""
    if options.save is not None:
        target = options.file if options.save == Path() else options.save
        _write(lambda: session.save_as(target))
        print(f"Saved in {target}", file=sys.stderr)


def _replan(options: argparse.Namespace, _: Surroundings) -> int:
    desk = _opened(options.file)
    session = desk.session
    before = session.project
    result = _answer(desk, keep=True)
    if result.arrangement is not None:
        _save(session, options)
    _say(plan_text(result))
    if result.arrangement is not None:
        standing = before if before.built is None else before.built.project
        _say(difference_text(work_of(before, session.project), standing, session.project))
    return _code_of(result)


def _where(options: argparse.Namespace, _: Surroundings) -> int:
    session = _opened(options.file).session
    project = session.project
    try:
        box = box_meant(project, options.box)
    except BoxTrouble as trouble:
        raise _Ended(CANNOT_UNDERSTAND, str(trouble)) from None
    if box.status is BoxStatus.ELSEWHERE:
        raise _Ended(ANSWER_IS_NO, f"“{box.label}” is kept elsewhere and gets no drawer here.")
    if not project.arrangement.bay_count:
        raise _Ended(ANSWER_IS_NO, "Nothing is arranged yet: plan the run first (baywright plan FILE --save).")
    places = session.destinations(box.id)
    _say(places_text(box, project.arrangement.placement_of(box.id), places, max(1, options.most)))
    if options.why_not and (refused := refusals_text(places)):
        _say(refused)
    return DONE if any(not place.conflicts for place in places) else ANSWER_IS_NO


def _built(options: argparse.Namespace, _: Surroundings) -> int:
    session = _opened(options.file).session
    try:
        if options.forget:
            session.do(ForgetBuilt())
        elif options.all or options.bays:
            bays = range(1, session.project.arrangement.bay_count + 1) if options.all else options.bays
            session.do(MarkBuilt(tuple(number - 1 for number in bays)))
    except EditRefused as refused:
        raise _Ended(ANSWER_IS_NO, refused.message) from None
    if session.is_modified:
        _write(session.save)
        print(f"Saved in {options.file}", file=sys.stderr)
    _say(built_text(session.project, session.difference))
    return DONE


def _options(options: argparse.Namespace, _: Surroundings) -> int:
    desk = _opened(options.file)
    session = desk.session
    try:
        found = desk.options()
    except PlannerTrouble as trouble:
        raise _Ended(DEFECT, str(trouble)) from None
    if not found:
        _say(NOTHING_FITS if session.project.boxes_to_place else "There are no boxes to plan.")
        return ANSWER_IS_NO if session.project.boxes_to_place else DONE
    number = options.use
    if number is None:
        if options.save is not None:
            raise _Ended(CANNOT_UNDERSTAND, "Say with --use which option is to be saved.")
        _say(options_text(found, session.project.unit))
        return DONE
    if not 1 <= number <= len(found):
        raise _Ended(CANNOT_UNDERSTAND, f"There is no option {number}; there are options 1 to {len(found)}.")
    session.choose_option(found[number - 1])
    _save(session, options)
    _say(options_text(found[number - 1 : number], session.project.unit, number))
    if session.manufacture is not None:
        _say(schedule_text(session.manufacture.schedule, session.project.unit))
    return DONE


def _workbook(options: argparse.Namespace, surroundings: Surroundings) -> int:
    if options.demo:
        source, folder = surroundings.demo_file(), Path.cwd()
        session = _arranged(source, anew=True).session
    else:
        source, folder = options.file, options.file.parent
        session = _arranged(source).session
    target: Path = options.output or folder
    if target.is_dir():
        target = target / f"{source.stem}.xlsx"
    _write(lambda: session.export_workbook(target))
    _say(str(target.resolve()))
    _caution(session)
    return DONE


def _schedule(options: argparse.Namespace, _: Surroundings) -> int:
    session = _arranged(options.file).session
    lines = session.manufacture.schedule if session.manufacture else ()
    _say(schedule_csv(lines) if options.csv else schedule_text(lines, session.project.unit))
    _caution(session)
    return DONE


def _cut(options: argparse.Namespace, _: Surroundings) -> int:
    desk = _arranged(options.file)
    session = desk.session
    if options.stages is not None:
        session.do(SetField("stock.rules.stages", options.stages))
    try:
        plan, cost = desk.cutting()
        if options.keep_rests is not None:
            session.do(KeepRests(plan, tuple(options.keep_rests) or None))
    except PlannerTrouble as trouble:
        raise _Ended(DEFECT, str(trouble)) from None
    except EditRefused as refused:
        raise _Ended(ANSWER_IS_NO, refused.message) from None
    _save(session, options)
    _say(plan.model_dump_json(indent=2) if options.json else cutting_text(session.project, plan, cost))
    if options.keep_rests is not None and options.save is None:
        print(NOT_KEPT, file=sys.stderr)
    _caution(session)
    return ANSWER_IS_NO if has_left_over(plan) else DONE


def _drawings(options: argparse.Namespace, _: Surroundings) -> int:
    session, paper = _arranged(options.file).session, Paper[options.paper.upper()]
    target: Path = options.out or options.file.with_name(f"{options.file.stem} {paper.value}.pdf")
    _write(lambda: write_paper(target, paper, session.project))
    _say(str(target.resolve()))
    _caution(session)
    return DONE


def _result(options: argparse.Namespace, _: Surroundings) -> int:
    desk = _opened(options.file)
    session = desk.session
    if options.plan or not session.project.arrangement.placements:
        _answer(desk)
    text = complete_result(session).model_dump_json(indent=2)
    if options.output is None:
        _say(text)
    else:
        _write(lambda: session.write_text(options.output, text + "\n"))
    return DONE if session.plan is None else _code_of(session.plan)


def _result_schema(_: argparse.Namespace, __: Surroundings) -> int:
    _say(result_schema())
    return DONE


def _check(options: argparse.Namespace, _: Surroundings) -> int:
    session = _opened(options.file).session
    report = session.report
    if report.unplaced:
        labels = ", ".join(f"“{session.project.box(box_id).label}”" for box_id in report.unplaced[:5])
        more = f" and {len(report.unplaced) - 5} more" if len(report.unplaced) > 5 else ""
        _say(f"Without a drawer: {labels}{more}.")
    if report.conflicts:
        _say(conflicts_text(report.conflicts))
    if (report.conflicts or report.unplaced) and (refused := refusal(session.project)) is not None:
        _say("No plan keeps every limit.")
        _say(clash_text(refused))
    if report.conflicts or report.unplaced:
        return ANSWER_IS_NO
    _say(f"Nothing is wrong: {report.drawers} drawers, {report.rows_used} rows used, {report.rows_free} free.")
    return DONE


def _safety(options: argparse.Namespace, _: Surroundings) -> int:
    findings = _opened(options.file).session.derived.findings
    if not findings:
        _say("Nothing is arranged yet, so there is nothing to check: plan the project first.")
        return ANSWER_IS_NO
    _say(findings_text(findings))
    return ANSWER_IS_NO if is_broken(findings) else DONE


def _import(options: argparse.Namespace, _: Surroundings) -> int:
    session = _opened(options.file).session
    try:
        read = import_catalogue if options.command == "catalogue" else import_inventory
        preview, text = read(session, options)
    except FileTrouble as trouble:
        raise _Ended(CANNOT_READ, str(trouble)) from None
    except MatchTrouble as trouble:
        raise _Ended(CANNOT_UNDERSTAND, str(trouble)) from None
    if session.is_modified:
        _write(session.save)
    _say(text)
    if options.accept and preview.count:
        print(f"Taken over and saved in {options.file}", file=sys.stderr)
    elif preview.count:
        print("Nothing is taken over; with --accept the accepted rows are.", file=sys.stderr)
    else:
        print("There is nothing to take over.", file=sys.stderr)
    return ANSWER_IS_NO if preview.refused else DONE


_JOBS: dict[str, Callable[[argparse.Namespace, Surroundings], int]] = {
    "open": _open,
    "plan": _plan,
    "replan": _replan,
    "where": _where,
    "built": _built,
    "options": _options,
    "workbook": _workbook,
    "schedule": _schedule,
    "cut": _cut,
    "drawings": _drawings,
    "result": _result,
    "result-schema": _result_schema,
    "check": _check,
    "safety": _safety,
    "import": _import,
    "catalogue": _import,
}
