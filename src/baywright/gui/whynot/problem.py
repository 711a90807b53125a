"""What is wrong with the present document, as values: why no plan is possible first, then the run as it stands.

Law: what the planner says of a document is told only while it holds for it.
"""

from dataclasses import dataclass

from baywright.app.session import Session
from baywright.model.plan import Conflict, PlanResult, PlanStatus
from baywright.model.repair import Repair

SIGN = "⚠"


@dataclass(frozen=True)
class Problem:
    """One trouble: what is wrong, what to do, which boxes and which fields of the project it concerns."""

    message: str
    mend: str
    box_ids: tuple[str, ...]
    fields: tuple[str, ...] = ()
    stands_against_plan: bool = False
    """Whether it leaves no plan at all; else it is about the run as it stands."""

    @property
    def text(self) -> str:
        """Trouble and mend, as they are listed."""
        return f"{SIGN} {self.message}" + (f"\n     → {self.mend}" if self.mend else "")


@dataclass(frozen=True)
class WhyNot:
    """Everything that the panel shows."""

    problems: tuple[Problem, ...] = ()
    repairs: tuple[Repair, ...] = ()
    """What would make a plan possible, smallest change first; each was solved."""
    is_impossible: bool = False
    nothing: str = ""
    """What to say while there are no problems."""
    remarks: tuple[str, ...] = ()
    """What the planner says of its own answer."""


def refusal_of(session: Session) -> PlanResult | None:
    """The planner's answer to the present document where it says that no plan is possible."""
    plan = session.plan
    return plan if plan is not None and plan.status is PlanStatus.IMPOSSIBLE else None


def why_not(session: Session) -> WhyNot:
    """What is wrong with the present document and what would help."""
    refusal = refusal_of(session)
    found: dict[tuple[str, str], Problem] = {}
    for conflict in refusal.conflicts if refusal else ():
        _add(found, conflict, stands_against_plan=True)
    for conflict in session.report.conflicts:
        _add(found, conflict, stands_against_plan=False)
    if session.project.arrangement.bay_count:
        nothing = "✓ Nothing is wrong: every box in a drawer fits and keeps every limit."
    else:
        nothing = "Nothing to say yet: there is no plan."
    return WhyNot(
        problems=tuple(found.values()),
        repairs=refusal.repairs if refusal else (),
        is_impossible=refusal is not None,
        nothing=nothing,
        remarks=refusal.remarks if refusal else (),
    )


def _add(found: dict[tuple[str, str], Problem], conflict: Conflict, *, stands_against_plan: bool) -> None:
    problem = Problem(
        message=conflict.message,
        mend=conflict.mend,
        box_ids=conflict.box_ids,
        fields=conflict.fields,
        stands_against_plan=stands_against_plan,
    )
    found.setdefault((conflict.message, conflict.mend), problem)
