"""The shelves of the shelf bay, adjustable on pins in the same hole rows as the runners.

Laws: a shelf's length is the workings' (the clear width less air at both ends); it is as deep as the uprights, less
the rail at the rear where there is one, so that it can lie at any row.
"""

from baywright.making.frame import SHELF_BAY
from baywright.making.piece import piece
from baywright.model.construction import Back
from baywright.model.length import format_length
from baywright.model.machining import Side
from baywright.model.making import Part
from baywright.model.project import Project
from baywright.model.stock import BoardRole
from baywright.workings import Workings

PINS_PER_SHELF = 4
LONGEST_SHELF_THICKNESSES = 45.0
"""A plywood shelf of 18 mm up to about 800 mm: common practice for a light to middling load, no calculation."""


def shelf_count(project: Project, workings: Workings) -> int:
    """Adjustable shelves of the run: none where there is no shelf bay."""
    return project.limits.shelf_count if workings.value("shelf_length") > 0 else 0


def shelf_parts(project: Project, workings: Workings) -> list[Part]:
    """The shelves."""
    count = shelf_count(project, workings)
    if count == 0:
        return []
    boards = project.boards
    rail = 0.0 if project.construction.rear.kind is Back.FULL_BACK else boards.brace_mm
    in_front = "; in front of the rail at the rear" if rail else ""
    return [
        piece(
            project, BoardRole.SHELF, "S1", "Shelf", count, workings.value("shelf_length"),
            workings.value("upright_depth") - rail, banded=(Side.FRONT,), bays=(SHELF_BAY,) * count,
            note=f"adjustable, on {PINS_PER_SHELF} pins{in_front}",
        )
    ]  # fmt: skip


def shelf_remarks(project: Project, workings: Workings) -> list[str]:
    """A word of warning where the shelves are long for their thickness."""
    length, thickness = workings.value("shelf_length"), project.boards.shelf_mm
    if shelf_count(project, workings) == 0 or length <= LONGEST_SHELF_THICKNESSES * thickness:
        return []
    return [
        f"The shelves are {format_length(length, project.unit)} long and {thickness:g} mm thick. Longer than about "
        f"{LONGEST_SHELF_THICKNESSES:g} times the thickness they sag under a usual load: divide the shelf bay, take "
        "thicker boards, or load them lightly."
    ]
