"""From what is needed to packs to buy.

Laws: packs × pack size is never less than need and allowance together, and one pack fewer would be.
"""

import math

from baywright.model.making import HardwareItem

LOSS_SHARE = 0.10
"""Small hardware ordered beyond the count, for loss: common practice."""


def pieces(
    number: str, name: str, specification: str, needed: int, pack_size: int, *,
    unit: str = "pieces", loss_share: float = LOSS_SHARE, note: str = "",
) -> HardwareItem:  # fmt: skip
    """One line of countable things; the allowance is rounded up to whole pieces."""
    allowance = math.ceil(needed * loss_share - 1e-9)
    return order(number, name, specification, needed, allowance, unit, pack_size, note)


def order(
    number: str, name: str, specification: str, needed: float, allowance: float, unit: str, pack_size: float, note: str
) -> HardwareItem:
    """One line of the order, with the packs that cover need and allowance."""
    return HardwareItem(
        number=number, name=name, specification=specification, needed=needed, allowance=allowance, unit=unit,
        pack_size=pack_size, packs=math.ceil((needed + allowance) / pack_size - 1e-9), note=note,
    )  # fmt: skip
