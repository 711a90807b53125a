"""A re-plan on offer, as the elevation shows it: the run before and after, and the marks of what moves.

Law: nothing is worked out here but places on the drawing; what is proposed is the session's to say.
"""

from PySide6.QtCore import QObject, Signal

from baywright.app.derived import Derived
from baywright.app.proposal import Proposal
from baywright.app.session import Session
from baywright.gui.elevation.changes import Changes, Side, marks_of
from baywright.gui.elevation.layout import Layout, lay_out
from baywright.workings import Workings


class Review(QObject):
    """Which side of the proposal is drawn, and with which marks."""

    side_changed = Signal(object)
    """Another `Side` is drawn."""

    def __init__(self, session: Session, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._proposal: Proposal | None = None
        self._derived: Derived | None = None
        self._after: Layout | None = None
        self._side = Side.AFTER

    @property
    def is_on(self) -> bool:
        """Whether a re-plan is on offer."""
        return self._proposal is not None

    @property
    def side(self) -> Side:
        """Which side is drawn while a re-plan is on offer."""
        return self._side

    def show_side(self, side: Side) -> None:
        """Draw the other side from now on."""
        if side is not self._side:
            self._side = side
            self.side_changed.emit(side)

    def update(self) -> None:
        """Take in what is on offer now; a new offer is drawn as it would be."""
        proposal = self._session.proposal
        if proposal is self._proposal:
            return
        was_on, self._proposal = self.is_on, proposal
        self._derived = Derived(proposal.after) if proposal else None
        self._after = (
            lay_out(proposal.after, self._derived.workings, self._derived.report)
            if proposal and self._derived
            else None
        )
        if not was_on:
            self.show_side(Side.AFTER)

    def picture(self, present: Layout) -> tuple[Layout, Workings]:
        """The layout to draw with its workings, in place of the present one."""
        if self._after is None or self._derived is None or self._side is Side.BEFORE:
            return present, self._session.workings
        return self._after, self._derived.workings

    def changes(self, present: Layout) -> Changes | None:
        """The marks of what moves; None while nothing is on offer."""
        if self._proposal is None or self._after is None:
            return None
        return Changes(marks_of(self._proposal.moves, present, self._after), self._side)

    @property
    def words(self) -> str:
        """What is drawn, for the line under the drawing; empty while nothing is on offer."""
        if not self.is_on:
            return ""
        shown = "how it would be" if self._side is Side.AFTER else "how it is now"
        return f"Re-plan on offer, drawn {shown}. Nothing is changed until you accept it; Esc rejects it."
