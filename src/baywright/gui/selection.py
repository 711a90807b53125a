"""The one selection of parts in the window: whoever chooses some, all views show them.

Laws: parts are told by their numbers, which stand on every list and drawing; a view that chose is not told again; a
selection outlives edits and is nothing of the document.
"""

from collections.abc import Callable

from PySide6.QtCore import QObject, Signal, SignalInstance


def is_of(number: str, part_number: str) -> bool:
    """Whether a number of the list is that of a part, or of a variant or piece of it: `U2/1` and `U2-20` are of `U2`,
    `T1.2` and `T1b` of `T1`.
    """
    if not part_number or not number.startswith(part_number):
        return False
    further = number[len(part_number) :]
    return not further or further[0] in "./-" or further[0].islower()


Show = Callable[[tuple[str, ...]], None]


class PartSelection(QObject):
    """Holds the numbers of the chosen parts and passes them on."""

    changed = Signal(object)
    """Other parts are chosen: their numbers (a tuple; empty for none)."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._views: list[Show] = []
        self._numbers: tuple[str, ...] = ()

    @property
    def numbers(self) -> tuple[str, ...]:
        """The numbers of the chosen parts."""
        return self._numbers

    def join(self, show: Show, chosen: SignalInstance | None = None) -> None:
        """Tell `show` of every choice but those that come from `chosen`, the signal of the same view."""
        self._views.append(show)
        if chosen is not None:
            chosen.connect(lambda numbers: self._take(tuple(numbers), show))

    def select(self, numbers: tuple[str, ...]) -> None:
        """Choose exactly these parts; every view shows them."""
        self._take(numbers, None)

    def _take(self, numbers: tuple[str, ...], sender: Show | None) -> None:
        if numbers == self._numbers:
            return
        self._numbers = numbers
        for show in self._views:
            if show is not sender:
                show(numbers)
        self.changed.emit(numbers)
