"""Lengths as people type them: what is read, what is shown, and what is refused with which words."""

import math

import pytest

from baywright.model.length import LengthError, LengthUnit, format_exact, format_length, parse_length, shown_up

MM, INCH = LengthUnit.MILLIMETRE, LengthUnit.INCH


@pytest.mark.parametrize(
    ("text", "length_mm"),
    [
        ("396", 396.0),
        (" 396 mm ", 396.0),
        ("39.6cm", 396.0),
        ("39,6 CM", 396.0),
        ("0.396 m", 396.0),
        ("0,396 m", 396.0),
        ('15 19/32"', 396.08125),
        ('15-19/32"', 396.08125),
        ("1' 3 5/8\"", 396.875),
        ("1'-3 5/8\"", 396.875),
        ("1 ft 3 5/8 in", 396.875),
        ("1′ 3 5/8″", 396.875),
        ("1’ 3 5/8”", 396.875),
        ("15.6 in", 396.24),
        (".5 in", 12.7),
        ("3/4 in", 19.05),
        ("5/4 in", 31.75),
        ("1 1/2 in", 38.1),
        ("1¾ in", 44.45),
        ('1¾"', 44.45),
        ("1 ⅜ inches", 34.925),
        ("1½ ft", 457.2),
        ("16''", 406.4),
        ("12,5", 12.5),
        ("2 940", 2940.0),
        ("2\u202f940\u00a0mm", 2940.0),
        ("2,940.5", 2940.5),
        ("2.940,5", 2940.5),
        ("1,234,567", 1_234_567.0),
        ("0", 0.0),
        ("-0", 0.0),
    ],
)
def test_read_in_a_project_in_millimetres(text: str, length_mm: float) -> None:
    assert parse_length(text, MM) == length_mm


@pytest.mark.parametrize(
    ("text", "length_mm"),
    [("15 19/32", 396.08125), ("15.6", 396.24), ("¾", 19.05), ("396 mm", 396.0), ("1' 3 5/8", 396.875)],
)
def test_bare_number_is_in_inches_in_a_project_in_inches(text: str, length_mm: float) -> None:
    assert parse_length(text, INCH) == length_mm


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("", "missing"),
        ("   ", "missing"),
        ("about right", "not a length"),
        ("12 apples", "unit “apples” is not known"),
        ("1e3", "not a length"),
        ("nan", "not a length"),
        ("infinity", "not a length"),
        ("٣", "not a length"),
        ("1,2,3", "not a number"),
        ("1.2.3", "not a number"),
        ("2,940", "write 2940 or 2.94."),
        ("-5", "0 or more"),
        ("−5 mm", "0 or more"),
        ("--5", "not a number"),
        ("1¾", "mark them, as in 3/4 in"),
        ("15 19/32", "mark them, as in 3/4 in"),
        ("1/2 mm", "mark them, as in 3/4 in"),
        ('½½"', "not a number"),
        ("5/0 in", "0 below the stroke"),
        ('15 35/32"', "must be under 1"),
        ("1' 12\"", "under 12"),
        ("2'940", "under 12"),
        ("1.5' 3\"", "whole number"),
        ("3 ft 2 mm", "come inches"),
        ("1' x", "come inches"),
        ('15 19/32" (+0.08 mm)', "without the bracket"),
        ('0" (<0.01 mm)', "without the bracket"),
        ("9" * 200, "200 characters"),
    ],
)
def test_refused_with_the_reason(text: str, words: str) -> None:
    with pytest.raises(LengthError) as refusal:
        parse_length(text, MM)
    assert words in str(refusal.value)


def test_nonsense_is_answered_with_what_is_accepted() -> None:
    with pytest.raises(LengthError, match=r"Write for example 396, 39\.6 cm"):
        parse_length("wide", MM)
    with pytest.raises(LengthError, match="Write for example 15 19/32, "):
        parse_length("wide", INCH)


def test_negative_where_the_caller_allows_it() -> None:
    assert parse_length("-12.7", MM, allow_negative=True) == -12.7
    assert parse_length("−1/2", INCH, allow_negative=True) == -12.7


@pytest.mark.parametrize(
    ("length_mm", "in_mm", "in_inches"),
    [
        (0.0, "0 mm", '0"'),
        (-0.0, "0 mm", '0"'),
        (2940.0, "2940 mm", '115 3/4" (+0.05 mm)'),
        (2.675, "2.68 mm", '3/32" (−0.29 mm)'),
        (396.24, "396.24 mm", '15 19/32" (−0.16 mm)'),
        (0.2, "0.2 mm", '0" (−0.2 mm)'),
        (25.401, "25.4 mm", '1" (<0.01 mm)'),
        (25.4 / 64, "0.4 mm", '1/32" (+0.4 mm)'),
        (-396.0, "−396 mm", '−15 19/32" (−0.08 mm)'),
        (-0.001, "0 mm", '0" (<0.01 mm)'),
    ],
)
def test_shown(length_mm: float, in_mm: str, in_inches: str) -> None:
    assert format_length(length_mm, MM) == in_mm
    assert format_length(length_mm, INCH) == in_inches


@pytest.mark.parametrize(
    ("length_mm", "in_mm", "in_inches"),
    [
        (396.0, "396 mm", "396 mm"),
        (396.875, "396.875 mm", '15 5/8"'),
        (396.24, "396.24 mm", '15.6"'),
        (25.4 / 64, "0.396875 mm", '1/64"'),
        (1 / 3, "0.333333333333 mm", "0.333333333333 mm"),
        (1e-7, "0.0000001 mm", "0.0000001 mm"),
        (1e15, "1000000000000000 mm", "1000000000000000 mm"),
        (-0.0, "0 mm", '0"'),
        (-12.7, "-12.7 mm", '-1/2"'),
    ],
)
def test_written_for_an_edit_field(length_mm: float, in_mm: str, in_inches: str) -> None:
    assert format_exact(length_mm, MM) == in_mm
    assert format_exact(length_mm, INCH) == in_inches


@pytest.mark.parametrize("value", [math.nan, math.inf, -math.inf])
def test_no_text_for_what_is_no_length(value: float) -> None:
    for unit in LengthUnit:
        with pytest.raises(ValueError, match="finite"):
            format_length(value, unit)
        with pytest.raises(ValueError, match="finite"):
            format_exact(value, unit)


@pytest.mark.parametrize("unit", LengthUnit)
@pytest.mark.parametrize("length", [0.0, 12.0, 1404.996, 1405.2, 0.001, 3037.1999999999998, 25.4, 2031.0])
def test_a_length_shown_for_advice_reads_back_and_is_enough(unit: LengthUnit, length: float) -> None:
    shown = shown_up(length, unit)
    step = 0.01 if unit is LengthUnit.MILLIMETRE else 25.4 / 32
    assert length - 1e-9 <= shown < length + step
    assert parse_length(format_length(shown, unit), unit) == pytest.approx(shown, abs=1e-9)
