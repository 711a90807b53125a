"""Whether a document has a plan at all, asked without planning it: why not, and what would help."""

from baywright.model.plan import PlanResult
from baywright.model.project import Project
from baywright.planner import why_not


def refusal(project: Project) -> PlanResult | None:
    """The planner's answer where it is impossible; None where there is a plan, or where that stays open."""
    return why_not(project)
