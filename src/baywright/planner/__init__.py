"""How many bays, which box in which drawer, and why not: pure functions from a project document to a result."""

from baywright.planner.choices.destination import destinations
from baywright.planner.choices.options import options
from baywright.planner.figures import figures
from baywright.planner.legality.agreement import disagreements
from baywright.planner.legality.report import place_conflicts, report
from baywright.planner.legality.seating import closed_up, seated
from baywright.planner.planning import DEFAULT_EFFORT, plan
from baywright.planner.reasons.explanation import why_not
from baywright.planner.replanning.difference import difference

__all__ = [
    "DEFAULT_EFFORT",
    "closed_up",
    "destinations",
    "difference",
    "disagreements",
    "figures",
    "options",
    "place_conflicts",
    "plan",
    "report",
    "seated",
    "why_not",
]
