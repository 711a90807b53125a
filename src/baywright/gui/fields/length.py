"""Fields for measures: one length, a list of lengths, a list of loads.

In focus a length stands in the exact form that reads back to the same value; out of focus it is rounded for reading.
"""

from collections.abc import Iterable
from typing import cast

from PySide6.QtWidgets import QWidget

from baywright.gui.fields.typed import TypedField
from baywright.gui.wording import exact_mass_words, read_mass
from baywright.model.length import LengthUnit, format_exact, format_length, parse_length

SEPARATOR = "; "


class LengthField(TypedField):
    """A length in mm; typed and shown in the project's unit. `empty_means` allows nothing, and says what that is."""

    def read(self, text: str) -> object:
        """The length in mm; LengthError says what is accepted."""
        return parse_length(text, self.unit)

    def write(self, value: object) -> str:
        """The length for reading, with its unit and, where rounded, with the rounding."""
        return format_length(cast(float, value), self.unit)

    def write_exact(self, value: object) -> str:
        """The length so that it reads back to the same value."""
        return format_exact(cast(float, value), self.unit)

    def set_unit(self, unit: LengthUnit) -> None:
        """Show the length in another unit; what was typed in the old one is dropped."""
        if unit != self.unit:
            super().set_unit(unit)
            self.restore()


class LengthsField(TypedField):
    """Several lengths, separated by semicolons."""

    def read(self, text: str) -> object:
        """The lengths in mm, shortest first, each once."""
        return tuple(sorted({parse_length(part, self.unit) for part in _parts(text)}))

    def write(self, value: object) -> str:
        """The lengths for reading."""
        return SEPARATOR.join(format_length(length, self.unit) for length in cast(Iterable[float], value))

    def write_exact(self, value: object) -> str:
        """The lengths so that they read back to the same values."""
        return SEPARATOR.join(format_exact(length, self.unit) for length in cast(Iterable[float], value))

    def set_unit(self, unit: LengthUnit) -> None:
        """Show the lengths in another unit; what was typed in the old one is dropped."""
        if unit != self.unit:
            super().set_unit(unit)
            self.restore()


class LoadsField(TypedField):
    """Several masses in kg, separated by semicolons."""

    def __init__(self, label: str, hint: str = "", parent: QWidget | None = None) -> None:
        super().__init__(label, hint, parent=parent)

    def read(self, text: str) -> object:
        """The masses in kg, lightest first, each once."""
        return tuple(sorted({mass for part in _parts(text) if (mass := read_mass(part)) is not None}))

    def write(self, value: object) -> str:
        """The masses with their unit."""
        return SEPARATOR.join(f"{exact_mass_words(mass)} kg" for mass in cast(Iterable[float], value))


def _parts(text: str) -> list[str]:
    parts = [part.strip() for part in text.split(";") if part.strip()]
    if not parts:
        raise ValueError("Takes one or several values, separated by semicolons, such as 300; 350; 400.")
    return parts
