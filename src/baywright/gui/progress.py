"""What is said while planning goes on, and when it ends."""

from baywright.gui.messages import Tone
from baywright.gui.status import goal_words
from baywright.model.plan import PlanResult, PlanStatus


def progress_words(result: PlanResult) -> str:
    """What is known so far, in one line."""
    if result.arrangement is None:
        return "Planning …"
    best = ", ".join(f"{goal.goal.value} {goal.value:,.6g}" for goal in result.goals)
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
            return ("Planning was stopped before a plan was found. Nothing was changed.", Tone.CAUTION)
        case PlanStatus.EMPTY:
            return ("There is nothing to plan yet: add boxes first.", Tone.CAUTION)


def _with_remarks(words: str, result: PlanResult) -> str:
    """What the plan rests on beyond what was entered, such as assumed masses, belongs to telling of it."""
    return " ".join((words, *result.remarks))
