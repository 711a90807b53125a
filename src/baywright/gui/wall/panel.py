"""The tab “Wall and bays”: zones, ceiling, wishes for bays and the order of the goals, in folding sections."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from baywright.app.session import Session
from baywright.gui.sections import SectionPage
from baywright.gui.wall.ceiling import CeilingBlock
from baywright.gui.wall.goals import GoalBlock
from baywright.gui.wall.wishes import WishBlock
from baywright.gui.wall.zones import ZoneBlock


class WallPanel(QWidget):
    """What stands in the way on the wall, and what is wished of the run."""

    zone_selected = Signal(str)
    """The zone that is selected alone; empty for none or several."""

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.zones = ZoneBlock(session)
        self.ceiling = CeilingBlock(session)
        self.wishes = WishBlock(session)
        self.goals = GoalBlock(session)
        page = SectionPage((
            ("Zones of the wall", self.zones),
            ("Sloping ceiling", self.ceiling),
            ("Wishes for bays", self.wishes),
            ("What counts most", self.goals),
        ))  # fmt: skip
        self.sections = page.sections
        whole = QVBoxLayout(self)
        whole.setContentsMargins(6, 6, 6, 6)
        whole.addWidget(page)
        self.zones.zone_selected.connect(self.zone_selected)

    def update_from_document(self, *, replaced: bool = False) -> None:
        """Show the session's present document."""
        if replaced:
            for block in (self.zones, self.ceiling, self.wishes):
                block.messages.clear()
        for part in (self.zones, self.ceiling, self.wishes, self.goals):
            part.update_from_document()
