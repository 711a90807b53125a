"""The tab “Where to”: for one selected box every place it could go, best first, shown on the elevation on hovering or
choosing; a button moves it there. For any other bay and row: why not there, in words.

Laws: looking edits nothing; moving is one edit. Places are worked out only while the tab is seen.
"""

from PySide6.QtCore import QEvent, QModelIndex, QSize, Qt, Signal
from PySide6.QtGui import QHideEvent, QKeyEvent, QShowEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QFrame,
    QHBoxLayout,
    QLabel,
    QPlainTextEdit,
    QPushButton,
    QSizePolicy,
    QSpinBox,
    QSplitter,
    QVBoxLayout,
    QWidget,
)

from baywright.app.commands import EditRefused
from baywright.app.edits.arrangement import PlaceBox
from baywright.app.session import Session
from baywright.gui.bridge import Errands
from baywright.gui.destination.line import PlaceLine, line_words, place_columns, place_lines, places_words
from baywright.gui.elevation.places import Place
from baywright.gui.tables.model import RowTable
from baywright.gui.tables.view import TableView
from baywright.model.destination import Destination
from baywright.model.inventory import BoxStatus
from baywright.model.project import Project

CHOOSE_ONE = "Select one box, here or in the picture, to see every place where it could go."
NO_RUN = "There is no run yet: plan the bays first (F5)."
ELSEWHERE = "“{}” is kept elsewhere; give it another status in the inventory to find a place for it."
EMPTY = "No place to list."
CHOOSE_PLACE = "Choose a place to see it in the picture, and what it changes."
LOOKING = "Looking at every place …"
MOST_AT_ONCE = 300
"""With more boxes the places are looked at beside the window."""


class PlaceTable(TableView):
    """The table of places; tells which line the pointer is over."""

    hovered = Signal(str)
    """The id of the line under the pointer; empty when it left."""
    chosen = Signal()
    """Enter or a double click on a line."""

    def __init__(self, model: RowTable[PlaceLine], parent: QWidget) -> None:
        super().__init__(model, "Places", EMPTY, parent)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setMouseTracking(True)
        self.entered.connect(self._on_entered)
        self.doubleClicked.connect(lambda _index: self.chosen.emit())

    def _on_entered(self, index: QModelIndex) -> None:
        self.hovered.emit(self.rows.id_at(index.row()))

    def leaveEvent(self, event: QEvent) -> None:
        """The pointer is elsewhere."""
        super().leaveEvent(event)
        self.hovered.emit("")

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter chooses the line."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.chosen.emit()
            event.accept()
        else:
            super().keyPressEvent(event)

    def sizeHint(self) -> QSize:
        """A few lines."""
        return QSize(360, self.fontMetrics().lineSpacing() * 6)

    def minimumSizeHint(self) -> QSize:
        """As low as the tabs may be."""
        return QSize(180, self.fontMetrics().lineSpacing() * 4)


class DestinationPanel(QWidget):
    """Every place for the box that is selected alone."""

    preview_wanted = Signal(str, object)
    """Show the box with that id at a place (bay, row) in the picture; None shows it no longer."""
    moved = Signal(str)
    """The box was moved."""

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self.errands: Errands | None = None
        """Runs what takes long beside the window; None does everything at once."""
        self._box_id = ""
        self._asked_for = ""
        self._asked_of: Project | None = None
        self.table: RowTable[PlaceLine] = RowTable(place_columns(lambda: session.project.unit), self)
        self.view = PlaceTable(self.table, self)
        self.words = self._label()
        self.details = self._label()
        self.details.setAlignment(Qt.AlignmentFlag.AlignTop)
        # As high whatever it says: nothing may jump while the pointer goes over the places.
        self.details.setFixedHeight(self.fontMetrics().lineSpacing() * 3)
        self.reasons = QPlainTextEdit(self)
        self.reasons.setReadOnly(True)
        self.reasons.setFrameShape(QFrame.Shape.NoFrame)
        self.reasons.setTabChangesFocus(True)
        self.reasons.setAccessibleName("Why not there")
        self.reasons.viewport().setAutoFillBackground(False)
        self.reasons.setMinimumHeight(self.fontMetrics().lineSpacing() * 2)
        self.go = QPushButton("&Move it there", self)
        self.go.setToolTip("Move the box to the chosen place, as one edit (Enter)")
        self.bay, self.row = self._number("Bay"), self._number("Row")
        self._lay_out()
        self.go.clicked.connect(self.move_there)
        self.view.chosen.connect(self.move_there)
        self.view.hovered.connect(self._on_hovered)
        self.view.ids_selected.connect(lambda _ids: self._on_chosen())
        for number in (self.bay, self.row):
            number.valueChanged.connect(self._on_asked)
        self.refresh()

    def _label(self) -> QLabel:
        label = QLabel(self)
        label.setWordWrap(True)
        label.setTextFormat(Qt.TextFormat.PlainText)
        label.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Minimum)
        return label

    def _number(self, name: str) -> QSpinBox:
        number = QSpinBox(self)
        for part in (number, number.lineEdit()):
            part.setAccessibleName(f"{name} to ask about")
        number.setToolTip(f"{name} to ask about")
        number.setPrefix(f"{name.lower()} ")
        number.setMinimum(1)
        return number

    def _lay_out(self) -> None:
        head = QHBoxLayout()
        head.addWidget(self.words, 1)
        head.addWidget(self.go, 0, Qt.AlignmentFlag.AlignTop)
        asking = QWidget(self)
        title = QLabel("Why not there?", asking)
        row = QHBoxLayout()
        row.addWidget(title)
        row.addWidget(self.bay)
        row.addWidget(self.row)
        row.addStretch(1)
        column = QVBoxLayout(asking)
        column.setContentsMargins(6, 0, 0, 0)
        column.addWidget(self.details)
        column.addLayout(row)
        column.addWidget(self.reasons, 1)
        self.body = QSplitter(Qt.Orientation.Horizontal, self)
        self.body.addWidget(self.view)
        self.body.addWidget(asking)
        self.body.setChildrenCollapsible(False)
        self.body.setStretchFactor(0, 3)
        self.body.setStretchFactor(1, 1)
        self.body.setSizes([460, 240])
        whole = QVBoxLayout(self)
        whole.setContentsMargins(6, 4, 6, 4)
        whole.setSpacing(4)
        whole.addLayout(head)
        whole.addWidget(self.body, 1)

    def wanted_height(self) -> int:
        """How high the tab should be to read in, in pixels."""
        return self.fontMetrics().lineSpacing() * 14

    # ---- keeping up

    def select_boxes(self, ids: tuple[str, ...]) -> None:
        """Show the places of the box that is selected alone."""
        box_id = ids[0] if len(ids) == 1 else ""
        if box_id != self._box_id:
            self._box_id = box_id
            self.refresh()

    def showEvent(self, event: QShowEvent) -> None:
        """Work out what was not while the tab was not seen."""
        super().showEvent(event)
        self.refresh()

    def hideEvent(self, event: QHideEvent) -> None:
        """Nothing is shown in the picture any more."""
        super().hideEvent(event)
        self.preview_wanted.emit(self._box_id, None)

    def update_from_document(self) -> None:
        """Show the session's present document."""
        self.refresh()

    def refresh(self) -> None:
        """Show every place of the box; nothing is worked out while the tab is not seen, or again for the same."""
        project = self._session.project
        if not self.isVisible() or (self._asked_for == self._box_id and self._asked_of is project):
            return
        self._asked_for, self._asked_of = self._box_id, project
        box = project.boxes_by_id.get(self._box_id)
        there = project.arrangement.bay_count and box is not None and box.status is not BoxStatus.ELSEWHERE
        if not there or self.errands is None or len(project.boxes) <= MOST_AT_ONCE:
            self._show(self._session.destinations(self._box_id) if there else ())
            return
        self.words.setText(LOOKING)
        self.table.show_records([])
        box_id = self._box_id
        self.errands.run(lambda: self._session.destinations(box_id), self._show, self._on_failed)

    def _on_failed(self, error: Exception) -> None:
        raise error

    def _show(self, found: tuple[Destination, ...]) -> None:
        """Show what was found for the box and the document asked about."""
        project = self._session.project
        if self._asked_for != self._box_id or self._asked_of is not project:
            return  # the box or the document is another one by now
        box = project.boxes_by_id.get(self._box_id)
        there = project.arrangement.bay_count and box is not None and box.status is not BoxStatus.ELSEWHERE
        lines = place_lines(project, self._session.workings, self._box_id, found)
        if not project.arrangement.bay_count:
            self.words.setText(NO_RUN)
        elif box is None:
            self.words.setText(CHOOSE_ONE)
        elif not there:
            self.words.setText(ELSEWHERE.format(box.label))
        else:
            self.words.setText(places_words(box.label, lines, len(found)))
        self.view.change_rows(lambda: self.table.show_records([(_key(line), line) for line in lines], sort_anew=True))
        if lines:
            self.view.fit_columns(220)
        self.body.setVisible(bool(there))
        self.go.setVisible(bool(there))
        self._set_ranges()
        self._on_chosen()
        self._on_asked()

    def _set_ranges(self) -> None:
        layout = self._session.workings.layout
        present = self._session.project.arrangement.placement_of(self._box_id)
        for number, most in (
            (self.bay, len(layout.bays)),
            (self.row, max((bay.rows for bay in layout.bays), default=1)),
        ):
            number.blockSignals(True)
            number.setMaximum(max(1, most))
            number.blockSignals(False)
        if present is not None:
            for number, value in ((self.bay, present.bay + 1), (self.row, present.row + 1)):
                number.blockSignals(True)
                number.setValue(value)
                number.blockSignals(False)

    # ---- looking

    @property
    def chosen(self) -> PlaceLine | None:
        """The line that is chosen."""
        ids = self.view.selected_ids()
        return self.table.record(ids[0]) if ids else None

    def _on_chosen(self) -> None:
        line = self.chosen
        self.go.setEnabled(line is not None and not line.is_here)
        self._preview(line)

    def _on_hovered(self, identifier: str) -> None:
        self._preview(self.table.record(identifier) if identifier else self.chosen)

    def _preview(self, line: PlaceLine | None) -> None:
        spot = None if line is None or line.is_here else line.destination.place
        self.details.setText(CHOOSE_PLACE if line is None else line_words(line))
        self.preview_wanted.emit(self._box_id, None if spot is None else (spot.bay, spot.row))

    def _on_asked(self) -> None:
        """Tell why the box could not stand at the bay and row asked about."""
        if not self._box_id or self._box_id not in self._session.project.boxes_by_id:
            self.reasons.setPlainText("")
            return
        place: Place = (self.bay.value() - 1, self.row.value() - 1)
        present = self._session.project.arrangement.placement_of(self._box_id)
        if present is not None and (present.bay, present.row) == place:
            self.reasons.setPlainText("It stands there now.")
            return
        conflicts = self._session.place_conflicts(self._box_id, *place)
        told = "\n".join(f"⚠ {conflict.message} {conflict.mend}".strip() for conflict in conflicts)
        self.reasons.setPlainText(told or "✓ It can stand there.")
        if self.bay.hasFocus() or self.row.hasFocus():
            self.preview_wanted.emit(self._box_id, place)

    # ---- doing

    def move_there(self) -> None:
        """Move the box to the chosen place."""
        line = self.chosen
        if line is None or line.is_here:
            return
        place = line.destination.place
        try:
            self._session.do(PlaceBox(self._box_id, place.bay, place.row))
        except EditRefused as refusal:
            self.reasons.setPlainText(f"⚠ {refusal.message}")
            return
        self.moved.emit(self._box_id)


def _key(line: PlaceLine) -> str:
    place = line.destination.place
    return f"{place.bay}-{place.row}"
