"""What the run costs and weighs.

Laws: a missing price is told and never reckoned as nothing: where one is missing, a sum is the sum of what is known
and says how many are missing. The lines add up to the whole, and so do the shares of the materials and of the bays.
"""

from decimal import Decimal
from enum import StrEnum

from baywright.model.base import Frozen


class CostGroup(StrEnum):
    """What a cost is for."""

    SHEETS = "sheets"
    BARS = "bars and edging"
    HARDWARE = "hardware"


class CostLine(Frozen):
    """One thing to buy."""

    group: CostGroup
    number: str
    """Number of the hardware line, or id of the stock."""
    name: str
    quantity: float
    unit: str
    unit_price: Decimal | None
    cost: Decimal | None
    """As entered, with or without tax, to the smallest coin; None where the price is missing."""
    supplier: str = ""
    note: str = ""
    """E.g. that it is owned already."""


class CostShare(Frozen):
    """What one material or one bay has of the whole."""

    name: str
    cost: Decimal
    """Of what has a price."""
    missing: int
    """How many prices are missing in it."""
    mass_kg: float


class Cost(Frozen):
    """The whole."""

    currency: str
    lines: tuple[CostLine, ...]
    by_material: tuple[CostShare, ...]
    by_bay: tuple[CostShare, ...]
    net: Decimal
    vat: Decimal
    gross: Decimal
    """Of what has a price."""
    missing: tuple[str, ...]
    """What has no price, by name."""
    mass_kg: float
    """Of the empty run: boards and hardware whose mass is known."""
    not_weighed: tuple[str, ...] = ()
    """What is not in the mass, by name."""
    prices_include_vat: bool = True
    """Whether the costs of lines and shares have the tax in them; they add up to `gross` then, else to `net`."""

    @property
    def is_complete(self) -> bool:
        """Whether every price is known."""
        return not self.missing
