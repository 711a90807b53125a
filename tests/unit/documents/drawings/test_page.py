"""Drawings of the parts: every measure in words, nothing beside the page, no words over each other."""

import re
from collections.abc import Iterator

import matplotlib
import pytest
from matplotlib.text import Text
from matplotlib.transforms import Bbox

from baywright.documents.drawings.page import HEIGHT, WIDTH, part_drawing, part_drawings, part_pages
from baywright.documents.drawings.words import figure, side_word, work_lines
from baywright.documents.sketch import SETTINGS, Sketch
from baywright.making import manufacture
from baywright.model.construction import (
    Back,
    Drilling,
    EndPanels,
    FrontEdge,
    Fronts,
    Jointing,
    Uprights,
)
from baywright.model.length import LengthUnit
from baywright.model.machining import Side
from baywright.model.making import Part
from baywright.model.project import Project
from tests.unit.documents.conftest import run


@pytest.fixture(scope="module")
def plain() -> Project:
    return run(2, 4)


@pytest.fixture(scope="module")
def rich(plain: Project) -> Project:
    """Everything that a construction can have, in inches."""
    made = plain.construction
    return plain.replace(
        unit=LengthUnit.INCH,
        construction=made.replace(
            uprights=Uprights.OWN, jointing=Jointing.DOWEL, end_panels=EndPanels(left=True, right=True),
            hole_rows=made.hole_rows.replace(drilling=Drilling.USED_ONLY),
            drawers=made.drawers.replace(fronts=Fronts.OVERLAY, has_box_stop=True),
            top=made.top.replace(front_edge=FrontEdge.ROUNDED), rear=made.rear.replace(kind=Back.TWO_BRACES),
        ),
    )  # fmt: skip


def part(project: Project, number: str) -> Part:
    return next(p for p in manufacture(project).parts if p.number == number)


def test_there_is_a_page_for_every_part_after_the_first(plain: Project) -> None:
    made = manufacture(plain)
    data = part_drawings(plain, made)
    assert data.startswith(b"%PDF")
    assert len(re.findall(rb"/Type /Page\b", data)) == 1 + len(made.parts)
    assert b"/Type3" not in data
    assert data == part_drawings(plain, made)


@pytest.mark.parametrize("kind", ["svg", "png"])
def test_a_drawing_can_be_a_picture(plain: Project, kind: str) -> None:
    data = part_drawing(plain, part(plain, "D1"), "svg" if kind == "svg" else "png")
    assert (b"<svg" in data) if kind == "svg" else data.startswith(b"\x89PNG")


def _texts(sheet: Sketch) -> Iterator[tuple[str, Bbox]]:
    drawn = sheet._figure
    renderer = drawn.canvas.get_renderer()  # type: ignore[attr-defined]
    with matplotlib.rc_context(SETTINGS):
        for text in drawn.findobj(Text):
            assert isinstance(text, Text)
            if text.get_text():
                box = text.get_window_extent(renderer)
                yield text.get_text(), Bbox(box.get_points() * 72.0 / drawn.dpi)


@pytest.mark.parametrize("name", ["plain", "rich"])
def test_no_words_leave_the_page_or_run_over_others(name: str, request: pytest.FixtureRequest) -> None:
    project: Project = request.getfixturevalue(name)
    for each in manufacture(project).parts:
        for sheet in part_pages(project, each):
            texts = list(_texts(sheet))
            assert texts
            for words, box in texts:
                assert box.x0 >= 0, (each.number, words)
                assert box.x1 <= WIDTH, (each.number, words)
                assert 0 <= box.y0 < box.y1 <= HEIGHT, (each.number, words)
            for index, (words, box) in enumerate(texts):
                for other, beside in texts[index + 1 :]:
                    across = min(box.x1, beside.x1) - max(box.x0, beside.x0)
                    up = min(box.y1, beside.y1) - max(box.y0, beside.y0)
                    assert min(across, up) <= 1.5, (each.number, words, other)


@pytest.mark.parametrize("name", ["plain", "rich"])
def test_every_place_and_size_stands_in_the_words(name: str, request: pytest.FixtureRequest) -> None:
    project: Project = request.getfixturevalue(name)
    for each in manufacture(project).parts:
        told = " ".join(work_lines(each))
        numbers = set(re.findall(r"\d+(?:\.\d+)?", told))
        for hole in each.machining.holes:
            wanted = [hole.y_mm, hole.diameter_mm, *([] if hole.depth_mm is None else [hole.depth_mm])]
            if hole.row is None or "every" not in told:
                wanted.append(hole.x_mm)
            assert {figure(value) for value in wanted} <= numbers, (each.number, hole)
        for joint in each.machining.joints:
            wanted = [joint.x_mm, joint.y_mm, joint.long_mm, joint.thick_mm, joint.depth_mm]
            assert {figure(value) for value in wanted} <= numbers, (each.number, joint)
        for groove in each.machining.grooves:
            assert figure(groove.width_mm) in numbers


def test_the_words_of_an_upright_by_hand(plain: Project) -> None:
    lines = work_lines(part(plain, "U1"))
    assert lines[0] == (
        "Hole rows, right face: Ø 5, 12 deep; 37, 165, 325, 343 from the front edge; rows 1 to 32, every 32 from 16 on "
        "from the lower end."
    )
    assert lines[1].endswith("see the drawer schedule."), "whole rows serve any runner"
    assert not any("schedule" in line for line in work_lines(part(plain, "U6"))), "shelves only"
    assert any(line.startswith("3 mortises for B1, lower end: 20 × 6, 26 deep; ") for line in lines)
    assert "Notch in the rear edge: 18 deep, from 924 to 1024 from the lower end." in lines


def test_sides_have_the_names_that_people_use(plain: Project) -> None:
    assert side_word(part(plain, "U1"), Side.FACE) == "right face"
    assert side_word(part(plain, "U6"), Side.FACE) == "left face"
    assert side_word(part(plain, "T1"), Side.FACE) == "lower side"
    assert side_word(part(plain, "D1"), Side.FRONT) == "lower edge"
    assert side_word(part(plain, "D1"), Side.START) == "front end"


def test_what_is_not_worked_says_so(plain: Project) -> None:
    shelf = part(plain, "S1")
    assert work_lines(shelf) == []
    texts = [words for words, _ in _texts(part_pages(plain, shelf)[0])]
    assert any("cut it to size only" in words for words in texts)
