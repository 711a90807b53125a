"""The cells of one inventory row turned into the values of a box, each fault with its cell.

Laws: a bare number is in the unit that its column's heading names, else in the project's (kilograms for a mass); an
empty cell means “not given”; all faults of a row are found, not only the first.
"""

from dataclasses import dataclass

from pydantic import ValidationError

from baywright.model.inventory import Box, BoxStatus, Use
from baywright.model.length import LengthError, LengthUnit, parse_length
from baywright.model.mass import MassError, parse_mass
from baywright.model.number import AmbiguousNumberError, NumberError, even_blanks, parse_number
from baywright.storage.columns import LENGTH_COLUMNS, Column, unit_in_heading
from baywright.storage.faults import first_fault
from baywright.storage.matching import Matching
from baywright.storage.preview import CellFault
from baywright.storage.table import Row, Table, column_letters
from baywright.storage.words import plain_word, why_and_mend, with_unit

MOST_OF_A_KIND = 1_000
_LONGEST_LABEL_FROM_CONTENTS = 100

_USES: dict[Use, str] = {
    Use.DAILY: "daily, day, every day, often, always, taglich, oft, haufig, quotidien, diario, dagelijks, d",
    Use.WEEKLY: "weekly, week, every week, sometimes, wochentlich, manchmal, hebdomadaire, semanal, settimanale, "
    "wekelijks, w",
    Use.SELDOM: "seldom, rarely, rare, monthly, yearly, never, selten, nie, monatlich, rarement, raro, raramente, "
    "zelden, s",
}
_STATUSES: dict[BoxStatus, str] = {
    BoxStatus.OWNED: "owned, own, there, here, bought, vorhanden, present, presente, aanwezig",
    BoxStatus.WISHED: "wished, wish, wanted, planned, later, to buy, gewunscht, geplant, souhaite, prevu, deseado, "
    "previsto, desiderato, gewenst",
    BoxStatus.ELSEWHERE: "elsewhere, kept elsewhere, away, stored elsewhere, anderswo, woanders, ailleurs, otro lugar, "
    "altrove, elders",
}
_STATUS_MEANT = {word.strip(): status for status, words in _STATUSES.items() for word in words.split(",")}
_USE_MEANT = {word.strip(): use for use, words in _USES.items() for word in words.split(",")}
_TEXT_COLUMNS = {"label": Column.LABEL, "contents": Column.CONTENTS, "group": Column.GROUP, "note": Column.NOTE}


@dataclass(frozen=True, slots=True)
class BoxFields:
    """What a row says about its boxes; None or empty where it says nothing."""

    label: str = ""
    size_name: str = ""
    width_mm: float | None = None
    depth_mm: float | None = None
    height_mm: float | None = None
    loaded_mass_kg: float | None = None
    contents: str = ""
    group: str = ""
    use: Use = Use.WEEKLY
    note: str = ""
    status: BoxStatus = BoxStatus.OWNED
    quantity: int = 1

    def values(self) -> dict[str, object]:
        """The fields of a box that do not depend on its place in the inventory."""
        return {
            "loaded_mass_kg": self.loaded_mass_kg,
            "contents": self.contents,
            "group": self.group,
            "use": self.use,
            "note": self.note,
            "status": self.status,
        }


class RowReader:
    """Reads rows of one table by one matching."""

    def __init__(self, table: Table, matching: Matching, unit: LengthUnit) -> None:
        self._table = table
        self._matching = matching
        self._unit = unit
        self._units = {
            column: unit_in_heading(table.headings[place], column) if place < len(table.headings) else ""
            for column, place in matching.columns.items()
        }

    def text(self, row: Row, column: Column) -> str:
        """What stands in the row under that meaning; empty where the meaning has no column."""
        place = self._matching.place(column)
        return "" if place is None else row.cell(place)

    def fault(self, row: Row, column: Column, why: str, mend: str = "") -> CellFault:
        """A fault of the row's cell with that meaning."""
        place = self._matching.place(column)
        if place is None:
            return CellFault("", "", "", why, mend)
        cell = f"{column_letters(place)}{row.number}"
        return CellFault(cell, self._table.column_name(place), row.cell(place), why, mend)

    def read(self, row: Row) -> tuple[BoxFields, list[CellFault]]:
        """The values of the row and the faults of its cells; values with a fault are left at “not given”."""
        faults: list[CellFault] = []
        lengths = {column: self._length(row, column, faults) for column in LENGTH_COLUMNS}
        quantity = self._quantity(row, faults)
        fields = BoxFields(
            label=self._label(row, faults),
            size_name=even_blanks(self.text(row, Column.SIZE)),
            width_mm=lengths[Column.WIDTH],
            depth_mm=lengths[Column.DEPTH],
            height_mm=lengths[Column.HEIGHT],
            loaded_mass_kg=self._mass(row, faults),
            contents=self.text(row, Column.CONTENTS),
            group=self.text(row, Column.GROUP),
            use=self._use(row, faults),
            note=self.text(row, Column.NOTE),
            status=self._status(row, faults),
            quantity=quantity,
        )
        return fields, faults + self._what_no_box_may_hold(row, fields)

    def _label(self, row: Row, faults: list[CellFault]) -> str:
        if self._matching.place(Column.LABEL) is None:
            return self.text(row, Column.CONTENTS).partition("\n")[0][:_LONGEST_LABEL_FROM_CONTENTS].strip()
        label = even_blanks(self.text(row, Column.LABEL))
        if not label:
            faults.append(self.fault(row, Column.LABEL, "the box has no label", "Write what the box is called."))
        return label

    def _length(self, row: Row, column: Column, faults: list[CellFault]) -> float | None:
        text = self.text(row, column)
        if not text:
            return None
        try:
            return parse_length(with_unit(text, self._units[column]), self._unit)
        except LengthError as trouble:
            faults.append(self.fault(row, column, *why_and_mend(str(trouble))))
            return None

    def _mass(self, row: Row, faults: list[CellFault]) -> float | None:
        text = self.text(row, Column.MASS)
        if not text:
            return None
        try:
            return parse_mass(text, self._units[Column.MASS].removesuffix("s") or "kg")
        except MassError as trouble:
            faults.append(self.fault(row, Column.MASS, *why_and_mend(str(trouble))))
            return None

    def _use(self, row: Row, faults: list[CellFault]) -> Use:
        text = self.text(row, Column.USE)
        if not text:
            return Use.WEEKLY
        if (word := plain_word(text)) in _USE_MEANT:
            return _USE_MEANT[word]
        faults.append(self.fault(row, Column.USE, f"“{text}” does not say how often", "Write daily, weekly or seldom."))
        return Use.WEEKLY

    def _status(self, row: Row, faults: list[CellFault]) -> BoxStatus:
        text = self.text(row, Column.STATUS)
        if not text:
            return BoxStatus.OWNED
        if (word := plain_word(text)) in _STATUS_MEANT:
            return _STATUS_MEANT[word]
        why = f"“{text}” does not say whether the box is there"
        faults.append(self.fault(row, Column.STATUS, why, "Write owned, wished or elsewhere."))
        return BoxStatus.OWNED

    def _quantity(self, row: Row, faults: list[CellFault]) -> int:
        text = self.text(row, Column.QUANTITY)
        if not text:
            return 1
        mend = f"Write a whole number from 1 to {MOST_OF_A_KIND}, or nothing for one box."
        try:
            number = parse_number(even_blanks(text))
        except AmbiguousNumberError as trouble:
            faults.append(self.fault(row, Column.QUANTITY, *why_and_mend(str(trouble))))
            return 1
        except NumberError:
            number = parse_number("0")
        if number.denominator != 1 or not 1 <= number <= MOST_OF_A_KIND:
            faults.append(self.fault(row, Column.QUANTITY, f"“{text}” is not a number of boxes", mend))
            return 1
        return int(number)

    def _what_no_box_may_hold(self, row: Row, fields: BoxFields) -> list[CellFault]:
        """The faults that the model itself finds, such as a text that is too long."""
        numbered = f"{fields.label or 'Box'} {fields.quantity}" if fields.quantity > 1 else fields.label or "Box"
        try:
            Box.model_validate({**fields.values(), "id": "box", "size_id": "size", "label": numbered})
        except ValidationError as error:
            place, why = first_fault(error)
            column = _TEXT_COLUMNS.get(place, Column.MASS)
            return [
                self.fault(row, column, why, "Shorten the text." if place in _TEXT_COLUMNS else "Correct the mass.")
            ]
        return []
