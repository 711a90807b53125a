"""What one row of the box table shows: a box with its size and its place, and the columns over it."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from baywright.gui.tables.column import Column
from baywright.gui.wording import (
    LOCKS,
    STATUSES,
    USES,
    exact_mass_words,
    lifting_words,
    mass_words,
    place_words,
    size_words,
    words_for,
)
from baywright.model.arrangement import Lock, Placement
from baywright.model.inventory import Box, BoxSize, BoxStatus, Use
from baywright.model.length import LengthUnit
from baywright.model.project import Project

_STATUS_RANK = {BoxStatus.OWNED: 0, BoxStatus.WISHED: 1, BoxStatus.ELSEWHERE: 2}
_USE_RANK = {Use.DAILY: 0, Use.WEEKLY: 1, Use.SELDOM: 2}


@dataclass(frozen=True)
class BoxLine:
    """A box, its size, and where it stands."""

    box: Box
    size: BoxSize
    placement: Placement | None
    lifting_index: float | None = None
    """How hard it is to lift out and set down; None where it has no place or was not weighed."""


def box_lines(project: Project, lifting_indices: Mapping[str, float]) -> list[tuple[str, BoxLine]]:
    """The rows for all boxes of a project, in its order, by box id."""
    sizes = {size.id: size for size in project.box_sizes}
    places = {placement.box_id: placement for placement in project.arrangement.placements}
    return [
        (box.id, BoxLine(box, sizes[box.size_id], places.get(box.id), lifting_indices.get(box.id)))
        for box in project.boxes
    ]


def box_columns(unit: Callable[[], LengthUnit]) -> tuple[Column[BoxLine], ...]:
    """The columns of the box table; `unit` tells in what to show lengths."""

    def size_tip(line: BoxLine) -> str:
        return f"{line.size.name}: {size_words(line.size, unit())} (width × depth × height)"

    def lock_of(line: BoxLine) -> Lock | None:
        return None if line.placement is None else line.placement.lock

    return (
        Column(
            "Box", lambda x: x.box.label, lambda x: x.box.label, "What is written on the box", "label", sample="n" * 18
        ),
        Column(
            "Size",
            lambda x: x.size.name,
            lambda x: (x.size.height_mm, x.size.width_mm, x.size.depth_mm, x.size.name.casefold()),
            "Its outside size, from the list of box sizes; sorted by height",
            "size_id",
            write=lambda x: x.size.id,
            tip=size_tip,
        ),
        Column(
            "Mass, kg",
            lambda x: mass_words(x.box.loaded_mass_kg),
            lambda x: x.box.loaded_mass_kg,
            "Box and contents together, in kg; leave it empty where it has not been weighed",
            "loaded_mass_kg",
            is_number=True,
            write=lambda x: exact_mass_words(x.box.loaded_mass_kg),
        ),
        Column(
            "Status",
            lambda x: words_for(x.box.status, STATUSES),
            lambda x: _STATUS_RANK[x.box.status],
            "Owned: gets a drawer. Wished: room is kept free, no drawer is made yet. Kept elsewhere: no drawer here. "
            "Type one of these words into the filter to see only those",
            "status",
            write=lambda x: x.box.status,
            sample="kept elsewhere",
        ),
        Column(
            "Place",
            lambda x: "" if x.box.status is BoxStatus.ELSEWHERE else place_words(x.placement),
            place_rank,
            "Where the box stands; drag it in the picture",
            sample="bay 10, row 30",
        ),
        Column(
            "Lifting",
            lambda x: lifting_words(x.lifting_index),
            lambda x: x.lifting_index,
            "Lifting index where it stands: mass over the recommended limit (revised NIOSH equation). ✗ over 1 is too "
            "hard for many people, ! is near it. See Checks for its working",
            is_number=True,
        ),
        Column(
            "Contents", lambda x: x.box.contents, lambda x: x.box.contents, "What is in it", "contents", sample="n" * 22
        ),
        Column(
            "Group",
            lambda x: x.box.group,
            lambda x: x.box.group,
            "Boxes that belong together",
            "group",
            sample="n" * 12,
        ),
        Column(
            "Taken out",
            lambda x: words_for(x.box.use, USES),
            lambda x: _USE_RANK[x.box.use],
            "How often it is taken out: daily, weekly or seldom",
            "use",
            write=lambda x: x.box.use,
        ),
        Column(
            "Locked",
            lambda x: "" if x.placement is None else words_for(x.placement.lock, LOCKS),
            lambda x: str(lock_of(x) or ""),
            "What planning must leave alone: menu Edit, Lock",
            sample="in its drawer",
        ),
        Column("Note", lambda x: x.box.note, lambda x: x.box.note, "Anything else", "note"),
    )


def place_rank(line: BoxLine) -> tuple[int, int] | None:
    """Bay and row of a box, by which places are sorted."""
    return None if line.placement is None else (line.placement.bay, line.placement.row)
