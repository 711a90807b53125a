"""The plan, its conflicts and the drawer schedule as plain text for a terminal."""

import csv
import io

from baywright.cli.refusal import clash_text
from baywright.model.goals import MORE_IS_BETTER
from baywright.model.length import LengthUnit, format_length
from baywright.model.making import ScheduleLine
from baywright.model.plan import ArrangementReport, Goal, GoalValue, PlanResult, PlanStatus

_STATUS = {
    PlanStatus.PROVED_BEST: "Plan found and proved best: none is better.",
    PlanStatus.FEASIBLE: "Plan found; it is not proved that none is better.",
    PlanStatus.IMPOSSIBLE: "No plan keeps every limit.",
    PlanStatus.STOPPED: "Stopped before a plan was found.",
    PlanStatus.EMPTY: "There are no boxes to plan.",
}
GOAL_NAMES = {
    Goal.BAYS: "bays",
    Goal.ROWS: "hole rows in an upright",
    Goal.MOVES: "boxes moved",
    Goal.RESCREWS: "runner pairs screwed on elsewhere",
    Goal.HANDLING: "handling effort",
    Goal.GROUPS: "further bays that groups are spread over",
    Goal.FREE_PIECE: "rows in the largest free piece",
}
"""The goals as they read before a figure."""


def plan_text(result: PlanResult) -> str:
    """The planner's answer: status, every goal with its proof, every clash with what would help."""
    is_open = result.status is PlanStatus.STOPPED and result.remarks  # nobody stopped it: the planner says why it ended
    lines = [] if is_open else [_STATUS[result.status]]
    lines += [f"  {_goal(goal)}" for goal in result.goals]
    if result.conflicts:
        lines.append(clash_text(result))
    lines += result.remarks
    return "\n".join(lines)


def _goal(goal: GoalValue) -> str:
    beyond = "over" if goal.goal in MORE_IS_BETTER else "under"
    proof = "proved" if goal.is_proved else f"none can be {beyond} {goal.bound:g}"
    unit = f" {goal.unit}" if goal.goal is Goal.HANDLING else ""
    return f"{GOAL_NAMES[goal.goal]}: {goal.value:g}{unit} ({proof})"


_HEADINGS = ("Bay", "Drawer", "Row", "Drill at", "Opening", "Lower edge", "Mass", "Box", "Size")


def schedule_text(lines: tuple[ScheduleLine, ...], unit: LengthUnit) -> str:
    """The drawer schedule as a table; “drill at” is over the upright's lower end, “lower edge” over the floor."""
    rows = [_HEADINGS, *(_schedule_row(line, unit) for line in lines)]
    widths = [max(len(row[column]) for row in rows) for column in range(len(_HEADINGS))]
    return "\n".join(
        "  ".join(cell.ljust(width) for cell, width in zip(row, widths, strict=True)).rstrip() for row in rows
    )


def _schedule_row(line: ScheduleLine, unit: LengthUnit) -> tuple[str, ...]:
    return (
        str(line.bay),
        str(line.drawer),
        str(line.runner_row),
        format_length(line.runner_line_mm, unit),
        format_length(line.opening_mm, unit),
        format_length(line.lower_edge_mm, unit),
        "?" if line.loaded_mass_kg is None else f"{line.loaded_mass_kg:g} kg",
        line.box_label + (" (locked)" if line.locked else ""),
        line.size_name,
    )


def schedule_csv(lines: tuple[ScheduleLine, ...]) -> str:
    """The drawer schedule as comma-separated values, every field of it, lengths in mm."""
    output = io.StringIO()
    writer = csv.writer(output, lineterminator="\n")
    names = list(ScheduleLine.model_fields)
    writer.writerow(names)
    writer.writerows([_plain(getattr(line, name)) for name in names] for line in lines)
    return output.getvalue().rstrip("\n")


def _plain(value: object) -> object:
    """A text that a spreadsheet would take for a formula is marked as text by a leading apostrophe; of several numbers
    one stands after the other.
    """
    if isinstance(value, tuple):
        return " ".join(f"{number:g}" for number in value)
    return f"'{value}" if isinstance(value, str) and value[:1] in ("=", "+", "-", "@") else value


def caution_text(report: ArrangementReport) -> str:
    """What to say where something is made from an arrangement with faults; empty where it has none."""
    conflicts, unplaced = len(report.conflicts), len(report.unplaced)
    if not conflicts and not unplaced:
        return ""
    return (
        f"Caution: do not order or drill from this yet. Things wrong in the arrangement: {conflicts}; boxes "
        f"without a drawer: {unplaced}. “baywright check” names them."
    )
