"""The parts of the window and how they lie: entries at the left, the picture of the run over its lists at the right."""

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QApplication, QHBoxLayout, QSplitter, QStackedWidget, QVBoxLayout, QWidget

from baywright.app.session import Session
from baywright.gui.actions import Actions
from baywright.gui.checks.panel import CheckPanel
from baywright.gui.cutting.panel import CuttingPanel
from baywright.gui.destination.panel import DestinationPanel
from baywright.gui.dimensions.entries import ENTRIES
from baywright.gui.dimensions.form import DimensionForm
from baywright.gui.dimensions.panel import WorkingsPanel
from baywright.gui.dimensions.tree import VALUE
from baywright.gui.elevation.twin import DrawerTableView
from baywright.gui.elevation.view import ElevationView
from baywright.gui.fields.line import LineEdit
from baywright.gui.hardware.panel import HardwarePanel
from baywright.gui.inventory.panel import BoxPanel
from baywright.gui.made import MadeLists
from baywright.gui.messages import MessageBar
from baywright.gui.options.panel import OptionPanel
from baywright.gui.options.room import Room
from baywright.gui.parts.panel import PartPanel
from baywright.gui.replan.panel import ReplanPanel
from baywright.gui.selection import PartSelection, is_of
from baywright.gui.sizes.panel import SizePanel
from baywright.gui.start import StartPanel
from baywright.gui.stock.panel import StockPanel
from baywright.gui.tabs import SlimTabs
from baywright.gui.wall.panel import WallPanel
from baywright.gui.whynot.panel import WhyNotPanel
from baywright.gui.whynot.problem import WhyNot
from baywright.gui.whynot.strip import ProblemStrip

CHECKS_TIP = "Sag, runner loads, tipping, lifting, access, tolerances: what was computed."


class Panels(QWidget):
    """Everything between toolbar and status line."""

    boxes_selected = Signal(object)
    """The person selected the boxes with these ids (a tuple), in whatever view."""

    def __init__(self, session: Session, actions: Actions, steps: dict[str, list[QAction]]) -> None:
        super().__init__()
        self._session = session
        self._lists_wanted = True
        self._options_wanted = False
        self._actions = actions
        self._unit_shown = session.project.unit
        self._parts_of_finding: tuple[str, ...] = ()
        self.part_selection = PartSelection(self)
        self.messages = MessageBar(self)
        self.boxes = BoxPanel(session, actions, self)
        self.sizes = SizePanel(session, self)
        self.form = DimensionForm(session, self)
        self.wall = WallPanel(session, self)
        self.stock = StockPanel(session, self)
        self.workings = WorkingsPanel(session, self)
        self.elevation = ElevationView(session, self)
        self.start = StartPanel(session, steps, self)
        self.strip = ProblemStrip(self)
        self.problems = WhyNotPanel(self)
        self.options = OptionPanel(session, self)
        self.replan = ReplanPanel(session, actions, self.elevation.review, self)
        self.destination = DestinationPanel(session, self)
        self.drawers = DrawerTableView(session, self, lambda: self.elevation.shown)
        self.parts = PartPanel(session, self)
        self.cutting = CuttingPanel(session, self)
        self.hardware = HardwarePanel(session, self)
        self.checks = CheckPanel(session, self)
        self._make_entries()
        self._make_picture()
        self.made = MadeLists(session, self.lists, (self.checks, self.parts, self.hardware), self._on_made, self)
        self._lay_out()
        self._connect()

    # ---- laying out

    def _make_entries(self) -> None:
        self.entries = SlimTabs({"Box si&zes": "Si&zes", "Wa&ll and bays": "Wa&ll"}, self)
        self.entries.setAccessibleName("Inventory and measures")
        self.entries.setDocumentMode(True)
        self.entries.addTab(self.boxes, "&Boxes")
        self.entries.addTab(self.sizes, "Box si&zes")
        self.entries.addTab(self.form, "&Measures")
        self.entries.addTab(self.wall, "Wa&ll and bays")
        self.entries.addTab(self.stock, "Stoc&k")
        self.entries.addTab(self.workings, "&Workings")
        self.entries.setTabToolTip(0, "The inventory: every box with size, mass, contents")
        self.entries.setTabToolTip(1, "The outside sizes that boxes share")
        self.entries.setTabToolTip(2, "Wall, limits and construction: what you set")
        self.entries.setTabToolTip(3, "Zones of the wall, the ceiling, wishes for bays, the order of the goals")
        self.entries.setTabToolTip(4, "Materials, measured batches, sheets and bars, how the saw cuts, prices")
        self.entries.setTabToolTip(5, "What follows from it: every dimension with its working")

    def _make_picture(self) -> None:
        self.stack = QStackedWidget(self)
        self.stack.addWidget(self.start)
        self.stack.addWidget(self.elevation)
        self.lists = SlimTabs({"What's wrong": "Wrong", "Where to": "Where"}, self)
        self.lists.setAccessibleName("Lists")
        self.lists.setDocumentMode(True)
        self.lists.addTab(self.problems, "What's wrong")
        self.lists.addTab(self.drawers, "Drawers")
        self.lists.addTab(self.parts, "Parts")
        self.lists.addTab(self.hardware, "Hardware")
        self.lists.addTab(self.cutting, "Cutting")
        self.lists.addTab(self.options, "Options")
        self.lists.addTab(self.replan, "Re-plan")
        self.lists.addTab(self.destination, "Where to")
        self.lists.addTab(self.checks, "Checks")
        for page, tip in (
            (self.parts, "What to cut: sizes, edges, holes and the drawing of each part"),
            (self.hardware, "What to buy: runners, screws, edging and the like, by the pack, from your catalogue"),
            (self.cutting, "How the parts are cut from sheets and bars, in which order, and what it costs"),
            (self.options, "The shapes that the run could have, to compare and choose from (F8)"),
            (self.replan, "What re-planning would move, to accept or reject; the work from what is built"),
            (self.destination, "Every place where the selected box could go, and why not elsewhere (W in the picture)"),
            (self.checks, CHECKS_TIP),
        ):
            self.lists.setTabToolTip(self.lists.indexOf(page), tip)

    def _lay_out(self) -> None:
        picture = QWidget(self)
        over = QVBoxLayout(picture)
        over.setContentsMargins(0, 0, 0, 0)
        over.setSpacing(0)
        over.addWidget(self.strip)
        over.addWidget(self.stack, 1)
        self.right = QSplitter(Qt.Orientation.Vertical, self)
        self.right.addWidget(picture)
        self.right.addWidget(self.lists)
        self.right.setStretchFactor(0, 3)
        self.right.setStretchFactor(1, 1)
        self.right.setSizes([480, 150])
        self.whole = QSplitter(Qt.Orientation.Horizontal, self)
        self.whole.addWidget(self.entries)
        self.whole.addWidget(self.right)
        self.whole.setStretchFactor(0, 2)
        self.whole.setStretchFactor(1, 3)
        self.whole.setSizes([440, 560])
        for page in (
            self.options, self.replan, self.checks, self.destination, self.parts, self.hardware, self.cutting,
        ):  # fmt: skip
            Room(self.right, self.lists, page, page.wanted_height)
        for splitter in (self.right, self.whole):
            splitter.setChildrenCollapsible(False)
        self.entries.setMinimumWidth(300)
        self.right.setMinimumWidth(320)
        column = QVBoxLayout(self)
        column.setContentsMargins(4, 4, 4, 0)
        column.setSpacing(4)
        column.addWidget(self.messages)
        row = QHBoxLayout()
        row.addWidget(self.whole)
        column.addLayout(row, 1)

    # ---- selecting: one selection, shown in every view

    def _connect(self) -> None:
        self.boxes.boxes_selected.connect(self._on_boxes_selected)
        self.elevation.box_selected.connect(self._on_boxes_selected)
        self.drawers.box_selected.connect(self._on_boxes_selected)
        self.replan.boxes_selected.connect(self._on_boxes_selected)
        self.elevation.places_wanted.connect(self.show_destinations)
        self.destination.preview_wanted.connect(self.elevation.preview)
        self._join_parts()
        self.checks.boxes_selected.connect(self._on_problem_chosen)
        self.checks.counted.connect(self._on_checks_counted)
        self.cutting.counted.connect(self._on_layouts_counted)
        self.wall.zone_selected.connect(self.elevation.canvas.show_zone)
        self.problems.problem_chosen.connect(self._on_problem_chosen)
        self.problems.field_wanted.connect(self._on_field_wanted)
        self.lists.currentChanged.connect(lambda _tab: self._on_list_chosen())
        self.strip.all_wanted.connect(lambda: self.show_problem_list())

    def _join_parts(self) -> None:
        """One selection of parts for all views."""
        self.part_selection.join(self.parts.select_parts, self.parts.parts_selected)
        self.part_selection.join(self.elevation.select_parts, self.elevation.parts_selected)
        self.part_selection.join(self.cutting.show_parts, self.cutting.parts_selected)
        self.part_selection.join(self.checks.show_parts)
        self.part_selection.join(lambda _numbers: self._mark_drawers())
        self.checks.part_chosen.connect(self._on_finding_chosen)

    def _on_finding_chosen(self, number: str) -> None:
        """What a finding is about stands out while somebody sees the finding."""
        numbers = self._listed(number) if number else ()
        if numbers or set(self._parts_of_finding) & set(self.part_selection.numbers):
            self.part_selection.select(numbers)
        self._parts_of_finding = numbers

    def _listed(self, number: str) -> tuple[str, ...]:
        """The numbers that a part has in the list: its own, or those of its variants."""
        made = self._session.derived.known_manufacture
        listed = [part.number for part in made.parts] if made is not None else []
        return tuple(each for each in listed if is_of(each, number)) or (number,)

    def _mark_drawers(self) -> None:
        numbers = self.part_selection.numbers
        made = self._session.derived.known_manufacture if numbers else None
        parts = made.parts if made is not None else ()
        self.drawers.show_parts(part for part in parts if part.number in numbers)

    def _on_boxes_selected(self, ids: str | Sequence[str]) -> None:
        chosen = (ids,) if isinstance(ids, str) else tuple(ids)
        sender = self.sender()
        if sender is not self.boxes:
            self.boxes.select_ids(chosen)
        if sender is not self.elevation:
            self.elevation.select_boxes(chosen)
        if sender is not self.drawers:
            self.drawers.select_boxes(chosen)
        if sender is not self.replan:
            self.replan.select_boxes(chosen)
        self.destination.select_boxes(chosen)
        self.boxes_selected.emit(chosen)

    def _on_checks_counted(self, broken: int, unchecked: int) -> None:
        """A warning only where a limit is broken: something always waits for a maker's data sheet."""
        titled = f"⚠ Checks ({broken})" if broken else f"? Checks ({unchecked})" if unchecked else "Checks"
        tab = self.lists.indexOf(self.checks)
        self.lists.setTabText(tab, titled)
        told = f"{CHECKS_TIP} {broken} over the limit, {unchecked} not checked."
        self.lists.setTabToolTip(tab, told if broken or unchecked else CHECKS_TIP)

    def _on_layouts_counted(self, layouts: int, unplaced: int) -> None:
        titled = f"Cutting ({layouts})" if layouts else "Cutting"
        self.lists.setTabText(self.lists.indexOf(self.cutting), f"⚠ {titled}" if unplaced else titled)

    def _on_field_wanted(self, path: str) -> None:
        if path in ENTRIES:  # others are told of in words: a box's place, a lock
            self.show_field(path)

    def _on_problem_chosen(self, ids: tuple[str, ...]) -> None:
        self.boxes.select_ids(ids)
        self.elevation.select_boxes(ids)
        self.drawers.select_boxes(ids)
        self.destination.select_boxes(ids)
        self.boxes_selected.emit(ids)

    # ---- keeping up

    def update_from_document(self, *, replaced: bool) -> None:
        """Show the present document everywhere; the picture and its twin listen for themselves."""
        self.boxes.update_from_document(replaced=replaced)
        self.sizes.update_from_document(replaced=replaced)
        self.form.update_from_document()
        self.wall.update_from_document(replaced=replaced)
        self.stock.update_from_document(replaced=replaced)
        self.workings.update_from_document(replaced=replaced)
        self.start.update_from_document()
        self.destination.update_from_document()
        self.stack.setCurrentIndex(1 if self._session.project.arrangement.bay_count else 0)
        self.made.update_in_time()
        if self._unit_shown != self._session.project.unit:
            self._unit_shown = self._session.project.unit
            self._fit_lengths()

    def _fit_lengths(self) -> None:
        """Widen the columns for lengths of another unit: a fraction that is cut off reads as another length."""
        self.sizes.view.fit_columns()
        self.workings.view.resizeColumnToContents(VALUE)

    def want_lists(self, wanted: bool) -> None:
        """Whether the person wants the lists under the picture; they show as soon as there is something in them."""
        self._lists_wanted = wanted
        self._show_or_hide_lists()

    def _show_or_hide_lists(self) -> None:
        something = (
            self._options_wanted or bool(self._session.project.arrangement.bay_count) or self.problems.list.has_problems
        )
        self.lists.setVisible(self._lists_wanted and something)
        self._show_strip()

    def _on_list_chosen(self) -> None:
        self.made.catch_up()
        self._show_strip()

    def _on_made(self) -> None:
        """What is made is known now: chosen parts may be elsewhere."""
        self.elevation.pointer.update()
        self._mark_drawers()

    def show_why_not(self, shown: WhyNot) -> None:
        """List what is wrong and what would help."""
        self.problems.show_why_not(shown)
        self._show_or_hide_lists()
        count = len(shown.problems)
        self.lists.setTabText(0, f"⚠ What's wrong ({count})" if count else "What's wrong")

    def _show_strip(self) -> None:
        """The strip over the picture is for those who do not have the list before their eyes."""
        list_is_seen = not self.lists.isHidden() and self.lists.currentWidget() is self.problems
        self.strip.show_problems(() if list_is_seen else self.problems.shown.problems)

    def show_problem_list(self, *, with_focus: bool = True) -> None:
        """Bring the list of what is wrong to the front; without the focus while somebody types elsewhere."""
        if with_focus:
            self._actions.show_lists.setChecked(True)
        self.lists.setCurrentWidget(self.problems)
        self._show_strip()
        if with_focus:
            self.problems.list.setFocus(Qt.FocusReason.OtherFocusReason)

    def show_options(self) -> None:
        """Bring the options to the front, also before there is a plan."""
        self._options_wanted = True
        self._actions.show_lists.setChecked(True)
        self._show_or_hide_lists()
        self.lists.setCurrentWidget(self.options)
        self.options.look_for_options()
        self.options.setFocus(Qt.FocusReason.OtherFocusReason)

    def show_destinations(self) -> None:
        """Bring the places of the selected box to the front."""
        self._actions.show_lists.setChecked(True)
        self.lists.setCurrentWidget(self.destination)
        self.destination.view.setFocus(Qt.FocusReason.OtherFocusReason)

    def show_replan(self) -> None:
        """Bring the re-plan on offer to the front."""
        self._actions.show_lists.setChecked(True)
        self.lists.setCurrentWidget(self.replan)
        self.replan.moves.setFocus(Qt.FocusReason.OtherFocusReason)

    def finish_typing(self) -> None:
        """Take in what is being typed, as leaving the field would: who saves or plans means the value on the screen."""
        typed_in = QApplication.focusWidget()
        if typed_in is not None and self.isAncestorOf(typed_in):
            typed_in.clearFocus()
            if isinstance(typed_in, LineEdit):
                typed_in.setFocus(Qt.FocusReason.OtherFocusReason)

    def show_field(self, path: str) -> None:
        """Bring the form to the front with the cursor in a field."""
        self._actions.show_entries.setChecked(True)
        self.entries.setCurrentWidget(self.form)
        self.form.show_field(path)

    def begin_editing(self, box_id: str) -> None:
        """Bring the inventory to the front with the editor open on a box's label."""
        self._actions.show_entries.setChecked(True)
        self.entries.setCurrentWidget(self.boxes)
        self.boxes.begin_editing(box_id)
