"""The work of a re-plan as a page to read, copy and follow."""

from collections.abc import Iterable
from html import escape

from PySide6.QtCore import QSize
from PySide6.QtWidgets import QFrame, QTextBrowser, QWidget

from baywright.gui.replan.words import Chapter


class WorkPage(QTextBrowser):
    """Chapters one under another; the text can be selected and copied."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName("The work that it asks for")
        self.setFrameShape(QFrame.Shape.StyledPanel)
        self.setOpenLinks(False)
        self._chapters: tuple[Chapter, ...] = ()

    def show_chapters(self, chapters: Iterable[Chapter], nothing: str) -> None:
        """Show these chapters, or a sentence where there are none."""
        self._chapters = tuple(chapters)
        parts = []
        for chapter in self._chapters:
            kind = "ol" if chapter.is_numbered else "ul"
            lines = "".join(f"<li>{escape(line)}</li>" for line in chapter.lines)
            parts.append(f"<p><b>{escape(chapter.title)}</b></p><{kind}>{lines}</{kind}>")
        self.setHtml("".join(parts) or f"<p>{escape(nothing)}</p>")

    def sizeHint(self) -> QSize:
        """A few lines."""
        return QSize(260, self.fontMetrics().lineSpacing() * 6)

    def minimumSizeHint(self) -> QSize:
        """As low as the tabs may be."""
        return QSize(140, self.fontMetrics().lineSpacing() * 3)
