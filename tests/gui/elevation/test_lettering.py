"""Letters are shortened, never cut or laid over each other; rows are numbered as densely as can be read."""

import pytest
from PySide6.QtCore import QRectF, QSize
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QImage, QPainter
from PySide6.QtWidgets import QApplication

from baywright.gui.elevation.carcass import numbered_rows, row_number_step
from baywright.gui.elevation.lettering import Line, draw_lines, split_in_two, text_width
from baywright.gui.elevation.ruler import chains_for

INK = QColor("#000000")


@pytest.fixture
def font(qapp: QApplication) -> QFont:
    return QFont(qapp.font())


def test_the_fullest_wording_that_fits_is_taken(font: QFont) -> None:
    line = Line("locked in drawer · 120 mm · 5 kg", font, INK, ("120 mm · 5 kg", "5 kg"))
    assert line.fitted(1000) == "locked in drawer · 120 mm · 5 kg"
    assert line.fitted(text_width("120 mm · 5 kg", font) + 1) == "120 mm · 5 kg"
    assert line.fitted(text_width("5 kg", font) + 1) == "5 kg"
    assert line.fitted(text_width("5 k", font)).endswith("…")


@pytest.mark.parametrize("width", [40, 60, 90, 130, 200])
def test_no_text_is_drawn_outside_its_place(font: QFont, width: int) -> None:
    image = QImage(260, 80, QImage.Format.Format_RGB32)
    image.fill(QColor("white"))
    painter = QPainter(image)
    place = QRectF(20, 10, width, 60)
    draw_lines(painter, place, [Line("Mudguard and rack fittings", font, INK), Line("120 mm · 4.5 kg", font, INK)])
    painter.end()
    inked = [
        (x, y) for x in range(image.width()) for y in range(image.height()) if image.pixelColor(x, y).lightness() < 128
    ]
    assert inked, "something is drawn"
    assert all(place.left() - 1 <= x <= place.right() + 1 and place.top() <= y <= place.bottom() for x, y in inked)


def test_lines_without_room_are_left_out(font: QFont) -> None:
    image = QImage(200, 100, QImage.Format.Format_RGB32)
    painter = QPainter(image)
    lines = [Line(text, font, INK) for text in ("one", "two", "three")]
    height = painter.fontMetrics().height()
    assert draw_lines(painter, QRectF(0, 0, 200, height * 2 + 1), lines) == 2
    assert draw_lines(painter, QRectF(0, 0, 200, 3), lines) == 0
    assert draw_lines(painter, QRectF(0, 0, 8, 100), lines) == 0
    painter.end()


def test_a_long_label_breaks_between_words(font: QFont) -> None:
    line = Line("Cassettes and freewheels", font, INK)
    assert [part.text for part in split_in_two(line, 10_000)] == ["Cassettes and freewheels"]
    halves = split_in_two(line, text_width("Cassettes and", font) + 1)
    assert [part.text for part in halves] == ["Cassettes and", "freewheels"]
    assert [part.text for part in split_in_two(Line("Cassettes", font, INK), 5)] == ["Cassettes"]


def test_row_numbers_thin_out() -> None:
    assert numbered_rows(12, 5) == [0, 4, 9]
    assert numbered_rows(0, 5) == []
    assert row_number_step(12.0, 14.0) == 5
    assert row_number_step(2.0, 14.0) == 10
    assert row_number_step(0.5, 14.0) == 40


def test_a_small_view_keeps_its_room_for_the_run(font: QFont) -> None:
    line = QFontMetricsF(font).height()
    chains = [chains_for(QSize(800, round(lines * line)), font) for lines in (8, 14, 30)]
    assert [(c.across, c.up) for c in chains] == [(0, 0), (1, 0), (3, 2)]
    assert chains[2].margins[3] > chains[1].margins[3] > chains[0].margins[3] > line


def test_larger_letters_take_larger_margins(font: QFont) -> None:
    larger = QFont(font)
    larger.setPointSizeF(font.pointSizeF() * 2)
    size = QSize(2000, 2000)
    both = zip(chains_for(size, font).margins, chains_for(size, larger).margins, strict=True)
    assert all(one < other for one, other in both)
