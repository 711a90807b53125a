"""Inches against published conversion factors.

Source of the factors: NIST Special Publication 811 (2008 edition), appendix B: 1 in = 25.4 mm exactly (read in a
secondary place, not in the primary text); 1 lb = 0.453 592 37 kg exactly (from memory, the 1959 yard and pound
agreement).
Source of the examples of rounding by the rule of reason: NIST Letter Circular 1137, 36 in ≈ 91 cm and
40.1 in ≈ 101.9 cm (read in a secondary place).
The table of nearest 1/32 inches is arithmetic from the exact factor, half up on the exact rational.
"""

import re
from fractions import Fraction

import pytest

from baywright.model.length import LengthUnit, format_length, parse_length
from baywright.model.mass import parse_mass

NEAREST_THIRTY_SECOND = [
    (396.0, "15 19/32", "+0.08 mm"),
    (787.0, "30 31/32", "−0.39 mm"),
    (424.6, "16 23/32", "+0.06 mm"),
    (450.0, "17 23/32", "+0.06 mm"),
    (600.0, "23 5/8", "+0.08 mm"),
    (2440.0, "96 1/16", "−0.01 mm"),
    (18.0, "23/32", "+0.26 mm"),
    (32.0, "1 1/4", "−0.25 mm"),
    (37.0, "1 15/32", "+0.31 mm"),
    (12.7, "1/2", None),
    (396.875, "15 5/8", None),
]


def test_an_inch_and_a_pound_are_exact() -> None:
    assert parse_length("1 in", LengthUnit.MILLIMETRE) == 25.4
    assert parse_length("1 ft", LengthUnit.MILLIMETRE) == 304.8
    assert parse_mass("1 lb") == 0.45359237


@pytest.mark.parametrize(("inches", "centimetres"), [("36", 91), ("40.1", 101.9)])
def test_rule_of_reason_examples(inches: str, centimetres: float) -> None:
    length_cm = parse_length(inches, LengthUnit.INCH) / 10
    assert round(length_cm, 1 if isinstance(centimetres, float) else 0) == centimetres


@pytest.mark.parametrize(("length_mm", "inches", "rounding"), NEAREST_THIRTY_SECOND)
def test_nearest_thirty_second(length_mm: float, inches: str, rounding: str | None) -> None:
    shown = format_length(length_mm, LengthUnit.INCH)
    assert shown == (f'{inches}"' if rounding is None else f'{inches}" ({rounding})')
    error = parse_length(re.sub(r" \(.*", "", shown), LengthUnit.INCH) - length_mm
    assert abs(error) <= 25.4 / 64 + 1e-9


def test_pitches_rounded_to_inches_drift() -> None:
    """24 pitches of 32 mm are 768 mm; 24 times the shown 1 1/4 in only 762: hole rows must stay in mm."""
    shown = parse_length(format_length(32.0, LengthUnit.INCH).split("(")[0], LengthUnit.INCH)
    assert 24 * Fraction(str(shown)) == 762
