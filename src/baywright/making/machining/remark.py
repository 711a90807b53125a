"""What to say where work cannot be done as it should be: which part, which place, what to do."""

from collections.abc import Iterable, Sequence

from baywright.making.machining.bench import Work
from baywright.making.machining.places import LEAST_APART_MM
from baywright.making.machining.rows import RowPlan
from baywright.making.machining.solid import SIDE_WORDS
from baywright.model.construction import Uprights
from baywright.model.length import format_length
from baywright.model.making import Part
from baywright.model.project import Project

LEAST_HALF_MM = 8.5
"""What a board needs of an upright's edge over which it is joined: a slender screw of 3 mm in the middle, with about
1.5 diameters to either side (NDS 2018, 12.5.1, from memory), or a tenon of 4 mm with 2 mm of wood."""
_JOINED_OVER_UPRIGHTS = ("B", "T", "R")


def row_remarks(project: Project, plan: RowPlan) -> list[str]:
    """Hole lines that cannot be drilled, or that lie too near to each other."""
    remarks = []
    for line, other in sorted(plan.too_near):
        which, set_back = ("front", other) if line < plan.depth_mm / 2 else ("rear", plan.depth_mm - other)
        remarks.append(
            f"The hole line {format_length(line, project.unit)} behind the uprights' front edges is not drilled in "
            f"drawer bays: the runners' holes lie at {format_length(other, project.unit)}, too near to it. A {which} "
            f"set-back of the hole rows of {format_length(set_back, project.unit)} makes both one."
        )
    if plan.left_out:
        lines = ", ".join(format_length(line, project.unit) for line in sorted(plan.left_out))
        remarks.append(
            f"Hole lines {lines} behind the uprights' front edges would leave no wood at an edge or at the rail in the "
            "rear, and are not drilled: change the set-backs of the hole rows or the runner length."
        )
    if plan.outer_rows:
        remarks.append(
            "The lowest and highest hole rows lie so near to the uprights' ends that no wood would be left: they are "
            "not drilled. Set the first row higher."
        )
    return remarks


def lack_remarks(works: Iterable[Work]) -> list[str]:
    """Joints with fewer fasteners than they should have."""
    found = {
        f"{work.part.name} ({work.part.number}): {SIDE_WORDS[side]} there is room for {there} of {wanted} fasteners "
        f"that keep {LEAST_APART_MM:g} mm of wood to hole rows, grooves and each other. Make the board wider, choose "
        "another way of jointing, or move what is in the way."
        for work in works
        for side, wanted, there in work.lacks
    }
    return sorted(found)


def half_remarks(project: Project, parts: Sequence[Part]) -> list[str]:
    """Boards that are joined over the middle of uprights too thin for fasteners in each half."""
    thick = project.boards.upright_mm
    joined = [part for part in parts if "." in part.number and part.number.startswith(_JOINED_OVER_UPRIGHTS)]
    if not joined or project.construction.uprights is Uprights.OWN or thick >= 2 * LEAST_HALF_MM:
        return []
    names = ", ".join(dict.fromkeys(f"{part.name.lower()} ({part.number})" for part in joined))
    return [
        f"Over an upright {format_length(thick, project.unit)} thick each of two boards that meet has "
        f"{format_length(thick / 2, project.unit)}, which may split at a screw or tenon: {names}. Take uprights of "
        f"{format_length(2 * LEAST_HALF_MM, project.unit)} or more, or longer boards that need no joint."
    ]
