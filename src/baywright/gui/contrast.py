"""How well two colours can be told apart: the contrast ratio of WCAG 2.1, section 1.4.3 (from memory).

Relative luminance L = 0.2126 R + 0.7152 G + 0.0722 B over linearised sRGB channels; ratio (L1 + 0.05) / (L2 + 0.05).
"""

from PySide6.QtGui import QColor

LEAST_FOR_TEXT = 4.5
"""Least ratio for text of ordinary size."""


def _linear(channel: float) -> float:
    return channel / 12.92 if channel <= 0.04045 else ((channel + 0.055) / 1.055) ** 2.4


def luminance(colour: QColor) -> float:
    """Relative luminance of an opaque colour, 0 (black) to 1 (white)."""
    red, green, blue = (_linear(part) for part in (colour.redF(), colour.greenF(), colour.blueF()))
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: QColor, other: QColor) -> float:
    """Contrast ratio of two opaque colours, 1 to 21; the order does not matter."""
    lighter, darker = sorted((luminance(one), luminance(other)), reverse=True)
    return (lighter + 0.05) / (darker + 0.05)
