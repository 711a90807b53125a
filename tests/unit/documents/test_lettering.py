"""Text on drawings is measured and shortened."""

import pytest

from baywright.documents.lettering import ELLIPSIS, printable, shortened, width_of


def test_a_text_that_fits_stays() -> None:
    assert shortened("Brake pads", 200.0, 7.0) == "Brake pads"


@pytest.mark.parametrize("room", [15.0, 30.0, 45.0])
def test_a_longer_one_is_cut_to_the_room(room: float) -> None:
    text = "Freewheel tools and chain whips"
    short = shortened(text, room, 7.0, bold=True)
    assert short.endswith(ELLIPSIS)
    assert text.startswith(short.removesuffix(ELLIPSIS))
    assert width_of(short, 7.0, bold=True) <= room


def test_without_room_for_one_letter_nothing_is_drawn() -> None:
    assert shortened("Brake pads", 3.0, 7.0) == ""


def test_what_the_font_cannot_draw_becomes_a_square() -> None:
    assert printable("工具 keys\n5") == "□□ keys 5"


def test_widths_grow_with_text_size_and_weight() -> None:
    assert width_of("ab", 7.0) < width_of("abc", 7.0) < width_of("abc", 8.0) < width_of("abc", 8.0, bold=True)
    assert width_of("n" * 10, 10.0) == pytest.approx(10 * width_of("n", 10.0))
