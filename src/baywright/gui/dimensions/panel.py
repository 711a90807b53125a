"""The tab “Workings”: the tree of dimensions, and under it the whole working of the line that is looked at."""

from PySide6.QtCore import QAbstractItemModel, QModelIndex, QPersistentModelIndex, Qt
from PySide6.QtGui import QKeyEvent, QShowEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QComboBox,
    QHeaderView,
    QLabel,
    QSizePolicy,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QTreeView,
    QVBoxLayout,
    QWidget,
)

from baywright.app.session import Session
from baywright.gui.dimensions.tree import LABEL, OF_A_SIZE, VALUE, WORKING, WorkingsTree
from baywright.gui.dimensions.words import entry_label
from baywright.gui.fields.kinds import ChoiceKind, FlagKind, NoteKind, read_typed
from baywright.gui.messages import MessageBar, Tone
from baywright.gui.tables.delegates import ChoiceDelegate, TypedDelegate

Index = QModelIndex | QPersistentModelIndex
_YES_NO = ((True, "yes"), (False, "no"))


class InputDelegate(QStyledItemDelegate):
    """Gives each input the editor of its kind: a line edit or a list of choices."""

    def __init__(self, tree: WorkingsTree, session: Session, view: QTreeView) -> None:
        super().__init__(view)
        self._tree, self._session = tree, session
        self.typed = TypedDelegate(self._read, view)
        self.choice = ChoiceDelegate(self._choices, view)
        self._index = QPersistentModelIndex()
        for delegate in (self.typed, self.choice):
            delegate.commitData.connect(self.commitData)
            delegate.closeEditor.connect(self.closeEditor)

    def _read(self, text: str) -> object:
        kind = self._tree.kind_at(self._index)
        if kind is None or isinstance(kind, ChoiceKind | FlagKind | NoteKind):
            return text
        return read_typed(kind, text, self._session.project.unit)

    def _choices(self) -> tuple[tuple[object, str], ...]:
        kind = self._tree.kind_at(self._index)
        return kind.choices if isinstance(kind, ChoiceKind) else _YES_NO

    def _fitting(self, editor: QWidget) -> QStyledItemDelegate:
        return self.choice if isinstance(editor, QComboBox) else self.typed

    def createEditor(self, parent: QWidget, option: QStyleOptionViewItem, index: Index) -> QWidget:
        """The editor of the input's kind; it hands its keys to the fitting delegate."""
        self._index = QPersistentModelIndex(index)
        is_choice = isinstance(self._tree.kind_at(index), ChoiceKind | FlagKind | NoteKind)
        delegate = self.choice if is_choice else self.typed
        editor = delegate.createEditor(parent, option, index)
        editor.setAccessibleName(str(self._tree.data(self._tree.index(index.row(), LABEL, index.parent()))))
        return editor

    def setEditorData(self, editor: QWidget, index: Index) -> None:
        """Show the present value."""
        self._fitting(editor).setEditorData(editor, index)

    def setModelData(self, editor: QWidget, model: QAbstractItemModel, index: Index) -> None:
        """Take the value in."""
        self._fitting(editor).setModelData(editor, model, index)

    def updateEditorGeometry(self, editor: QWidget, option: QStyleOptionViewItem, index: Index) -> None:
        """At least as wide as its words."""
        self._fitting(editor).updateEditorGeometry(editor, option, index)

    def eventFilter(self, editor: object, event: object) -> bool:
        """Enter closes only what was taken."""
        if isinstance(editor, QWidget):
            return self._fitting(editor).eventFilter(editor, event)  # type: ignore[arg-type]
        return False


NONE_CHOSEN = "Choose a line to read its whole working here."


class WorkingsView(QTreeView):
    """The tree; Enter edits an input, else unfolds or folds the line."""

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter on an input opens its editor, on a dimension its chain."""
        index = self.currentIndex()
        editing = self.state() == QAbstractItemView.State.EditingState
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and index.isValid() and not editing:
            value = index.siblingAtColumn(VALUE)
            if self.model().flags(value) & Qt.ItemFlag.ItemIsEditable:
                self.setCurrentIndex(value)
                self.edit(value)
            else:
                line = index.siblingAtColumn(LABEL)
                self.setExpanded(line, not self.isExpanded(line))
            event.accept()
            return
        super().keyPressEvent(event)


class WorkingsPanel(QWidget):
    """Shows every dimension with value and working; opening one shows its chain down to the inputs."""

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self.tree = WorkingsTree(session, self)
        self.view = WorkingsView(self)
        self.messages = MessageBar(self)
        self.details = QLabel(self)
        self.details.setTextFormat(Qt.TextFormat.PlainText)
        self._known_groups: set[str] = set()
        self._is_late = False
        self._set_up_view(session)
        hint = QLabel("Open a line to see what it is worked out from. Entered values can be changed where they stand.")
        hint.setWordWrap(True)
        self.details.setWordWrap(True)
        self.details.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self.details.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Minimum)
        self.details.setMinimumHeight(self.details.fontMetrics().lineSpacing() * 4)
        self.details.setAlignment(Qt.AlignmentFlag.AlignTop)
        self.details.setAccessibleName("Working of the selected dimension")
        column = QVBoxLayout(self)
        column.setContentsMargins(6, 6, 6, 6)
        column.addWidget(hint)
        column.addWidget(self.view, 1)
        column.addWidget(self.messages)
        column.addWidget(self.details)
        self._show_details()

    def _set_up_view(self, session: Session) -> None:
        view = self.view
        view.setModel(self.tree)
        view.setAccessibleName("Workings")
        view.setAlternatingRowColors(True)
        view.setUniformRowHeights(True)
        view.setEditTriggers(view.EditTrigger.DoubleClicked | view.EditTrigger.EditKeyPressed)
        view.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        view.setTextElideMode(Qt.TextElideMode.ElideRight)
        self.delegate = InputDelegate(self.tree, session, view)
        view.setItemDelegateForColumn(VALUE, self.delegate)
        header = view.header()
        header.setStretchLastSection(True)
        header.setSectionResizeMode(QHeaderView.ResizeMode.Interactive)
        header.resizeSection(LABEL, 220)
        header.resizeSection(VALUE, 90)
        header.setMinimumSectionSize(40)
        self._show_groups()
        view.selectionModel().currentChanged.connect(self._show_details)
        self.delegate.typed.refused.connect(self._on_refused)
        self.tree.refused.connect(self._on_tree_refused)

    def update_from_document(self, *, replaced: bool = False) -> None:
        """Show the present document; what is unfolded and looked at stays so.

        While nobody sees the panel it waits until somebody does: reading every working at each edit takes its time.
        """
        if replaced:
            self.messages.clear()
        elif not self.isVisible():
            self._is_late = True
            return
        self._is_late = False
        self.tree.update_from_document()
        self._show_groups()
        self._show_details()

    def _show_groups(self) -> None:
        """Let group titles run over all columns; unfold groups met for the first time, long ones excepted."""
        for row in range(self.tree.rowCount()):
            self.view.setFirstColumnSpanned(row, QModelIndex(), True)
            index = self.tree.index(row, LABEL)
            group = self.tree.group_at(index)
            if group not in self._known_groups:
                self._known_groups.add(group)
                self.view.setExpanded(index, group != "Inputs" and not group.startswith(OF_A_SIZE))

    def showEvent(self, event: QShowEvent) -> None:
        """Catch up with the document."""
        super().showEvent(event)
        if self._is_late:
            self.update_from_document()

    def show_entry(self, key: str) -> None:
        """Go to a dimension and open it."""
        if self._is_late:
            self.tree.update_from_document()
        index = self.tree.index_of(key)
        if index.isValid():
            self.view.setExpanded(index.parent(), True)
            self.view.setCurrentIndex(index)
            self.view.setExpanded(index, True)
            self.view.scrollTo(index)

    def _show_details(self) -> None:
        entry = self.tree.entry_at(self.view.currentIndex())
        if entry is None:
            self.details.setText(NONE_CHOSEN)
            return
        index = self.view.currentIndex()
        words = entry.working if not entry.is_input else entry_label(entry, self._session.project)
        if entry.is_input:
            value = self.tree.data(index.siblingAtColumn(VALUE))
            words = f"{words}: {value}, {self.tree.data(index.siblingAtColumn(WORKING))}"
        self.details.setText("\n".join(part for part in (words[:1].upper() + words[1:], entry.note) if part))

    def _on_refused(self, message: str) -> None:
        self.messages.show_message(message, Tone.TROUBLE)

    def _on_tree_refused(self, message: str) -> None:
        self.delegate.typed.show_refusal(message, self.view.indexWidget(self.view.currentIndex()))
