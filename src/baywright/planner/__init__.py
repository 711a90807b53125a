"""How many bays, which box in which drawer, and why not: pure functions from a project document to a result."""

from baywright.planner.agreement import disagreements
from baywright.planner.destination import destinations
from baywright.planner.difference import difference
from baywright.planner.explanation import why_not
from baywright.planner.figures import figures
from baywright.planner.legality import place_conflicts, report
from baywright.planner.options import options
from baywright.planner.planning import DEFAULT_EFFORT, plan
from baywright.planner.seating import closed_up, seated

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
