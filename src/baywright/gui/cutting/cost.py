"""What the run costs: the whole in words, and a table of the shares of materials and bays and of everything to buy.

Law: a price that is missing is said to be missing; where one is, a sum is told as the sum of the rest.
"""

from dataclasses import dataclass
from decimal import Decimal

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel, QSizePolicy, QVBoxLayout, QWidget

from baywright.gui.cutting.words import proof_words
from baywright.gui.tables.column import Column
from baywright.gui.tables.model import RowTable
from baywright.gui.tables.view import TableView
from baywright.gui.wording import count_words, mass_words
from baywright.model.cost import Cost, CostLine
from baywright.model.cutting import CuttingPlan
from baywright.model.money import MISSING, format_money

NOT_KNOWN = "What it costs is known once the cutting is."
NO_ROWS = "Nothing costs anything yet."
_MOST_NAMED = 2


@dataclass(frozen=True)
class ShareLine:
    """One line of the table: a share of the whole, or a thing to buy."""

    of: str
    name: str
    cost: Decimal | None
    missing: int
    mass_kg: float | None
    currency: str
    note: str = ""

    @property
    def cost_words(self) -> str:
        """The cost; what lacks prices is told so."""
        if self.cost is None:
            return MISSING
        words = format_money(self.cost, self.currency)
        return f"{words} + {count_words(self.missing, 'price')} missing" if self.missing else words


def cost_words(cost: Cost | None) -> str:
    """The whole in a few sentences."""
    if cost is None:
        return NOT_KNOWN
    whole = f"{format_money(cost.gross, cost.currency)} in all"
    if cost.vat:
        net, vat = format_money(cost.net, cost.currency), format_money(cost.vat, cost.currency)
        whole += f" ({net} and {vat} tax)"
    whole += f", {mass_words(cost.mass_kg)} kg empty"
    if cost.not_weighed:
        whole += f" without {count_words(len(cost.not_weighed), 'thing')} of unknown mass"
    if cost.is_complete:
        return f"{whole}. Every price is known."
    return f"{whole}. ⚠ {count_words(len(cost.missing), 'price')} missing: {_listed(cost.missing)}; not in the sum."


def _listed(names: tuple[str, ...]) -> str:
    more = f" and {len(names) - _MOST_NAMED} more" if len(names) > _MOST_NAMED else ""
    return ", ".join(names[:_MOST_NAMED]) + more


def share_lines(cost: Cost | None, plan: CuttingPlan | None = None) -> list[tuple[str, ShareLine]]:
    """Materials, bays and things to buy, in that order; beside a material how sure its layouts are."""
    if cost is None:
        return []
    sure = {cutting.material: proof_words(cutting) for cutting in plan.sheets} if plan is not None else {}
    lines = [
        ShareLine(
            of, share.name, share.cost, share.missing, share.mass_kg, cost.currency,
            sure.get(share.name, "") if of == "material" else "",
        )
        for of, shares in (("material", cost.by_material), ("bay", cost.by_bay))
        for share in shares
    ]  # fmt: skip
    lines += [
        ShareLine(
            line.group.value, _quantity_words(line), line.cost, int(line.cost is None), None,
            cost.currency, line.note,
        )
        for line in cost.lines
    ]  # fmt: skip
    return [(str(number), line) for number, line in enumerate(lines)]


def _quantity_words(line: CostLine) -> str:
    unit = line.unit.removesuffix("s") if line.quantity == 1 else line.unit
    return f"{line.name}: {line.quantity:g} {unit}"


def share_columns() -> tuple[Column[ShareLine], ...]:
    """The columns of the table."""
    return (
        Column("What", lambda x: x.name, lambda x: x.name),
        Column("Cost", lambda x: x.cost_words, lambda x: x.cost, "Of what has a price, as prices were entered",
               is_number=True),
        Column("Mass, kg", lambda x: mass_words(x.mass_kg), lambda x: x.mass_kg, "Of what is known", is_number=True),
        Column("Of", lambda x: x.of, lambda x: x.of, "Share of a material or a bay, or a thing to buy"),
        Column("Note", lambda x: x.note, lambda x: x.note),
    )  # fmt: skip


class CostView(QWidget):
    """The words and the table."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.words = QLabel(self)
        self.words.setWordWrap(True)
        self.words.setTextFormat(Qt.TextFormat.PlainText)
        self.words.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Minimum)
        self.table: RowTable[ShareLine] = RowTable(share_columns(), self)
        self.view = TableView(self.table, "Cost and mass", NO_ROWS, self)
        column = QVBoxLayout(self)
        column.setContentsMargins(4, 4, 4, 0)
        column.addWidget(self.words)
        column.addWidget(self.view, 1)
        self.show_cost(None)

    def show_cost(self, cost: Cost | None, plan: CuttingPlan | None = None) -> None:
        """Show what the run costs with a cutting; None says that it is not known."""
        self.words.setText(cost_words(cost))
        self.words.setToolTip("\n".join(cost.missing) if cost is not None else "")
        were = self.table.total
        self.table.show_records(share_lines(cost, plan))
        if self.table.total and not were:
            self.view.fit_columns(140)
