"""The tree of workings as a Qt model: groups, dimensions in them, and under each what it is worked out from.

Laws: lines are known by their key, so a change of the document redraws values in place and keeps what is unfolded;
chains are unfolded only as far as somebody looks; an input can be edited wherever it stands in a chain.
"""

from typing import Any

from PySide6.QtCore import QAbstractItemModel, QModelIndex, QObject, QPersistentModelIndex, Qt, Signal
from PySide6.QtGui import QFont

from baywright.app.commands import EditRefused
from baywright.app.session import Session
from baywright.gui.dimensions.inputs import edit_input, input_kind, input_value
from baywright.gui.dimensions.node import Lines, Node
from baywright.gui.dimensions.words import Entry, entry_label, entry_value, entry_working
from baywright.gui.fields.kinds import ChoiceKind, FlagKind, Kind, NoteKind, write_typed
from baywright.gui.wording import count_words
from baywright.model.length import format_length

Index = QModelIndex | QPersistentModelIndex
TITLES = ("Dimension", "Value", "Worked out from")
LABEL, VALUE, WORKING = range(3)
OF_A_SIZE = "box size: "
"""Before the id of a box size in the key of its group."""
_Role = Qt.ItemDataRole


class WorkingsTree(QAbstractItemModel):
    """All workings of the session's document."""

    refused = Signal(str)
    """Why an input was not taken."""

    def __init__(self, session: Session, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._lines = Lines()
        self._root = self._lines.root
        self._workings = session.workings
        self._unit = session.project.unit
        self._changed: set[str] = set()
        self._groups = self._entries_by_group()

    def _entries_by_group(self) -> dict[str, list[str]]:
        """Keys of the entries under each heading: groups in reading order, box sizes one by one, inputs last."""
        groups: dict[str, list[str]] = {}
        last: dict[str, list[str]] = {}
        sizes: dict[str, list[str]] = {size.id: [] for size in self._session.project.box_sizes}
        for entry in self._workings.entries:
            if entry.size_id is not None:
                sizes[entry.size_id].append(entry.key)
            else:
                (last if entry.is_input else groups).setdefault(entry.group, []).append(entry.key)
        by_size = {f"{OF_A_SIZE}{size_id}": keys for size_id, keys in sizes.items()}
        return {**groups, **by_size, **last}

    def _title(self, key: str) -> str:
        """The heading of a group; of a box size its name and the opening that it takes."""
        size_id = key.removeprefix(OF_A_SIZE)
        if size_id == key:
            return key
        project = self._session.project
        name = next((size.name for size in project.box_sizes if size.id == size_id), "")
        rows, height = (self._workings.value(what, size_id) for what in ("opening_rows", "opening_height"))
        return f"{name}: opening {format_length(height, project.unit)}, {count_words(round(rows), 'row')}"

    # ---- the document changed

    def update_from_document(self) -> None:
        """Show the present document: values in place, lines added or taken away only where they differ."""
        before, self._workings = {entry.key: entry for entry in self._workings.entries}, self._session.workings
        self._groups = self._entries_by_group()
        same_unit = self._unit is self._session.project.unit
        self._unit = self._session.project.unit
        self._changed = {
            entry.key for entry in self._workings.entries if not same_unit or before.get(entry.key) != entry
        }
        self._update(self._root, QModelIndex())

    def _update(self, node: Node, index: QModelIndex) -> None:
        if node.children is None:
            return
        wanted = self._keys_under(node)
        if [child.key for child in node.children] != wanted:
            self._exchange(node, index, wanted)
        for row, child in enumerate(node.children):
            self._update(child, self.index(row, 0, index))
        changed = [row for row, child in enumerate(node.children) if child.is_group or child.key in self._changed]
        if changed:
            self.dataChanged.emit(self.index(changed[0], LABEL, index), self.index(changed[-1], WORKING, index))

    def _exchange(self, node: Node, index: QModelIndex, wanted: list[str]) -> None:
        children = node.children if node.children is not None else []
        stay = [key for key in wanted if key in {child.key for child in children}]
        in_order = [child.key for child in children if child.key in set(wanted)] == stay
        for row in range(len(children) - 1, -1, -1):
            if not in_order or children[row].key not in wanted:
                self.beginRemoveRows(index, row, row)
                self._lines.drop(children.pop(row))
                self.endRemoveRows()
        for row, key in enumerate(wanted):
            if row >= len(children) or children[row].key != key:
                self.beginInsertRows(index, row, row)
                children.insert(row, self._lines.make(key, node, is_group=node is self._root))
                self.endInsertRows()

    def _keys_under(self, node: Node) -> list[str]:
        if node is self._root:
            return list(self._groups)
        if node.is_group:
            return self._groups.get(node.key, [])
        entry = self._entry(node)
        return [] if entry is None else list(dict.fromkeys(entry.inputs))

    def _entry(self, node: Node) -> Entry | None:
        """The entry of a line; None for a group, and for a line that is about to go."""
        try:
            return None if node.is_group else self._workings.by_key(node.key)
        except KeyError:
            return None

    # ---- lines and indexes

    def _node(self, index: Index) -> Node | None:
        return self._lines.find(index.internalId()) if index.isValid() else self._root

    def _children(self, node: Node | None) -> list[Node]:
        if node is None:
            return []
        if node.children is None:
            under = self._keys_under(node)
            node.children = [self._lines.make(key, node, is_group=node is self._root) for key in under]
        return node.children

    def entry_at(self, index: Index) -> Entry | None:
        """The entry in a line; None for a group."""
        node = self._node(index)
        return None if node is None else self._entry(node)

    def index_of(self, key: str) -> QModelIndex:
        """The line of an entry in its own group; an invalid index where there is none."""
        for group in self._children(self._root):
            for node in self._children(group):
                if node.key == key:
                    return self.createIndex(node.row, 0, node.number)
        return QModelIndex()

    def kind_at(self, index: Index) -> Kind | None:
        """The kind of value that can be entered in a line; None where it is worked out."""
        entry = self.entry_at(index)
        return None if entry is None else input_kind(entry.field)

    def index(self, row: int, column: int, parent: Index = QModelIndex()) -> QModelIndex:  # noqa: B008
        """The index of a line."""
        children = self._children(self._node(parent))
        if not (0 <= row < len(children) and 0 <= column < len(TITLES)) or (parent.isValid() and parent.column() != 0):
            return QModelIndex()
        return self.createIndex(row, column, children[row].number)

    def parent(self, index: Index) -> QModelIndex:  # type: ignore[override]
        """The line above."""
        node = self._node(index)
        above = None if node is None else node.parent
        if above is None or above is self._root:
            return QModelIndex()
        return self.createIndex(above.row, 0, above.number)

    def rowCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008
        """The lines under a line."""
        if parent.isValid() and parent.column() != 0:
            return 0
        return len(self._children(self._node(parent)))

    def columnCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008
        """Dimension, value, working."""
        return len(TITLES)

    # ---- what they show

    def data(self, index: Index, role: int = _Role.DisplayRole) -> Any:
        """Label, value and working of a line; the value to edit of an input."""
        if not index.isValid():
            return None
        node = self._node(index)
        if node is not None and node.is_group:
            return self._group_data(node, role) if index.column() == LABEL else None
        entry, project = self.entry_at(index), self._session.project
        if entry is None:
            return None
        if role == _Role.EditRole and index.column() == VALUE:
            kind, value = input_kind(entry.field), input_value(project, entry.field)
            if kind is None or isinstance(kind, ChoiceKind | FlagKind | NoteKind):
                return value
            return write_typed(kind, value, project.unit, exact=True)
        if role == _Role.DisplayRole:
            texts = (entry_label, entry_value, entry_working)
            return texts[index.column()](entry, project)
        if role == _Role.ToolTipRole:
            label, note = entry_label(entry, project), entry.note
            working = entry.working if not entry.is_input else entry_working(entry, project)
            return "\n".join(part for part in (label, working, note) if part)
        if role == _Role.AccessibleTextRole:
            return f"{entry_label(entry, project)}: {entry_value(entry, project)}"
        return None

    def _group_data(self, node: Node, role: int) -> Any:
        if role == _Role.FontRole:
            font = QFont()
            font.setBold(True)
            return font
        return self._title(node.key) if role in (_Role.DisplayRole, _Role.ToolTipRole) else None

    def group_at(self, index: Index) -> str:
        """The key of a group; empty for an entry."""
        node = self._node(index)
        return node.key if node is not None and node.is_group else ""

    def setData(self, index: Index, value: Any, role: int = _Role.EditRole) -> bool:
        """Send an input to the session; False where it is refused (`refused` then tells why)."""
        entry = self.entry_at(index)
        if entry is None or role != _Role.EditRole or index.column() != VALUE or input_kind(entry.field) is None:
            return False
        field = entry.field
        if input_value(self._session.project, field) == value:
            return True
        try:
            edit_input(self._session, field, value)
        except EditRefused as refusal:
            self.refused.emit(refusal.message)
            return False
        return True

    def flags(self, index: Index) -> Qt.ItemFlag:
        """Values of inputs can be edited."""
        flags = super().flags(index)
        if index.isValid() and index.column() == VALUE and self.kind_at(index) is not None:
            flags |= Qt.ItemFlag.ItemIsEditable
        return flags

    def headerData(self, section: int, orientation: Qt.Orientation, role: int = _Role.DisplayRole) -> Any:
        """The titles of the columns."""
        if orientation is Qt.Orientation.Horizontal and role == _Role.DisplayRole and 0 <= section < len(TITLES):
            return TITLES[section]
        return None
