"""How wide and high cells must be."""

from baywright.documents.sheets.measure import characters, line_count


def test_a_text_as_wide_as_its_column_is_one_line() -> None:
    for text in ("Brake pads", "Freewheel tools and a very long label", "W" * 30):
        assert line_count(text, characters(text)) == 1


def test_narrower_columns_take_more_lines() -> None:
    text = "section 1 of 2 from the left; joined to the next over the middle of upright 4"
    counts = [line_count(text, width) for width in (100.0, 50.0, 30.0, 15.0)]
    assert counts == sorted(counts)
    assert counts[0] == 1
    assert counts[-1] >= 5


def test_a_word_longer_than_the_column_is_broken() -> None:
    assert line_count("W" * 60, 20.0) >= 4


def test_line_ends_count() -> None:
    assert line_count("one\ntwo\n\nfour", 30.0) == 4
