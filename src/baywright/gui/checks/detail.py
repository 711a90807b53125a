"""One finding in full: what it means, how it was computed, where the limit comes from, and what would mend it.

Law: it makes no change itself; it tells which mend is wanted.
"""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QFrame, QLabel, QPushButton, QScrollArea, QSizePolicy, QVBoxLayout, QWidget

from baywright.model.caution import COMPUTED
from baywright.model.finding import Finding, Mend

CHOOSE_ONE = "Choose a finding at the left to see how it was computed and what would mend it."


class FindingDetail(QScrollArea):
    """The words of one finding, and a button for each mend that can be made here."""

    mend_wanted = Signal(object)
    """The person wants this `Mend` made."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.buttons: list[QPushButton] = []
        self.setWidgetResizable(True)
        self.setFrameShape(QFrame.Shape.StyledPanel)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setAccessibleName("The finding in full")
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.show_finding(None)

    @property
    def words(self) -> str:
        """Everything that is written there."""
        inner = self.widget()
        return "\n".join(label.text() for label in inner.findChildren(QLabel)) if inner is not None else ""

    def show_finding(self, finding: Finding | None) -> None:
        """Show a finding; None says to choose one."""
        inner = QWidget(self)
        column = QVBoxLayout(inner)
        column.setContentsMargins(8, 6, 8, 6)
        column.setSpacing(4)
        self.buttons = []
        if finding is None:
            column.addWidget(_label(CHOOSE_ONE, inner))
        else:
            column.addWidget(
                _label(f"{finding.severity.words}: {finding.kind.words}, {finding.subject}", inner, bold=True)
            )
            column.addWidget(_label(finding.message, inner))
            for mend in finding.mends:
                self._add_mend(mend, column, inner)
            for words in _working(finding):
                column.addWidget(_label(words, inner))
        column.addWidget(_label(COMPUTED, inner))
        column.addStretch(1)
        self.setWidget(inner)

    def _add_mend(self, mend: Mend, column: QVBoxLayout, inner: QWidget) -> None:
        column.addWidget(_label(f"→ {mend.text}", inner))
        if not mend.changes:
            return
        button = QPushButton("Apply", inner)
        button.setAccessibleName(f"Apply: {mend.text}")
        button.setToolTip(f"{mend.text} One undo takes it back.")
        button.setSizePolicy(QSizePolicy.Policy.Maximum, QSizePolicy.Policy.Fixed)
        button.clicked.connect(lambda _checked=False: self.mend_wanted.emit(mend))
        column.addWidget(button)
        self.buttons.append(button)


def _working(finding: Finding) -> list[str]:
    found = []
    if finding.formula:
        found.append(f"Formula: {finding.formula}")
    if finding.given:
        found.append("With: " + "; ".join(f"{given.name} {given.value}" for given in finding.given))
    if finding.source:
        found.append(f"Source: {finding.source}")
    return found


def _label(words: str, parent: QWidget, *, bold: bool = False) -> QLabel:
    label = QLabel(words, parent)
    label.setWordWrap(True)
    label.setTextFormat(Qt.TextFormat.PlainText)
    label.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
    label.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Minimum)
    font = label.font()
    font.setBold(bold)
    label.setFont(font)
    return label
