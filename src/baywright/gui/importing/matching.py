"""The form that says which column of the table means what, with samples of what stands in each column."""

from collections.abc import Sequence
from typing import Any

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QGridLayout, QLabel, QWidget

from baywright.app.importing import CatalogueColumn, Column, Table, column_letters
from baywright.gui.fields.choice import Combo

MEANINGS: tuple[tuple[Column, str, str], ...] = (
    (Column.LABEL, "Box", "What is written on the box"),
    (
        Column.SIZE,
        "Size",
        "Name of its box size; it must be in the list of sizes, or the lengths beside must be matched",
    ),
    (Column.WIDTH, "Width", "Outside, across the front of the drawer; with depth and height it makes a size"),
    (Column.DEPTH, "Depth", "Outside, front to back"),
    (Column.HEIGHT, "Height", "Outside, with its lid on"),
    (Column.MASS, "Mass", "Box and contents together"),
    (Column.CONTENTS, "Contents", "What is in it"),
    (Column.GROUP, "Group", "Boxes that belong together"),
    (Column.USE, "Taken out", "How often: daily, weekly or seldom"),
    (Column.NOTE, "Note", "Anything else"),
    (Column.STATUS, "Status", "owned, wished (room is kept for it) or elsewhere (it gets no drawer)"),
    (Column.QUANTITY, "How many", "So many boxes alike"),
)
CATALOGUE_MEANINGS: tuple[tuple[CatalogueColumn, str, str], ...] = (
    (CatalogueColumn.KIND, "Kind", "What it is for: runner, wood screw, dowel, edging, glue and so on"),
    (CatalogueColumn.NAME, "Name", "What the shop calls it"),
    (CatalogueColumn.LENGTH, "Length", "Of a runner, screw, tenon or dowel"),
    (CatalogueColumn.DIAMETER, "Diameter", "Of a screw, dowel or pin"),
    (CatalogueColumn.THICKNESS, "Thickness", "Room a runner takes on each side; thickness of a tenon or an edging"),
    (CatalogueColumn.WIDTH, "Width", "Of an edging or a tenon"),
    (CatalogueColumn.LOAD, "Load class", "Rated load of a pair of runners, or of a foot"),
    (CatalogueColumn.PACK, "In a pack", "Pieces, pairs, metres or litres in a pack"),
    (CatalogueColumn.PRICE, "Price", "Of one pack"),
    (CatalogueColumn.MASS, "Mass", "Of one piece"),
    (CatalogueColumn.SUPPLIER, "Supplier", "Who sells it"),
    (CatalogueColumn.ORDER_NUMBER, "Order number", "By which it is ordered"),
    (CatalogueColumn.NOTE, "Note", "Anything else"),
)
NOT_THERE = "not in the table"
_SAMPLES = 3
_LONGEST_SAMPLE = 24


def column_words(table: Table, place: int) -> str:
    """A column as a person knows it: its letter, its heading and the first texts in it."""
    samples: list[str] = []
    for row in table.rows:
        text = " ".join(row.cell(place).split())
        if text and text not in samples:
            samples.append(text if len(text) <= _LONGEST_SAMPLE else text[: _LONGEST_SAMPLE - 1] + "…")
        if len(samples) == _SAMPLES or sum(map(len, samples)) >= _LONGEST_SAMPLE:
            break
    letters, heading = column_letters(place), table.headings[place] if place < len(table.headings) else ""
    name = f"{letters}: {heading}" if heading else letters
    return f"{name}  ({', '.join(samples)})" if samples else f"{name}  (empty)"


class MatchingForm(QWidget):
    """One list of columns for each meaning; two meanings never share a column."""

    changed = Signal(object)
    """The person matched anew; carries the whole matching."""

    def __init__(
        self, meanings: Sequence[tuple[Any, str, str]] = MEANINGS, matching: Any = None, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._matching = matching
        self._lists: dict[Any, Combo] = {}
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        rows = (len(meanings) + 1) // 2
        for number, (meaning, label, hint) in enumerate(meanings):
            chosen = Combo(self)
            chosen.setToolTip(hint)
            chosen.setAccessibleName(f"Column for {label}")
            chosen.setAccessibleDescription(hint)
            chosen.activated.connect(lambda _index, meaning=meaning: self._on_chosen(meaning))
            words = QLabel(label, self)
            words.setBuddy(chosen)
            words.setToolTip(hint)
            words.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
            column = 2 * (number // rows)
            grid.addWidget(words, number % rows, column)
            grid.addWidget(chosen, number % rows, column + 1)
            self._lists[meaning] = chosen
        for column in (1, 3):
            grid.setColumnStretch(column, 1)

    def show_table(self, table: Table, matching: Any) -> None:
        """Offer the columns of a table, matched as proposed."""
        self._matching = matching
        columns = [column_words(table, place) for place in range(table.column_count)]
        for chosen in self._lists.values():
            chosen.clear()
            chosen.addItem(NOT_THERE, None)
            for place, words in enumerate(columns):
                chosen.addItem(words, place)
        self._show()

    def choose(self, meaning: Any, place: int | None) -> None:
        """Match a meaning with a column, as the person would."""
        chosen = self._lists[meaning]
        chosen.setCurrentIndex(0 if place is None else place + 1)
        self._on_chosen(meaning)

    def _on_chosen(self, meaning: Any) -> None:
        place: int | None = self._lists[meaning].currentData()
        matching = self._matching
        for other, taken in matching.columns.items():
            if taken == place and other is not meaning:
                matching = matching.using(other, None)
        self._matching = matching.using(meaning, place)
        self._show()
        self.changed.emit(self._matching)

    def _show(self) -> None:
        for meaning, chosen in self._lists.items():
            place = self._matching.place(meaning)
            chosen.setCurrentIndex(0 if place is None else place + 1)
