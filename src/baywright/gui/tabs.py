"""Tabs that give up counts, long words and air before any of them goes out of sight behind arrows.

Laws: the whole title stays the tab's text and its accessible name; only what is painted is shorter, and only while the
whole titles have no room side by side. A sign before a title stays: it tells that something is wrong there.
"""

import re
from collections.abc import Mapping

from PySide6.QtCore import QEvent, QSize
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QProxyStyle, QStyle, QStyleOption, QStyleOptionTab, QTabBar, QTabWidget, QWidget

SLIM_AIR_PX = 8
"""Air beside the title of a tab, on both sides together, while titles are painted in brief."""
_COUNT = re.compile(r" \(\d+\)$")


class _SlimStyle(QProxyStyle):
    """The application's style with less air beside titles that are painted in brief."""

    def pixelMetric(
        self, metric: QStyle.PixelMetric, option: QStyleOption | None = None, widget: QWidget | None = None
    ) -> int:
        """A measure of the style, in pixels."""
        if metric is QStyle.PixelMetric.PM_TabBarTabHSpace and isinstance(widget, SlimTabBar) and widget.is_slim:
            return SLIM_AIR_PX
        return super().pixelMetric(metric, option, widget)


class SlimTabBar(QTabBar):
    """A tab bar with two ways to paint its titles: whole, or in brief."""

    def __init__(self, brief: Mapping[str, str], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._brief = dict(brief)
        self.is_slim = False
        self._style = _SlimStyle("fusion")
        self.setStyle(self._style)

    def shown_text(self, index: int) -> str:
        """The title as it is painted."""
        text = self.tabText(index)
        return self._short(text) if self.is_slim else text

    def _short(self, text: str) -> str:
        short = _COUNT.sub("", text)
        for words, fewer in self._brief.items():
            short = short.replace(words, fewer)
        return short

    def whole_width(self) -> int:
        """What the whole titles need side by side, in pixels."""
        was_slim, self.is_slim = self.is_slim, False
        try:
            return sum(self.tabSizeHint(index).width() for index in range(self.count()))
        finally:
            self.is_slim = was_slim

    def slim_down(self, is_slim: bool) -> None:
        """Paint the titles in brief, or whole again."""
        if is_slim != self.is_slim and self.count():
            self.is_slim = is_slim
            self.setTabText(0, self.tabText(0))  # Qt lays the tabs out anew only where one changes

    def tabSizeHint(self, index: int) -> QSize:
        """As wide as the title that is painted needs."""
        size = super().tabSizeHint(index)
        if self.is_slim:
            letters, text = self.fontMetrics(), self.tabText(index)
            saved = letters.horizontalAdvance(text) - letters.horizontalAdvance(self._short(text))
            size.setWidth(size.width() - saved)
        return size

    def initStyleOption(self, option: QStyleOptionTab, index: int) -> None:
        """Paint the brief title where there is no room for the whole one."""
        super().initStyleOption(option, index)
        if self.is_slim:
            option.text = self._short(self.tabText(index))


class SlimTabs(QTabWidget):
    """A tab widget whose titles are painted in brief while the whole ones would need arrows; `brief` says by which
    fewer words.
    """

    def __init__(self, brief: Mapping[str, str], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bar = SlimTabBar(brief, self)
        self.setTabBar(self._bar)

    @property
    def bar(self) -> SlimTabBar:
        """The tab bar."""
        return self._bar

    def setTabText(self, index: int, text: str) -> None:
        """Give a tab another whole title."""
        super().setTabText(index, text)
        self._fit()

    def tabInserted(self, index: int) -> None:
        """There is one tab more to make room for."""
        super().tabInserted(index)
        self._fit()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Whole titles where there is room."""
        super().resizeEvent(event)
        self._fit()

    def changeEvent(self, event: QEvent) -> None:
        """Letters of another size need other room."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.FontChange and hasattr(self, "_bar"):
            self._fit()

    def _fit(self) -> None:
        self._bar.slim_down(self._bar.whole_width() > self.width())
