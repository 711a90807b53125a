"""From what is needed to packs to buy, with what the owner set by hand.

Laws: packs × pack size is never less than need and allowance together, and one pack fewer would be; where packs of two
sizes together are cheapest, each is a line of its own (`WS4x40`, `WS4x40b`). What is set by hand beats what is worked
out; it is told where it does not serve or is about a line that is no longer there, and kept.
"""

import math
from collections.abc import Iterable, Sequence
from string import ascii_lowercase

from baywright.making.hardware.choice import Choice, Taken, choose, why_not
from baywright.making.hardware.need import Need
from baywright.model.catalogue import Adjustment, CatalogueItem, ExtraItem, HardwareKind, HardwareStock
from baywright.model.making import HardwareItem

_NOISE = 1e-9


def packed(needs: Iterable[Need], stock: HardwareStock) -> tuple[list[HardwareItem], list[str]]:
    """The lines of the order with the owner's own ones at its end, and what to say of them."""
    remarks: list[str] = []
    lines = [line for need in needs if need.needed > 0 for line in _lines(need, stock, remarks)]
    lines = [*(_finished(line, stock) for line in lines), *map(_extra, stock.extras)]
    known = {line.number for line in lines if not line.is_extra}
    remarks += [
        f"What was set by hand for {adjustment.number} has no effect now, for nothing of that number is needed. It is "
        "kept, in case it is again."
        for adjustment in stock.adjustments
        if adjustment.number not in known
    ]
    return lines, remarks


def packs_for(amount: float, pack_size: float) -> int:
    """The fewest packs that hold an amount; noise in the last digits costs no pack."""
    return math.ceil(amount / pack_size - _NOISE)


def _lines(need: Need, stock: HardwareStock, remarks: list[str]) -> list[HardwareItem]:
    """The lines of a need before what is set by hand about price, supplier, note and buying."""
    adjustment = stock.adjustment(need.number) or Adjustment(number=need.number)
    allowance = need.allowance if adjustment.spare is None else adjustment.spare
    amount = need.needed + allowance
    by_hand = _by_hand(need, adjustment, stock, remarks)
    if by_hand is not None:
        size = adjustment.pack_size or by_hand.pack_size
        taken: tuple[Taken, ...] = (Taken(by_hand.replace(pack_size=size), packs_for(amount, size)),)
    else:
        choice = _choice(need, amount, adjustment, stock)
        taken = choice.taken
        if choice.reason and not adjustment.is_left_out:
            remarks.append(f"{need.number}: {choice.reason}")
    if not taken:
        size = adjustment.pack_size or need.pack_size
        return [_line(need, need.number, need.needed, allowance, size, packs_for(amount, size))]
    if adjustment.is_left_out:
        return [_line(need, need.number, need.needed, allowance, taken[0].item.pack_size, 0, taken[0].item)]
    return _divided(need, allowance, taken)


def _by_hand(need: Need, adjustment: Adjustment, stock: HardwareStock, remarks: list[str]) -> CatalogueItem | None:
    """The item that the owner chose for a need, with a word where it does not serve."""
    if adjustment.item_id is None:
        return None
    item = stock.item(adjustment.item_id)
    if item is None:
        remarks.append(f"{need.number}: the item chosen by hand is not in the catalogue any more; another is taken.")
    elif why := why_not(need, item):
        asked = f"{need.kind.value} {', '.join(measure.words for measure in need.measures)}".strip()
        remarks.append(f"{need.number}: “{item.name}” was chosen by hand, but {why}; wanted is a {asked}.")
    return item


def _choice(need: Need, amount: float, adjustment: Adjustment, stock: HardwareStock) -> Choice:
    """What the catalogue offers, of the pack size set by hand where one is."""
    if adjustment.pack_size is None:
        return choose(need, amount, stock.catalogue)
    of_size = [item for item in stock.catalogue if item.pack_size == adjustment.pack_size]
    return Choice(choose(need, amount, of_size).taken)


def _divided(need: Need, allowance: float, taken: Sequence[Taken]) -> list[HardwareItem]:
    """One line for each size of pack, larger ones first; all but the last are filled to the brim."""
    lines: list[HardwareItem] = []
    needed, spare = need.needed, allowance
    together = " and ".join(f"{one.packs} × {one.item.pack_size:g}" for one in taken)
    for place, one in enumerate(taken):
        is_last = place == len(taken) - 1
        held = one.packs * one.item.pack_size
        here = needed if is_last else min(needed, held)
        extra = spare if is_last else held - here
        number = need.number if place == 0 else f"{need.number}{ascii_lowercase[place % 26]}"
        line = _line(need, number, here, extra, one.item.pack_size, one.packs, one.item)
        if len(taken) > 1:
            words = f"packs of two sizes cost least: {together} {need.unit}"
            words = words if len(taken) == 2 else words.replace("two", "several")
            line = line.replace(note="; ".join(filter(None, (line.note, words))))
        lines.append(line)
        needed, spare = needed - here, spare - extra
    return lines


def _line(
    need: Need, number: str, needed: float, allowance: float, pack_size: float, packs: int,
    item: CatalogueItem | None = None,
) -> HardwareItem:  # fmt: skip
    share = needed / need.needed
    line = HardwareItem(
        number=number, name=need.name, specification=need.specification, needed=needed, allowance=allowance,
        unit=need.unit, pack_size=pack_size, packs=packs, note=need.note, kind=need.kind,
        bays=tuple((bay, amount * share) for bay, amount in need.bays),
    )  # fmt: skip
    if item is None:
        return line
    return line.replace(
        item_id=item.id, item_name=item.name, price=item.price, supplier=item.supplier,
        order_number=item.order_number, mass_kg=None if item.mass_kg is None else item.mass_kg * needed,
        note="; ".join(filter(None, (need.note, item.note))),
    )  # fmt: skip


def _finished(line: HardwareItem, stock: HardwareStock) -> HardwareItem:
    """The line with price, supplier, note and buying as set by hand."""
    adjustment = stock.adjustment(line.number)
    if adjustment is None:
        return line
    chosen: dict[str, object] = {
        name: value for name in ("price", "supplier", "note") if (value := getattr(adjustment, name)) is not None
    }
    if adjustment.is_left_out:
        chosen |= {"packs": 0, "is_left_out": True}
    return line.replace(**chosen) if chosen else line


def _extra(extra: ExtraItem) -> HardwareItem:
    """A line of the owner's own."""
    return HardwareItem(
        number=extra.id, name=extra.name, specification=extra.specification, needed=extra.needed, allowance=0.0,
        unit=extra.unit, pack_size=extra.pack_size, packs=packs_for(extra.needed, extra.pack_size), note=extra.note,
        kind=HardwareKind.OTHER, item_id=extra.id, price=extra.price, supplier=extra.supplier, is_extra=True,
    )  # fmt: skip
