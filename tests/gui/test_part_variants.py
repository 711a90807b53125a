"""Findings name a part; its variants in the list stand out with it."""

import pytest

from baywright.gui.selection import is_of


@pytest.mark.parametrize(
    ("number", "part", "is_so"),
    [
        ("U2", "U2", True),
        ("U2/1", "U2", True),
        ("U2/1", "U2/1", True),
        ("U2", "U2/1", False),
        ("U20", "U2", False),
        ("U2-20", "U2", True),
        ("T1.1", "T1", True),
        ("T1b.2", "T1", True),
        ("E1L", "E1", False),
        ("U2", "", False),
    ],
)
def test_a_variant_is_of_its_part(number: str, part: str, is_so: bool) -> None:
    assert is_of(number, part) is is_so
