"""The drawing agrees with the workings, with the parts list and with the drawer schedule; rows and bays are found."""

from itertools import pairwise

import pytest

from baywright.app.commands import Command, SetField
from baywright.app.session import Session
from baywright.gui.elevation.dimension import dimensions_of
from baywright.gui.elevation.drawers import drawer_areas, drawer_measures
from baywright.gui.elevation.frame import Frame
from baywright.gui.elevation.layout import lay_out
from baywright.model.construction import FirstRowRule, Stand, Uprights
from baywright.model.length import LengthUnit

VARIANTS: list[list[Command]] = [
    [],
    [SetField("construction.uprights", Uprights.OWN)],
    [SetField("construction.standing.kind", Stand.FEET), SetField("construction.top.overhang_side_mm", 40.0)],
    [SetField("construction.hole_rows.first_row_rule", FirstRowRule.HALF_BASE_THICKNESS)],
    [SetField("construction.runners.line_offset_mm", 20.0), SetField("construction.hole_rows.pitch_mm", 25.0)],
    [SetField("space.length_mm", 1300.0), SetField("limits.shelf_bay", False)],
]


def _frame(session: Session) -> Frame:
    frame = lay_out(session.project, session.workings, session.report).frame
    assert frame is not None
    return frame


@pytest.fixture(params=VARIANTS, ids=["plain", "own", "feet", "half base", "pitch 25", "left over"])
def variant(request: pytest.FixtureRequest, session: Session) -> Session:
    for command in request.param:
        session.do(command)
    return session


def test_bays_and_boards_have_the_workings_dimensions(variant: Session) -> None:
    frame, value = _frame(variant), variant.workings.value
    assert [bay.width for bay in frame.bays] == [pytest.approx(value("bay_clear_width"))] * 3
    assert frame.bays[1].left - frame.bays[0].left == pytest.approx(value("bay_pitch"))
    assert frame.uprights[-1].right == pytest.approx(value("run_length"))
    assert frame.top.width == pytest.approx(value("top_length"))
    assert frame.top.top == pytest.approx(value("unit_height"))
    assert frame.rows[-1] - value("base_upper_height") == pytest.approx(value("last_row"))
    assert len(frame.rows) == 20
    assert all(base.top == pytest.approx(value("base_upper_height")) for base in frame.bases)


def test_nothing_lies_over_anything_else(variant: Session) -> None:
    frame = _frame(variant)
    fields = sorted(
        [*frame.bays, *frame.uprights, *([frame.shelf_bay] if frame.shelf_bay else [])], key=lambda a: a.left
    )
    for one, other in pairwise(fields):
        assert one.right == pytest.approx(other.left)
    for base in frame.bases:
        assert base.left >= -1e-9
        assert base.right <= frame.uprights[-1].right + 1e-9


def test_as_many_uprights_are_drawn_as_are_cut(variant: Session) -> None:
    manufacture = variant.manufacture
    assert manufacture is not None
    cut = sum(part.quantity for part in manufacture.parts if "upright" in part.name.lower())
    assert len(_frame(variant).uprights) == cut


def test_drawers_stand_where_the_schedule_says(variant: Session) -> None:
    manufacture = variant.manufacture
    assert manufacture is not None
    layout = lay_out(variant.project, variant.workings, variant.report)
    assert len(manufacture.schedule) == len(layout.drawers) == 5
    for line in manufacture.schedule:
        drawer = layout.drawer(line.box_id)
        assert drawer is not None
        assert (drawer.bay + 1, drawer.number, drawer.row + 1) == (line.bay, line.drawer, line.runner_row)
        assert drawer.lower_edge == pytest.approx(line.lower_edge_mm)
        assert drawer.areas.box.top == pytest.approx(line.box_top_mm)


def test_a_drawer_lies_between_its_uprights_with_a_runner_on_each_side(session: Session) -> None:
    layout = lay_out(session.project, session.workings, session.report)
    assert layout.frame is not None
    for drawer in layout.drawers:
        areas, bay = drawer.areas, layout.frame.bays[drawer.bay]
        thickness = session.project.construction.runners.thickness_mm
        assert areas.outside.left - bay.left == pytest.approx(thickness)
        assert bay.right - areas.outside.right == pytest.approx(thickness)
        assert areas.box.centre.x() == pytest.approx(bay.centre.x())
        assert areas.opening.top <= bay.top + 1e-9


def test_the_top_drawers_opening_ends_at_the_top(session: Session) -> None:
    layout = lay_out(session.project, session.workings, session.report)
    tops = {drawer.box.id: drawer.areas.opening.top for drawer in layout.drawers if drawer.is_top}
    assert layout.frame is not None
    assert set(tops) == {"b", "d", "e"}
    assert set(tops.values()) == {layout.frame.top.bottom}


def test_every_row_and_bay_is_found_from_its_place(variant: Session) -> None:
    frame = _frame(variant)
    size = variant.project.size("low")
    measures = drawer_measures(variant.project, variant.workings, size)
    for bay in range(3):
        for row in range(20):
            areas = drawer_areas(frame, measures, bay, row)
            assert frame.bay_at(areas.box.centre.x()) == bay
            assert frame.row_for_lower_edge(areas.outside.bottom) == row
    assert frame.bay_at(-500) is None
    assert frame.bay_at(frame.top.right + 500) is None
    assert frame.row_for_lower_edge(-5000) == 0
    assert frame.row_for_lower_edge(5000) == 19


def test_shelves_lie_on_hole_rows_in_the_shelf_bay(session: Session) -> None:
    frame = _frame(session)
    assert frame.shelf_bay is not None
    assert len(frame.shelves) == session.project.limits.shelf_count
    assert {shelf.bottom for shelf in frame.shelves} <= set(frame.rows)
    assert {shelf.width for shelf in frame.shelves} == {frame.shelf_bay.width}


def test_figures_are_the_workings_own(session: Session) -> None:
    frame = _frame(session)
    dimensions = dimensions_of(frame, session.workings, LengthUnit.MILLIMETRE)
    texts = [dimension.texts[0] for dimension in (*dimensions.across, *dimensions.up)]
    assert texts == [
        *("359.4 mm", "359.4 mm", "359.4 mm", "shelves 331.8 mm", "run 1500 mm", "wall 1500 mm"),
        *("uprights 640 mm (20 rows)", "height 765 mm"),
    ]
    assert [d.end - d.start for d in dimensions.across[:4]] == [
        pytest.approx(mm) for mm in (359.4, 359.4, 359.4, 331.8)
    ]


@pytest.mark.parametrize(
    ("change", "words"),
    [
        (SetField("limits.shelf_bay", False), "left over 349.8 mm"),
        (SetField("space.length_mm", 1000.0), "too long by 150.2 mm"),
        (SetField("unit", LengthUnit.INCH), 'run ≈ 59 1/16"'),
    ],
)
def test_the_rest_of_the_wall_and_the_unit(session: Session, change: Command, words: str) -> None:
    session.do(change)
    dimensions = dimensions_of(_frame(session), session.workings, session.project.unit)
    assert words in [dimension.texts[0] for dimension in dimensions.across]


def test_equal_documents_have_equal_layouts(session: Session) -> None:
    one = lay_out(session.project, session.workings, session.report)
    session.do(SetField("name", "Other"))
    session.undo()
    assert lay_out(session.project, session.workings, session.report) == one
