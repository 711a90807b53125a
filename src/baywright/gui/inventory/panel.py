"""The tab “Boxes”: filter, buttons, table, and under it why an edit was refused."""

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QAction, QKeyEvent, QKeySequence
from PySide6.QtWidgets import QHBoxLayout, QLabel, QLineEdit, QMenu, QToolButton, QVBoxLayout, QWidget

from baywright.app.session import Session
from baywright.gui.actions import Actions
from baywright.gui.inventory.model import BoxTable
from baywright.gui.inventory.view import BoxView
from baywright.gui.messages import MessageBar, Tone
from baywright.gui.wording import count_words


class BoxPanel(QWidget):
    """The inventory: shown, filtered, edited."""

    boxes_selected = Signal(object)
    """The person selected the boxes with these ids (a tuple)."""

    def __init__(self, session: Session, actions: Actions, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.table = BoxTable(session, self)
        self.view = BoxView(self.table, session, self)
        self.filter = QLineEdit(self)
        self.filter.setPlaceholderText("Filter: words in any column")
        self.filter.setAccessibleName("Filter the boxes")
        self.filter.setClearButtonEnabled(True)
        self.count = QLabel(self)
        self.messages = MessageBar(self)
        self._lay_out((actions.add_box, actions.duplicate, actions.delete))
        self._make_menu(actions)
        self._delete = actions.delete
        self.filter.textChanged.connect(self._on_filter_changed)
        self.view.refused.connect(lambda message: self.messages.show_message(message, Tone.TROUBLE))
        self.view.ids_selected.connect(self.boxes_selected)
        self._count()

    def _lay_out(self, actions: Sequence[QAction]) -> None:
        buttons = QHBoxLayout()
        before: QWidget = self.filter
        for action in actions:
            button = QToolButton(self)
            button.setDefaultAction(action)
            button.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextBesideIcon)
            button.setFocusPolicy(Qt.FocusPolicy.TabFocus)
            buttons.addWidget(button)
            self.setTabOrder(before, button)
            before = button
        self.setTabOrder(before, self.view)
        buttons.addStretch(1)
        finding = QHBoxLayout()
        finding.addWidget(self.filter, 1)
        finding.addWidget(self.count)
        column = QVBoxLayout(self)
        column.setContentsMargins(6, 6, 6, 6)
        column.addLayout(finding)
        column.addLayout(buttons)
        column.addWidget(self.view, 1)
        column.addWidget(self.messages)

    def _make_menu(self, actions: Actions) -> None:
        self._menu = QMenu(self)
        for action in (
            actions.add_box,
            actions.duplicate,
            actions.delete,
            None,
            actions.lock_drawer,
            actions.lock_bay,
            actions.unlock,
            actions.unplace,
            None,
            actions.paste,
        ):
            if action is None:
                self._menu.addSeparator()
            else:
                self._menu.addAction(action)
        self.view.setContextMenuPolicy(Qt.ContextMenuPolicy.CustomContextMenu)
        self.view.customContextMenuRequested.connect(
            lambda point: self._menu.exec(self.view.viewport().mapToGlobal(point))
        )

    def update_from_document(self, *, replaced: bool = False) -> None:
        """Show the session's present document."""
        if replaced:
            self.filter.clear()
            self.messages.clear()
        was_empty = not self.table.total
        self.view.change_rows(lambda: self.table.update_from_document(replaced=replaced))
        if was_empty and self.table.total:
            self.view.fit_columns()
        self._count()

    def selected_ids(self) -> tuple[str, ...]:
        """The ids of the selected boxes, in the order shown."""
        return self.view.selected_ids()

    def select_ids(self, ids: Sequence[str]) -> None:
        """Select boxes without telling that the person did."""
        self.view.select_ids(ids)

    def begin_editing(self, box_id: str) -> None:
        """Open the editor on a box's label, for a box that was just added."""
        self.view.edit_field(box_id, "label")

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Del deletes the selected boxes."""
        if event.matches(QKeySequence.StandardKey.Delete) and self.view.hasFocus():
            self._delete.trigger()
            event.accept()
        else:
            super().keyPressEvent(event)

    def _on_filter_changed(self, text: str) -> None:
        self.view.change_rows(lambda: self.table.set_filter(text))
        self._count()

    def _count(self) -> None:
        total, shown = self.table.total, len(self.table.ids)
        self.count.setText(
            f"{shown} of {count_words(total, 'box', 'boxes')}" if shown != total else count_words(total, "box", "boxes")
        )
