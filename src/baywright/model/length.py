"""Lengths as people type and read them; inside the program a length is always millimetres as float.

Laws: one inch is exactly 25.4 mm; parsing is exact rational arithmetic and rounds once, to the nearest float;
`parse_length(format_exact(x, unit), unit) == x` to within 1e-9 mm for every x up to 1,000 km; two lengths nearer than
1e-9 mm are shown alike. What cannot be read in one way only is refused, never guessed.
"""

import math
import re
import unicodedata
from decimal import Decimal
from enum import StrEnum
from fractions import Fraction
from functools import lru_cache

from baywright.model.number import LONGEST_TEXT, AmbiguousNumberError, NumberError, even_blanks, parse_number


class LengthUnit(StrEnum):
    """The unit in which a project shows lengths and reads bare numbers; inside all lengths are millimetres."""

    MILLIMETRE = "mm"
    INCH = "in"


class LengthError(ValueError):
    """Text that is no length; the message says what is wrong and what is accepted."""


INCH_MM = Fraction(254, 10)
"""One inch in mm, exactly (NIST SP 811, appendix B)."""

_ACCEPTED = {
    LengthUnit.MILLIMETRE: 'Write for example 396, 39.6 cm, 0.396 m, 15.6 in, 15 19/32" or 1\' 3 5/8".',
    LengthUnit.INCH: "Write for example 15 19/32, 15.6 in, 1' 3 5/8\", 396 mm, 39.6 cm or 0.396 m.",
}
_METRIC_MM = {"mm": Fraction(1), "cm": Fraction(10), "m": Fraction(1000)}
_INCH_WORDS = ("in", "inch", "inches", '"')
_SHOWN_PARTS = 32
_EXACT_PARTS = 64
_FINEST = 10**9

_SIGNS = str.maketrans({
    "\u2212": "-", "\u2013": "-", "\u2010": "-", "\u2011": "-", "\u2044": "/", "\u2215": "/",
    "\u2032": "'", "\u2033": '"', "\u2018": "'", "\u2019": "'", "\u201c": '"', "\u201d": '"', "\u201e": '"',
})  # fmt: skip
_ROUNDED_DISPLAY = re.compile(r"\([+<-].*mm\)$")
_FEET = re.compile(r"(?P<feet>[^'a-z]+?) ?(?:'|ft|foot|feet) ?-? ?(?P<inches>.*)")
_QUANTITY = re.compile(r"(?P<amount>[0-9.,/ -]+?) ?(?P<unit>[a-z]+|\")?")
_FRACTION = re.compile(r"(?:(?P<whole>[0-9]+)[ -])?(?P<numerator>[0-9]+) ?/ ?(?P<denominator>[0-9]+)")


def parse_length(text: str, unit: LengthUnit, *, allow_negative: bool = False) -> float:
    """The length in mm that `text` says; a bare number is in `unit`.

    Read are decimal numbers with mm, cm, m, inches (`in`, `"`) or feet (`ft`, `'`), and fractions of an inch or foot.
    Raises `LengthError` where the text is no length, can be read in two ways, or is negative and must not be.
    """
    if len(text) > LONGEST_TEXT:
        raise LengthError(f"A text of {len(text)} characters is not a length. {_ACCEPTED[unit]}")
    plain = _plain(text)
    if not plain:
        raise LengthError(f"A length is missing. {_ACCEPTED[unit]}")
    if _ROUNDED_DISPLAY.search(plain):
        raise LengthError(
            f"“{text.strip()}” is a rounded display with its rounding error; type the length without the bracket."
        )
    negative = plain.startswith("-")
    try:
        value = _magnitude(plain[1:].lstrip() if negative else plain, unit)
    except AmbiguousNumberError as trouble:
        raise LengthError(str(trouble)) from None
    except NumberError as trouble:
        raise LengthError(f"{trouble} {_ACCEPTED[unit]}") from None
    except _NotALengthError as trouble:
        raise LengthError(f"“{text.strip()}” is not a length{trouble}. {_ACCEPTED[unit]}") from None
    if negative and value and not allow_negative:
        raise LengthError(f"“{text.strip()}” is negative; this length must be 0 or more.")
    return float(-value if negative else value)


@lru_cache(maxsize=4_096)
def format_length(length_mm: float, unit: LengthUnit) -> str:
    """The length for reading: `396.88 mm`, or the nearest 1/32 inch with its rounding, `15 19/32" (+0.08 mm)`.

    Millimetres have at most two decimals and no thousands mark. The bracket says by how many mm the shown inches are
    longer (+) or shorter (−) than the length, `<0.01 mm` where by less; it is left out where they are exact. Halves
    are rounded up (away from zero). Raises ValueError where the length is infinite or undefined.
    """
    exact = _exact(length_mm)
    sign = "−" if exact < 0 else ""
    magnitude = abs(exact)
    if unit is LengthUnit.MILLIMETRE:
        shown = _hundredths(magnitude)
        return f"{sign if shown != '0' else ''}{shown} mm"
    parts = math.floor(magnitude / INCH_MM * _SHOWN_PARTS + Fraction(1, 2))
    error = Fraction(parts, _SHOWN_PARTS) * INCH_MM - magnitude
    text = f'{sign if parts else ""}{_mixed(Fraction(parts, _SHOWN_PARTS))}"'
    return text if not error else f"{text} ({_rounding(-error if exact < 0 else error)})"


def shown_up(length_mm: float, unit: LengthUnit) -> float:
    """The least length in mm not under `length_mm` that `format_length` shows without rounding.

    For advice: what is shown can be typed, and is enough. Raises ValueError where the length is infinite or undefined.
    """
    step = Fraction(1, 100) if unit is LengthUnit.MILLIMETRE else INCH_MM / _SHOWN_PARTS
    return float(math.ceil(_exact(length_mm) / step) * step)


def format_exact(length_mm: float, unit: LengthUnit) -> str:
    """The length for an edit field: `parse_length` gives it back to within 1e-9 mm, whatever the field's unit.

    With inches, a fraction down to 1/64 or up to four decimals where that is exact, else millimetres.
    Raises ValueError where the length is infinite or undefined.
    """
    exact = _exact(length_mm)
    sign = "-" if exact < 0 else ""
    inches = abs(exact) / INCH_MM
    if unit is LengthUnit.INCH:
        if _is_whole(inches * _EXACT_PARTS):
            return f'{sign}{_mixed(inches)}"'
        if _is_whole(inches * 10_000):
            return f'{sign}{_decimal(Decimal(int(inches * 10_000)) / 10_000)}"'
    return f"{_decimal(Decimal(repr(float(length_mm))))} mm"


class _NotALengthError(Exception):
    """The text fits no form of a length; the message, if any, is the reason, ready to follow “is not a length”."""


def _plain(text: str) -> str:
    """Lower case, one kind of each sign, `1¾` as `1 3/4`, and doubled single primes as inches."""
    spelt = "".join(
        f" {unicodedata.normalize('NFKC', letter)} " if unicodedata.decomposition(letter).startswith("<fraction>")
        else letter
        for letter in text
    )  # fmt: skip
    return even_blanks(spelt.translate(_SIGNS).replace("''", '"').lower())


def _magnitude(text: str, unit: LengthUnit) -> Fraction:
    feet = _FEET.fullmatch(text)
    if feet:
        return _feet_and_inches(feet["feet"], feet["inches"])
    quantity = _QUANTITY.fullmatch(text)
    if not quantity:
        raise _NotALengthError
    amount, word = quantity["amount"], quantity["unit"]
    if word in _INCH_WORDS or (word is None and unit is LengthUnit.INCH):
        return _amount(amount) * INCH_MM
    if word is not None and word not in _METRIC_MM:
        raise _NotALengthError(f": the unit “{word}” is not known; units are mm, cm, m, in and ft")
    if "/" in amount:
        raise _NotALengthError(": fractions go with inches or feet, so mark them, as in 3/4 in")
    return parse_number(amount) * _METRIC_MM[word or "mm"]


def _feet_and_inches(feet: str, rest: str) -> Fraction:
    if not rest:
        return _amount(feet) * 12 * INCH_MM
    if not re.fullmatch("[0-9]+", feet):
        raise _NotALengthError(": feet that inches follow must be a whole number")
    quantity = _QUANTITY.fullmatch(rest)
    if not quantity or quantity["unit"] not in (None, *_INCH_WORDS):
        raise _NotALengthError(": after the feet come inches, as in 1' 3 5/8\"")
    inches = _amount(quantity["amount"])
    if inches >= 12:
        raise _NotALengthError(": the inches after feet must be under 12")
    return (int(feet) * 12 + inches) * INCH_MM


def _amount(text: str) -> Fraction:
    """A decimal number, a fraction, or a whole number and a proper fraction."""
    match = _FRACTION.fullmatch(text)
    if not match:
        return parse_number(text)
    whole, numerator, denominator = int(match["whole"] or 0), int(match["numerator"]), int(match["denominator"])
    if denominator == 0:
        raise _NotALengthError(": a fraction cannot have 0 below the stroke")
    if match["whole"] and numerator >= denominator:
        raise _NotALengthError(f": after a whole number the fraction must be under 1, {numerator}/{denominator} is not")
    return whole + Fraction(numerator, denominator)


def _exact(length_mm: float) -> Fraction:
    """The decimal number that people would write for this float, to 1e-9 mm, so that a tie is a true tie."""
    if not math.isfinite(length_mm):
        raise ValueError(f"A length must be finite, not {length_mm}.")
    return Fraction(round(Fraction(Decimal(repr(float(length_mm)))) * _FINEST), _FINEST)


def _is_whole(number: Fraction) -> bool:
    return number.denominator == 1


def _decimal(number: Decimal) -> str:
    """All decimals, or twelve where there are more than fifteen; never an exponent, no zeros at the end."""
    text = f"{number:f}"
    if len(text.partition(".")[2]) > 15:
        text = f"{number:.12f}"
    text = text.rstrip("0").rstrip(".") if "." in text else text
    return "0" if text in ("-0", "0") else text


def _hundredths(magnitude: Fraction) -> str:
    """At most two decimals, half up, no zeros at the end."""
    return _decimal(Decimal(math.floor(magnitude * 100 + Fraction(1, 2))) / 100)


def _mixed(number: Fraction) -> str:
    """`15 19/32`, `3/4` or `23`."""
    whole, part = divmod(number, 1)
    if not part:
        return str(whole)
    return f"{whole} {part}" if whole else str(part)


def _rounding(error: Fraction) -> str:
    sign = "+" if error > 0 else "−"
    shown = _hundredths(abs(error))
    return f"{sign}{shown} mm" if shown != "0" else "<0.01 mm"
