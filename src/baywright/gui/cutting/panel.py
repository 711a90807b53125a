"""The tab “Cutting”: layouts, cuts and cost at the left, the chosen layout and the step of sawing at the right.

Laws: it computes nothing, it asks the session and shows what is known so far; the search begins when somebody opens the
tab and follows the edits from then on; while a new search runs the layouts before the edit stay, and are said to be so.
"""

from collections.abc import Sequence

from PySide6.QtCore import Qt, QTimer, Signal
from PySide6.QtGui import QResizeEvent, QShowEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QBoxLayout,
    QHBoxLayout,
    QLabel,
    QMenu,
    QProgressBar,
    QPushButton,
    QSizePolicy,
    QSplitter,
    QToolButton,
    QVBoxLayout,
    QWidget,
)

from baywright.app.commands import EditRefused
from baywright.app.edits.rests import KeepRests
from baywright.app.notices import (
    CuttingEnded,
    CuttingFailed,
    CuttingProgressed,
    CuttingStarted,
    DocumentChanged,
    DocumentReplaced,
    Notice,
)
from baywright.app.session import Session
from baywright.gui.cutting.cost import CostView
from baywright.gui.cutting.drawing import CuttingDrawing
from baywright.gui.cutting.line import (
    CutLine,
    LayoutLine,
    cut_columns,
    cut_lines,
    cut_words,
    layout_columns,
    layout_lines,
    marked_layouts,
)
from baywright.gui.cutting.steps import StepBar
from baywright.gui.cutting.words import (
    ANEW,
    LOOKING,
    NOT_ASKED,
    NOTHING_ARRANGED,
    STOPPED,
    details_words,
    plan_words,
    unplaced_lines,
    unplaced_words,
)
from baywright.gui.messages import MessageBar, Tone
from baywright.gui.remarks import RemarkList
from baywright.gui.tables.model import RowTable
from baywright.gui.tables.view import TableView
from baywright.gui.tabs import SlimTabs
from baywright.model.cutting import CuttingPlan
from baywright.model.length import LengthUnit

NO_LAYOUTS = "No layouts yet."
NO_CUTS = "Select a layout to see its cuts."
NOT_CUT = "&Not cut"
ALL_CUT = "Every part is cut."
SOON_MS = 150
"""How long better layouts are gathered before the newest of them are shown."""
LINES_WANTED = 15
NARROW_LETTERS = 58
"""A panel that has no room for so many letters side by side is narrow."""


class CuttingPanel(QWidget):
    """Shows how the parts are cut."""

    parts_selected = Signal(object)
    """The person chose the part of a piece: its number in a tuple; empty for none."""
    told = Signal(str, object)
    """A message for the person, and its `Tone`."""
    counted = Signal(int, int)
    """How many layouts there are, and how many parts could not be cut whole."""

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._plan: CuttingPlan | None = None
        self._numbers: tuple[str, ...] = ()
        self._unit_shown = session.project.unit
        self._was_stopped = False
        self._is_by_hand = False
        """Whether the person chose the layout that is shown; else better plans may bring another one to the front."""
        self._soon = QTimer(self)
        self._soon.setSingleShot(True)
        self._soon.setInterval(SOON_MS)
        self._soon.timeout.connect(self._show)

        def unit() -> LengthUnit:
            return session.project.unit

        self.layouts: RowTable[LayoutLine] = RowTable(layout_columns(unit), self)
        self.view = TableView(self.layouts, "Layouts", NO_LAYOUTS, self)
        self.view.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.cuts: RowTable[CutLine] = RowTable(cut_columns(unit), self)
        self.cut_view = TableView(self.cuts, "Cuts in their order", NO_CUTS, self)
        self.cut_view.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.cost = CostView(self)
        self.drawing = CuttingDrawing(unit, self)
        self.unplaced = MessageBar(self)
        self.reasons = RemarkList("Parts that are not cut", ALL_CUT, self)
        self._make_head()
        self.steps = StepBar(self)
        self._lay_out()
        self._listen()
        self._show()

    # ---- laying out

    def _make_head(self) -> None:
        self.words = QLabel(self)
        self.words.setWordWrap(True)
        self.words.setTextFormat(Qt.TextFormat.PlainText)
        self.words.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Minimum)
        self.progress = QProgressBar(self)
        self.progress.setRange(0, 0)
        self.progress.setFixedWidth(70)
        self.progress.setTextVisible(False)
        self.progress.setAccessibleName("Looking for layouts")
        self.stop = QPushButton("S&top", self)
        self.stop.setToolTip("Stop looking and keep the best layouts so far")
        self.again = QPushButton("&Look again", self)
        self.again.setToolTip("Look for layouts of the present parts once more")
        self.keep = QToolButton(self)
        self.keep.setText("Put &rests into stock")
        self.keep.setToolTip(
            "Once sheets are cut: the rests worth keeping become offcuts of the stock, and owned sheets that were cut "
            "leave it; one undo"
        )
        self.keep.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.keep.setPopupMode(QToolButton.ToolButtonPopupMode.InstantPopup)
        menu = QMenu(self.keep)
        self.keep_all = menu.addAction("Of &all layouts")
        self.keep_one = menu.addAction("Of the &selected layout")
        self.keep.setMenu(menu)

    def _lay_out(self) -> None:
        self.head = QBoxLayout(QBoxLayout.Direction.LeftToRight)
        self.head.addWidget(self.words, 1)
        deeds = QHBoxLayout()
        deeds.addStretch(1)
        for widget in (self.progress, self.stop, self.again, self.keep):
            deeds.addWidget(widget, 0, Qt.AlignmentFlag.AlignTop)
        self.head.addLayout(deeds)
        self.tabs = SlimTabs({}, self)
        self.tabs.setAccessibleName("Layouts, cuts and cost")
        self.tabs.setDocumentMode(True)
        self.tabs.addTab(self.view, "La&youts")
        self.tabs.addTab(self.cut_view, "&Cuts")
        self.tabs.addTab(self.cost, "C&ost")
        self.tabs.addTab(self.reasons, NOT_CUT)
        picture = QWidget(self)
        column = QVBoxLayout(picture)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(2)
        column.addWidget(self.drawing, 1)
        column.addWidget(self.steps)
        self.both = QSplitter(Qt.Orientation.Horizontal, self)
        self.both.setChildrenCollapsible(False)
        self.both.addWidget(self.tabs)
        self.both.addWidget(picture)
        self.both.setStretchFactor(0, 2)
        self.both.setStretchFactor(1, 3)
        self.both.setSizes([230, 320])
        whole = QVBoxLayout(self)
        whole.setContentsMargins(6, 6, 6, 6)
        whole.setSpacing(4)
        whole.addWidget(self.unplaced)
        whole.addLayout(self.head)
        whole.addWidget(self.both, 1)

    def _listen(self) -> None:
        self.stop.clicked.connect(self._on_stop)
        self.again.clicked.connect(lambda _checked=False: self._request())
        self.keep_all.triggered.connect(lambda _checked=False: self.keep_rests(None))
        self.keep_one.triggered.connect(lambda _checked=False: self.keep_rests(self.view.selected_ids()))
        self.view.ids_selected.connect(lambda _ids: self._on_layout_chosen())
        self.cut_view.ids_selected.connect(lambda _ids: self._show_cut())
        self.drawing.parts_selected.connect(self._on_part_chosen)
        self.steps.stepped.connect(self.step)
        self.tabs.currentChanged.connect(lambda _tab: self._show_cost())
        unsubscribe = self._session.subscribe(self._on_noticed)
        self.destroyed.connect(lambda _gone=None: unsubscribe())

    def wanted_height(self) -> int:
        """The height at which a sheet can be read."""
        return self.fontMetrics().lineSpacing() * LINES_WANTED + 100

    def resizeEvent(self, event: QResizeEvent) -> None:
        """The words over the buttons where there is no room beside them."""
        super().resizeEvent(event)
        narrow = self.width() < self.fontMetrics().horizontalAdvance("n") * NARROW_LETTERS
        self.head.setDirection(QBoxLayout.Direction.TopToBottom if narrow else QBoxLayout.Direction.LeftToRight)

    # ---- what the person does

    def showEvent(self, event: QShowEvent) -> None:
        """Whoever opens the tab wants to see how the parts are cut."""
        super().showEvent(event)
        if not event.spontaneous():
            cutting = self._session.cutting
            if cutting.plan is None and not cutting.is_searching and not self._was_stopped:
                self._request()
            self._show()

    def _request(self) -> None:
        self._was_stopped = False
        if self._session.project.arrangement.bay_count:
            self._session.cutting.request()
        else:
            self._show()

    def _on_stop(self) -> None:
        self._was_stopped = True
        self._session.cutting.cancel()

    def keep_rests(self, numbers: Sequence[str] | None) -> None:
        """Put the rests of these layouts, or of all, into the stock."""
        plan = self._session.cutting.plan
        if plan is None:
            return
        try:
            self._session.do(KeepRests(plan, None if numbers is None else tuple(numbers)))
        except EditRefused as refusal:
            self.told.emit(refusal.message, Tone.CAUTION)
            return
        self.told.emit(
            "The rests lie in the stock now, as offcuts that are owned; what is shown is a run cut from them. Undo "
            "takes them out.",
            Tone.NOTE,
        )

    def step(self, by: int) -> None:
        """Step to the next cut of the layout, or the one before."""
        count = self.cuts.total
        if not count:
            return
        ids = self.cut_view.selected_ids()
        here = self.cuts.row_of(ids[0]) if ids else (-1 if by > 0 else count)
        self.cut_view.select_ids((self.cuts.id_at(max(0, min(count - 1, here + by))),))
        self._show_cut()

    def show_parts(self, numbers: tuple[str, ...]) -> None:
        """Let the pieces of these parts stand out, and bring a layout of them to the front."""
        self._numbers = numbers
        lines = [self.layouts.record(key) for key in self.layouts.ids]
        marked = marked_layouts(lines, numbers)
        self.layouts.mark(marked)
        self.drawing.show_parts(numbers)
        self._is_by_hand = False
        selected = self.view.selected_ids()
        if marked and not (selected and selected[0] in marked):
            self.view.select_ids(marked[:1])
            self._show_layout()

    def _on_layout_chosen(self) -> None:
        self._is_by_hand = True
        self._show_layout()

    def _on_part_chosen(self, numbers: tuple[str, ...]) -> None:
        self.show_parts(numbers)
        self.parts_selected.emit(numbers)

    # ---- keeping up

    def _on_noticed(self, notice: Notice) -> None:
        match notice:
            case DocumentReplaced():
                self._plan, self._was_stopped = None, False
                if self.isVisible():
                    self._request()
            case CuttingFailed():
                self.told.emit(notice.message, Tone.TROUBLE)
            case CuttingProgressed():
                if not self._soon.isActive():  # better layouts come faster than anybody reads them
                    self._soon.start()
                return
            case CuttingStarted() | CuttingEnded():
                pass
            case DocumentChanged():
                self._was_stopped = False
            case _:
                return
        self._show()

    def _show(self) -> None:
        """Show what the session knows; what nobody sees waits."""
        self._soon.stop()
        if not self.isVisible():
            return
        cutting, project = self._session.cutting, self._session.project
        if cutting.plan is not None or not cutting.is_searching or not project.arrangement.bay_count:
            self._plan = cutting.plan
        plan = self._plan
        self._show_plan(plan)
        self.words.setText(self._state())
        self.words.setToolTip(details_words(plan) if plan is not None else "")
        self._show_unplaced(plan)
        self.progress.setVisible(cutting.is_searching)
        self.stop.setVisible(cutting.is_searching)
        self.again.setVisible(not cutting.is_searching and bool(project.arrangement.bay_count))
        is_present = plan is not None and plan is cutting.plan
        self.keep.setEnabled(is_present and any(self.layouts.record(key).kept for key in self.layouts.ids))
        self.counted.emit(self.layouts.total, len(plan.unplaced) if plan else 0)

    def _show_unplaced(self, plan: CuttingPlan | None) -> None:
        """What could not be cut: in a sentence on top, with the reasons in a tab."""
        unplaced = plan.unplaced if plan is not None else ()
        self.unplaced.show_if_new(unplaced_words(unplaced), Tone.TROUBLE)
        self.reasons.show_remarks(unplaced_lines(unplaced))
        tab = self.tabs.indexOf(self.reasons)
        self.tabs.setTabVisible(tab, bool(unplaced))
        self.tabs.setTabText(tab, f"⚠ {NOT_CUT} ({len(unplaced)})" if unplaced else NOT_CUT)

    def _show_plan(self, plan: CuttingPlan | None) -> None:
        were = self.layouts.total
        lines = layout_lines(plan)
        self.view.change_rows(lambda: self.layouts.show_records(lines))
        if self._unit_shown != self._session.project.unit:
            self._unit_shown = self._session.project.unit
            for table in (self.layouts, self.cuts):
                table.refresh()
            were = 0
        if lines and not were:
            self.view.fit_columns(180)
        marked = marked_layouts((line for _, line in lines), self._numbers)
        self.layouts.mark(marked)
        selected = self.view.selected_ids()
        if lines and (not selected or (marked and not self._is_by_hand and selected[0] not in marked)):
            self.view.select_ids((marked or [lines[0][0]])[:1])
        self._show_cost()
        self._show_layout()

    def _show_cost(self) -> None:
        """What it costs, where somebody looks at it."""
        if self.tabs.currentWidget() is self.cost:
            self.cost.show_cost(self._session.cutting.cost if self._plan is not None else None, self._plan)

    def _state(self) -> str:
        cutting, plan = self._session.cutting, self._plan
        if not self._session.project.arrangement.bay_count:
            return NOTHING_ARRANGED
        if plan is None:
            return LOOKING if cutting.is_searching else STOPPED if self._was_stopped else NOT_ASKED
        words = ANEW if plan is not cutting.plan else plan_words(plan, is_searching=cutting.is_searching)
        return " ".join((words, *plan.remarks))

    def _show_layout(self) -> None:
        ids = self.view.selected_ids()
        line = self.layouts.record(ids[0]) if ids else None
        if line != self.drawing.line:
            self.drawing.show_layout(line)
            were = self.cuts.total
            self.cuts.show_records(cut_lines(line.layout if line is not None else None))
            self.cut_view.clearSelection()
            if self.cuts.total and not were:
                self.cut_view.fit_columns(160)
            self._show_cut()
        count = self.cuts.total
        self.tabs.setTabText(1, f"&Cuts ({count})" if count else "&Cuts")
        self.keep_one.setEnabled(line is not None and bool(line.kept))

    def _show_cut(self) -> None:
        ids, count = self.cut_view.selected_ids(), self.cuts.total
        cut = self.cuts.record(ids[0]) if ids else None
        self.drawing.show_cut(cut)
        words = "" if cut is None else cut_words(cut, count, self._session.project.unit)
        self.steps.show_step(words, self.cuts.row_of(ids[0]) if ids else -1, count)
