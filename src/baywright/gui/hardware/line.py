"""The lines of the hardware order as they are edited: what was worked out, what the owner set, what it costs."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from decimal import Decimal

from baywright.app.commands import Command, EditRefused
from baywright.app.edits.hardware import AdjustItem, ChangeExtra
from baywright.gui.fields.kinds import LiveChoiceKind, NumberKind, PriceKind, TextKind
from baywright.gui.tables.column import Column
from baywright.gui.tables.editing import CellKind, value_column
from baywright.gui.wording import count_words
from baywright.model.catalogue import Adjustment
from baywright.model.length import LengthUnit
from baywright.model.making import HardwareItem, Manufacture
from baywright.model.money import format_money
from baywright.model.project import Project

NO_ARTICLE = "none chosen"
OF_EXTRAS = frozenset({"name", "specification", "needed", "unit"})
"""What can be changed of lines that the owner added, and of no others."""
NOT_OF_EXTRAS = frozenset({"spare", "item_id", "is_left_out"})
"""What can be set by hand of lines that the program worked out, and of no others."""
BUYING: tuple[tuple[object, str], ...] = ((False, "buy"), (True, "at hand"))
_SET_WORDS = {"item_id": "article", "pack_size": "pack", "is_left_out": "at hand"}


@dataclass(frozen=True)
class OrderLine:
    """One line of the order; `by_hand` names what the owner set."""

    item: HardwareItem
    by_hand: tuple[str, ...] = ()

    @property
    def name(self) -> str:
        """What it is."""
        return self.item.name

    @property
    def specification(self) -> str:
        """What exactly."""
        return self.item.specification

    @property
    def needed(self) -> float:
        """How much is needed."""
        return self.item.needed

    @property
    def unit(self) -> str:
        """What the need is counted in."""
        return self.item.unit

    @property
    def spare(self) -> float:
        """How much more is ordered for loss and waste."""
        return self.item.allowance

    @property
    def pack_size(self) -> float:
        """How much is in a pack."""
        return self.item.pack_size

    @property
    def price(self) -> Decimal | None:
        """Of a pack."""
        return self.item.price

    @property
    def supplier(self) -> str:
        """Who sells it."""
        return self.item.supplier

    @property
    def note(self) -> str:
        """Anything else."""
        return self.item.note

    @property
    def item_id(self) -> str:
        """The article that was taken from the catalogue; empty for none."""
        return "" if self.item.is_extra else self.item.item_id

    @property
    def is_left_out(self) -> bool:
        """Whether it is at hand already."""
        return self.item.is_left_out


def order_lines(made: Manufacture | None, project: Project) -> list[tuple[str, OrderLine]]:
    """The lines of the order by their numbers; several packs for one need are told apart."""
    set_by_hand = {each.number: each for each in project.hardware.adjustments}
    seen: dict[str, int] = {}
    lines = []
    for item in made.hardware if made is not None else ():
        seen[item.number] = count = seen.get(item.number, 0) + 1
        by_hand = _set_fields(set_by_hand.get(item.number))
        lines.append((item.number if count == 1 else f"{item.number}#{count}", OrderLine(item, by_hand)))
    return lines


def _set_fields(adjustment: Adjustment | None) -> tuple[str, ...]:
    if adjustment is None:
        return ()
    plain = Adjustment(number=adjustment.number)
    return tuple(
        field
        for field in Adjustment.model_fields
        if field != "number" and getattr(adjustment, field) != getattr(plain, field)
    )


def order_kinds(
    project: Callable[[], Project], articles: Callable[[], tuple[tuple[object, str], ...]]
) -> dict[str, CellKind]:
    """How the cells of the order are edited; `articles` tells what can be chosen for the present line."""
    return {
        "name": TextKind(may_be_empty=False),
        "specification": TextKind(),
        "needed": NumberKind(),
        "unit": TextKind(may_be_empty=False),
        "spare": NumberKind("", "as worked out"),
        "pack_size": NumberKind("", "as worked out"),
        "price": PriceKind(lambda: project().pricing.currency),
        "supplier": TextKind(),
        "note": TextKind(),
        "item_id": LiveChoiceKind(articles),
        "is_left_out": LiveChoiceKind(lambda: BUYING),
    }


_COLUMNS = (
    ("Name", "name", "What it is; of lines that you added it can be changed"),
    ("What exactly", "specification", "Measures and make; of lines that you added it can be changed"),
    ("Needed", "needed", "How much is needed; of lines that you added it can be changed"),
    ("Unit", "unit", "What is counted"),
    ("Spare", "spare", "Extra for loss and waste; empty it to have it worked out again"),
    ("In a pack", "pack_size", "How much is in a pack; empty it to have it worked out again"),
    ("Price", "price", "Of one pack; empty it to take that of the catalogue again"),
    ("Article", "item_id", "What is taken from your catalogue; choose another one that serves"),
    ("Buy", "is_left_out", "Whether it is bought, or at hand already"),
    ("Supplier", "supplier", "Who sells it"),
    ("Note", "note", "Anything else"),
)


def order_columns(
    unit: Callable[[], LengthUnit], project: Callable[[], Project], kinds: dict[str, CellKind]
) -> list[Column[OrderLine]]:
    """The columns of the order."""
    made: dict[str, Column[OrderLine]] = {
        field: value_column(title, field, kinds[field], hint, unit) for title, field, hint in _COLUMNS
    }

    def article(line: OrderLine) -> str:
        return "added by you" if line.item.is_extra else line.item.item_name or NO_ARTICLE

    def cost(line: OrderLine) -> str:
        return "at hand" if line.is_left_out else format_money(line.item.cost, project().pricing.currency)

    made["item_id"] = replace(made["item_id"], text=article, write=lambda line: line.item_id)
    made["is_left_out"] = replace(made["is_left_out"], text=lambda line: "at hand" if line.is_left_out else "buy")
    return [
        Column("Item", lambda x: x.item.number, lambda x: x.item.number),
        *(made[field] for field in ("name", "specification", "needed", "unit", "spare", "pack_size")),
        Column("Packs", lambda x: str(x.item.packs), lambda x: x.item.packs, "Packs to buy", is_number=True),
        made["price"],
        Column("Cost", cost, lambda x: x.item.cost, "Of the packs to buy", is_number=True),
        *(made[field] for field in ("item_id", "is_left_out", "supplier")),
        Column("Order no.", lambda x: x.item.order_number, lambda x: x.item.order_number, "By which it is ordered"),
        made["note"],
        Column("By hand", _by_hand_words, lambda x: len(x.by_hand), "What you set for this line"),
    ]


def _by_hand_words(line: OrderLine) -> str:
    return ", ".join(_SET_WORDS.get(field, field) for field in line.by_hand)


def change_of(line: OrderLine, field: str, value: object) -> Command:
    """The command that makes an edit of a line; EditRefused where that line has no such field to set."""
    if line.item.is_extra:
        if field in NOT_OF_EXTRAS:
            raise EditRefused("A line that you added has none of that; change what is needed, or remove the line.")
        return ChangeExtra(line.item.item_id, field, value)
    if field in OF_EXTRAS:
        raise EditRefused("That follows from the run. What you want besides goes into a line of your own.")
    if value == "":
        value = None
    return AdjustItem(line.item.number, field, value)


def total_words(made: Manufacture | None, project: Project) -> str:
    """What the hardware costs, missing prices told; empty while there is no order."""
    lines = [item for item in made.hardware if not item.is_left_out] if made is not None else []
    if not lines:
        return ""
    known = sum((item.cost for item in lines if item.cost is not None), Decimal(0))
    missing = [item.name for item in lines if item.cost is None]
    words = f"Hardware: {format_money(known, project.pricing.currency)}"
    if missing:
        named = ", ".join(missing[:3]) + (f" and {len(missing) - 3} more" if len(missing) > 3 else "")
        return f"{words}. ⚠ {count_words(len(missing), 'price')} missing, not in the sum: {named}."
    return f"{words}. Every price is known."


def order_remarks(made: Manufacture | None) -> tuple[str, ...]:
    """What there is to say of lines of the order, such as why no article of the catalogue serves."""
    if made is None:
        return ()
    starts = _starts(made)
    return tuple(remark for remark in made.remarks if starts and remark.startswith(starts))


def other_remarks(made: Manufacture | None) -> tuple[str, ...]:
    """What there is to say of parts, joints and sizes, the order left out."""
    if made is None:
        return ()
    of_order = set(order_remarks(made))
    return tuple(remark for remark in made.remarks if remark not in of_order)


def _starts(made: Manufacture) -> tuple[str, ...]:
    return tuple(f"{item.number}:" for item in made.hardware)
