"""The panel of options: look for shapes of the run, compare them in pictures and figures, use one, pin or free a shape.

Laws: it computes nothing, it asks the session; looking never changes the document; using, pinning and freeing are one
edit each. Where there is nothing to show it says why, and what to do.
"""

from collections.abc import Callable

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtGui import QResizeEvent, QShowEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QFrame,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QProgressBar,
    QPushButton,
    QScrollArea,
    QSizePolicy,
    QStyle,
    QVBoxLayout,
    QWidget,
)

from baywright.app.commands import Command, EditRefused
from baywright.app.edits.shape import FreeShape, PinShape, is_pinned
from baywright.app.notices import (
    DocumentChanged,
    DocumentReplaced,
    Notice,
    OptionsDropped,
    OptionsFailed,
    OptionsFound,
    OptionsProgressed,
    OptionsStarted,
)
from baywright.app.session import Session
from baywright.gui.elevation.area import Area
from baywright.gui.elevation.layout import Layout, lay_out
from baywright.gui.messages import Tone
from baywright.gui.options.line import WEIGHED, OptionLine, option_columns
from baywright.gui.options.strip import PictureStrip
from baywright.gui.tables.model import RowTable
from baywright.gui.tables.view import TableView
from baywright.gui.wording import count_words
from baywright.model.option import Option

NOTHING_LOOKED_FOR = (
    "Which shapes could the run have? “Look for options” tries every number of bays with the lowest run that holds all "
    "boxes, with shared and with own uprights, and with less overhang of the top where that gains something."
)
NO_BOXES = "There is nothing to choose from yet: add boxes first."
NOTHING_FITS = "No shape of the run holds every box within the limits. “Why not?” says what stands in the way."
CHANGED = "The project was changed since the options were found. Look again."
STOPPED = "Stopped before an option was found. Look again."


LINES_WANTED = 4
"""So many lines more than at least the table gets where there is room."""


class _LowTable(TableView):
    """A table that asks for no more height than it needs at least."""

    def sizeHint(self) -> QSize:
        """As low as it may be."""
        return QSize(300, self.minimumHeight())


class OptionPanel(QWidget):
    """The tab “Options”."""

    why_not_wanted = Signal()
    """No shape holds every box; the person asks why."""
    told = Signal(str, object)
    """A message for the person, and its `Tone`."""

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._layouts: dict[str, tuple[Option, Layout]] = {}
        self._was_dropped = False
        self._unit_shown = session.project.unit
        self.table: RowTable[OptionLine] = RowTable(option_columns(lambda: session.project.unit), self)
        self.view = _LowTable(self.table, "Options", "", self)
        self.view.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.strip = PictureStrip(self.table, self._layout_of, lambda: session.project.unit, self)
        self.strip.setSelectionModel(self.view.selectionModel())
        self.setFocusProxy(self.view)
        self.words = QLabel(self)
        self.words.setWordWrap(True)
        self.words.setTextFormat(Qt.TextFormat.PlainText)
        self.words.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Minimum)
        self.progress = QProgressBar(self)
        self.progress.setRange(0, 0)
        self.progress.setFixedWidth(90)
        self.progress.setTextVisible(False)
        self.progress.setAccessibleName("Looking for options")
        self._make_buttons()
        self._lay_out()
        self.view.ids_selected.connect(lambda _ids: self._enable())
        self.view.selectionModel().currentChanged.connect(lambda _now, _before: self.strip.keep_current_seen())
        self.view.activated.connect(lambda _index: self.use_selected())
        self.strip.activated.connect(lambda _index: self.use_selected())
        unsubscribe = session.subscribe(self._on_noticed)
        self.destroyed.connect(lambda _gone=None: unsubscribe())
        self._show()

    def _make_buttons(self) -> None:
        def button(words: str, tip: str, deed: Callable[[], None]) -> QPushButton:
            made = QPushButton(words, self)
            made.setToolTip(tip)
            made.clicked.connect(lambda _checked=False: deed())
            return made

        options = self._session.options
        self.look = button("Loo&k for options", "Find the shapes that the run could have", options.request)
        self.stop = button("S&top", "Stop looking and keep what was found so far", options.cancel)
        self.use = button("&Use this shape", "", self.use_selected)
        self.pin = button("P&in the present shape", "", lambda: self._attempt(PinShape()))
        self.free = button("F&ree the shape", "", lambda: self._attempt(FreeShape()))
        self.why_not = button("W&hy not?", "Show which limits stand in the way and what would help", self._ask_why)

    def _lay_out(self) -> None:
        self._buttons = QGridLayout()
        self._buttons.setSpacing(6)
        self._buttons.setColumnStretch(4, 1)
        self._in_one_line(True)
        state = QHBoxLayout()
        state.addWidget(self.words, 1)
        for widget in (self.progress, self.stop, self.why_not):
            state.addWidget(widget)
        self._body = QWidget(self)
        column = QVBoxLayout(self._body)
        column.setContentsMargins(6, 6, 6, 6)
        column.setSpacing(4)
        column.addLayout(self._buttons)
        column.addLayout(state)
        column.addWidget(self.strip, 3)
        column.addWidget(self.view, 2)
        column.addStretch(0)
        bar = self.style().pixelMetric(QStyle.PixelMetric.PM_ScrollBarExtent)
        self.view.setMinimumHeight(self.view.horizontalHeader().sizeHint().height() * 3 + bar)
        around = QScrollArea(self)  # so that nothing is lost where the window is low
        around.setFrameShape(QFrame.Shape.NoFrame)
        around.setWidgetResizable(True)
        around.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        around.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        around.setWidget(self._body)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(around)

    def _in_one_line(self, in_one_line: bool) -> None:
        """The buttons in a line, or where the panel is narrow two by two."""
        for place, made in enumerate((self.look, self.use, self.pin, self.free)):
            row, column = (0, place) if in_one_line else divmod(place, 2)
            self._buttons.addWidget(made, row, column)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Keep all buttons in sight."""
        super().resizeEvent(event)
        wide = sum(made.sizeHint().width() + 6 for made in (self.look, self.use, self.pin, self.free)) + 24
        self._in_one_line(self.width() >= wide)

    def wanted_height(self) -> int:
        """The height at which pictures and some lines of the table have room, whether or not there are any yet."""
        above = self.look.sizeHint().height() + self.fontMetrics().height()
        lines = self.view.verticalHeader().defaultSectionSize() * LINES_WANTED
        return above + self.strip.minimumHeight() + self.view.minimumHeight() + lines + 44

    # ---- what the person does

    def look_for_options(self) -> None:
        """Look for the options of the present document, unless they are known already."""
        if self._session.options.found is None and self._session.project.boxes_to_place:
            self._session.options.request()

    def showEvent(self, event: QShowEvent) -> None:
        """Whoever opens the panel wants to see the options."""
        super().showEvent(event)
        if not event.spontaneous():
            self.look_for_options()

    def use_selected(self) -> None:
        """Put the run in the selected shape."""
        ids = self.view.selected_ids()
        if not ids:
            return
        line = self.table.record(ids[0])
        if line.is_present:
            return
        try:
            self._session.choose_option(line.option)
        except EditRefused as refusal:
            self.told.emit(refusal.message, Tone.CAUTION)
            return
        self.told.emit(
            f"The run has {line.shape} now, and planning keeps that shape. Undo takes it back; “Free the shape” leaves "
            "bays and rows to the planner again.",
            Tone.NOTE,
        )

    def _attempt(self, command: Command) -> None:
        try:
            self._session.do(command)
        except EditRefused as refusal:
            self.told.emit(refusal.message, Tone.CAUTION)

    def _ask_why(self) -> None:
        self.why_not_wanted.emit()

    # ---- keeping up

    def _on_noticed(self, notice: Notice) -> None:
        match notice:
            case OptionsDropped():
                self._was_dropped = True
            case OptionsStarted() | DocumentReplaced():
                self._was_dropped = False
            case OptionsFailed():
                self.told.emit(notice.message, Tone.TROUBLE)
            case OptionsFound():
                self._show()
                self.view.fit_columns(180)
                return
            case DocumentChanged() | OptionsProgressed():
                pass
            case _:
                return
        self._show()

    def _show(self) -> None:
        """Show what the session knows."""
        options = self._session.options
        found = options.found or ()
        were = self.table.total
        there = {option.id for option in found}
        self._layouts = {key: drawn for key, drawn in self._layouts.items() if key in there}
        self.table.show_records([(option.id, OptionLine(option, options.is_present(option))) for option in found])
        if found:
            self._show_extent(found)
            self.strip.fit_words()
        if found and not were:
            self.view.fit_columns(180)
        if self._unit_shown != self._session.project.unit:
            self._unit_shown = self._session.project.unit
            self.table.refresh()
            self.view.fit_columns(180)
        if found and not self.view.selected_ids():
            self.view.select_ids([next((o.id for o in found if options.is_present(o)), found[0].id)])
        self.words.setText(self._state())
        self.words.setToolTip(WEIGHED if found else "")
        self.strip.setVisible(bool(found))
        self.view.setVisible(bool(found))
        self._enable()

    def _state(self) -> str:
        options, project = self._session.options, self._session.project
        found = options.found
        if not project.boxes_to_place:
            return NO_BOXES
        if found is None:
            return CHANGED if self._was_dropped else NOTHING_LOOKED_FOR
        if options.is_looking:
            return f"Looking for options … {count_words(len(found), 'shape')} so far." if found else "Looking …"
        if not found:
            return NOTHING_FITS if options.is_complete else STOPPED
        many = sum(not option.is_beaten for option in found)
        words = count_words(many, "shape holds every box and is", "shapes hold every box and are")
        now = any(option.is_beaten and options.is_present(option) for option in found)
        rest = "" if options.is_complete else " Stopped before all were tried; there may be more."
        return f"{words} not beaten by another{'; the present one is' if now else ''}.{rest}"

    def _show_extent(self, found: tuple[Option, ...]) -> None:
        """Room for the space in all pictures, with the largest overhang that an option has."""
        space = self._session.project.space
        over = max(option.overhang_side_mm for option in found)
        high = max(space.height_limit_mm, *(option.unit_height_mm for option in found))
        extent = Area(-over, 0.0, space.length_mm + over, high)
        if extent != self.strip.extent:
            self.strip.show_extent(extent)

    def _layout_of(self, line: OptionLine) -> Layout:
        """The drawing of an option, made when it is first shown and again where its plan became another one."""
        option = line.option
        known = self._layouts.get(option.id)
        if known is not None and known[0] is option:
            return known[1]
        project, derived = self._session.options.in_shape(option)
        layout = lay_out(project, derived.workings, derived.report)
        self._layouts[option.id] = option, layout
        return layout

    def _enable(self) -> None:
        """Grey what cannot be done now, and say what the buttons would do."""
        options, project = self._session.options, self._session.project
        shape, limits = project.arrangement, project.limits
        ids = self.view.selected_ids()
        line = self.table.record(ids[0]) if ids else None
        has_boxes = bool(project.boxes_to_place)
        self.look.setText("Loo&k for options" if options.found is None and not self._was_dropped else "Loo&k again")
        self.look.setEnabled(has_boxes and not options.is_looking)
        self.progress.setVisible(options.is_looking)
        self.stop.setVisible(options.is_looking)
        nothing = options.found == () and options.is_complete and has_boxes
        self.why_not.setVisible(nothing)
        self.use.setEnabled(line is not None and not line.is_present)
        if line is None or line.is_present:
            self.use.setToolTip("Select an option first" if line is None else "The run has this shape already")
        else:
            self.use.setToolTip(f"Put the run in {line.shape}, with a plan for it; one undo takes it back")
        self.pin.setEnabled(bool(shape.bay_count) and not is_pinned(project))
        self.pin.setToolTip(
            f"Planning keeps {count_words(shape.bay_count, 'bay')} and {count_words(shape.upright_rows, 'row')} from "
            "now on" if shape.bay_count else "There is no shape yet: plan first"
        )  # fmt: skip
        self.free.setEnabled(limits.bay_count is not None or limits.upright_rows is not None)
        self.free.setToolTip("Planning chooses the numbers of bays and rows again; nothing moves now")
