"""Hardware as shops sell it, and what the owner changed in the order.

Laws: an item of the catalogue is offered for a line of the order only where its kind and its measures serve; what the
owner set by hand beats it. Prices are of a pack; a missing one is None.
"""

from collections import Counter
from enum import StrEnum
from string import ascii_lowercase
from typing import Annotated, Self

from pydantic import Field, model_validator

from baywright.model.base import Frozen, Identifier, Label, PositiveMillimetres, Text
from baywright.model.money import Price

PackSize = Annotated[float, Field(gt=0, le=100_000)]


class HardwareKind(StrEnum):
    """What a piece of hardware is for."""

    RUNNER = "runner"
    SYSTEM_SCREW = "system screw"
    WOOD_SCREW = "wood screw"
    POCKET_SCREW = "pocket screw"
    TENON = "loose tenon"
    DOWEL = "dowel"
    CONNECTOR = "connecting bolt"
    PIN = "shelf pin"
    FOOT = "foot"
    WALL_FIXING = "wall fixing"
    WALL_ANGLE = "wall angle"
    EDGING = "edging"
    GLUE = "glue"
    FINISH = "finish"
    OTHER = "other"


class CatalogueItem(Frozen):
    """One article that can be bought; measures that are None do not matter for its kind."""

    id: Identifier
    kind: HardwareKind
    name: Label
    length_mm: PositiveMillimetres | None = None
    diameter_mm: PositiveMillimetres | None = None
    thickness_mm: PositiveMillimetres | None = None
    """Room a runner takes on each side of the drawer; thickness of a tenon or an edging."""
    width_mm: PositiveMillimetres | None = None
    load_class_kg: Annotated[float, Field(gt=0, le=1_000)] | None = None
    """Rated load of a pair of runners, or of a foot."""
    pack_size: PackSize = 1.0
    """Pieces, pairs, metres, litres or square metres in a pack, as the order counts its kind."""
    price: Price | None = None
    """Of one pack."""
    mass_kg: Annotated[float, Field(gt=0, le=1_000)] | None = None
    """Of one piece, pair, metre, litre or square metre; None where it is not known."""
    supplier: Text = ""
    order_number: Text = ""
    note: Text = ""


OF_WHOLE_NEED = frozenset({"item_id", "spare", "pack_size"})
"""Fields of an adjustment that count for the whole need, also where two sizes of packs make two lines of it."""


def number_of_need(number: str) -> str:
    """The number of the line that an adjustment of the whole need belongs to: `WS4x40` for `WS4x40b`."""
    return number.rstrip(ascii_lowercase) or number


class Adjustment(Frozen):
    """What the owner set by hand for one line of the hardware order; None leaves what is worked out."""

    number: Label
    """The line's number."""
    item_id: Identifier | None = None
    """The catalogue item to take."""
    spare: Annotated[float, Field(ge=0, le=100_000)] | None = None
    pack_size: PackSize | None = None
    price: Price | None = None
    supplier: Text | None = None
    note: Text | None = None
    is_left_out: bool = False
    """Not to be bought: it is at hand already."""


class ExtraItem(Frozen):
    """A line that the owner added to the order."""

    id: Identifier
    name: Label
    specification: Text = ""
    needed: Annotated[float, Field(ge=0, le=100_000)] = 1.0
    unit: Label = "pieces"
    pack_size: PackSize = 1.0
    price: Price | None = None
    supplier: Text = ""
    note: Text = ""


class HardwareStock(Frozen):
    """The catalogue and the owner's changes to the order."""

    catalogue: Annotated[tuple[CatalogueItem, ...], Field(max_length=5_000)] = ()
    adjustments: Annotated[tuple[Adjustment, ...], Field(max_length=1_000)] = ()
    extras: Annotated[tuple[ExtraItem, ...], Field(max_length=1_000)] = ()

    @model_validator(mode="after")
    def _each_is_there_once(self) -> Self:
        for what, ids in (
            ("item id", [item.id for item in self.catalogue]),
            ("line number", [adjustment.number for adjustment in self.adjustments]),
            ("id of an added line", [extra.id for extra in self.extras]),
        ):
            doubled = [identifier for identifier, count in Counter(ids).items() if count > 1]
            if doubled:
                raise ValueError(f"The {what} “{doubled[0]}” is used twice; each may stand there once.")
        return self

    def item(self, item_id: str) -> CatalogueItem | None:
        """The item of the catalogue with that id; None where there is none."""
        return next((item for item in self.catalogue if item.id == item_id), None)

    def extra(self, extra_id: str) -> ExtraItem | None:
        """The owner's own line with that id; None where there is none."""
        return next((extra for extra in self.extras if extra.id == extra_id), None)

    def adjustment(self, number: str) -> Adjustment | None:
        """What was set by hand for the line of that number; None where nothing was."""
        return next((adjustment for adjustment in self.adjustments if adjustment.number == number), None)
