"""The front elevation: texts apart, everything on the sheet, the same bytes again."""

import struct
from collections import Counter
from itertools import combinations

import pytest
from matplotlib.text import Text

from baywright.documents import elevation as module
from baywright.documents.elevation import elevation
from baywright.documents.sketch import Format, Sketch
from baywright.making import manufacture
from baywright.making.frame import frame_of
from baywright.model.arrangement import Arrangement
from baywright.model.construction import Fronts, Stand, Uprights
from baywright.model.length import LengthUnit
from baywright.model.project import Project
from baywright.workings import derive


def _sheet(project: Project) -> Sketch:
    workings = derive(project)
    return module._draw(project, workings, manufacture(project, workings).schedule)


def _texts(sheet: Sketch) -> list[Text]:
    return [text for text in sheet._axes.texts if text.get_text()]


def _overlaps(sheet: Sketch) -> list[tuple[str, str]]:
    renderer = sheet._figure.canvas.get_renderer()  # type: ignore[attr-defined]
    boxes = [(text.get_text(), text.get_window_extent(renderer)) for text in _texts(sheet)]
    return [(a, b) for (a, first), (b, second) in combinations(boxes, 2) if first.overlaps(second)]


@pytest.mark.parametrize("unit", list(LengthUnit))
def test_no_text_runs_over_another(small: Project, long: Project, unit: LengthUnit) -> None:
    for project in (small, long):
        assert _overlaps(_sheet(project.replace(unit=unit))) == []


def test_the_count_of_overlaps_can_fail() -> None:
    sheet = Sketch(200, 100)
    sheet.text(20, 50, "one text", 8.0)
    sheet.text(40, 50, "another", 8.0)
    assert _overlaps(sheet) == [("one text", "another")]


def test_every_text_lies_on_the_sheet(small: Project, long: Project) -> None:
    for project in (small, long):
        sheet = _sheet(project)
        renderer = sheet._figure.canvas.get_renderer()  # type: ignore[attr-defined]
        width, height = sheet._figure.get_size_inches() * sheet._figure.dpi
        for text in _texts(sheet):
            extent = text.get_window_extent(renderer)
            assert 0 <= extent.x0 <= extent.x1 <= width, text.get_text()
            assert 0 <= extent.y0 <= extent.y1 <= height, text.get_text()


def test_dimensions_boxes_and_key_are_written(small: Project) -> None:
    words = {text.get_text() for text in _texts(_sheet(small))}
    assert {"459.4", "1409.2", "2400", "98", "1024", "27", "1149"} <= words
    assert {"bay 1", "bay 2", "shelves", "hole rows", "=1+1", "row 1 · 5 kg", "100 over floor"} <= words
    assert "row 17 · not weighed" in words
    assert any(words_.startswith("4 × Low (400 × 300 × 120)") for words_ in words)


def test_inch_projects_are_dimensioned_in_inches(small: Project) -> None:
    words = {text.get_text() for text in _texts(_sheet(small.replace(unit=LengthUnit.INCH)))}
    assert '18 3/32"' in words
    assert any("inches, to the nearest 1/32" in text for text in words)


@pytest.mark.parametrize("kind", ["png", "svg", "pdf"])
def test_the_same_document_gives_the_same_bytes(small: Project, kind: Format) -> None:
    workings = derive(small)
    schedule = manufacture(small, workings).schedule
    first = elevation(small, workings, schedule, kind)
    assert first == elevation(small, workings, schedule, kind)
    start = {"png": b"\x89PNG", "svg": b"<?xml", "pdf": b"%PDF"}[kind]
    assert first.startswith(start)


def test_a_long_run_gets_a_wider_sheet(small: Project, long: Project) -> None:
    def width(project: Project) -> int:
        workings = derive(project)
        data = elevation(project, workings, manufacture(project, workings).schedule, "png", 72)
        return int(struct.unpack(">I", data[16:20])[0])

    assert width(small) == 790
    assert width(long) == pytest.approx(6500 * 92 / 459.4 + 100, abs=2), "a bay keeps 92 points"


@pytest.mark.parametrize("own", [False, True])
def test_feet_own_uprights_and_empty_bays_are_drawn(small: Project, own: bool) -> None:
    construction = small.construction.replace(
        standing=small.construction.standing.replace(kind=Stand.FEET),
        uprights=Uprights.OWN if own else Uprights.SHARED,
    )
    empty = Arrangement(bay_count=3, upright_rows=20)
    assert _overlaps(_sheet(small.replace(construction=construction, arrangement=empty))) == []


def test_a_space_without_room_for_a_bay_is_said_not_drawn(small: Project) -> None:
    limits = small.limits.replace(shelf_bay=False)
    tiny = small.replace(space=small.space.replace(length_mm=300), arrangement=Arrangement(), limits=limits)
    assert "There are no bays to draw yet." in {text.get_text() for text in _texts(_sheet(tiny))}


def test_narrow_bays_have_their_number_only_or_nothing(small: Project) -> None:
    """At 2,400 points for 60 bays a bay is 40 points wide, for 120 bays 20, for 400 bays 6."""

    def headings(bays: int) -> set[str]:
        project = small.replace(
            space=small.space.replace(length_mm=100_000), arrangement=Arrangement(bay_count=bays, upright_rows=20),
            limits=small.limits.replace(shelf_bay=False),
        )  # fmt: skip
        sheet = _sheet(project)
        assert _overlaps(sheet) == []
        return {text.get_text() for text in _texts(sheet)}

    assert "bay 60" in headings(60)
    assert {"120"} <= headings(120)
    assert not {"400", "bay 400"} & headings(400)


@pytest.mark.parametrize("own", [False, True])
@pytest.mark.parametrize("kind", [Fronts.INSET, Fronts.OVERLAY])
def test_front_panels_have_an_outline_and_their_number_and_leave_the_words_readable(
    small: Project, long: Project, kind: Fronts, own: bool
) -> None:
    for plain in (small, long):
        made = plain.construction
        project = plain.replace(construction=made.replace(
            uprights=Uprights.OWN if own else Uprights.SHARED, drawers=made.drawers.replace(fronts=kind),
        ))  # fmt: skip
        workings = derive(project)
        listed = manufacture(project, workings)
        bare, sheet = (module._draw(project, workings, listed.schedule, fronts) for fronts in ((), listed.fronts))
        assert _overlaps(sheet) == []
        words, before = (Counter(text.get_text() for text in _texts(drawn)) for drawn in (sheet, bare))
        numbers = Counter(front.number for front in listed.fronts)
        assert len(listed.fronts) == len(project.boxes)
        assert numbers <= words, "every panel's number stands once for each piece"
        rows = [Counter({w: n for w, n in drawn.items() if w.startswith("row ")}) for drawn in (words, before)]
        assert rows[0] == rows[1], "rows and masses stand there in full"
        thick = [line for line in sheet._lines if line[1] == 1.5]
        assert len(thick) == 4 * len(listed.fronts)
        ends = {round(x, 6) for (start, end), _, _ in thick for x, _ in (start, end)}
        left, right = min(f.left_mm for f in listed.fronts), max(f.right_mm for f in listed.fronts)
        assert max(ends) - min(ends) == pytest.approx(_points_a_mm(project) * (right - left), rel=1e-6)


def _points_a_mm(project: Project) -> float:
    workings = derive(project)
    return module._points_per_mm(workings, frame_of(project, workings))
