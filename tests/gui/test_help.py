"""The cautions in the window: the same as on the sheets, each to be read in full."""

from PySide6.QtWidgets import QLabel, QScrollArea
from pytestqt.qtbot import QtBot

from baywright.gui.help import AboutDialog
from baywright.model.caution import CAUTIONS, WHO_DECIDES


def test_about_shows_every_caution_in_full(qtbot: QtBot) -> None:
    dialog = AboutDialog()
    qtbot.addWidget(dialog)
    dialog.show()
    labels = [label for area in dialog.findChildren(QScrollArea) for label in area.findChildren(QLabel)]
    assert [label.text() for label in labels] == [
        *(f"⚠ {caution.title}. {caution.text}" for caution in CAUTIONS),
        f"⚠ {WHO_DECIDES}",
    ]
    qtbot.waitUntil(lambda: all(label.height() >= label.heightForWidth(label.width()) for label in labels))
