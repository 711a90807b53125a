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


class BoxStatus(StrEnum):
    """What planning does with a box."""

    OWNED = "owned"
    """It is there and gets a drawer."""
    WISHED = "wished"
    """It may be bought later: a drawer's room is kept free for it, but no drawer is made yet."""
    ELSEWHERE = "elsewhere"
    """It is kept in some other place and gets no drawer here."""


class BoxSize(Frozen):
    """An outside size that boxes share: width across the drawer front, depth front to back, height with lid."""

    id: Identifier
    name: Label
    width_mm: BoxDimensionMillimetres
    depth_mm: BoxDimensionMillimetres
    height_mm: BoxDimensionMillimetres
    may_turn: bool = False
    """Whether a box may stand turned by a quarter, its depth across the drawer front."""
    most_abreast: Annotated[int, Field(ge=1, le=3)] = 1
    """So many boxes may stand side by side in a drawer that such a box is in; 1 asks for a drawer of its own."""
    most_behind: Annotated[int, Field(ge=1, le=3)] = 1
    """So many boxes may stand one behind another in a drawer that such a box is in."""


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
    status: BoxStatus = BoxStatus.OWNED
