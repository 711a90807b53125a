"""A re-plan as plain text: which boxes, runners, drawers and parts it asks for, and the steps in their order."""

from collections.abc import Iterable

from baywright.model.difference import BoxMove, Difference, PartChange, Place
from baywright.model.length import LengthUnit, format_length
from baywright.model.project import Project

NOTHING = "Nothing has to be done: every box, runner and drawer stays where it is."


def difference_text(difference: Difference, before: Project, after: Project) -> str:
    """The whole difference; boxes by their names in either document."""
    if difference.is_empty:
        return "\n".join([NOTHING, *difference.remarks])
    labels = {box.id: box.label for project in (before, after) for box in project.boxes}
    lines: list[str] = []
    lines += _list("Boxes that move", (_move(move, labels) for move in difference.moves))
    lines += _list("New boxes", (_move(move, labels) for move in difference.new_boxes))
    lines += _list("Boxes that leave", (_move(move, labels) for move in difference.gone_boxes))
    pairs = (f"{place_text(pair.before)} → {place_text(pair.after)}" for pair in difference.runners)
    lines += _list("Runner pairs to screw on elsewhere", pairs)
    lines += _list("New drawers", map(place_text, difference.new_drawers))
    lines += _list("Drawers that lie idle", map(place_text, difference.idle_drawers))
    lines += _list("Parts to cut", (_part(part, after.unit) for part in difference.parts_to_cut))
    lines += _list("Parts that lie idle", (_part(part, after.unit) for part in difference.parts_idle))
    lines += _list("Steps", (step.text for step in difference.steps), numbered=True)
    return "\n".join([*lines, *difference.remarks])


def built_text(project: Project, work: Difference | None) -> str:
    """Which bays stand as built, and the work from there to the arrangement of the document."""
    built = project.built
    if built is None or work is None:
        return "No bay is marked as built."
    numbers = ", ".join(str(bay + 1) for bay in built.bays)
    stand = f"Bay {numbers} stands as built." if len(built.bays) == 1 else f"Bays {numbers} stand as built."
    return f"{stand}\n{difference_text(work, built.project, project)}"


def place_text(place: Place) -> str:
    """A drawer's place as people count."""
    return f"bay {place.bay + 1} row {place.row + 1}"


def _list(heading: str, items: Iterable[str], *, numbered: bool = False) -> list[str]:
    told = list(items)
    if not told:
        return []
    marks = [f"{number}." for number in range(1, len(told) + 1)] if numbered else ["-"] * len(told)
    width = len(marks[-1])
    rows = [f"  {mark:>{width}} {text}" for mark, text in zip(marks, told, strict=True)]
    return [f"{heading} ({len(told)}):", *rows]


def _move(move: BoxMove, labels: dict[str, str]) -> str:
    name = f"“{labels[move.box_id]}”"
    if move.before is None:
        return f"{name}: {place_text(move.after)}" if move.after else name
    return f"{name}: {place_text(move.before)}" + (f" → {place_text(move.after)}" if move.after else "")


def _part(part: PartChange, unit: LengthUnit) -> str:
    size = " × ".join(format_length(mm, unit) for mm in (part.length_mm, part.width_mm))
    note = f" – {part.note}" if part.note else ""
    return f"{part.quantity} × {part.name}, {size}, {part.material}{note}"
