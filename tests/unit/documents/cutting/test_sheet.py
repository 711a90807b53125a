"""The drawing of a sheet: every piece named, no text over another, readable without colour."""

from itertools import combinations

import pytest
from matplotlib.text import Text

from baywright.documents.cutting.bar import BARS_A_PAGE, bar_drawings
from baywright.documents.cutting.sheet import Words, sheet_drawing
from baywright.documents.sketch import Sketch
from baywright.model.cutting import BarCutting, SheetLayout
from baywright.model.length import LengthUnit
from tests.unit.documents.cutting.conftest import piece


def _texts(sheet: Sketch) -> list[Text]:
    return [text for text in sheet._axes.texts if text.get_text()]


def _shown(sheet: Sketch) -> list[str]:
    return [text.get_text() for text in _texts(sheet)]


def _overlaps(sheet: Sketch) -> list[tuple[str, str]]:
    renderer = sheet._figure.canvas.get_renderer()  # type: ignore[attr-defined]
    boxes = [(text.get_text(), text.get_window_extent(renderer)) for text in _texts(sheet)]
    return [(a, b) for (a, first), (b, second) in combinations(boxes, 2) if first.overlaps(second)]


@pytest.mark.parametrize("unit", list(LengthUnit))
def test_no_text_runs_over_another_or_off_the_sheet(layout: SheetLayout, words: Words, unit: LengthUnit) -> None:
    sheet = sheet_drawing(layout, Words(words.material, unit, words.names))
    assert _overlaps(sheet) == []
    renderer = sheet._figure.canvas.get_renderer()  # type: ignore[attr-defined]
    width, height = sheet._figure.get_size_inches() * sheet._figure.dpi
    for text in _texts(sheet):
        extent = text.get_window_extent(renderer)
        assert extent.x0 >= 0, text.get_text()
        assert extent.x1 <= width, text.get_text()
        assert extent.y0 >= 0, text.get_text()
        assert extent.y1 <= height, text.get_text()


def test_every_piece_is_named_with_its_number(layout: SheetLayout, words: Words) -> None:
    shown = " | ".join(_shown(sheet_drawing(layout, words)))
    for each in layout.pieces:
        assert f"{each.part_number} · {each.piece}" in shown


def test_sizes_names_and_rests_stand_where_there_is_room(layout: SheetLayout, words: Words) -> None:
    shown = _shown(sheet_drawing(layout, words))
    assert shown.count("720 × 380") == 3
    assert "Upright, outer" in shown
    assert "D1 · 1: 450 × 60" in shown
    assert "keep" in shown
    assert "2340 × 390" in shown


def test_a_piece_too_small_for_letters_is_drawn_all_the_same(layout: SheetLayout, words: Words) -> None:
    tiny = layout.replace(pieces=(piece("X9", 1, 10, 10, 8, 8),), rests=(), cuts=())
    sheet = sheet_drawing(tiny, words)
    assert not any("X9" in text for text in _shown(sheet))
    assert len(sheet._rectangles[""]) == 2


def test_the_numbers_of_cuts_through_the_whole_sheet_stand_at_its_edge(layout: SheetLayout, words: Words) -> None:
    shown = _shown(sheet_drawing(layout, words))
    assert {"1", "2", "3", "4", "5"} <= set(shown)
    inner = layout.replace(cuts=tuple(cut.replace(length_mm=700.0) for cut in layout.cuts))
    assert not {"1", "2"} & set(_shown(sheet_drawing(inner, words)))


def test_the_same_layout_gives_the_same_bytes(layout: SheetLayout, words: Words) -> None:
    assert sheet_drawing(layout, words).to_bytes("png") == sheet_drawing(layout, words).to_bytes("png")


def test_bars_are_drawn_fifteen_to_a_sheet_with_their_rests(bars: BarCutting, words: Words) -> None:
    drawings = bar_drawings(bars, words)
    assert len(drawings) == 2
    assert BARS_A_PAGE == 15
    shown = [text for drawing in drawings for text in _shown(drawing)]
    assert {"L1: 2500", "L17: 2500", "keep 700", "U0: 600"} <= set(shown)
    assert "keep 88" not in shown
    (wide,) = bar_drawings(bars.replace(layouts=(bars.layouts[0].replace(width_mm=22),)), words)
    assert "L1: 2500 × 22" in _shown(wide)
    assert all(_overlaps(drawing) == [] for drawing in drawings)
