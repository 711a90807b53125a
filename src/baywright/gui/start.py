"""What stands in the picture's place before there is a plan: what to do first and next, with a button for each."""

from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QFrame, QGridLayout, QLabel, QPushButton, QScrollArea, QSizePolicy, QVBoxLayout, QWidget

from baywright.app.session import Session
from baywright.gui.wording import count_words
from baywright.model.length import format_length


class Step(QWidget):
    """One step: its number or a tick, what to do, and the buttons that do it."""

    def __init__(self, number: int, title: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._number, self._title = number, title
        self._heading, self._words = QLabel(self), QLabel(self)
        font = self._heading.font()
        font.setBold(True)
        self._heading.setFont(font)
        for label in (self._heading, self._words):
            label.setWordWrap(True)
            label.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Minimum)
        self._buttons = QGridLayout()
        self._buttons.setColumnStretch(2, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 14)
        column.addWidget(self._heading)
        column.addWidget(self._words)
        column.addLayout(self._buttons)

    def add_button(self, button: QPushButton) -> None:
        """Put a button under the words, two in a row."""
        place = self._buttons.count()
        self._buttons.addWidget(button, place // 2, place % 2)

    def show_state(self, done: bool, words: str) -> None:
        """Tick the step off or leave it open, and say how things stand."""
        self._heading.setText(f"{'✓' if done else self._number}  {self._title}")
        self._words.setText(words)


class StartPanel(QScrollArea):
    """The three steps from nothing to a plan."""

    def __init__(self, session: Session, steps: dict[str, list[QAction]], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        page = QWidget(self)
        column = QVBoxLayout(page)
        column.setContentsMargins(28, 20, 28, 12)
        self._heading = QLabel("From your boxes to a wall of drawers", page)
        self._heading.setWordWrap(True)
        self._heading.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Minimum)
        self._fit_heading()
        column.addWidget(self._heading)
        column.addSpacing(8)
        self.wall, self.boxes, self.plan = (
            Step(1, "Set the wall", page),
            Step(2, "List the boxes", page),
            Step(3, "Plan", page),
        )
        for name, step in (("wall", self.wall), ("boxes", self.boxes), ("plan", self.plan)):
            for action in steps[name]:
                step.add_button(_button_for(action, page))
            column.addWidget(step)
        column.addStretch(1)
        self.setWidget(page)
        self.setWidgetResizable(True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.update_from_document()

    def changeEvent(self, event: QEvent) -> None:
        """Keep the heading larger than the text, whatever the text's size."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.FontChange and hasattr(self, "_heading"):
            self._fit_heading()

    def _fit_heading(self) -> None:
        font = self.font()
        font.setBold(True)
        font.setPointSizeF(font.pointSizeF() * 1.4)
        self._heading.setFont(font)

    def update_from_document(self) -> None:
        """Say how far the present document has got."""
        project = self._session.project
        space, unit = project.space, project.unit
        measures = " × ".join(
            format_length(length, unit) for length in (space.length_mm, space.depth_mm, space.height_limit_mm)
        )
        self.wall.show_state(False, f"Length × depth × height limit are {measures} now. Is that your wall?")
        boxes, sizes = len(project.boxes), len(project.box_sizes)
        if boxes:
            words = f"{count_words(boxes, 'box', 'boxes')} in {count_words(sizes, 'size')} so far."
        else:
            words = (
                "Label, size, mass and contents of each. Type them, paste them from a spreadsheet, or import a table."
            )
        self.boxes.show_state(bool(boxes), words)
        self.plan.show_state(
            False,
            "The fewest bays, then the lowest run, then the easiest handling; boxes in locked drawers stay."
            if boxes
            else "As soon as there are boxes.",
        )


def _button_for(action: QAction, parent: QWidget) -> QPushButton:
    """A button that does what the action does and is greyed with it."""
    button = QPushButton(action.icon(), action.text(), parent)
    button.setToolTip(action.toolTip())
    button.clicked.connect(action.trigger)

    def follow() -> None:
        button.setEnabled(action.isEnabled())
        button.setIcon(action.icon())

    action.changed.connect(follow)
    follow()
    return button
