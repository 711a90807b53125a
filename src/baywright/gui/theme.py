"""Colours and type of the window: two palettes of our own over the Fusion style, chosen or following the system.

Laws: every text colour stands out at least 4.5 : 1 from what is behind it, selected text included; meaning is never
given by colour alone (a sign or a word goes with it).
"""

from dataclasses import dataclass
from enum import StrEnum

from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QFont, QFontDatabase, QPalette
from PySide6.QtWidgets import QApplication, QStyleFactory, QToolTip, QWidget

from baywright.gui.contrast import luminance

FONT_FAMILIES = ("DejaVu Sans", "Noto Sans", "Liberation Sans")
"""Families looked for in this order; the system's own font is used where none is there."""

NORMAL_POINTS = 10.0
SMALLEST_POINTS, LARGEST_POINTS = 7.0, 20.0


class Theme(StrEnum):
    """Which colours the owner chose."""

    SYSTEM = "system"
    LIGHT = "light"
    DARK = "dark"


@dataclass(frozen=True)
class Colours:
    """One set of colours, as `#rrggbb`. `trouble`, `caution`, `good` and `muted` are text colours."""

    window: str
    base: str
    alternate: str
    button: str
    text: str
    muted: str
    disabled: str
    accent: str
    accent_text: str
    link: str
    line: str
    trouble: str
    trouble_ground: str
    caution: str
    caution_ground: str
    good: str
    note_ground: str


LIGHT = Colours(
    window="#efeee9",
    base="#ffffff",
    alternate="#f6f5f1",
    button="#e6e4dc",
    text="#1f2420",
    muted="#565d57",
    disabled="#7b817c",
    accent="#0f5c63",
    accent_text="#ffffff",
    link="#0f5c63",
    line="#bdbbb1",
    trouble="#9c1c12",
    trouble_ground="#fbe6e2",
    caution="#6e4a00",
    caution_ground="#fbf0d3",
    good="#1d6132",
    note_ground="#e2eeee",
)

DARK = Colours(
    window="#1e2326",
    base="#2a3135",
    alternate="#30383c",
    button="#3a4347",
    text="#e9ece9",
    muted="#a9b2ad",
    disabled="#8a9490",
    accent="#1f7078",
    accent_text="#ffffff",
    link="#6cc3cc",
    line="#4a5257",
    trouble="#ff9d90",
    trouble_ground="#41231f",
    caution="#f0c766",
    caution_ground="#3b3118",
    good="#8cd6a0",
    note_ground="#1f3a3d",
)


def colours_of(palette: QPalette) -> Colours:
    """The set of colours that belongs to a palette made here (by how light its window is)."""
    return LIGHT if luminance(palette.color(QPalette.ColorRole.Window)) > 0.2 else DARK


def colours_for(widget: QWidget) -> Colours:
    """The set of colours that a widget is drawn with."""
    return colours_of(widget.palette())


def make_palette(colours: Colours) -> QPalette:
    """A complete Qt palette from one set of colours."""
    palette = QPalette(QColor(colours.button), QColor(colours.window))
    role = QPalette.ColorRole
    for part, value in {
        role.WindowText: colours.text,
        role.Base: colours.base,
        role.AlternateBase: colours.alternate,
        role.Text: colours.text,
        role.Button: colours.button,
        role.ButtonText: colours.text,
        role.BrightText: colours.trouble,
        role.Highlight: colours.accent,
        role.HighlightedText: colours.accent_text,
        role.Accent: colours.accent,
        role.Link: colours.link,
        role.LinkVisited: colours.link,
        role.ToolTipBase: colours.base,
        role.ToolTipText: colours.text,
        role.PlaceholderText: colours.muted,
    }.items():
        palette.setColor(part, QColor(value))
    for part in (role.WindowText, role.Text, role.ButtonText, role.PlaceholderText):
        palette.setColor(QPalette.ColorGroup.Disabled, part, QColor(colours.disabled))
    palette.setColor(QPalette.ColorGroup.Disabled, role.Highlight, QColor(colours.line))
    palette.setColor(QPalette.ColorGroup.Disabled, role.HighlightedText, QColor(colours.text))
    return palette


def is_dark(theme: Theme, application: QApplication) -> bool:
    """Whether `theme` means the dark colours; where the system does not tell, light ones are taken."""
    if theme is Theme.SYSTEM:
        return application.styleHints().colorScheme() == Qt.ColorScheme.Dark
    return theme is Theme.DARK


def make_font(points: float) -> QFont:
    """The window's font in that size; a family that is there, so that no glyph becomes an empty box."""
    families = set(QFontDatabase.families())
    font = QFont(QApplication.font())
    named = [family for family in FONT_FAMILIES if family in families]
    if named:
        font.setFamilies(named)
    font.setPointSizeF(max(SMALLEST_POINTS, min(LARGEST_POINTS, points)))
    return font


def apply_theme(application: QApplication, theme: Theme, points: float = NORMAL_POINTS) -> None:
    """Give the whole application the style, colours and text size."""
    if application.style().name() != "fusion":
        application.setStyle(QStyleFactory.create("Fusion"))
    palette = make_palette(DARK if is_dark(theme, application) else LIGHT)
    application.setPalette(palette)
    QToolTip.setPalette(palette)
    font = make_font(points)
    application.setFont(font)
    QToolTip.setFont(font)
