"""Kinds of values that people enter: how each is read and written. Without any widget, so forms and tables share them.

Laws: `read(write_exact(value)) == value`; `read` raises ValueError with a sentence for the person who typed, which says
what is accepted.
"""

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from decimal import Decimal
from typing import Protocol, cast

from baywright.gui.wording import exact_mass_words
from baywright.model.length import LengthUnit, format_exact, format_length, parse_length
from baywright.model.mass import parse_mass
from baywright.model.money import MISSING, format_money, parse_money
from baywright.model.number import AmbiguousNumberError, NumberError, even_blanks, parse_number

SEPARATOR = "; "


class TypedKind(Protocol):
    """A kind of value that is typed. `empty_means` says what nothing stands for; empty where nothing is refused."""

    @property
    def empty_means(self) -> str:
        """What an empty field means, in words; empty where it means nothing."""

    def read(self, text: str, unit: LengthUnit) -> object:
        """The value that a text which is not empty means."""

    def write(self, value: object, unit: LengthUnit) -> str:
        """The value as people read it."""

    def write_exact(self, value: object, unit: LengthUnit) -> str:
        """The value as text that reads back exactly."""


@dataclass(frozen=True)
class LengthKind:
    """A length in mm, typed and shown in the project's unit."""

    empty_means: str = ""

    def read(self, text: str, unit: LengthUnit) -> object:
        """The length in mm."""
        return parse_length(text, unit)

    def write(self, value: object, unit: LengthUnit) -> str:
        """The length with its unit and, where rounded, the rounding."""
        return format_length(cast(float, value), unit)

    def write_exact(self, value: object, unit: LengthUnit) -> str:
        """The length so that it reads back to the same value."""
        return format_exact(cast(float, value), unit)


@dataclass(frozen=True)
class LengthsKind:
    """Several lengths in mm, separated by semicolons."""

    empty_means: str = ""

    def read(self, text: str, unit: LengthUnit) -> object:
        """The lengths, shortest first, each once."""
        return tuple(sorted({parse_length(part, unit) for part in _parts(text)}))

    def write(self, value: object, unit: LengthUnit) -> str:
        """The lengths for reading."""
        return SEPARATOR.join(format_length(length, unit) for length in cast(Iterable[float], value))

    def write_exact(self, value: object, unit: LengthUnit) -> str:
        """The lengths so that they read back to the same values."""
        return SEPARATOR.join(format_exact(length, unit) for length in cast(Iterable[float], value))


@dataclass(frozen=True)
class MassesKind:
    """Several masses in kg, separated by semicolons."""

    empty_means: str = ""

    def read(self, text: str, unit: LengthUnit) -> object:
        """The masses, lightest first, each once."""
        return tuple(sorted({parse_mass(part) for part in _parts(text)}))

    def write(self, value: object, unit: LengthUnit) -> str:
        """The masses with their unit."""
        return SEPARATOR.join(f"{exact_mass_words(mass)} kg" for mass in cast(Iterable[float], value))

    def write_exact(self, value: object, unit: LengthUnit) -> str:
        """The masses with their unit."""
        return self.write(value, unit)


@dataclass(frozen=True)
class CountKind:
    """A whole number from `least` to `most`."""

    least: int = 0
    most: int = 1_000_000
    empty_means: str = ""

    def read(self, text: str, unit: LengthUnit) -> object:
        """The number."""
        digits = text.replace(" ", "")
        readable = digits.isascii() and digits.isdigit() and len(digits) <= 9
        if not readable or not self.least <= int(digits) <= self.most:
            nothing = f", or nothing for “{self.empty_means}”" if self.empty_means else ""
            raise ValueError(f"Takes a whole number from {self.least} to {self.most:,}{nothing}.")
        return int(digits)

    def write(self, value: object, unit: LengthUnit) -> str:
        """The plain number."""
        return str(value)

    def write_exact(self, value: object, unit: LengthUnit) -> str:
        """The plain number."""
        return str(value)


@dataclass(frozen=True)
class NumberKind:
    """A plain number, not under 0, in a unit of its own."""

    number_unit: str = ""
    empty_means: str = ""

    @property
    def _of_what(self) -> str:
        unit = "degrees" if self.number_unit == "°" else self.number_unit
        return f" of {unit}" if unit else ""

    def read(self, text: str, unit: LengthUnit) -> object:
        """The number; its unit may stand behind it."""
        bare = even_blanks(text).removesuffix(self.number_unit).strip()
        if bare[:1] in ("-", "−") and bare[1:2].isdigit():
            raise ValueError(f"“{text.strip()}” is negative; this must be 0 or more.")
        try:
            return float(parse_number(bare))
        except AmbiguousNumberError:
            raise
        except NumberError:
            raise ValueError(f"Takes a number{self._of_what}, for example 1.5.") from None

    def write(self, value: object, unit: LengthUnit) -> str:
        """The number with its unit."""
        return f"{self.write_exact(value, unit)} {self.number_unit}".strip()

    def write_exact(self, value: object, unit: LengthUnit) -> str:
        """The number so that it reads back to the same value."""
        number = cast(float, value)
        return str(int(number)) if number == int(number) else repr(number)


@dataclass(frozen=True)
class TextKind:
    """A line of free text."""

    may_be_empty: bool = True
    empty_means: str = ""

    def read(self, text: str, unit: LengthUnit) -> object:
        """The text without blanks at its ends."""
        if not text.strip() and not self.may_be_empty:
            raise ValueError("It must not be empty.")
        return text.strip()

    def write(self, value: object, unit: LengthUnit) -> str:
        """The text itself."""
        return str(value)

    def write_exact(self, value: object, unit: LengthUnit) -> str:
        """The text itself."""
        return str(value)


@dataclass(frozen=True)
class NoteKind:
    """Free text of several lines."""


@dataclass(frozen=True)
class ReadingsKind(LengthsKind):
    """Several lengths in mm as they were read off, in their order, separated by semicolons."""

    def read(self, text: str, unit: LengthUnit) -> object:
        """The lengths in the order typed, equal ones too."""
        return tuple(parse_length(part, unit) for part in _parts(text))


@dataclass(frozen=True)
class PriceKind:
    """A price in the project's currency."""

    currency: Callable[[], str]
    empty_means: str = MISSING

    def read(self, text: str, unit: LengthUnit) -> object:
        """The price; the currency's letters or sign may stand before or behind it."""
        return parse_money(text, self.currency())

    def write(self, value: object, unit: LengthUnit) -> str:
        """The price with its currency."""
        return format_money(cast(Decimal, value), self.currency())

    def write_exact(self, value: object, unit: LengthUnit) -> str:
        """The plain number, with as many decimals as it has."""
        return f"{cast(Decimal, value):f}"


@dataclass(frozen=True)
class PercentKind:
    """A share in per cent: decimal, with at most two places."""

    empty_means: str = ""

    def read(self, text: str, unit: LengthUnit) -> object:
        """The share; the sign may stand behind it."""
        try:
            exact = parse_number(even_blanks(text).removesuffix("%").strip())
        except AmbiguousNumberError:
            raise
        except NumberError:
            raise ValueError("Takes a number of per cent, for example 19.") from None
        return round(Decimal(exact.numerator) / Decimal(exact.denominator), 2)

    def write(self, value: object, unit: LengthUnit) -> str:
        """The share with its sign."""
        return f"{self.write_exact(value, unit)} %"

    def write_exact(self, value: object, unit: LengthUnit) -> str:
        """The plain number."""
        plain = f"{cast(Decimal, value):f}"
        return plain.rstrip("0").rstrip(".") if "." in plain else plain


@dataclass(frozen=True)
class ChoiceKind:
    """One of several values, each with plain words."""

    choices: tuple[tuple[object, str], ...]


@dataclass(frozen=True)
class LiveChoiceKind:
    """One of several values that follow from the document; `choices` tells them when they are wanted."""

    choices: Callable[[], tuple[tuple[object, str], ...]]


@dataclass(frozen=True)
class FlagKind:
    """Yes or no."""


Kind = TypedKind | NoteKind | ChoiceKind | FlagKind


def _parts(text: str) -> list[str]:
    parts = [part.strip() for part in text.split(";") if part.strip()]
    if not parts:
        raise ValueError("Takes one or several values, separated by semicolons, such as 300; 350; 400.")
    return parts


def read_typed(kind: TypedKind, text: str, unit: LengthUnit) -> object:
    """The value of a typed text; for nothing, where that has a meaning, None (of several values, no values at all).

    ValueError where the text is refused.
    """
    text = text.strip()
    if not text and kind.empty_means:
        return () if isinstance(kind, LengthsKind | MassesKind) else None
    return kind.read(text, unit)


def write_typed(kind: TypedKind, value: object, unit: LengthUnit, *, exact: bool = False) -> str:
    """The text for a value; nothing for None."""
    if value is None:
        return ""
    return kind.write_exact(value, unit) if exact else kind.write(value, unit)
