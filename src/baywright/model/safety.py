"""What the owner tells the checks: climate, loads, limits, people. Every value has a usual one."""

from enum import StrEnum
from typing import Annotated

from pydantic import Field

from baywright.model.base import Frozen, Millimetres


class BoardMaterial(StrEnum):
    """What the boards are of."""

    BIRCH_PLYWOOD = "birch plywood"
    FIBREBOARD = "medium-density fibreboard"
    PARTICLEBOARD = "particleboard"
    STRAND_BOARD = "oriented strand board"
    RED_OAK = "red oak"
    SPRUCE = "spruce, strength class C24"
    OTHER = "another material"
    """Nothing is known of it, so what rests on its stiffness is not checked, and the finding says so."""


class Climate(StrEnum):
    """Where the run stands: service classes 1 to 3 of EN 1995-1-1, 2.3.1.3."""

    HEATED = "heated"
    ROOFED = "roofed"
    OUTDOORS = "outdoors"


class Grip(StrEnum):
    """How well hands hold the boxes (coupling of the revised NIOSH lifting equation, table 6)."""

    GOOD = "good"
    FAIR = "fair"
    POOR = "poor"


class Safety(Frozen):
    """Assumptions and limits of the checks."""

    board_material: BoardMaterial = BoardMaterial.BIRCH_PLYWOOD
    climate: Climate = Climate.HEATED
    span_ratio: Annotated[float, Field(ge=100, le=1_000)] = 200.0
    """A board may sag by its span over this, creep included. 144 and 240 stand in trade standards for shelving, 200 and
    300 are common practice, and from about 400 on the eye sees nothing.
    """
    shelf_load_kg_m2: Annotated[float, Field(ge=0, le=2_000)] = 195.0
    """Load of a shelf; 195 is the 40 lb/ft² of the Architectural Woodwork Standards, 1st edition 2009."""
    point_load_kg: Annotated[float, Field(ge=0, le=500)] = 0.0
    """One heavy thing in the middle of a shelf, besides."""
    top_load_kg_m2: Annotated[float, Field(ge=0, le=2_000)] = 195.0
    """Load of the top between two uprights."""
    lasting_share: Annotated[float, Field(ge=0, le=1)] = 1.0
    """Share of the load that stays for years and so makes boards creep."""
    load_allowance_kg: Annotated[float, Field(ge=0, le=100)] = 2.0
    """What is added to every loaded box for what is put in later; common practice."""
    raised_rear_mm: Annotated[float, Field(ge=0, le=100)] = 10.0
    """By how much the floor may make the run lean forward over its depth; common practice, a carpet does as much."""
    set_down_height_mm: Annotated[float, Field(ge=0, le=2_000)] = 900.0
    """Height of the bench that a box is lifted onto."""
    grip: Grip = Grip.FAIR
    lifts_a_minute: Annotated[float, Field(ge=0, le=15)] = 0.2
    twist_degrees: Annotated[float, Field(ge=0, le=180)] = 30.0
    """By how much a person turns on the way to the bench."""
    reach_height_mm: Annotated[float, Field(ge=500, le=2_500)] = 1_700.0
    """Highest grip that the shortest user can reach and see into; common practice."""
    connector_mm: Annotated[float, Field(ge=0, le=500)] = 0.0
    """By how much handles, plugs and cables stand out at a box, front and rear together."""
    walkway_mm: Millimetres | None = None
    """Free floor in front of the run; None where it is not known."""
