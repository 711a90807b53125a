"""Which box stands in which bay at which hole row, and what must not be moved."""

from collections.abc import Mapping
from enum import StrEnum
from functools import cached_property
from typing import Annotated, Self

from pydantic import Field, model_validator

from baywright.model.base import Frozen, Identifier
from baywright.model.limits import MOST_BAYS, MOST_ROWS, BoxWidthMillimetres


class Lock(StrEnum):
    """What planning must leave alone."""

    NONE = "none"
    BAY = "bay"
    """The box stays in its bay; its row is free."""
    DRAWER = "drawer"
    """The box stays in its bay at its row."""


class Placement(Frozen):
    """A box in a drawer whose runners are screwed at hole row `row` (0 is the lowest) of bay `bay` (0 is leftmost)."""

    box_id: Identifier
    bay: Annotated[int, Field(ge=0, lt=MOST_BAYS)]
    row: Annotated[int, Field(ge=0, lt=MOST_ROWS)]
    lock: Lock = Lock.NONE
    abreast: Annotated[int, Field(ge=0, le=2)] = 0
    """Place from the left in a drawer where boxes stand side by side."""
    behind: Annotated[int, Field(ge=0, le=2)] = 0
    """Place from the front in a drawer where boxes stand one behind another."""
    turned: bool = False
    """Whether the box stands turned by a quarter, its depth across the drawer front."""


class Arrangement(Frozen):
    """The present shape of the run and the place of every box that has one.

    `bay_count` drawer bays, each upright with `upright_rows` hole rows. Empty (0 bays) before the first plan. An
    arrangement may break limits (the owner drags freely); `baywright.planner` tells what is wrong with it. Boxes with
    the same bay and row share one drawer.
    """

    bay_count: Annotated[int, Field(ge=0, le=MOST_BAYS)] = 0
    upright_rows: Annotated[int, Field(ge=0, le=MOST_ROWS)] = 0
    placements: tuple[Placement, ...] = ()
    box_widths_mm: Annotated[tuple[BoxWidthMillimetres, ...], Field(max_length=MOST_BAYS)] = ()
    """Width of box that each bay is made for, where the planner chose among several; empty where all bays are made
    as the limits say.
    """

    @model_validator(mode="after")
    def _one_place_a_box(self) -> Self:
        seen: set[str] = set()
        for placement in self.placements:
            if placement.box_id in seen:
                raise ValueError(f"Box “{placement.box_id}” has two places; a box can stand in one drawer only.")
            seen.add(placement.box_id)
        return self

    @cached_property
    def placements_by_box(self) -> Mapping[str, Placement]:
        """Every placement by the id of its box."""
        return {placement.box_id: placement for placement in self.placements}

    def placement_of(self, box_id: str) -> Placement | None:
        """The place of a box, or None where it has none."""
        return self.placements_by_box.get(box_id)

    def in_bay(self, bay: int) -> tuple[Placement, ...]:
        """The placements of one bay, lowest first."""
        return tuple(sorted((p for p in self.placements if p.bay == bay), key=lambda p: (p.row, p.box_id)))

    @cached_property
    def drawers(self) -> Mapping[tuple[int, int], tuple[Placement, ...]]:
        """The boxes of each drawer by its bay and row, lowest drawer of the leftmost bay first; in a drawer from the
        left and from the front.
        """
        found: dict[tuple[int, int], list[Placement]] = {}
        for p in sorted(self.placements, key=lambda p: (p.bay, p.row, p.abreast, p.behind, p.box_id)):
            found.setdefault((p.bay, p.row), []).append(p)
        return {place: tuple(boxes) for place, boxes in found.items()}
