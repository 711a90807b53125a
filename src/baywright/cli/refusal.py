"""Why there is no plan and what would help, as plain text for a terminal: the clash, then the changes by number."""

from baywright.model.plan import Conflict, PlanResult

SINGLE = "Single changes that make it possible, the smallest first; each was tried:"
TOGETHER = "No single change is enough. Changes that make it possible together; each set was tried:"


def clash_text(result: PlanResult) -> str:
    """Every clash, and every change that was found to help with its number; else the advice that each clash has."""
    if not result.repairs:
        return conflicts_text(result.conflicts)
    lines = [f"- {conflict.message}" for conflict in result.conflicts]
    lines.append(SINGLE if all(len(repair.changes) == 1 for repair in result.repairs) else TOGETHER)
    width = len(str(len(result.repairs)))
    lines += [f"  {number:{width}}. {repair.text}" for number, repair in enumerate(result.repairs, 1)]
    return "\n".join(lines)


def conflicts_text(conflicts: tuple[Conflict, ...]) -> str:
    """Conflicts, a paragraph each."""
    return "\n".join(f"- {c.message}" + (f"\n  {c.mend}" if c.mend else "") for c in conflicts)
