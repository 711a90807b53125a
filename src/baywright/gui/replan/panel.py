"""The tab “Re-plan”: the offer with its work, what to do with it, and which side of it the elevation draws.

Laws: nothing is changed until something is accepted; accepting is one edit; Esc rejects. Without an offer it shows the
work that is still to be done from what stands as built.
"""

from collections.abc import Callable

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import (
    QButtonGroup,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QRadioButton,
    QSizePolicy,
    QSplitter,
    QToolButton,
    QVBoxLayout,
    QWidget,
)

from baywright.app.commands import EditRefused
from baywright.app.notices import DocumentChanged, DocumentReplaced, Notice, ProposalEnded, ProposalMade
from baywright.app.session import Session
from baywright.gui.actions import Actions
from baywright.gui.elevation.changes import Side
from baywright.gui.elevation.review import Review
from baywright.gui.messages import MessageBar, Tone
from baywright.gui.replan.moves import MoveList
from baywright.gui.replan.words import Movers, chapters, movers, summary
from baywright.gui.replan.work import WorkPage
from baywright.gui.wording import count_words

NOTHING_ARRANGED = "There is nothing to re-plan yet: plan the bays first (F5)."
NO_OFFER = (
    "“Re-plan” looks for the best plan that moves as few boxes as possible and shows it here and in the picture. "
    "Nothing is changed until you accept it."
)
WORK_TO_DO = "From what stands as built to how the run is drawn: "
NO_WORK = "No work to be done."


class ReplanPanel(QWidget):
    """Shows what is on offer, accepts or rejects it."""

    boxes_selected = Signal(object)
    """The person selected these boxes (a tuple of ids)."""

    def __init__(self, session: Session, actions: Actions, review: Review, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session, self._review = session, review
        self.words = QLabel(self)
        self.words.setWordWrap(True)
        self.words.setTextFormat(Qt.TextFormat.PlainText)
        self.words.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Minimum)
        self.messages = MessageBar(self)
        self.moves = MoveList(self)
        self.work = WorkPage(self)
        self.replan = QToolButton(self)
        self.replan.setDefaultAction(actions.replan)
        self.replan.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextBesideIcon)
        self.replan.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self._make_buttons()
        self._make_sides()
        self._lay_out()
        self.moves.ticked.connect(self._enable)
        self.moves.ids_selected.connect(self.boxes_selected)
        unsubscribe = session.subscribe(self._on_noticed)
        self.destroyed.connect(lambda _gone=None: unsubscribe())
        self.refresh()

    def _make_buttons(self) -> None:
        def button(words: str, tip: str, deed: Callable[[], object]) -> QPushButton:
            made = QPushButton(words, self)
            made.setToolTip(tip)
            made.clicked.connect(lambda _checked=False: deed())
            return made

        self.accept = button("&Accept all", "Take the whole re-plan in, as one edit", self.accept_all)
        self.accept_some = button(
            "Accept &ticked", "Take in only the ticked boxes and what must move for them", self.accept_ticked
        )
        self.reject = button("Re&ject", "Leave everything as it is (Esc)", self._session.reject_proposal)

    def _make_sides(self) -> None:
        self.sides = QButtonGroup(self)
        self.side_buttons: dict[Side, QRadioButton] = {}
        for side, words, tip in (
            (Side.BEFORE, "As it is", "Draw the run as it stands now, with marks where boxes would go"),
            (Side.AFTER, "Re-planned", "Draw the run as it would be, with marks where boxes come from"),
        ):
            made = QRadioButton(words, self)
            made.setToolTip(tip)
            made.clicked.connect(lambda _checked=False, side=side: self._review.show_side(side))
            self.sides.addButton(made)
            self.side_buttons[side] = made
        self._review.side_changed.connect(self._show_side)

    def _lay_out(self) -> None:
        row = QHBoxLayout()
        for widget in (self.replan, self.accept, self.accept_some, self.reject):
            row.addWidget(widget)
        row.addStretch(1)
        for choice in self.side_buttons.values():
            row.addWidget(choice)
        self.body = QSplitter(Qt.Orientation.Horizontal, self)
        self.body.addWidget(self.moves)
        self.body.addWidget(self.work)
        self.body.setChildrenCollapsible(False)
        self.body.setStretchFactor(0, 3)
        self.body.setStretchFactor(1, 2)
        self.body.setSizes([420, 280])
        column = QVBoxLayout(self)
        column.setContentsMargins(6, 4, 6, 4)
        column.setSpacing(4)
        column.addWidget(self.words)
        column.addLayout(row)
        column.addWidget(self.messages)
        column.addWidget(self.body, 1)

    def wanted_height(self) -> int:
        """How high the tab should be to read in, in pixels."""
        return self.fontMetrics().lineSpacing() * 14

    def minimumSizeHint(self) -> QSize:
        """No wider than the tabs may be."""
        return QSize(200, super().minimumSizeHint().height())

    # ---- keeping up

    def refresh(self) -> None:
        """Show what is on offer, or the work that is to be done."""
        proposal, project = self._session.proposal, self._session.project
        work = proposal.difference if proposal else self._session.difference
        if proposal is not None:
            self.words.setText(summary(movers(proposal.moves), proposal.difference, proposal.result))
        elif not project.arrangement.bay_count:
            self.words.setText(NOTHING_ARRANGED)
        elif work is not None and not work.is_empty:
            words = summary(Movers(len(work.moves), len(work.new_boxes), len(work.gone_boxes)), work, None)
            self.words.setText(f"{NO_OFFER}\n{WORK_TO_DO}{words[:1].lower()}{words[1:]}")
        else:
            self.words.setText(NO_OFFER)
        moves = proposal.moves if proposal else (work.moves if work else ())
        self.moves.show_moves(moves, proposal.before if proposal else project, can_choose=proposal is not None)
        told = proposal.result.remarks if proposal else ()
        self.work.show_chapters(chapters(work, project.unit, told) if work else (), NO_WORK)
        self.body.setVisible(proposal is not None or bool(work and not work.is_empty))
        for widget in (self.accept, self.accept_some, self.reject, *self.side_buttons.values()):
            widget.setVisible(proposal is not None)
        self.replan.setVisible(proposal is None)
        self._show_side(self._review.side)
        self._enable()

    def _show_side(self, side: Side) -> None:
        self.side_buttons[side].setChecked(True)

    def _enable(self) -> None:
        ticked = len(self.moves.ticked_ids)
        self.accept_some.setText(f"Accept &ticked ({ticked})")
        self.accept_some.setEnabled(ticked > 0)

    def _on_noticed(self, notice: Notice) -> None:
        if isinstance(notice, DocumentChanged | DocumentReplaced | ProposalMade | ProposalEnded):
            if not isinstance(notice, ProposalMade):
                self.messages.clear()
            self.refresh()

    def select_boxes(self, ids: tuple[str, ...]) -> None:
        """Select the lines of boxes that are selected elsewhere."""
        self.moves.select_ids(ids)

    # ---- deeds

    def accept_all(self) -> None:
        """Take the whole offer in."""
        self._session.accept_proposal()

    def accept_ticked(self) -> None:
        """Take the ticked boxes in; a refusal is told here, and the offer stays."""
        ticked = self.moves.ticked_ids
        labels = {box.id: box.label for box in self._session.project.boxes}
        try:
            moved = self._session.accept_proposal(ticked)
        except EditRefused as refusal:
            self.messages.show_message(refusal.message, Tone.TROUBLE)
            return
        more = [f"“{labels[box_id]}”" for box_id in moved if box_id not in ticked]
        if more:
            named = ", ".join(more[:3]) + (f" and {len(more) - 3} more" if len(more) > 3 else "")
            self.messages.show_message(
                f"{count_words(len(moved), 'box', 'boxes')} moved; {named} had to make way. Undo takes it back.",
                Tone.NOTE,
            )

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Esc rejects what is on offer."""
        if event.key() == Qt.Key.Key_Escape and self._session.proposal is not None:
            self._session.reject_proposal()
            event.accept()
        else:
            super().keyPressEvent(event)
