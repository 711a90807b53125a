"""What a line of the order needs: how much of what, and which measures an item of the catalogue must have to serve.

Laws: what is counted, what is added for loss and what is sold in a pack stand apart; a measure that is not asked for
does not matter. Pack sizes given here are common practice and no offer of a shop.
"""

import math
from dataclasses import dataclass

from baywright.model.catalogue import CatalogueItem, HardwareKind

LOSS_SHARE = 0.10
"""Small hardware ordered beyond the count, for loss: common practice."""

Amounts = tuple[tuple[int, float], ...]
"""How much each bay has of something; -1 is the shelf bay. Empty: it is all along the run."""

_NEAR_MM = 0.5
"""Lengths that differ by no more are the same article in the trade."""
_FINE_MM = 0.1


@dataclass(frozen=True)
class Measure:
    """A measure that an item must have, from `least` to `most`; `words` follow the name of what is missing."""

    field: str
    least: float
    most: float
    words: str
    unit: str = "mm"
    is_needed: bool = True
    """Whether an item that does not tell it cannot be taken."""

    def fits(self, item: CatalogueItem) -> bool:
        """Whether the item has this measure."""
        value = self.of(item)
        return not self.is_needed if value is None else self.least - 1e-9 <= value <= self.most + 1e-9

    def of(self, item: CatalogueItem) -> float | None:
        """The item's measure of that name; None where it tells none."""
        value: float | None = getattr(item, self.field)
        return value


def long(length_mm: float) -> Measure:
    """Of that length."""
    return Measure("length_mm", length_mm - _NEAR_MM, length_mm + _NEAR_MM, f"{length_mm:g} mm long")


def thick(diameter_mm: float, tolerance_mm: float = _FINE_MM, *, is_needed: bool = True) -> Measure:
    """Of that diameter."""
    words = f"of {diameter_mm:g} mm diameter"
    return Measure(
        "diameter_mm", diameter_mm - tolerance_mm, diameter_mm + tolerance_mm, words, is_needed=is_needed
    )  # fmt: skip


@dataclass(frozen=True)
class Need:
    """One line of the order before anything is chosen for it."""

    number: str
    kind: HardwareKind
    name: str
    specification: str
    needed: float
    pack_size: float = 1.0
    unit: str = "pieces"
    spare: float | None = None
    """Extra for loss, in the same unit; None: the usual share, in whole pieces."""
    note: str = ""
    measures: tuple[Measure, ...] = ()
    """What an item must have, in the order in which the want of it is told."""
    bays: Amounts = ()
    """How much of it is used in which bay."""

    @property
    def allowance(self) -> float:
        """What is ordered beyond the need."""
        return float(math.ceil(self.needed * LOSS_SHARE - 1e-9)) if self.spare is None else self.spare
