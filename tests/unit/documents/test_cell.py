"""Single cells: text that stays text."""

import pytest

from baywright.documents.sheets.cell import MOST_CHARACTERS, safe_text


@pytest.mark.parametrize(
    ("text", "safe"),
    [
        ("plain", "plain"),
        ("a\x00b\x1fc", "a b c"),
        ("one\r\ntwo\rthree", "one\ntwo\nthree"),
        ("_x0041_", "_x005F_x0041_"),
    ],
)
def test_what_a_workbook_cannot_hold_is_taken_out(text: str, safe: str) -> None:
    assert safe_text(text) == safe


def test_a_text_too_long_for_a_cell_is_cut_and_shows_it() -> None:
    assert safe_text("x" * 40_000) == "x" * MOST_CHARACTERS + "…"
