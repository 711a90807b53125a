"""The tab “What's wrong”: at the left what is wrong, at the right what would help."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QSplitter, QVBoxLayout, QWidget

from baywright.gui.whynot.problem import WhyNot
from baywright.gui.whynot.reasons import ReasonList
from baywright.gui.whynot.repairs import RepairList


class WhyNotPanel(QWidget):
    """Reasons and repairs; the right side is there only while something is wrong."""

    problem_chosen = Signal(object)
    """As `ReasonList.problem_chosen`."""
    field_wanted = Signal(str)
    repair_wanted = Signal(object)
    """As `RepairList.repair_wanted`."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.shown = WhyNot()
        self.list = ReasonList(self)
        self.repairs = RepairList(self)
        self.list.problem_chosen.connect(self.problem_chosen)
        self.list.field_wanted.connect(self.field_wanted)
        self.repairs.repair_wanted.connect(self.repair_wanted)
        halves = QSplitter(Qt.Orientation.Horizontal, self)
        halves.addWidget(self.list)
        halves.addWidget(self.repairs)
        halves.setStretchFactor(0, 3)
        halves.setStretchFactor(1, 2)
        halves.setSizes([330, 220])
        halves.setChildrenCollapsible(False)
        column = QVBoxLayout(self)
        column.setContentsMargins(6, 6, 6, 6)
        column.addWidget(halves)
        self.repairs.hide()

    def show_why_not(self, shown: WhyNot) -> None:
        """Show what is wrong and what would help."""
        self.shown = shown
        self.list.show_reasons(shown)
        self.repairs.show_repairs(shown)
        self.repairs.setVisible(bool(shown.problems))
