"""A list of remarks: one an entry, each with a sign, wrapped to be read."""

from collections.abc import Sequence

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QAbstractItemView, QListWidget, QListWidgetItem, QWidget


class RemarkList(QListWidget):
    """The remarks, or that there are none."""

    def __init__(self, name: str, nothing: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._nothing = nothing
        self.setAccessibleName(name)
        self.setWordWrap(True)
        self.setAlternatingRowColors(True)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setResizeMode(QListWidget.ResizeMode.Adjust)
        self._remarks: tuple[str, ...] | None = None
        self.show_remarks(())

    def show_remarks(self, remarks: Sequence[str]) -> None:
        """List these remarks."""
        if tuple(remarks) == self._remarks:
            return
        self._remarks = tuple(remarks)
        self.clear()
        for remark in remarks:
            QListWidgetItem(f"⚠ {remark}", self)
        if not remarks:
            QListWidgetItem(self._nothing, self)
