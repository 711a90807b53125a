"""The lines of the tree of workings: groups, dimensions, and under each what it is worked out from.

Law: a line is known by a number that is never given twice, so an index that outlived its line finds nothing.
"""

from __future__ import annotations

from dataclasses import dataclass, field


@dataclass(eq=False)
class Node:
    """A line under `parent`; `key` is the entry's key, or a group's title where `is_group`.

    The lines under a dimension are what it is worked out from; they are made when somebody looks (None before).
    """

    key: str
    parent: Node | None
    is_group: bool
    number: int
    children: list[Node] | None = field(default=None, repr=False)

    @property
    def row(self) -> int:
        """Which of its parent's lines it is."""
        if self.parent is None or self.parent.children is None:
            return 0
        return self.parent.children.index(self)


class Lines:
    """All lines made so far, by their numbers; 0 is the root, which is never shown."""

    def __init__(self) -> None:
        self.root = Node("", None, True, 0)
        self._lines = {0: self.root}
        self._newest = 0

    def make(self, key: str, parent: Node, *, is_group: bool = False) -> Node:
        """A new line; the caller puts it among its parent's children."""
        self._newest += 1
        node = Node(key, parent, is_group, self._newest)
        self._lines[node.number] = node
        return node

    def find(self, number: int) -> Node | None:
        """The line with that number; None where it is gone."""
        return self._lines.get(number)

    def drop(self, node: Node) -> None:
        """Forget a line and all under it."""
        for child in node.children or ():
            self.drop(child)
        self._lines.pop(node.number, None)
