"""Editors inside table cells. A refused text keeps its editor open, the reason at it; Esc gives the old value back."""

from collections.abc import Callable, Sequence
from typing import Any

from PySide6.QtCore import (
    QAbstractItemModel,
    QEvent,
    QModelIndex,
    QObject,
    QPersistentModelIndex,
    QPoint,
    Qt,
    Signal,
)
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import (
    QAbstractItemDelegate,
    QComboBox,
    QLineEdit,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QToolTip,
    QWidget,
)

Index = QModelIndex | QPersistentModelIndex
_Hint = QAbstractItemDelegate.EndEditHint
_ENDINGS = {
    Qt.Key.Key_Return: _Hint.NoHint,
    Qt.Key.Key_Enter: _Hint.NoHint,
    Qt.Key.Key_Tab: _Hint.EditNextItem,
    Qt.Key.Key_Backtab: _Hint.EditPreviousItem,
}


def as_text(text: str) -> object:
    """The text itself, without blanks at its ends."""
    return text.strip()


class TypedDelegate(QStyledItemDelegate):
    """A line edit whose text is read by `read`; ValueError of it, and a refusal by the model, stay at the editor."""

    refused = Signal(str)
    """Why the text in the editor was not taken; empty when a refusal is over."""

    def __init__(self, read: Callable[[str], object] = as_text, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.read = read
        self._index = QPersistentModelIndex()

    def createEditor(self, parent: QWidget, option: QStyleOptionViewItem, index: Index) -> QWidget:
        """A plain line edit that fills the cell."""
        editor = QLineEdit(parent)
        editor.setFrame(False)
        editor.setAutoFillBackground(True)
        header = index.model().headerData(index.column(), Qt.Orientation.Horizontal)
        editor.setAccessibleName(str(header))
        self._index = QPersistentModelIndex(index)
        self.refused.emit("")
        return editor

    def setEditorData(self, editor: QWidget, index: Index) -> None:
        """Fill the editor once; a redrawn cell does not overwrite what is being typed."""
        if isinstance(editor, QLineEdit) and not editor.isModified():
            value = index.data(Qt.ItemDataRole.EditRole)
            editor.setText("" if value is None else str(value))
            editor.selectAll()

    def setModelData(self, editor: QWidget, model: QAbstractItemModel, index: Index) -> None:
        """Take the text in when the editor is left; a refused one is dropped, the reason stays to be read."""
        if isinstance(editor, QLineEdit):
            self._take(editor, index)

    def eventFilter(self, editor: QObject, event: QEvent) -> bool:
        """Enter and Tab close the editor only when the text was taken."""
        if event.type() == QEvent.Type.KeyPress and isinstance(event, QKeyEvent) and isinstance(editor, QLineEdit):
            key = Qt.Key(event.key())
            if key in _ENDINGS:
                if self._take(editor, self._index):
                    self.closeEditor.emit(editor, _ENDINGS[key])
                return True
            if key == Qt.Key.Key_Escape:
                editor.setModified(False)
                self.refused.emit("")
        return super().eventFilter(editor, event)

    def _take(self, editor: QLineEdit, index: Index) -> bool:
        if not editor.isModified() or not index.isValid():
            return True
        try:
            value = self.read(editor.text())
        except ValueError as error:
            self.show_refusal(str(error), editor)
            return False
        model: Any = index.model()
        if not model.setData(index, value, Qt.ItemDataRole.EditRole):
            return False
        editor.setModified(False)
        self.refused.emit("")
        return True

    def show_refusal(self, message: str, editor: QWidget | None = None) -> None:
        """Tell the reason at the editor and to whoever listens."""
        self.refused.emit(message)
        if editor is not None and editor.isVisible():
            QToolTip.showText(editor.mapToGlobal(QPoint(0, editor.height())), message, editor)


class ChoiceDelegate(QStyledItemDelegate):
    """A combo box over the values that `choices` tells when it opens; a choice is taken at once."""

    def __init__(self, choices: Callable[[], Sequence[tuple[object, str]]], parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._choices = choices

    def createEditor(self, parent: QWidget, option: QStyleOptionViewItem, index: Index) -> QWidget:
        """A combo box with its list opened."""
        editor = QComboBox(parent)
        for value, words in self._choices():
            editor.addItem(words, value)
        editor.setAccessibleName(str(index.model().headerData(index.column(), Qt.Orientation.Horizontal)))
        editor.activated.connect(lambda: self._on_activated(editor))
        return editor

    def setEditorData(self, editor: QWidget, index: Index) -> None:
        """Show the present value."""
        if isinstance(editor, QComboBox):
            value = index.data(Qt.ItemDataRole.EditRole)  # Qt itself would find no None
            places = (place for place in range(editor.count()) if editor.itemData(place) == value)
            editor.setCurrentIndex(next(places, -1))

    def setModelData(self, editor: QWidget, model: QAbstractItemModel, index: Index) -> None:
        """Take the choice in."""
        if isinstance(editor, QComboBox) and editor.currentIndex() >= 0:
            model.setData(index, editor.currentData(), Qt.ItemDataRole.EditRole)

    def _on_activated(self, editor: QComboBox) -> None:
        self.commitData.emit(editor)
        self.closeEditor.emit(editor, _Hint.NoHint)

    def updateEditorGeometry(self, editor: QWidget, option: QStyleOptionViewItem, index: Index) -> None:
        """As wide as its words need, at least as the cell."""
        area = option.rect
        area.setWidth(max(area.width(), editor.sizeHint().width()))
        editor.setGeometry(area)
