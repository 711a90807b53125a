"""Masses as people type them."""

import pytest

from baywright.model.mass import MassError, parse_mass


@pytest.mark.parametrize(
    ("text", "mass_kg"),
    [
        ("4.5", 4.5),
        ("4,5 kg", 4.5),
        ("450 g", 0.45),
        ("10 lb", 4.5359237),
        ("10lbs", 4.5359237),
        ("1 pound", 0.45359237),
    ],
)
def test_read(text: str, mass_kg: float) -> None:
    assert parse_mass(text) == mass_kg


def test_bare_number_in_the_unit_of_its_column() -> None:
    assert parse_mass("10", "lb") == 4.5359237
    assert parse_mass("10 kg", "lb") == 10.0


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("", "missing"),
        ("heavy", "not a mass"),
        ("-3", "not a mass"),
        ("3 stone", "unit “stone” is not known"),
        ("1,500 g", "write 1500 or 1.5"),
        ("1.2.3", "not a number"),
        ("9" * 99, "99 characters"),
    ],
)
def test_refused_with_the_reason(text: str, words: str) -> None:
    with pytest.raises(MassError) as refusal:
        parse_mass(text)
    assert words in str(refusal.value)
