"""What is said while planning goes on, and when it ends."""

from baywright.app.notices import ReplanEnded
from baywright.gui.messages import Tone
from baywright.gui.status import goal_words
from baywright.gui.wording import GOALS, count_words, place_words, words_for
from baywright.model.plan import PlanResult, PlanStatus
from baywright.model.project import Project

MOST_NAMED = 3
"""More boxes than this are counted, not named."""


def progress_words(result: PlanResult) -> str:
    """What is known so far, in one line."""
    if result.arrangement is None:
        return "Planning …"
    best = ", ".join(f"{words_for(goal.goal, GOALS)} {goal.value:,.6g}" for goal in result.goals)
    return f"Planning … best so far: {best}" if best else "Planning … a plan is known"


def ending_message(result: PlanResult, *, stale: bool, changed: bool) -> tuple[str, Tone]:
    """What to say when planning ended; `changed`: whether the document became another one by it."""
    if stale:
        return (
            "The project was changed while it was planned, so the answer was dropped. Plan again (F5).",
            Tone.CAUTION,
        )
    match result.status:
        case PlanStatus.PROVED_BEST:
            after = "Undo takes it back." if changed else "It is the one that was there; nothing was changed."
            return (_with_remarks(f"Planned, and proved that no plan is better. {after}", result), Tone.NOTE)
        case PlanStatus.FEASIBLE:
            words = f"Planned; that it is the best is not proved. {goal_words(result)}"
            return (_with_remarks(words, result), Tone.NOTE)
        case PlanStatus.IMPOSSIBLE:
            return ("No plan keeps every limit; “What's wrong” says which. Nothing was changed.", Tone.TROUBLE)
        case PlanStatus.STOPPED:
            if result.remarks:  # nobody stopped it: the planner says why it ended
                return (f"{' '.join(result.remarks)} Nothing was changed.", Tone.CAUTION)
            return ("Planning was stopped before a plan was found. Nothing was changed.", Tone.CAUTION)
        case PlanStatus.EMPTY:
            return ("There is nothing to plan yet: add boxes first.", Tone.CAUTION)


def replan_message(notice: ReplanEnded, project: Project) -> tuple[str, Tone] | None:
    """What to say when planning along with an edit ended; None where the views say it all."""
    if notice.by_hand:
        named = _listed([f"“{label}”" for label in notice.by_hand])
        return (
            f"There is a plan, but none that leaves {named} as you put it by hand. Nothing was moved; "
            "“Plan now” (F5) plans everything.",
            Tone.CAUTION,
        )
    if notice.is_unsettled:
        return (
            "No plan was found in the time allowed that is known to move few boxes, so nothing was moved. “Plan now” "
            "(F5) or “Re-plan” goes on from here.",
            Tone.CAUTION,
        )
    done = []
    if notice.placed:
        done.append(f"Found a drawer: {_placed(notice.placed, project)}.")
    if notice.moved:
        done.append(f"Made room: {_placed(notice.moved, project)}. Undo takes back your change and this with it.")
    return (" ".join(done), Tone.NOTE) if done else None


def _placed(box_ids: tuple[str, ...], project: Project) -> str:
    """“Pumps” to bay 2, row 5; or how many where they are many."""
    if len(box_ids) > MOST_NAMED:
        return count_words(len(box_ids), "box", "boxes")
    places = project.arrangement.placements_by_box
    return _listed([f"“{project.box(key).label}” to {place_words(places[key])}" for key in box_ids if key in places])


def _listed(names: list[str]) -> str:
    """A few in full; of many the first and how many more."""
    if len(names) > MOST_NAMED:
        names = [*names[:MOST_NAMED], f"{len(names) - MOST_NAMED} more"]
    return ", ".join(names)


def _with_remarks(words: str, result: PlanResult) -> str:
    """What the plan rests on beyond what was entered, such as assumed masses, belongs to telling of it."""
    return " ".join((words, *result.remarks))
