"""Undo and redo by swapping whole documents. Laws: undo then redo gives the same document; a new edit ends redo."""

from collections.abc import Callable
from dataclasses import dataclass, field

from baywright.model.project import Project

MOST_STEPS = 500


@dataclass(frozen=True)
class Step:
    """A document as it was, and the title of the edit that leads away from it (back to it, for redo)."""

    project: Project
    title: str


@dataclass
class History:
    """The documents that can be gone back and forward to, newest last."""

    undo: list[Step] = field(default_factory=list)
    redo: list[Step] = field(default_factory=list)

    def record(self, before: Project, title: str) -> None:
        """Remembers the document before an edit; what was undone is forgotten."""
        self.undo.append(Step(before, title))
        del self.undo[:-MOST_STEPS]
        self.redo.clear()

    def amend(self, steps: int, change: Callable[[Project], Project]) -> None:
        """Changes the documents before the newest `steps` edits, as if an older edit had made another document."""
        if steps > 0:
            self.undo[-steps:] = [Step(change(step.project), step.title) for step in self.undo[-steps:]]

    def back(self, present: Project) -> Step | None:
        """The step to go back to, or None; the present document becomes the one to redo."""
        if not self.undo:
            return None
        step = self.undo.pop()
        self.redo.append(Step(present, step.title))
        return step

    def forward(self, present: Project) -> Step | None:
        """The step to go forward to, or None; the present document becomes the one to undo."""
        if not self.redo:
            return None
        step = self.redo.pop()
        self.undo.append(Step(present, step.title))
        return step

    def clear(self) -> None:
        """Forgets everything (another document was opened)."""
        self.undo.clear()
        self.redo.clear()
