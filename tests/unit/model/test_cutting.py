"""How good a cutting is known to be, and how many pieces are missing, in words."""

import pytest

from baywright.model.cutting import SheetCutting, Unplaced, missing_words

USED_UP = Unplaced(part_number="U1", pieces=2, reason="The sheets are used up; add some.")
CUTTING = SheetCutting(material_id="ply", material="Plywood", thickness_mm=18, layouts=(), value=100)


@pytest.mark.parametrize(
    ("cutting", "gap"),
    [
        (CUTTING.replace(bound=95.0), 0.05),
        (CUTTING.replace(bound=100.0, is_proved=True), None),
        (CUTTING.replace(bound=0.0), None),
        (CUTTING.replace(bound=95.0, unplaced=(USED_UP,)), None),
        (CUTTING.replace(value=0), None),
    ],
)
def test_a_gap_is_told_only_where_it_says_something(cutting: SheetCutting, gap: float | None) -> None:
    assert cutting.gap == pytest.approx(gap)


def test_missing_pieces_are_counted_with_the_reason_that_they_share() -> None:
    assert missing_words(()) == ""
    assert missing_words([USED_UP]) == "2 pieces are missing: the sheets are used up; add some"
    assert missing_words([USED_UP], why=False) == "2 pieces are missing"
    assert missing_words([USED_UP.replace(pieces=1)]).startswith("1 piece is missing: ")
    too_long = USED_UP.replace(part_number="S1", pieces=1, reason="It is too long.")
    assert missing_words([USED_UP, too_long]) == "3 pieces are missing"
