"""The boxes to be stored and the sizes they come in."""

from enum import StrEnum
from typing import Annotated

from pydantic import Field

from baywright.model.base import Frozen, Identifier, Kilograms, Label, PositiveMillimetres, Text

BoxDimensionMillimetres = Annotated[PositiveMillimetres, Field(ge=10.0, le=3_000.0)]


class Use(StrEnum):
    """How often a box is taken out."""

    DAILY = "daily"
    WEEKLY = "weekly"
    SELDOM = "seldom"


class BoxSize(Frozen):
    """An outside size that boxes share: width across the drawer front, depth front to back, height with lid."""

    id: Identifier
    name: Label
    width_mm: BoxDimensionMillimetres
    depth_mm: BoxDimensionMillimetres
    height_mm: BoxDimensionMillimetres


class Box(Frozen):
    """One stackable box. `loaded_mass_kg` is box and contents together; None where it has not been weighed."""

    id: Identifier
    label: Label
    size_id: Identifier
    loaded_mass_kg: Kilograms | None = None
    contents: Text = ""
    group: Text = ""
    use: Use = Use.WEEKLY
    note: Text = ""
