"""The parts of small runs against sizes and quantities worked out by hand."""

import pytest

from baywright.making import manufacture
from baywright.making.manufacture import NOTHING_ARRANGED
from baywright.model.arrangement import Arrangement
from baywright.model.construction import Back, Stand, Uprights
from baywright.model.making import Part
from baywright.model.project import Project


def _sizes(parts: tuple[Part, ...]) -> dict[str, tuple[int, float, float, float]]:
    return {
        part.number: (part.quantity, round(part.length_mm, 3), round(part.width_mm, 3), part.thickness_mm)
        for part in parts
    }


def test_every_part_of_two_bays_and_a_shelf_bay(two_bays: Project) -> None:
    """By hand: box 400, play 2, sides 15: drawer 434 outside, 404 inside; runners 12.7: clear 459.4.

    Two pitches of 477.4 and an upright are 972.8; less one more upright the wall leaves 1,409.2 for shelves. 33 rows
    are 1,056 mm. Depth 400 less 20 overhang: 380; runner 350; inside 320; bottom 404 + 12 − 1 and 320 + 12 − 1.
    """
    assert _sizes(manufacture(two_bays).parts) == {
        "U1": (1, 1056.0, 380.0, 18.0),
        "U2": (1, 1056.0, 380.0, 18.0),
        "U4": (1, 1056.0, 380.0, 18.0),
        "U6": (1, 1056.0, 380.0, 18.0),
        "B1": (1, 2400.0, 380.0, 18.0),
        "T1": (1, 2400.0, 400.0, 27.0),
        "P1": (1, 2400.0, 80.0, 18.0),
        "P2": (1, 2400.0, 80.0, 18.0),
        "P3": (4, 304.0, 80.0, 18.0),
        "R4": (1, 2400.0, 100.0, 18.0),
        "D1": (16, 350.0, 60.0, 15.0),
        "D2": (16, 404.0, 60.0, 15.0),
        "D3": (8, 415.0, 331.0, 9.0),
        "S1": (3, 1407.2, 362.0, 18.0),
    }


def test_own_uprights_make_carcasses_with_a_base_each(two_bays: Project) -> None:
    project = two_bays.replace(construction=two_bays.construction.replace(uprights=Uprights.OWN))
    sizes = _sizes(manufacture(project).parts)
    assert {number: size[0] for number, size in sizes.items() if number[0] == "U"} == {
        "U1/1": 1, "U1/2": 1, "U3": 2, "U5": 1, "U6": 1,
    }, "two stand beside another carcass and are bolted to it"  # fmt: skip
    assert sizes["B1"] == (2, 495.4, 380.0, 18.0)
    assert sizes["B1s"] == (1, 1409.2, 380.0, 18.0)
    assert sizes["R4"][:2] == (2, 495.4)
    assert sizes["T1"] == (1, 2400.0, 400.0, 27.0)
    assert sizes["P3"][0] == 6


def test_long_boards_are_joined_over_the_middle_of_an_upright(two_bays: Project) -> None:
    boards = two_bays.construction.boards.replace(longest_mm=2000)
    project = two_bays.replace(construction=two_bays.construction.replace(boards=boards))
    made = manufacture(project)
    tops = [part for part in made.parts if part.number.startswith("T1")]
    assert [part.number for part in tops] == ["T1.1", "T1.2"]
    assert [part.length_mm for part in tops] == pytest.approx([963.8, 1436.2])
    assert "over the middle of upright 3, 963.8 mm from the left end" in tops[0].note
    assert tops[0].edged_length_mm == pytest.approx(963.8 + 400)
    crossing = next(part for part in made.parts if part.number == "P3")
    assert crossing.quantity == 5, "the two sections of the plinth each end on a cross piece of their own"


def test_a_board_that_no_upright_can_shorten_is_named(two_bays: Project) -> None:
    boards = two_bays.construction.boards.replace(longest_mm=1000)
    project = two_bays.replace(construction=two_bays.construction.replace(boards=boards))
    made = manufacture(project)
    (remark,) = [remark for remark in made.remarks if remark.startswith("Top (T1.2) is 1436.2 mm long")]
    assert remark.endswith(
        "get a longer board, make the bay that it spans narrower, or join it over a support of its own."
    )


def test_feet_take_the_plinth_s_place(two_bays: Project) -> None:
    standing = two_bays.construction.standing.replace(kind=Stand.FEET)
    made = manufacture(two_bays.replace(construction=two_bays.construction.replace(standing=standing)))
    assert not [part for part in made.parts if part.number.startswith("P")]
    feet = next(item for item in made.hardware if item.number == "FT")
    assert (feet.needed, feet.packs) == (8, 2)


def test_a_full_back_covers_base_and_uprights_under_the_top(two_bays: Project) -> None:
    rear = two_bays.construction.rear.replace(kind=Back.FULL_BACK)
    made = manufacture(two_bays.replace(construction=two_bays.construction.replace(rear=rear)))
    sizes = _sizes(made.parts)
    assert sizes["R1"] == (1, 2400.0, 1074.0, 9.0)
    assert sizes["U1"][2] == 371.0
    assert sizes["T1"][2] == 400.0
    assert sizes["S1"][2] == 371.0


def test_two_braces_run_through(two_bays: Project) -> None:
    rear = two_bays.construction.rear.replace(kind=Back.TWO_BRACES)
    sizes = _sizes(manufacture(two_bays.replace(construction=two_bays.construction.replace(rear=rear))).parts)
    assert sizes["R2"] == sizes["R3"] == (1, 2400.0, 100.0, 18.0)


def test_a_rail_that_would_stop_the_drawers_is_named(two_bays: Project) -> None:
    """380 deep with 350 runners leaves 30; a rail of 35 is too thick for that."""
    boards = two_bays.construction.boards.replace(brace_mm=35)
    project = two_bays.replace(construction=two_bays.construction.replace(boards=boards))
    assert any("30 mm" in remark and "35 mm" in remark for remark in manufacture(project).remarks)
    assert not any("would stop the drawers" in remark for remark in manufacture(two_bays).remarks)


def test_a_wall_that_is_not_there_is_no_rear(two_bays: Project) -> None:
    project = two_bays.replace(space=two_bays.space.replace(existing_wall=False))
    made = manufacture(project)
    assert any("the space has none" in remark for remark in made.remarks)
    assert not [item for item in made.hardware if item.number == "WF"]


def test_before_anything_is_arranged_the_answer_is_empty(two_bays: Project) -> None:
    made = manufacture(two_bays.replace(arrangement=Arrangement()))
    assert (made.parts, made.hardware, made.schedule) == ((), (), ())
    assert made.remarks == (NOTHING_ARRANGED,)


def test_without_a_runner_that_fits_there_are_no_drawers_and_it_is_said(two_bays: Project) -> None:
    project = two_bays.replace(space=two_bays.space.replace(depth_mm=200))
    made = manufacture(project)
    assert not [part for part in made.parts if part.number.startswith("D")]
    assert not [item for item in made.hardware if item.number.startswith(("RP", "SS"))]
    assert any("No runner fits" in remark for remark in made.remarks)


def test_a_part_without_any_size_left_is_named_not_listed(two_bays: Project) -> None:
    standing = two_bays.construction.standing.replace(plinth_setback_mm=360)
    made = manufacture(two_bays.replace(construction=two_bays.construction.replace(standing=standing)))
    assert "P3" not in _sizes(made.parts)
    assert any("(P3) would have no size left" in remark for remark in made.remarks)


def test_part_numbers_stay_when_the_arrangement_changes(two_bays: Project) -> None:
    fewer = two_bays.arrangement.replace(placements=two_bays.arrangement.placements[:3])
    before = {part.number: part.name for part in manufacture(two_bays).parts}
    after = {part.number: part.name for part in manufacture(two_bays.replace(arrangement=fewer)).parts}
    assert before == after


def test_long_shelves_are_warned_of(two_bays: Project) -> None:
    assert any("1407.2 mm long and 18 mm thick" in remark for remark in manufacture(two_bays).remarks)
    short = two_bays.replace(space=two_bays.space.replace(length_mm=1600))
    assert not any("sag" in remark for remark in manufacture(short).remarks)


def test_the_uprights_say_where_the_hole_lines_lie(two_bays: Project) -> None:
    """380 mm deep, rear set-back 50: the lines of the rows at 37 and 330; the runner's second hole at 165, its last at
    325 is too near to the rear line, which drawer bays do without."""
    rows = two_bays.construction.hole_rows.replace(front_setback_mm=37, rear_setback_mm=50)
    project = two_bays.replace(construction=two_bays.construction.replace(hole_rows=rows))
    notes = {part.number: part.note for part in manufacture(project).parts if part.name.startswith("Upright")}
    first = "rows 1 to 33 are drilled, the first 16 mm over the lower end"
    assert f"{first}; hole lines 37, 165 and 325 mm behind the front edge" in notes["U1"]
    assert notes["U4"].endswith(
        f"{first}; hole lines behind the front edge: 37, 165 and 325 mm on the left face, "
        "37 and 330 mm on the right face"
    )
    assert notes["U6"].endswith("hole lines 37 and 330 mm behind the front edge")


def test_hole_lines_deeper_than_the_upright_are_told(two_bays: Project) -> None:
    rows = two_bays.construction.hole_rows.replace(front_setback_mm=200, rear_setback_mm=180)
    project = two_bays.replace(construction=two_bays.construction.replace(hole_rows=rows))
    told = [remark for remark in manufacture(project).remarks if "row set-backs" in remark]
    assert len(told) == 1
    assert all(length in told[0] for length in ("200 mm", "180 mm", "380 mm"))
    assert not [remark for remark in manufacture(two_bays).remarks if "row set-backs" in remark]


@pytest.mark.parametrize(
    ("back", "width_mm", "words"),
    [
        (Back.EXISTING_WALL, 128.0, ""),
        (Back.EXISTING_WALL, 222.0, "A fixing rail of 222 mm width does not fit on uprights that are only 128 mm high"),
        (Back.TWO_BRACES, 64.0, ""),
        (Back.TWO_BRACES, 80.0, "Two braces of 80 mm width do not fit on uprights that are only 128 mm high"),
        (Back.FULL_BACK, 222.0, ""),
    ],
)
def test_rails_that_do_not_fit_on_the_uprights_are_told(
    two_bays: Project, back: Back, width_mm: float, words: str
) -> None:
    """Four rows of 32 mm are 128 mm."""
    made = two_bays.construction
    low = two_bays.replace(
        construction=made.replace(rear=made.rear.replace(kind=back, brace_width_mm=width_mm)),
        arrangement=two_bays.arrangement.replace(upright_rows=4, placements=()),
    )
    told = [remark for remark in manufacture(low).remarks if "not fit on uprights" in remark]
    assert len(told) == bool(words)
    assert all(remark.startswith(words) for remark in told)


@pytest.mark.parametrize("deep_mm", [0.0, 6.0])
def test_the_drawers_notes_name_the_grooves_that_are_cut(two_bays: Project, deep_mm: float) -> None:
    made = two_bays.construction
    drawers = made.drawers.replace(groove_depth_mm=deep_mm)
    parts = {p.number: p for p in manufacture(two_bays.replace(construction=made.replace(drawers=drawers))).parts}
    for number in ("D1", "D2"):
        assert bool(parts[number].machining.grooves) == (deep_mm > 0)
        assert ("6 mm deep, 8 mm over the lower edge" in parts[number].note) == (deep_mm > 0)
        assert ("no groove" in parts[number].note) == (deep_mm == 0)
    assert ("in grooves all round" in parts["D3"].note) == (deep_mm > 0)
