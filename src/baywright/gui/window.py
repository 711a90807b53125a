"""The main window: puts the panels together, connects actions to deeds, and passes the session's notices on.

Laws: the window computes nothing; it sends commands, and redraws from the session when told of a change. Nothing that
is not saved is left without a question.
"""

from pathlib import Path

from PySide6.QtCore import QEvent
from PySide6.QtGui import QAction, QCloseEvent
from PySide6.QtWidgets import QApplication, QMainWindow

from baywright.app.commands import EditRefused
from baywright.app.edits.arrangement import ClearArrangement
from baywright.app.edits.built import ForgetBuilt
from baywright.app.notices import (
    ArrangementProved,
    DocumentChanged,
    DocumentReplaced,
    Notice,
    PlanningEnded,
    PlanningFailed,
    PlanningProgressed,
    PlanningStarted,
    ProposalMade,
    ReplanEnded,
)
from baywright.app.papers import Paper
from baywright.app.session import Session
from baywright.gui.actions import Actions
from baywright.gui.bridge import Bridge, Errands
from baywright.gui.dialogs import Dialogs
from baywright.gui.edits import Edits, Surroundings
from baywright.gui.filing import Filing
from baywright.gui.help import AboutDialog, KeysDialog
from baywright.gui.live import LivePlanner, LiveSwitch
from baywright.gui.menus import Menus
from baywright.gui.messages import Tone
from baywright.gui.panels import Panels
from baywright.gui.preferences import Preferences
from baywright.gui.progress import ending_message, progress_words, replan_message
from baywright.gui.status import StatusLine
from baywright.gui.theme import NORMAL_POINTS, Theme, apply_theme
from baywright.gui.whynot.problem import refusal_of, why_not
from baywright.model.arrangement import Lock
from baywright.model.plan import PlanResult
from baywright.model.repair import Repair

POINTS_A_STEP = 1.0


class MainWindow(QMainWindow):
    """The one window of the program, on one session."""

    def __init__(
        self,
        session: Session,
        bridge: Bridge,
        preferences: Preferences | None = None,
        demo: Path | None = None,
        *,
        synchronous: bool = False,
    ) -> None:
        super().__init__()
        self.session = session
        self.preferences = preferences if preferences is not None else Preferences()
        self.dialogs = Dialogs(self)
        self.errands = Errands(bridge, synchronous=synchronous)
        self.filing = Filing(session, self.dialogs, self.errands, self.tell)
        self._selected: tuple[str, ...] = ()
        self._planned_from = session.project
        self._is_refused = False
        self._offered: PlanResult | None = None
        self.actions_ = Actions(self)
        self._demo = demo
        self.panels = Panels(session, self.actions_, self._make_steps())
        self.setCentralWidget(self.panels)
        self.panels.destination.errands = Errands(bridge, synchronous=synchronous)
        self.panels.checks.errands = Errands(bridge, synchronous=synchronous)
        self.panels.made.errands = Errands(bridge, synchronous=synchronous)
        self.edits = Edits(session, self.dialogs, self._surroundings())
        self.live = LivePlanner(session, self.preferences, self)
        self.menus = Menus(
            self,
            self.actions_,
            self.panels.elevation.actions_for_menu(),
            lambda: session.recent_files,
            self.filing.open_path,
            self.choose_theme,
            LiveSwitch(self.live, self),
        )
        self.status = StatusLine(session, self.actions_, self.statusBar())
        self._connect_actions()
        self._connect_panels()
        self.menus.themes[self.preferences.theme].setChecked(True)
        self._unsubscribe = session.subscribe(self._on_noticed)
        self.resize(1280, 800)
        self.setMinimumSize(760, 480)
        session.proposes = True
        self._restore_layout()
        self._update(replaced=True)

    def _surroundings(self) -> Surroundings:
        return Surroundings(
            window=self,
            errands=self.errands,
            selected=lambda: self._selected,
            tell=self.tell,
            begin_editing=self.panels.begin_editing,
            folder=lambda: self.filing.folder,
        )

    def _make_steps(self) -> dict[str, list[QAction]]:
        """The buttons of the start panel."""
        a = self.actions_
        self.set_wall = QAction("Set the &wall", self)
        self.set_wall.setToolTip("Go to length, depth and height limit of the space")
        self.set_wall.triggered.connect(lambda: self.panels.show_field("space.length_mm"))
        boxes = [a.add_box, a.import_inventory, a.paste]
        if self._demo is not None:
            look = QAction("&Look at the demo", self)
            look.setToolTip("A community bicycle workshop's wall, as a new project to try things on")
            demo = self._demo
            look.triggered.connect(lambda: self.filing.open_copy(demo))
            boxes.append(look)
        return {"wall": [self.set_wall], "boxes": boxes, "plan": [a.plan]}

    def use_dialogs(self, dialogs: Dialogs) -> None:
        """Ask through `dialogs` from now on."""
        self.dialogs = dialogs
        self.filing.dialogs = dialogs
        self.edits.dialogs = dialogs

    # ---- deeds

    def _connect_actions(self) -> None:
        a, session = self.actions_, self.session
        deeds = {
            a.new: self.filing.new,
            a.open: self.filing.open,
            a.save: self.filing.save,
            a.save_as: self.filing.save_as,
            a.import_inventory: self.edits.import_inventory,
            a.import_catalogue: self.edits.import_catalogue,
            a.export_workbook: self.filing.export,
            a.write_cuts: lambda: self.filing.write_paper(Paper.CUTS),
            a.write_labels: lambda: self.filing.write_paper(Paper.LABELS),
            a.write_drawings: lambda: self.filing.write_paper(Paper.DRAWINGS),
            a.quit: self.close,
            a.undo: session.undo,
            a.redo: session.redo,
            a.add_box: self.edits.add_box,
            a.duplicate: self.edits.duplicate,
            a.delete: self.edits.delete,
            a.paste: self.edits.paste,
            a.unplace: self.edits.unplace,
            a.lock_drawer: lambda: self.edits.lock(Lock.DRAWER),
            a.lock_bay: lambda: self.edits.lock(Lock.BAY),
            a.unlock: lambda: self.edits.lock(Lock.NONE),
            a.plan: session.request_plan,
            a.replan: session.request_replan,
            a.stop: session.cancel_plan,
            a.mark_built: self.edits.mark_built,
            a.work_done: self.edits.mark_work_done,
            a.forget_built: lambda: self.edits.attempt(ForgetBuilt()),
            a.options: self.panels.show_options,
            a.clear: lambda: self.edits.attempt(ClearArrangement()),
            a.larger: lambda: self.choose_points(self.preferences.points + POINTS_A_STEP),
            a.smaller: lambda: self.choose_points(self.preferences.points - POINTS_A_STEP),
            a.normal: lambda: self.choose_points(NORMAL_POINTS),
            a.keys: self.show_keys,
            a.about: self.show_about,
        }
        for action, deed in deeds.items():
            # Undo and redo take back what is being typed, if anything is, so they must not finish it first.
            if action not in (a.undo, a.redo):
                action.triggered.connect(self.panels.finish_typing)
            action.triggered.connect(lambda _checked=False, deed=deed: deed())
        a.show_entries.toggled.connect(self.panels.entries.setVisible)
        a.show_lists.toggled.connect(self.panels.want_lists)

    def _connect_panels(self) -> None:
        self.panels.boxes_selected.connect(self._on_boxes_selected)
        self.panels.boxes.view.pasted.connect(self.edits.paste)
        self.panels.boxes.view.new_size_wanted.connect(self.edits.new_size_for)
        self.panels.options.told.connect(self.tell)
        self.panels.checks.told.connect(self.tell)
        self.panels.cutting.told.connect(self.tell)
        self.panels.hardware.import_wanted.connect(self.edits.import_catalogue)
        self.panels.options.why_not_wanted.connect(self._show_why_not)
        self.status.problems_wanted.connect(lambda: self.panels.show_problem_list())
        self.panels.problems.repair_wanted.connect(self._apply_repair)
        self.panels.elevation.built_wanted.connect(self.edits.mark_built)
        self.live.slow_changed.connect(self._on_replan_slow)
        self.live.ended.connect(self._on_replan_ended)

    def tell(self, message: str, tone: Tone = Tone.NOTE) -> None:
        """Show a message over the panels, in place of the one before; an empty one clears it."""
        self.panels.messages.show_message(message, tone)

    def show_keys(self) -> None:
        """Show all keys."""
        dialog = KeysDialog(self.actions_.everything, self.panels.elevation.actions_for_menu(), self)
        dialog.exec()
        dialog.deleteLater()

    def show_about(self) -> None:
        """Show what the program is and its cautions."""
        dialog = AboutDialog(self)
        dialog.exec()
        dialog.deleteLater()

    # ---- colours and letters

    def choose_theme(self, theme: Theme) -> None:
        """Take other colours and remember them."""
        self.preferences.theme = theme
        self.menus.themes[theme].setChecked(True)
        self.show_theme()

    def choose_points(self, points: float) -> None:
        """Take another text size and remember it."""
        self.preferences.points = points
        self.show_theme()

    def show_theme(self) -> None:
        """Take the colours and the text size that are remembered."""
        application = QApplication.instance()
        if isinstance(application, QApplication):
            apply_theme(application, self.preferences.theme, self.preferences.points)

    def changeEvent(self, event: QEvent) -> None:
        """Draw the icons in the colours of a new theme."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.PaletteChange and hasattr(self, "actions_"):
            self.actions_.refresh_icons()

    # ---- keeping up with the session

    def _on_noticed(self, notice: Notice) -> None:
        match notice:
            case DocumentChanged():
                self.tell("")  # it was about the document before: what it calls best or undoable may be so no more
                self._update(replaced=False)
            case DocumentReplaced():
                self._selected = ()
                self.tell("")
                self.status.show_planning(None)
                self._update(replaced=True)
                if self.session.project.arrangement.placements:
                    self.session.request_proof()
            case ArrangementProved():
                self._update_problems()
            case PlanningStarted():
                self._planned_from = self.session.project
                self.tell("")
                self.status.show_planning("Planning …")
                self._enable()
            case PlanningProgressed():
                self.status.show_planning(progress_words(notice.result))
            case PlanningEnded():
                self._on_planning_ended(notice)
            case ProposalMade():
                if notice.proposal.result is not self._offered:  # not when a label is typed while it is on offer
                    self.panels.show_replan()
                self._offered = notice.proposal.result
            case PlanningFailed():
                self.status.show_planning(None)
                self._enable()
                self.tell(notice.message, Tone.TROUBLE)
            case _:
                self._show_title()
                self.menus.refresh_recent()

    def _on_planning_ended(self, notice: PlanningEnded) -> None:
        self.status.show_planning(None)
        self._update_problems()
        self._enable()
        changed = self.session.project is not self._planned_from
        message, tone = ending_message(notice.result, stale=notice.stale, changed=changed)
        if self.session.proposal is None:  # what is on offer is told in its own panel
            self.tell(message, tone)
        if refusal_of(self.session) is not None:
            self.panels.show_problem_list()

    def _show_why_not(self) -> None:
        """Show why no plan is possible; ask the planner first where it has not said so."""
        if refusal_of(self.session) is None:
            self.actions_.plan.trigger()
        else:
            self.panels.show_problem_list()

    def _apply_repair(self, repair: Repair) -> None:
        try:
            self.session.live.apply_repair(repair)
        except EditRefused as refusal:
            self.tell(refusal.message, Tone.TROUBLE)

    def _on_replan_slow(self, is_slow: bool) -> None:
        self.status.show_planning("Making room …" if is_slow else None)
        self._enable()

    def _on_replan_ended(self, notice: ReplanEnded) -> None:
        if not self.session.is_planning:
            self.status.show_planning(None)
        self._update_problems()
        self._enable()
        words = replan_message(notice, self.session.project)
        if words is not None:
            self.tell(*words)
        was_refused, self._is_refused = self._is_refused, refusal_of(self.session) is not None
        if self._is_refused and not was_refused:
            self.panels.show_problem_list(with_focus=False)

    def _update(self, *, replaced: bool) -> None:
        self.panels.update_from_document(replaced=replaced)
        known = {box.id for box in self.session.project.boxes}
        self._selected = tuple(box_id for box_id in self._selected if box_id in known)
        self._update_problems()
        self._enable()
        self._show_title()

    def _update_problems(self) -> None:
        shown = why_not(self.session)
        self.panels.show_why_not(shown)
        self.status.show_document(len(shown.problems))

    def _on_boxes_selected(self, ids: tuple[str, ...]) -> None:
        self._selected = ids
        self._enable()

    def _enable(self) -> None:
        """Grey what cannot be done now."""
        a, session = self.actions_, self.session
        project = session.project
        placed = {placement.box_id for placement in project.arrangement.placements}
        some, some_placed = bool(self._selected), bool(placed & set(self._selected))
        for action, can in (
            (a.undo, session.can_undo),
            (a.redo, session.can_redo),
            (a.duplicate, some),
            (a.delete, some),
            (a.unplace, some_placed),
            (a.lock_drawer, some_placed),
            (a.lock_bay, some_placed),
            (a.unlock, some_placed),
            (a.plan, bool(project.boxes) and not session.is_planning),
            (a.stop, session.is_planning or session.live.is_busy),
            (a.clear, bool(project.arrangement.bay_count)),
            (a.replan, bool(project.arrangement.placements) and not session.is_planning),
            (a.mark_built, bool(project.arrangement.bay_count)),
            (a.work_done, project.built is not None),
            (a.forget_built, project.built is not None),
            (a.options, bool(project.boxes_to_place)),
        ):
            action.setEnabled(can)
        a.undo.setText(f"&Undo: {session.undo_title}" if session.can_undo else "&Undo")
        a.redo.setText(f"&Redo: {session.redo_title}" if session.can_redo else "&Redo")
        for action, word in ((a.undo, "Undo"), (a.redo, "Redo")):
            action.setIconText(word)

    def _show_title(self) -> None:
        self.setWindowTitle(f"{self.session.title}[*] – Baywright")
        self.setWindowModified(self.session.is_modified)

    # ---- remembering and closing

    def _restore_layout(self) -> None:
        geometry = self.preferences.layout("window")
        if geometry is not None:
            self.restoreGeometry(geometry)
        for name, splitter in (("whole", self.panels.whole), ("right", self.panels.right)):
            state = self.preferences.layout(name)
            if state is not None:
                splitter.restoreState(state)

    def _keep_layout(self) -> None:
        self.preferences.keep_layout("window", self.saveGeometry())
        for name, splitter in (("whole", self.panels.whole), ("right", self.panels.right)):
            self.preferences.keep_layout(name, splitter.saveState())

    def closeEvent(self, event: QCloseEvent) -> None:
        """Ask what to do with unsaved changes; end all work in the background."""
        self.panels.finish_typing()
        if not self.filing.may_leave():
            event.ignore()
            return
        self._keep_layout()
        self._unsubscribe()
        self.errands.close()
        for panel in (self.panels.made, self.panels.destination, self.panels.checks):
            if panel.errands is not None:
                panel.errands.close()
        self.session.close()
        event.accept()
