"""Every text of both themes can be read: contrast of at least 4.5 : 1 (WCAG 2.1, 1.4.3)."""

import pytest
from PySide6.QtGui import QColor, QPalette
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from baywright.gui.contrast import LEAST_FOR_TEXT, contrast
from baywright.gui.theme import DARK, LIGHT, Colours, Theme, apply_theme, colours_of, make_palette

BOTH = pytest.mark.parametrize("colours", [LIGHT, DARK], ids=["light", "dark"])


def test_contrast_of_black_on_white_is_21() -> None:
    assert contrast(QColor("#000000"), QColor("#ffffff")) == pytest.approx(21.0)
    assert contrast(QColor("#ffffff"), QColor("#ffffff")) == pytest.approx(1.0)


@BOTH
def test_palette_text_can_be_read(colours: Colours) -> None:
    palette, role = make_palette(colours), QPalette.ColorRole
    for group in (QPalette.ColorGroup.Active, QPalette.ColorGroup.Inactive):
        for front, ground in (
            (role.WindowText, role.Window),
            (role.Text, role.Base),
            (role.Text, role.AlternateBase),
            (role.ButtonText, role.Button),
            (role.HighlightedText, role.Highlight),
            (role.ToolTipText, role.ToolTipBase),
            (role.PlaceholderText, role.Base),
            (role.Link, role.Window),
            (role.Link, role.Base),
        ):
            ratio = contrast(palette.color(group, front), palette.color(group, ground))
            assert ratio >= LEAST_FOR_TEXT, f"{front.name} on {ground.name}: {ratio:.2f}"


@BOTH
def test_signal_colours_can_be_read_on_every_ground(colours: Colours) -> None:
    for front in ("trouble", "caution", "good", "muted", "text"):
        for ground in ("window", "base", "alternate"):
            ratio = contrast(QColor(getattr(colours, front)), QColor(getattr(colours, ground)))
            assert ratio >= LEAST_FOR_TEXT, f"{front} on {ground}: {ratio:.2f}"
    for front, ground in (
        ("trouble", "trouble_ground"),
        ("caution", "caution_ground"),
        ("text", "trouble_ground"),
        ("text", "caution_ground"),
        ("text", "note_ground"),
        ("link", "note_ground"),
    ):
        ratio = contrast(QColor(getattr(colours, front)), QColor(getattr(colours, ground)))
        assert ratio >= LEAST_FOR_TEXT, f"{front} on {ground}: {ratio:.2f}"


def test_themes_are_applied_to_the_whole_application(qtbot: QtBot, qapp: QApplication) -> None:
    apply_theme(qapp, Theme.DARK, 12.0)
    assert colours_of(qapp.palette()) is DARK
    assert qapp.font().pointSizeF() == 12.0
    apply_theme(qapp, Theme.LIGHT)
    assert colours_of(qapp.palette()) is LIGHT
    assert qapp.style().name() == "fusion"
