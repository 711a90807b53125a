"""The tab “Parts”: the list, the drawing of the selected part and its table of work, and one selection everywhere."""

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QAbstractItemModelTester, QTest

from baywright.app.commands import SetField
from baywright.gui.parts.geometry import Bench
from baywright.gui.parts.line import part_records
from baywright.gui.parts.panel import PartPanel
from baywright.gui.parts.work import work_lines, work_summary
from baywright.gui.tables.model import MARK
from baywright.gui.tables.view import TableView
from baywright.model.construction import Fronts
from baywright.model.length import LengthUnit
from baywright.model.machining import (
    EdgeForm,
    Groove,
    Hole,
    HolePurpose,
    Joint,
    Machining,
    ShapedEdge,
    Side,
)
from baywright.model.making import Grain, Manufacture, Part
from tests.gui.desk import Desk


def upright(**changes: object) -> Part:
    """A board 700 × 400 × 18 mm with one of everything done to it."""
    machining = Machining(
        holes=(
            Hole(side=Side.FACE, x_mm=16, y_mm=37, diameter_mm=5, depth_mm=12, purpose=HolePurpose.ROW, row=1),
            Hole(side=Side.REVERSE, x_mm=48, y_mm=37, diameter_mm=5, depth_mm=None, purpose=HolePurpose.ROW, row=2),
            Hole(side=Side.START, x_mm=50, y_mm=9, diameter_mm=8, depth_mm=30, purpose=HolePurpose.DOWEL),
        ),
        grooves=(Groove(side=Side.FACE, is_along=True, offset_mm=100, width_mm=9, depth_mm=6, from_mm=0, to_mm=700),),
        joints=(Joint(side=Side.END, x_mm=60, y_mm=9, is_along=True, long_mm=40, thick_mm=6, depth_mm=20, meets="T1"),),
        shaped_edges=(ShapedEdge(side=Side.FRONT, form=EdgeForm.ROUNDED, size_mm=3),),
    )
    values: dict[str, object] = {
        "number": "U1",
        "name": "Upright, left",
        "quantity": 2,
        "length_mm": 700.0,
        "width_mm": 400.0,
        "thickness_mm": 18.0,
        "material": "birch plywood 18 mm",
        "grain": Grain.LENGTH,
        "banded": (Side.FRONT,),
        "machining": machining,
    }
    return Part.model_validate({**values, **changes})


def pick(view: TableView, row: int) -> None:
    """Click on a row: what keys tests before this one held down does not count then."""
    view.scrollTo(view.rows.index(row, 0))
    where = view.visualRect(view.rows.index(row, 0)).center()
    QTest.mouseClick(view.viewport(), Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, where)


@pytest.fixture
def parts(desk: Desk) -> PartPanel:
    """The panel of a planned workshop, in front."""
    panel = desk.panels.parts
    QAbstractItemModelTester(panel.table, QAbstractItemModelTester.FailureReportingMode.Fatal, panel.table)
    QAbstractItemModelTester(panel.work, QAbstractItemModelTester.FailureReportingMode.Fatal, panel.work)
    desk.actions.plan.trigger()
    desk.panels.lists.setCurrentWidget(panel)
    return panel


def test_every_part_is_listed_and_the_selected_one_is_drawn(parts: PartPanel, desk: Desk) -> None:
    made = desk.session.manufacture
    assert made is not None
    assert [parts.table.record(key).number for key in parts.table.ids] == [part.number for part in made.parts]
    assert parts.drawing.bench is None
    assert "Select a part" in parts.drawing.accessibleDescription()
    pick(parts.view, 0)
    bench = parts.drawing.bench
    assert bench is not None
    assert bench.part is made.parts[0]
    assert made.parts[0].name in parts.drawing.accessibleDescription()
    assert parts.work.total == len(work_lines(made.parts[0].machining))


def test_a_part_selected_in_the_list_stands_out_in_picture_drawers_and_checks(parts: PartPanel, desk: Desk) -> None:
    parts.select_parts(())
    row = parts.table.row_of("D1")
    pick(parts.view, row)
    (shown,) = desk.panels.elevation.canvas.parts_shown
    assert shown.number == "D1"
    assert len(shown.areas) == 2 * len(desk.session.project.boxes)
    assert desk.panels.drawers.table.marked == {box.id for box in desk.session.project.boxes}
    marked = desk.panels.drawers.table.index(0, 2).data()
    assert str(marked).startswith(MARK)
    pick(parts.view, parts.table.row_of("U2"))
    (shown,) = desk.panels.elevation.canvas.parts_shown
    inner = desk.session.project.arrangement.bay_count - 1
    assert (shown.number, len(shown.areas)) == ("U2", inner)
    assert desk.panels.drawers.table.marked == frozenset()


def test_a_board_is_chosen_in_the_picture_by_click_and_by_key(parts: PartPanel, desk: Desk) -> None:
    elevation = desk.panels.elevation
    frame = elevation.shown.frame
    assert frame is not None
    place = elevation.canvas.mapFromScene(frame.top.centre)
    QTest.mouseClick(elevation.canvas.viewport(), Qt.MouseButton.LeftButton, pos=place)
    numbers: list[object] = [desk.panels.part_selection.numbers]
    assert parts.view.selected_ids() == ("T1",)
    assert "Part T1: Top, 1 piece" in elevation.foot.text()
    QTest.mouseClick(elevation.canvas.viewport(), Qt.MouseButton.LeftButton, pos=QPoint(2, 2))
    numbers.append(desk.panels.part_selection.numbers)
    assert numbers == [("T1",), ()]
    assert parts.view.selected_ids() == ()
    elevation.canvas.setFocus()
    QTest.keyClick(elevation.canvas, Qt.Key.Key_B)
    first = desk.panels.part_selection.numbers
    QTest.keyClick(elevation.canvas, Qt.Key.Key_B)
    second = desk.panels.part_selection.numbers
    QTest.keyClick(elevation.canvas, Qt.Key.Key_B, Qt.KeyboardModifier.ShiftModifier)
    assert desk.panels.part_selection.numbers == first != second
    assert parts.view.selected_ids() == first
    QTest.keyClick(elevation.canvas, Qt.Key.Key_B)  # without Shift, which would else count as held from now on
    assert desk.panels.part_selection.numbers == second


def test_the_chosen_part_stands_out_still_after_an_edit(parts: PartPanel, desk: Desk) -> None:
    pick(parts.view, parts.table.row_of("T1"))
    before = desk.panels.elevation.canvas.parts_shown[0].areas
    desk.session.do(SetField("construction.boards.top_mm", 40.0))
    after = desk.panels.elevation.canvas.parts_shown[0].areas
    assert (before[0].height, after[0].height) == (27.0, 40.0)
    assert parts.drawing.bench is not None
    assert parts.drawing.bench.part.thickness_mm == 40.0


def test_front_panels_and_end_panels_are_drawn_and_stand_out_when_chosen(parts: PartPanel, desk: Desk) -> None:
    canvas = desk.panels.elevation.canvas
    plain = canvas.grab().toImage()
    desk.session.do(SetField("construction.drawers.fronts", Fronts.OVERLAY))
    desk.session.do(SetField("construction.end_panels.left", True))
    made, frame = desk.session.manufacture, desk.panels.elevation.shown.frame
    assert made is not None
    assert frame is not None
    assert canvas.fronts_shown == made.fronts
    assert len(made.fronts) == len(desk.session.project.arrangement.drawers)
    assert canvas.grab().toImage() != plain
    pick(parts.view, parts.table.row_of("F1"))
    (shown,) = canvas.parts_shown
    assert len(shown.areas) == next(part.quantity for part in made.parts if part.number == "F1")
    (panel,) = frame.end_panels
    place = canvas.mapFromScene(panel.centre)
    QTest.mouseClick(canvas.viewport(), Qt.MouseButton.LeftButton, pos=place)
    assert desk.panels.part_selection.numbers == ("E1L",)
    desk.session.do(SetField("construction.drawers.fronts", Fronts.NONE))
    assert canvas.fronts_shown == ()


def test_lengths_follow_the_unit(parts: PartPanel, desk: Desk) -> None:
    column = next(n for n, column in enumerate(parts.table.columns) if column.title == "Thick")
    row = parts.table.row_of("U1")
    assert parts.table.index(row, column).data() == "18 mm"
    desk.session.do(SetField("unit", LengthUnit.INCH))
    assert "mm" not in str(parts.table.index(row, column).data())


def test_work_is_listed_by_side_with_its_measures(parts: PartPanel) -> None:
    lines = [line for _, line in work_lines(upright().machining)]
    assert [(line.what, line.side) for line in lines] == [
        ("groove", Side.FACE),
        ("hole row", Side.FACE),
        ("hole row", Side.REVERSE),
        ("dowel", Side.START),
        ("loose tenon", Side.END),
        ("rounded edge", Side.FRONT),
    ]
    assert lines[2].goes_through
    assert work_summary(upright().machining).startswith("1 × groove; 2 × hole row")
    assert work_summary(Machining()).startswith("Nothing")


def test_places_on_the_drawing_follow_the_machining() -> None:
    bench = Bench(upright())
    assert bench.place(Side.FACE, 16, 37, 5) == (16, 37)
    assert bench.place(Side.START, 50, 9, 5) == (-14, 50)
    assert bench.place(Side.END, 60, 9, 5) == (714, 60)
    assert bench.place(Side.FRONT, 100, 4, 5) == (100, -9)
    assert bench.place(Side.REAR, 100, 4, 5) == (100, 409)
    mirrored = Bench(upright(), is_mirrored=True)
    assert mirrored.place(Side.FACE, 16, 37, 5) == (16, 363)
    assert mirrored.place(Side.FRONT, 100, 4, 5) == (100, 409)
    assert mirrored.strip(Side.FRONT, 5).bottom == 405
    groove = mirrored.groove_area(upright().machining.grooves[0])
    assert (groove.bottom, groove.height) == (291, 9)


def test_a_hole_chosen_in_the_table_stands_out_and_the_mirrored_piece_is_offered(parts: PartPanel) -> None:
    part = upright(mirrored=1)
    parts._show_part(part)
    assert parts.mirrored.isVisibleTo(parts)
    plain = parts.drawing.grab().toImage()
    parts.tabs.setCurrentIndex(1)
    pick(parts.work_view, 1)
    parts.tabs.setCurrentIndex(0)
    assert parts.drawing.grab().toImage() != plain
    parts.mirrored.setChecked(True)
    assert parts.drawing.bench is not None
    assert parts.drawing.bench.is_front_far
    parts._show_part(upright())
    assert not parts.mirrored.isVisibleTo(parts)


def test_the_drawing_zooms_by_key_and_follows_the_theme(parts: PartPanel, desk: Desk) -> None:
    pick(parts.view, 0)
    fitted = parts.drawing.pixels_per_mm
    QTest.keyClicks(parts.drawing, "+")
    assert parts.drawing.pixels_per_mm > fitted
    QTest.keyClicks(parts.drawing, "0")
    assert parts.drawing.pixels_per_mm == pytest.approx(fitted)


def test_two_parts_of_one_number_would_both_be_listed() -> None:
    made = Manufacture(parts=(upright(), upright(name="Another")), hardware=(), schedule=())
    assert [key for key, _ in part_records(made)] == ["U1", "U1#2"]
