"""One line over the picture: how many things are wrong and the first of them, for those who do not see the panel."""

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QPushButton, QSizePolicy, QWidget

from baywright.gui.messages import Tone, tone_palette
from baywright.gui.whynot.problem import SIGN, Problem
from baywright.gui.wording import count_words


class ProblemStrip(QFrame):
    """Hidden while nothing is wrong."""

    all_wanted = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._words = QLabel(self)
        self._words.setTextFormat(Qt.TextFormat.PlainText)
        self._words.setWordWrap(True)
        self._words.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Minimum)
        self._all = QPushButton("&What's wrong", self)
        self._all.clicked.connect(self.all_wanted)
        row = QHBoxLayout(self)
        row.setContentsMargins(8, 4, 8, 4)
        row.addWidget(self._words, 1)
        row.addWidget(self._all, 0, Qt.AlignmentFlag.AlignTop)
        self.setAutoFillBackground(True)
        self._colouring = False
        self.hide()

    def changeEvent(self, event: QEvent) -> None:
        """Take the colours of a new theme."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.PaletteChange and not self._colouring:
            self._colour()

    def _colour(self) -> None:
        self._colouring = True
        try:
            self.setPalette(tone_palette(self, Tone.CAUTION))
        finally:
            self._colouring = False

    def show_problems(self, problems: tuple[Problem, ...]) -> None:
        """Show the first trouble and how many there are; nothing where there is none, or the list itself is seen."""
        self._colour()
        if problems:
            more = len(problems) - 1
            first = problems[0].message
            self._words.setText(f"{SIGN} {first}" + (f"  ({count_words(more, 'more', 'more')})" if more else ""))
            self._words.setToolTip("\n".join(problem.text for problem in problems[:8]))
        self.setVisible(bool(problems))
