"""The bay grid editor as one widget: bar, drawing, line of words, tray; in step with its session.

Laws: it redraws from the session's document and workings and keeps no copy of its own; refreshing and selecting edit
nothing; every edit is one command through `Session.do`, so one undo takes it back.
"""

from collections.abc import Iterable

from PySide6.QtCore import QEvent, QPoint, QSize, Qt, Signal
from PySide6.QtGui import QAction, QKeyEvent
from PySide6.QtWidgets import QDialog, QMenu, QSizePolicy, QToolBar, QVBoxLayout, QWidget

from baywright.app.commands import Command, EditRefused
from baywright.app.edits.arrangement import PlaceBox, SetLock, UnplaceBoxes
from baywright.app.edits.built import ForgetBuilt
from baywright.app.notices import DocumentChanged, DocumentReplaced, Notice, ProposalEnded, ProposalMade
from baywright.app.session import Session
from baywright.gui.elevation.actions import Doings, ElevationActions
from baywright.gui.elevation.canvas import Canvas
from baywright.gui.elevation.captions import place_caption
from baywright.gui.elevation.carrying import Carrier
from baywright.gui.elevation.chooser import PlaceChooser
from baywright.gui.elevation.colours import elevation_colours
from baywright.gui.elevation.dimension import dimensions_of
from baywright.gui.elevation.drag import BoxDrag
from baywright.gui.elevation.face import FaceStyle
from baywright.gui.elevation.footing import FootLine, hint_for, selection_words
from baywright.gui.elevation.layout import Layout, lay_out
from baywright.gui.elevation.places import Direction, Place, next_place
from baywright.gui.elevation.pointing import PartPointer
from baywright.gui.elevation.review import Review
from baywright.gui.elevation.tray import Tray
from baywright.model.arrangement import Lock


class ElevationView(QWidget):
    """The front elevation of a session's document, in which boxes are moved, locked and taken out."""

    places_wanted = Signal()
    """The person wants to see where the selected box could go."""
    built_wanted = Signal(object)
    """The person says that these bays (a tuple of numbers from 0) stand as built."""
    box_selected = Signal(object)
    """The person selected other boxes: the id where it is one box, else the list of ids (empty for none)."""
    parts_selected = Signal(object)
    """The person chose the parts with these numbers (a tuple; empty for none)."""

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.session = session
        style = self._style = self._face_style()
        self.canvas = Canvas(style, self)
        self.tray = Tray(style, self)
        self.foot = FootLine(self)
        self.foot.show_colours(style.colours.window)
        self.menu_actions = ElevationActions(self, self._doings())
        self.carrier = Carrier(session, self.canvas, self.tray, self._run, self)
        self.canvas.set_hands(self.carrier)
        self.tray.list.hands = self.carrier
        self.review = Review(session, self)
        self.pointer = PartPointer(session, self.canvas, lambda: self._shown, lambda: not self.review.is_on, self)
        self._selected: tuple[str, ...] = ()
        self._is_selecting = False
        self._shown = lay_out(
            session.project, session.workings, session.report, lifting_indices=session.derived.lifting_indices
        )
        self._arrange()
        self._listen()
        self.refresh()

    # What the main window uses

    def select_boxes(self, ids: Iterable[str]) -> None:
        """Select exactly these boxes, in the drawing and on the tray; emits nothing."""
        wanted = tuple(ids)
        self._is_selecting = True
        self.canvas.select(wanted)
        self.tray.select(wanted)
        self._is_selecting = False
        if wanted and self.canvas.drawer_item(wanted[0]) is not None:
            self.canvas.reveal(wanted[0])
        self._take_selection()

    def select_parts(self, numbers: Iterable[str]) -> None:
        """Let exactly the parts with these numbers stand out; emits nothing."""
        self.pointer.select(numbers)
        self._take_selection()

    @property
    def selected_ids(self) -> tuple[str, ...]:
        """The selected boxes: those in drawers bay by bay from below, then those on the tray."""
        return self._selected

    def zoom_to_fit(self) -> None:
        """Show the whole run, and keep it so when the size changes."""
        self.canvas.zoom_to_fit()

    def zoom_in(self) -> None:
        """One step larger."""
        self.canvas.zoom_in()

    def zoom_out(self) -> None:
        """One step smaller."""
        self.canvas.zoom_out()

    def actions_for_menu(self) -> list[QAction]:
        """Every action, with separators; their keys work while the elevation has the focus."""
        return self.menu_actions.for_menu

    def sizeHint(self) -> QSize:
        """A size at which a run of five bays reads well."""
        return QSize(900, 600)

    def preview(self, box_id: str, place: Place | None) -> None:
        """Show a box as it would stand at a place, with what speaks against it; None shows it no longer."""
        if self.carrier.is_holding or self.review.is_on or box_id not in self._shown.project.boxes_by_id:
            place = None
        if place is None:
            if not self.carrier.is_holding:
                self.canvas.show_ghost(None)
            return
        drag = BoxDrag(self.session, self._shown, box_id, (box_id,))
        drag.hold_at(place)
        self.canvas.show_ghost(drag.ghost)

    # Redrawing

    def refresh(self) -> None:
        """Redraw from the session's present document; edits nothing."""
        session = self.session
        self._shown = lay_out(
            session.project, session.workings, session.report, self._shown, session.derived.lifting_indices
        )
        self.review.update()
        picture, workings = self.review.picture(self._shown)
        self._show_style(self._face_style())
        dimensions = dimensions_of(picture.frame, workings, session.project.unit) if picture.frame else None
        self._is_selecting = True
        self.canvas.show_layout(picture, dimensions, hint_for(picture))
        self.canvas.show_changes(self.review.changes(self._shown))
        self.tray.show_boxes(picture.project, picture.unplaced)
        self.canvas.select(self._selected)
        self.tray.select(self._selected)
        self._is_selecting = False
        self.carrier.show_layout(self._shown)
        self.pointer.update()
        hands = None if self.review.is_on else self.carrier
        self.canvas.set_hands(hands)
        self.tray.list.hands = hands
        self._take_selection()

    @property
    def shown(self) -> Layout:
        """The layout that is shown."""
        return self._shown

    def _face_style(self) -> FaceStyle:
        return FaceStyle(elevation_colours(self.palette()), self.font(), self.session.project.unit)

    def _show_style(self, style: FaceStyle) -> None:
        if style == self._style:
            return
        self._style = style
        self.canvas.show_style(style)
        self.tray.show_style(style)
        self.foot.show_colours(style.colours.window)

    def _on_noticed(self, notice: Notice) -> None:
        if isinstance(notice, DocumentReplaced):
            self._selected = ()
            self.foot.tell("", False)
            self.refresh()
            self.zoom_to_fit()
        elif isinstance(notice, DocumentChanged | ProposalMade | ProposalEnded):
            self.foot.tell("", False)
            self.refresh()

    def changeEvent(self, event: QEvent) -> None:
        """Other colours or letters."""
        super().changeEvent(event)
        if event.type() in (QEvent.Type.PaletteChange, QEvent.Type.FontChange) and hasattr(self, "foot"):
            self._show_style(self._face_style())

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Esc rejects the re-plan that is on offer."""
        if event.key() == Qt.Key.Key_Escape and self.review.is_on:
            self.session.reject_proposal()
            event.accept()
        else:
            super().keyPressEvent(event)

    # Selecting

    def _on_canvas_selected(self) -> None:
        self._on_selected(self.canvas.selected_ids, other=self.tray)

    def _on_tray_selected(self) -> None:
        self._on_selected(self.tray.list.selected_ids, other=self.canvas)

    def _on_selected(self, ids: tuple[str, ...], other: Canvas | Tray) -> None:
        if self._is_selecting:
            return
        if ids:
            self._is_selecting = True
            other.select(())
            self._is_selecting = False
        if self._take_selection():
            self.foot.tell("", False)
            self.box_selected.emit(self._selected[0] if len(self._selected) == 1 else list(self._selected))

    def _take_selection(self) -> bool:
        """Bring words and actions in step with what is selected; tells whether it is something else than before."""
        before, self._selected = self._selected, (*self.canvas.selected_ids, *self.tray.list.selected_ids)
        drawers = [drawer for box_id in self._selected if (drawer := self._shown.drawer(box_id))]
        locks = frozenset(drawer.lock for drawer in drawers)
        is_free = not self.review.is_on
        count, locked = (len(self._selected), locks) if is_free else (0, frozenset[Lock]())
        self.menu_actions.enable_for(count, locked, has_run=self._shown.frame is not None)
        words = self.review.words or selection_words(self._shown, self._selected)
        if self.pointer.chosen and is_free and not self._selected:
            words = self.pointer.words
        self.foot.rest(words)
        self.canvas.setAccessibleDescription(words)
        return before != self._selected

    # Doing

    def _run(self, command: Command) -> bool:
        """Make one edit; a refusal is told in the foot line."""
        try:
            self.session.do(command)
        except EditRefused as refused:
            self.foot.tell(refused.message, True)
            return False
        return True

    def _on_dropped(self, box_id: str) -> None:
        self.select_boxes([box_id])
        self.box_selected.emit(box_id)

    def _move(self, direction: Direction) -> None:
        box_id = self._selected[0]
        place = next_place(self.session, box_id, direction)
        if place is None:
            placed = self.session.project.arrangement.placement_of(box_id)
            self.foot.tell(f"No free place {direction.value}." if placed else "No free place in any bay.", True)
        elif self._run(PlaceBox(box_id, *place)):
            self.foot.tell(f"Moved to {place_caption(*place)}.", False)
            self.canvas.reveal(box_id)

    def _choose_place(self) -> None:
        box_id = self._selected[0]
        chooser = PlaceChooser(self.session, box_id, self)
        if chooser.exec() == QDialog.DialogCode.Accepted and chooser.place is not None:
            self._run(PlaceBox(box_id, *chooser.place))
        chooser.deleteLater()

    def _lock(self, lock: Lock) -> None:
        self._run(SetLock(self._placed(), lock))

    def _toggle_lock(self) -> None:
        locks = [p.lock for p in self.session.project.arrangement.placements if p.box_id in self._placed()]
        self._lock(Lock.NONE if all(lock is not Lock.NONE for lock in locks) else Lock.DRAWER)

    def _take_out(self) -> None:
        self._run(UnplaceBoxes(self._placed()))

    def _placed(self) -> tuple[str, ...]:
        arrangement = self.session.project.arrangement
        return tuple(box_id for box_id in self._selected if arrangement.placement_of(box_id))

    def pointer_step(self, by: int) -> None:
        """Choose the next board of the run, or the one before."""
        self.pointer.step(by)

    def _on_menu_wanted(self, position: QPoint) -> None:
        menu = QMenu(self)
        menu.addActions(self.menu_actions.for_boxes if self._selected else [self.menu_actions.fit])
        self._add_bay_actions(menu, self.canvas.bay_at(position))
        menu.exec(position)
        menu.deleteLater()

    def _add_bay_actions(self, menu: QMenu, bay: int | None) -> None:
        """What can be done with the bay under the pointer, or by key with that of the selected box."""
        if bay is None or self.review.is_on:
            return
        built = self.session.project.built
        menu.addSeparator()
        action = menu.addAction(f"Mark bay {bay + 1} as &built")
        action.setEnabled(built is None or bay not in built.bays)
        action.triggered.connect(lambda _checked=False: self.built_wanted.emit((bay,)))
        if built is not None:
            menu.addAction("&Forget what is built").triggered.connect(lambda _checked=False: self._run(ForgetBuilt()))

    # Putting together

    def _doings(self) -> Doings:
        return Doings(
            move=self._move,
            choose_place=self._choose_place,
            show_places=self.places_wanted.emit,
            lock=self._lock,
            toggle_lock=self._toggle_lock,
            take_out=self._take_out,
            step_board=self.pointer_step,
            zoom_in=self.zoom_in,
            zoom_out=self.zoom_out,
            zoom_to_fit=self.zoom_to_fit,
        )

    def _arrange(self) -> None:
        bar = QToolBar(self)
        bar.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextOnly)
        bar.addActions(self.menu_actions.for_bar)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(0)
        whole.addWidget(bar)
        whole.addWidget(self.canvas, 1)
        whole.addWidget(self.foot)
        whole.addWidget(self.tray)
        self.canvas.setMinimumSize(240, 140)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setFocusProxy(self.canvas)

    def _listen(self) -> None:
        self.canvas.selection_changed.connect(self._on_canvas_selected)
        self.tray.selection_changed.connect(self._on_tray_selected)
        self.canvas.menu_wanted.connect(self._on_menu_wanted)
        self.tray.list.menu_wanted.connect(self._on_menu_wanted)
        self.carrier.told.connect(self.foot.tell)
        self.carrier.dropped.connect(self._on_dropped)
        self.pointer.parts_selected.connect(lambda _numbers: self._take_selection())
        self.pointer.parts_selected.connect(self.parts_selected)
        self.review.side_changed.connect(lambda _side: self.refresh())
        unsubscribe = self.session.subscribe(self._on_noticed)
        self.destroyed.connect(lambda _gone=None: unsubscribe())
