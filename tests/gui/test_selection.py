"""The one selection of parts: whoever chooses, all others are told, and nobody twice."""

from PySide6.QtCore import QObject, Signal
from pytestqt.qtbot import QtBot

from baywright.gui.selection import PartSelection


class View(QObject):
    """A view that shows and chooses parts."""

    chosen = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        self.shown: list[tuple[str, ...]] = []

    def show_parts(self, numbers: tuple[str, ...]) -> None:
        self.shown.append(numbers)


def test_a_choice_is_told_to_all_others_once(qtbot: QtBot) -> None:
    selection, one, other, third = PartSelection(), View(), View(), View()
    for view in (one, other):
        selection.join(view.show_parts, view.chosen)
    selection.join(third.show_parts)
    one.chosen.emit(("U1",))
    one.chosen.emit(["U1"])
    assert selection.numbers == ("U1",)
    assert (one.shown, other.shown, third.shown) == ([], [("U1",)], [("U1",)])
    selection.select(())
    assert (one.shown, other.shown, third.shown) == ([()], [("U1",), ()], [("U1",), ()])
