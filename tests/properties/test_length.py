"""Laws of lengths over all inputs: exact round trips, rounding within its bound, and no surprise on any text."""

from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from baywright.model.length import LengthError, LengthUnit, format_exact, format_length, parse_length

UNITS = st.sampled_from(list(LengthUnit))
KILOMETRES_1000 = 1e9
LENGTHS = st.floats(-KILOMETRES_1000, KILOMETRES_1000, allow_nan=False)
GRAMMAR = st.text(alphabet="0123456789 .,'\"/-mcinft½¾¼⅜−′″\u202f(+)", max_size=24)


@settings(max_examples=300)
@given(LENGTHS, UNITS, UNITS)
def test_exact_text_is_read_back_whatever_the_unit(length_mm: float, written: LengthUnit, read: LengthUnit) -> None:
    text = format_exact(length_mm, written)
    assert abs(parse_length(text, read, allow_negative=True) - length_mm) <= 1e-9


@settings(max_examples=200)
@given(st.integers(0, 200 * 64), UNITS)
def test_a_sixty_fourth_survives_the_edit_field_unchanged(parts: int, unit: LengthUnit) -> None:
    length_mm = float(Fraction(parts, 64) * Fraction(254, 10))
    assert parse_length(format_exact(length_mm, unit), unit) == length_mm


@settings(max_examples=200)
@given(st.floats(0, 100_000))
def test_shown_length_lies_within_its_rounding(length_mm: float) -> None:
    in_mm = parse_length(format_length(length_mm, LengthUnit.MILLIMETRE), LengthUnit.MILLIMETRE)
    assert abs(in_mm - length_mm) <= 0.005 + 1e-9
    in_inches = parse_length(format_length(length_mm, LengthUnit.INCH).split("(")[0], LengthUnit.INCH)
    assert abs(in_inches - length_mm) <= 25.4 / 64 + 1e-9


@settings(max_examples=400)
@given(st.one_of(GRAMMAR, st.text(max_size=100)), UNITS)
def test_any_text_is_a_length_or_refused_in_words(text: str, unit: LengthUnit) -> None:
    answer: float | str
    try:
        answer = parse_length(text, unit)
    except LengthError as refusal:
        answer = str(refusal)
    assert answer.endswith(".") if isinstance(answer, str) else answer >= 0


@settings(max_examples=200)
@given(st.integers(0, 99_999), st.integers(0, 999), UNITS)
def test_point_and_comma_mean_the_same_where_the_comma_is_taken(whole: int, part: int, unit: LengthUnit) -> None:
    with_point = parse_length(f"{whole}.{part}", unit)
    try:
        with_comma = parse_length(f"{whole},{part}", unit)
    except LengthError:
        assert len(str(part)) == 3
        assert 1 <= whole <= 999
    else:
        assert with_comma == with_point
