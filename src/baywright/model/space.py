"""The place that the run must fit into: its length, depth and height, and what stands in it."""

from enum import StrEnum
from itertools import pairwise
from typing import Annotated, Self

from pydantic import Field, model_validator

from baywright.model.base import Frozen, Identifier, Label, Millimetres, PositiveMillimetres

LONGEST_WALL_MM = 100_000.0
HIGHEST_LIMIT_MM = 10_000.0

MOST_ZONES = 50


class ZoneEffect(StrEnum):
    """What a zone of the wall asks of the run."""

    KEEP_CLEAR = "keep_clear"
    """No bay may stand there at all (a door, a radiator): the run is interrupted."""
    END_BELOW = "end_below"
    """Bays there must end under the zone's lower edge (a window, a hung cupboard)."""
    STAY_IN_FRONT = "stay_in_front"
    """Drawers that cross the zone must leave its depth free at the wall (a socket, a pipe, a skirting)."""


class Zone(Frozen):
    """A rectangle of the wall that the run must respect: `left_mm` along the wall from the space's left end,
    `bottom_mm` over the floor; `depth_mm` is how far it stands out from the wall.
    """

    id: Identifier
    label: Label
    effect: ZoneEffect
    left_mm: Millimetres
    width_mm: PositiveMillimetres
    bottom_mm: Millimetres = 0.0
    height_mm: PositiveMillimetres = 10_000.0
    depth_mm: Millimetres = 0.0

    @property
    def right_mm(self) -> float:
        """Its right end along the wall, in mm."""
        return self.left_mm + self.width_mm

    @property
    def top_mm(self) -> float:
        """Its upper edge over the floor, in mm."""
        return self.bottom_mm + self.height_mm


class CeilingPoint(Frozen):
    """The ceiling's height over the floor at one place along the wall; straight between points, level beyond."""

    along_mm: Millimetres
    height_mm: PositiveMillimetres


class Space(Frozen):
    """The room along one wall that the run may take.

    `length_mm` runs along the wall; `depth_mm` from the wall (or the rear of a free-standing run) to the foremost
    point that anything fixed may reach, the front edge of the top included; `height_limit_mm` from the floor to
    the upper side of the top.
    """

    length_mm: Annotated[PositiveMillimetres, Field(le=LONGEST_WALL_MM)] = 2400.0
    depth_mm: Annotated[PositiveMillimetres, Field(le=5_000.0)] = 400.0
    height_limit_mm: Annotated[PositiveMillimetres, Field(le=HIGHEST_LIMIT_MM)] = 1200.0
    existing_wall: bool = True
    """Whether a wall stands behind the run, so that the run can be fixed to it."""
    ceiling: Annotated[tuple[CeilingPoint, ...], Field(max_length=MOST_ZONES)] = ()
    """A sloping ceiling, from left to right; empty where the ceiling never limits more than `height_limit_mm`."""
    zones: Annotated[tuple[Zone, ...], Field(max_length=MOST_ZONES)] = ()

    @model_validator(mode="after")
    def _places_differ(self) -> Self:
        places = [point.along_mm for point in self.ceiling]
        if any(right <= left for left, right in pairwise(places)):
            raise ValueError("The points of the ceiling must go from left to right, each at a place of its own.")
        ids = [zone.id for zone in self.zones]
        if len(set(ids)) < len(ids):
            raise ValueError("Two zones of the wall have the same id; ids must differ.")
        return self

    def height_limit_between(self, left_mm: float, right_mm: float) -> float:
        """The lowest limit in mm over the floor for what stands from `left_mm` to `right_mm` along the wall: the
        general limit, the ceiling, and the zones that bays must end below.
        """
        limits = [self.height_limit_mm, self._ceiling_at(left_mm), self._ceiling_at(right_mm)]
        limits += [point.height_mm for point in self.ceiling if left_mm < point.along_mm < right_mm]
        limits += [
            zone.bottom_mm
            for zone in self.zones
            if zone.effect is ZoneEffect.END_BELOW and zone.left_mm < right_mm and left_mm < zone.right_mm
        ]
        return min(limits)

    def _ceiling_at(self, along_mm: float) -> float:
        points = self.ceiling
        if not points:
            return self.height_limit_mm
        if along_mm <= points[0].along_mm:
            return points[0].height_mm
        for left, right in pairwise(points):
            if along_mm <= right.along_mm:
                share = (along_mm - left.along_mm) / (right.along_mm - left.along_mm)
                return left.height_mm + share * (right.height_mm - left.height_mm)
        return points[-1].height_mm
