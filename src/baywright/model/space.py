"""The place that the run must fit into."""

from typing import Annotated

from pydantic import Field

from baywright.model.base import Frozen, PositiveMillimetres

LONGEST_WALL_MM = 100_000.0
HIGHEST_LIMIT_MM = 10_000.0


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
