"""A heading that folds what stands under it, and a page of such sections that scrolls."""

from collections.abc import Iterable

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QFrame, QScrollArea, QSizePolicy, QToolButton, QVBoxLayout, QWidget


class FoldingSection(QWidget):
    """A heading button over a body; the body is shown while the section is open."""

    toggled = Signal(bool)

    def __init__(self, title: str, body: QWidget, *, is_open: bool = True, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.body = body
        self.heading = QToolButton(self)
        self.heading.setText(title)
        self.heading.setCheckable(True)
        self.heading.setAutoRaise(True)
        self.heading.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextBesideIcon)
        self.heading.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        font = self.heading.font()
        font.setBold(True)
        self.heading.setFont(font)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(2)
        column.addWidget(self.heading)
        column.addWidget(body)
        self.heading.toggled.connect(self.set_open)
        self.heading.setChecked(is_open)
        self.set_open(is_open)

    @property
    def is_open(self) -> bool:
        """Whether the body is shown."""
        return self.heading.isChecked()

    def set_open(self, is_open: bool) -> None:
        """Show or fold the body."""
        self.heading.setChecked(is_open)
        self.heading.setArrowType(Qt.ArrowType.DownArrow if is_open else Qt.ArrowType.RightArrow)
        self.heading.setAccessibleName(f"{self.heading.text()}, {'open' if is_open else 'folded'}")
        self.body.setVisible(is_open)
        self.toggled.emit(is_open)


class SectionPage(QWidget):
    """Folding sections one under another; they scroll where they have no room."""

    def __init__(self, bodies: Iterable[tuple[str, QWidget]], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        page = QWidget()
        column = QVBoxLayout(page)
        column.setContentsMargins(0, 0, 8, 0)
        self.sections = tuple(FoldingSection(title, body, parent=page) for title, body in bodies)
        for section in self.sections:
            column.addWidget(section)
        column.addStretch(1)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(scrolling(page, self))


def scrolling(page: QWidget, parent: QWidget) -> QScrollArea:
    """A page that scrolls up and down, without a frame of its own."""
    area = QScrollArea(parent)
    area.setWidgetResizable(True)
    area.setFrameShape(QFrame.Shape.NoFrame)
    area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
    area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
    area.setWidget(page)
    return area
