"""Why a project has no plan, and what would help: the clash of limits in words and numbers, and single changes.

Laws: a clash names as few limits as together leave no plan, shown by solving; the reason is worked out on the document
with these limits alone, so that its numbers are about them; every change that is offered was solved. The caller may
stop at any time and gets what is known by then.
"""

from dataclasses import dataclass

from baywright.model.length import format_length
from baywright.model.plan import Conflict, LimitKind, PlanResult, PlanStatus
from baywright.model.project import Project
from baywright.model.repair import Repair
from baywright.planner.distribution.budget import Budget, StoppedError
from baywright.planner.distribution.solving import Stop
from baywright.planner.reasons.certificate import certificate
from baywright.planner.reasons.clash import Clash, Clashes
from baywright.planner.reasons.limits import Limit, limits_of
from baywright.planner.reasons.question import Questions, Reading
from baywright.planner.reasons.repair import repairs, together

EFFORT = 8.0
"""Effort of an ordinary run, in deterministic units of the solver."""
MOST_IN_MEND = 4
NOTHING_SINGLE = (
    "No single small change makes everything fit: allow more wall and more height, or leave several boxes out."
)
UNSETTLED = (
    "Not every question could be settled within the effort allowed: fewer limits may clash than are named, and a "
    "smaller change than those offered may be enough."
)


@dataclass(frozen=True)
class Explanation:
    """The clashes as conflicts for people, the repairs, and the clashes themselves."""

    conflicts: tuple[Conflict, ...]
    repairs: tuple[Repair, ...] = ()
    clashes: tuple[Clash, ...] = ()
    is_settled: bool = True
    """Whether no question stayed open: then every clash is irreducible, and the first repair the cheapest."""

    @property
    def remarks(self) -> tuple[str, ...]:
        """What is to be said of the proof, for people."""
        return () if self.is_settled else (UNSETTLED,)


def why_not(project: Project, *, effort: float = EFFORT, stop: Stop | None = None) -> PlanResult | None:
    """The answer where a project has no plan: why, and what would help. None where there is one, where that stays
    open, or where `stop` ended the search for it.
    """
    budget = Budget(effort, stop)
    try:
        if Questions(budget).has_plan(project) is not False:
            return None
    except StoppedError:
        return None
    return refusal(project, budget)


def refusal(project: Project, budget: Budget) -> PlanResult:
    """The answer for a project of which it is known that it has no plan."""
    why = explain(project, budget)
    return PlanResult(
        status=PlanStatus.IMPOSSIBLE, conflicts=why.conflicts, repairs=why.repairs, effort=budget.spent,
        remarks=why.remarks,
    )  # fmt: skip


def explain(project: Project, budget: Budget) -> Explanation:
    """Why a project that has no plan has none, and what would help."""
    questions = Questions(budget)
    try:
        clashes = Clashes(project, questions).find()
    except StoppedError:
        return Explanation(certificate(Reading(project)), is_settled=False)
    try:
        offered = repairs(project, clashes, questions)
        if len(clashes) > 1 and not offered:
            offered = together(project, clashes, questions)
    except StoppedError:
        offered, questions.open = (), questions.open + 1
    conflicts = tuple(c for clash in clashes for c in _told(project, clash, offered)) or certificate(Reading(project))
    return Explanation(conflicts, offered, clashes, questions.open == 0)


def _told(project: Project, clash: Clash, offered: tuple[Repair, ...]) -> tuple[Conflict, ...]:
    """The reason of one clash with its limits named; advice where the reason brings none of its own."""
    reading = Reading(clash.core)
    words = {limit.path: limit.words for limit in limits_of(reading)}
    names = tuple(words.get(limit.path, limit.words) for limit in clash.limits)
    then = _other_width(Reading(project), reading)
    fields = tuple(limit.path for limit in clash.limits)
    return tuple(
        reason.replace(
            kind=_kind(reason, clash.limits),
            message=_message(reason, names, bool(reading.findings)) + then,
            mend=reason.mend or _advice(offered),
            box_ids=_boxes(reason, clash.limits),
            fields=fields,
        )
        for reason in certificate(reading)
    )


def _message(reason: Conflict, names: tuple[str, ...], is_finding: bool) -> str:
    """The reason, then the limits that it rests on; a finding about one limit names it already."""
    if not names or (is_finding and len(names) == 1):
        return reason.message
    if len(names) == 1:
        return f"{reason.message} The limit is {names[0]}."
    return f"{reason.message} These limits clash only together: {'; '.join(names[:-1])}; and {names[-1]}."


def _other_width(reading: Reading, core: Reading) -> str:
    """What is to be said where the numbers are about bays of another width, for a box that would else not go in."""
    width = core.workings.value("bay_box_width")
    if width == reading.workings.value("bay_box_width"):
        return ""
    return f" The bays are then made for boxes {format_length(width, core.project.unit)} wide."


def _kind(reason: Conflict, limits: tuple[Limit, ...]) -> LimitKind:
    """The reason's kind; that of a lock where nothing but boxes that cannot be combined is known and locks clash."""
    is_about_locks = reason.needed is None and any(limit.kind is LimitKind.LOCK for limit in limits)
    return LimitKind.LOCK if is_about_locks else reason.kind


def _boxes(reason: Conflict, limits: tuple[Limit, ...]) -> tuple[str, ...]:
    """The boxes that the reason is about; of locks that clash, those locked."""
    if _kind(reason, limits) is not LimitKind.LOCK or reason.kind is LimitKind.LOCK:
        return reason.box_ids
    return tuple(limit.box_id for limit in limits if limit.box_id)


def _advice(offered: tuple[Repair, ...]) -> str:
    """“Lower the clearance …; or give the uprights one more row (33).” Where no change helps, what to think of."""
    if not offered:
        return NOTHING_SINGLE
    first, *others = (repair.text.rstrip(".") for repair in offered[:MOST_IN_MEND])
    return "; or ".join([first, *(f"{text[:1].lower()}{text[1:]}" for text in others)]) + "."
