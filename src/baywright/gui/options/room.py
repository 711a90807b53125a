"""Room for a page of low tabs that is higher than the others: the tabs grow while it is in front, then go back.

Law: sizes that the person has set meanwhile are left as they are.
"""

from collections.abc import Callable

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QSplitter, QTabWidget, QWidget

LEAST_ABOVE_PX = 200
"""What is left to the picture over the tabs at least."""


class Room(QObject):
    """Watches the tabs, which are the lower part of an upright splitter."""

    def __init__(self, splitter: QSplitter, tabs: QTabWidget, page: QWidget, height: Callable[[], int]) -> None:
        super().__init__(tabs)
        self._splitter, self._tabs, self._page, self._height = splitter, tabs, page, height
        self._before: list[int] = []
        self._made: list[int] = []
        tabs.currentChanged.connect(lambda _tab: self._fit())

    def _fit(self) -> None:
        sizes = self._splitter.sizes()
        if self._tabs.currentWidget() is self._page:
            self._grow(sizes)
        elif self._made:
            if sizes == self._made:
                self._splitter.setSizes(self._before)
            self._made = []

    def _grow(self, sizes: list[int]) -> None:
        whole = sum(sizes)
        wanted = min(self._height() + self._tabs.tabBar().height() + 4, whole - LEAST_ABOVE_PX)
        if sizes[-1] < wanted:
            self._before = sizes
            self._splitter.setSizes([whole - wanted, wanted])
            self._made = self._splitter.sizes()
