"""What the parts list says of hole rows is read from the holes."""

from baywright.making.machining.note import with_rows_told
from baywright.model.length import LengthUnit
from baywright.model.machining import Hole, HolePurpose, Machining, Side
from baywright.model.making import Grain, Part


def upright(
    *holes: tuple[Side, int, float], mirrored: int = 0, is_front_far: bool = False, note: str = "32 rows high"
) -> Part:
    """An upright with holes of the rows on a side, in a row, on a line."""
    drilled = tuple(
        Hole(side=side, x_mm=16.0 + 32.0 * (row - 1), y_mm=line, diameter_mm=5.0, depth_mm=12.0,
             purpose=HolePurpose.ROW, row=row)
        for side, row, line in holes
    )  # fmt: skip
    return Part(
        number="U2", name="Upright, inner", quantity=2, length_mm=1024.0, width_mm=390.0, thickness_mm=18.0,
        material="plywood", grain=Grain.LENGTH, note=note, mirrored=mirrored,
        machining=Machining(holes=drilled, is_front_far=is_front_far),
    )  # fmt: skip


def whole(side: Side, *lines: float, first: int = 1) -> list[tuple[Side, int, float]]:
    return [(side, row, line) for row in range(first, 5) for line in lines]


def note(part: Part, unit: LengthUnit = LengthUnit.MILLIMETRE) -> str:
    return with_rows_told(part, unit).note


def test_lines_are_named_once_where_both_faces_have_the_same() -> None:
    part = upright(*whole(Side.FACE, 37.0, 165.0, 353.0), *whole(Side.REVERSE, 37.0, 165.0, 353.0))
    assert note(part) == (
        "32 rows high; rows 1 to 4 are drilled, the first 16 mm over the lower end; "
        "hole lines 37, 165 and 353 mm behind the front edge"
    )


def test_lines_are_named_face_by_face_where_they_differ() -> None:
    holes = [*whole(Side.FACE, 37.0, 353.0), *whole(Side.REVERSE, 37.0)]
    assert note(upright(*holes)).endswith("37 and 353 mm on the left face, 37 mm on the right face")
    assert note(upright(*holes, is_front_far=True)).endswith("37 and 353 mm on the right face, 37 mm on the left face")
    assert note(upright(*holes, mirrored=1)).endswith("37 and 353 mm on the face, 37 mm on the reverse")


def test_rows_that_are_left_out_are_not_named() -> None:
    assert "rows 2 to 4 are drilled, the first 48 mm over" in note(upright(*whole(Side.FACE, 37.0, first=2)))


def test_too_much_to_say_is_left_to_the_drawing() -> None:
    used = upright((Side.FACE, 1, 37.0), (Side.FACE, 9, 37.0), (Side.FACE, 9, 165.0))
    assert note(used).endswith("drilled only where holes are used: rows and lines as in the drawing")
    many = upright(*whole(Side.FACE, *(37.0 + 32.0 * n for n in range(7))))
    assert note(many).endswith("hole lines as in the drawing")


def test_lengths_are_in_the_unit_of_the_project() -> None:
    part = upright(*whole(Side.FACE, 25.4, 50.8))
    assert note(part, LengthUnit.INCH).endswith('hole lines 1" and 2" behind the front edge')


def test_a_part_without_rows_stays_as_it_is() -> None:
    part = upright()
    assert with_rows_told(part, LengthUnit.MILLIMETRE) is part
