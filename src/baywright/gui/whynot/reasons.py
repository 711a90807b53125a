"""The list of what is wrong: what leaves no plan under one heading, what the run as it stands has under another."""

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QAbstractItemView, QListWidget, QListWidgetItem, QWidget

from baywright.gui.whynot.problem import Problem, WhyNot

MOST_LISTED = 200
"""More troubles than this are counted, not listed: nobody reads on."""
AGAINST_PLAN = "Why no plan is possible:"
AS_IT_STANDS = "As it stands now:"
_NUMBER = Qt.ItemDataRole.UserRole


class ReasonList(QListWidget):
    """All troubles, wrapped, each with what to do. Choosing one shows its boxes, Enter its field in the measures."""

    problem_chosen = Signal(object)
    """The person chose a trouble: the ids of its boxes (a tuple)."""
    field_wanted = Signal(str)
    """The person wants to see the field that a trouble is about."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._shown = WhyNot()
        self.setAccessibleName("What is wrong")
        self.setWordWrap(True)
        self.setAlternatingRowColors(True)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setResizeMode(QListWidget.ResizeMode.Adjust)
        self.currentItemChanged.connect(lambda item, _before: self._on_chosen(item))
        self.itemClicked.connect(self._on_chosen)
        self.itemDoubleClicked.connect(self._show_field)

    @property
    def has_problems(self) -> bool:
        """Whether anything is wrong."""
        return bool(self._shown.problems)

    @property
    def texts(self) -> list[str]:
        """What is listed, headings included."""
        return [self.item(row).text() for row in range(self.count())]

    def row_of(self, number: int) -> int:
        """The row of a problem by its number."""
        return next(row for row in range(self.count()) if self.item(row).data(_NUMBER) == number)

    def show_reasons(self, shown: WhyNot) -> None:
        """List these troubles, or say that there is nothing."""
        if shown == self._shown and self.count():
            return
        self.blockSignals(True)
        self.clear()
        self._shown = shown
        heading = ""
        for number, problem in enumerate(shown.problems[:MOST_LISTED]):
            new = AGAINST_PLAN if problem.stands_against_plan else AS_IT_STANDS
            if shown.is_impossible and new != heading:
                heading = new
                self._add_plain(heading, is_heading=True)
            item = QListWidgetItem(problem.text)
            item.setToolTip(problem.text)
            item.setData(_NUMBER, number)
            self.addItem(item)
        if len(shown.problems) > MOST_LISTED:
            self._add_plain(f"… and {len(shown.problems) - MOST_LISTED:,} more of the kind.")
        if not shown.problems:
            self._add_plain(shown.nothing)
        elif shown.is_impossible:
            self.setCurrentRow(1)  # not the heading, on which Enter would do nothing
            self.clearSelection()
        self.blockSignals(False)

    def _add_plain(self, text: str, *, is_heading: bool = False) -> None:
        item = QListWidgetItem(text)
        item.setFlags(Qt.ItemFlag.ItemIsEnabled)
        if is_heading:
            font = item.font()
            font.setBold(True)
            item.setFont(font)
        self.addItem(item)

    def _problem(self, item: QListWidgetItem | None) -> Problem | None:
        number = None if item is None else item.data(_NUMBER)
        return None if number is None else self._shown.problems[number]

    def _on_chosen(self, item: QListWidgetItem | None) -> None:
        problem = self._problem(item)
        if problem is not None:
            self.problem_chosen.emit(problem.box_ids)

    def _show_field(self, item: QListWidgetItem | None) -> None:
        problem = self._problem(item)
        if problem is not None and problem.fields:
            self.field_wanted.emit(problem.fields[0])

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter goes to the field that the trouble is about."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self._show_field(self.currentItem())
            event.accept()
        else:
            super().keyPressEvent(event)

    def sizeHint(self) -> QSize:
        """A few lines."""
        return QSize(300, self.fontMetrics().lineSpacing() * 6)
