"""The cells of one catalogue row turned into the values of an item, each fault with its cell.

Laws: a bare length is in the unit of its heading, else in the project's, a bare mass in kilograms; an empty cell means
“not given”; all faults of a row are found, not only the first.
"""

import re
from collections.abc import Callable
from decimal import Decimal

from baywright.model.catalogue import HardwareKind
from baywright.model.length import LengthError, LengthUnit, parse_length
from baywright.model.mass import MassError, parse_mass
from baywright.model.money import MoneyError, parse_money
from baywright.model.number import NumberError, even_blanks, parse_number
from baywright.storage.catalogue.columns import (
    MEASURES,
    CatalogueColumn,
    CatalogueMatching,
    currency_of_column,
    unit_of_column,
)
from baywright.storage.catalogue.kinds import kind_meant
from baywright.storage.preview import CellFault
from baywright.storage.table import Row, Table, column_letters
from baywright.storage.words import plain_word, why_and_mend, with_unit

Values = dict[str, object]
"""Fields of an item and what a row says of them; a field of which it says nothing is not there."""

_TEXTS = {
    CatalogueColumn.NAME: "name",
    CatalogueColumn.SUPPLIER: "supplier",
    CatalogueColumn.ORDER_NUMBER: "order_number",
    CatalogueColumn.NOTE: "note",
}
_PACK = re.compile(r"(?P<amount>[0-9.,  ]+?) ?(?P<unit>[a-z]*)")
_PARTS = {"ml": 1000, "cl": 100, "cm": 100, "mm": 1000}
"""Units that are so many in one of those in which the order counts (litres, metres)."""
_THOUSANDS = re.compile(r"[1-9][0-9]{0,2}\.[0-9]{3}")
"""What is a thousand or more where a point divides thousands, and some few with decimals elsewhere."""
_WHOLE_WORDS = """
    pc pcs piece pieces pr pair pairs m metre metres meter meters l litre litres liter liters m2 sqm roll
    stuck stk st paar pieces paires metres piezas pares pezzi metri stuks
"""
_WHOLE = frozenset(_WHOLE_WORDS.split())
"""Words that may stand behind a number of pieces, pairs, metres or litres."""


class ItemReader:
    """Reads rows of one catalogue table by one matching."""

    def __init__(self, table: Table, matching: CatalogueMatching, unit: LengthUnit, currency: str) -> None:
        self._table, self._matching = table, matching
        self._unit, self._currency = unit, currency
        self._units = {
            column: unit_of_column(table.headings[place], column) if place < len(table.headings) else ""
            for column, place in matching.columns.items()
        }
        place = matching.place(CatalogueColumn.PRICE)
        self._priced_in = "" if place is None else currency_of_column(table.column_name(place))

    def text(self, row: Row, column: CatalogueColumn) -> str:
        """What stands in the row under that meaning; empty where the meaning has no column."""
        place = self._matching.place(column)
        return "" if place is None else row.cell(place)

    def fault(self, row: Row, column: CatalogueColumn, why: str, mend: str = "") -> CellFault:
        """A fault of the row's cell with that meaning."""
        place = self._matching.place(column)
        if place is None:
            return CellFault("", "", "", why, mend)
        return CellFault(
            f"{column_letters(place)}{row.number}", self._table.column_name(place), row.cell(place), why, mend
        )

    def read(self, row: Row) -> tuple[Values, list[CellFault]]:
        """The values of the row and the faults of its cells; values with a fault are not there."""
        faults: list[CellFault] = []
        values: Values = {field: text for column, field in _TEXTS.items() if (text := self.text(row, column))}
        if "name" in values:
            values["name"] = even_blanks(str(values["name"]))
        else:
            faults.append(self.fault(row, CatalogueColumn.NAME, "the item has no name", "Write what it is called."))
        self._kind(row, values, faults)
        for column, field in MEASURES.items():
            self._value(row, column, field, values, faults, self._length(column))
        self._value(row, CatalogueColumn.LOAD, "load_class_kg", values, faults, self._mass(CatalogueColumn.LOAD))
        self._value(row, CatalogueColumn.MASS, "mass_kg", values, faults, self._mass(CatalogueColumn.MASS))
        self._value(row, CatalogueColumn.PRICE, "price", values, faults, self._price)
        self._value(row, CatalogueColumn.PACK, "pack_size", values, faults, pack_size)
        return values, faults

    def _kind(self, row: Row, values: Values, faults: list[CellFault]) -> None:
        text = self.text(row, CatalogueColumn.KIND)
        kind = kind_meant(text)
        if kind is not None:
            values["kind"] = kind
            return
        kinds = ", ".join(HardwareKind)
        why = f"“{text}” is no kind of hardware that this program knows" if text else "the item has no kind"
        faults.append(self.fault(row, CatalogueColumn.KIND, why, f"Write one of: {kinds}."))

    def _value(
        self, row: Row, column: CatalogueColumn, field: str, values: Values, faults: list[CellFault],
        read: Callable[[str], float | Decimal],
    ) -> None:  # fmt: skip
        """Take one value over, or the reason why it cannot be read."""
        text = self.text(row, column)
        if not text:
            return
        try:
            values[field] = read(text)
        except (LengthError, MassError, MoneyError, NumberError) as trouble:
            faults.append(self.fault(row, column, *why_and_mend(str(trouble))))

    def _length(self, column: CatalogueColumn) -> Callable[[str], float]:
        return lambda text: parse_length(with_unit(text, self._units[column]), self._unit)

    def _mass(self, column: CatalogueColumn) -> Callable[[str], float]:
        unit = self._units.get(column, "").removesuffix("s") or "kg"
        return lambda text: parse_mass(text, unit)

    def _price(self, text: str) -> Decimal:
        if self._priced_in not in ("", self._currency):
            raise MoneyError(
                f"The prices of this column are in {self._priced_in}, but this project reckons in {self._currency}; "
                "convert them first, and change the heading."
            )
        return parse_money(text, self._currency, is_rounded=True)


def pack_size(text: str) -> float:
    """What a cell says of the size of a pack: `200`, `25 m`, `750 ml` (0.75 litres), `50 pieces`.

    Raises `NumberError` where it says none.
    """
    accepted = "Write for example 200, 25 m or 0.75 l."
    match = _PACK.fullmatch(plain_word(text))
    unit = match["unit"] if match else ""
    if match is None or (unit and unit not in _WHOLE and unit not in _PARTS):
        raise NumberError(f"“{text}” is not the size of a pack. {accepted}")
    number = match["amount"].strip()
    if unit not in ("l", "m") and _THOUSANDS.fullmatch(number):
        whole, plain = number.replace(".", ""), f"{float(number):g}"
        raise NumberError(f"“{text}” can be read as {whole} or as {plain}; write {whole} or {plain}.")
    try:
        amount = parse_number(number)
    except NumberError as trouble:
        raise NumberError(f"{trouble} {accepted}" if "read as" not in str(trouble) else str(trouble)) from None
    if amount <= 0:
        raise NumberError(f"A pack must hold something. {accepted}")
    return float(amount / _PARTS.get(unit, 1))
