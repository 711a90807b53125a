"""Bays that are not alike, sections, steps, and boxes that share a drawer: drawn where the workings put them."""

from itertools import pairwise

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from baywright.app.commands import SetField
from baywright.app.edits.built import ForgetBuilt, MarkBuilt
from baywright.app.edits.inventory import EditBox, EditBoxSize
from baywright.app.edits.wall import AddCeilingPoint, AddZone, EditCeilingPoint
from baywright.app.edits.wishes import SetBayWish
from baywright.app.session import Session
from baywright.gui.elevation.face import FaceStyle, face_lines
from baywright.gui.elevation.frame import Frame
from baywright.gui.elevation.layout import Layout, lay_out
from baywright.gui.elevation.view import ElevationView
from baywright.model.arrangement import Arrangement, Placement
from baywright.model.construction import Uprights
from baywright.model.inventory import BoxStatus
from baywright.model.space import Zone, ZoneEffect


def shown(session: Session) -> Layout:
    return lay_out(session.project, session.workings, session.report)


def frame_of(session: Session) -> Frame:
    frame = shown(session).frame
    assert frame is not None
    return frame


@pytest.fixture(params=[Uprights.SHARED, Uprights.OWN], ids=["shared", "own"])
def mixed(request: pytest.FixtureRequest, session: Session) -> Session:
    """A wide bay, a low bay, and a door that parts the run before the third bay."""
    session.do(SetField("space.length_mm", 2400.0))
    session.do(SetField("construction.uprights", request.param))
    session.do(SetField("construction.top.overhang_side_mm", 20.0))
    session.do(SetBayWish(0, "box_width_mm", 400.0))
    session.do(SetBayWish(1, "rows", 12))
    door = Zone(id="door", label="Door", effect=ZoneEffect.KEEP_CLEAR, left_mm=1000, width_mm=300)
    session.do(AddZone(door))
    return session


def test_bays_have_their_own_widths_heights_and_trays(mixed: Session) -> None:
    frame, workings = frame_of(mixed), mixed.workings
    play, side, runner = (workings.value(n) for n in ("lateral_play", "drawer_side_thickness", "runner_thickness"))
    assert [tray.outside for tray in frame.trays] == [
        pytest.approx(width + 2 * play + 2 * side) for width in (400, 300, 300)
    ]
    assert [bay.width - tray.outside for bay, tray in zip(frame.bays, frame.trays, strict=True)] == [
        pytest.approx(2 * runner)
    ] * 3
    pitch, first = workings.value("pitch"), workings.value("first_row")
    assert [bay.height for bay in frame.bays] == [pytest.approx(pitch * (n - 1) + 2 * first) for n in (20, 12, 20)]
    assert len(frame.rows) == 20


def test_nothing_stands_where_the_wall_is_to_be_kept_clear(mixed: Session) -> None:
    frame = frame_of(mixed)
    clear_left, clear_right = 1000 + frame.wall.left, 1300 + frame.wall.left
    for board in frame.boards:
        assert board.right <= clear_left + 1e-6 or board.left >= clear_right - 1e-6
    assert len({top.top for top in frame.tops}) == 2
    for one, other in pairwise(sorted(frame.tops, key=lambda top: top.left)):
        assert one.right <= other.left + 1e-6


def test_as_many_boards_are_drawn_as_are_cut(mixed: Session) -> None:
    made = mixed.manufacture
    assert made is not None
    frame = frame_of(mixed)
    for drawn, name in ((frame.uprights, "upright"), (frame.tops, "top"), (frame.bases, "base")):
        assert len(drawn) == sum(p.quantity for p in made.parts if p.name.lower().startswith(name)), name
    lengths = sorted(p.length_mm for p in made.parts if p.name.lower().startswith("top") for _ in range(p.quantity))
    assert sorted(top.width for top in frame.tops) == [pytest.approx(length) for length in lengths]


def test_boxes_abreast_stand_to_scale_with_the_play_between_them(session: Session) -> None:
    session.do(SetField("limits.bay_box_width_mm", 650.0))
    session.do(SetField("space.length_mm", 2900.0))
    session.do(EditBoxSize("low", "most_abreast", 2))
    placements = (
        Placement(box_id="a", bay=0, row=0, abreast=0),
        Placement(box_id="b", bay=0, row=0, abreast=1),
        Placement(box_id="c", bay=0, row=8),
    )
    session.do(SetField("arrangement", Arrangement(bay_count=3, upright_rows=20, placements=placements)))
    layout = shown(session)
    first, second, over = (layout.drawers_by_box[box_id] for box_id in "abc")
    play = session.project.construction.drawers.lateral_play_mm
    assert second.areas.box.left - first.areas.box.right == pytest.approx(play)
    assert first.areas.box.left - first.areas.outside.left == pytest.approx(
        second.areas.outside.right - second.areas.box.right
    )
    assert (first.areas.box.width, second.areas.box.width) == (300, 300)
    assert (first.number, second.number, over.number) == (1, 1, 2)
    assert (first.has_tray, second.has_tray) == (True, False)


def files(session: Session) -> None:
    session.do(EditBoxSize("low", "most_behind", 3))
    session.do(SetField("space.depth_mm", 1200.0))
    placements = tuple(Placement(box_id=box_id, bay=0, row=0, behind=n) for n, box_id in enumerate("abe"))
    session.do(SetField("arrangement", Arrangement(bay_count=3, upright_rows=20, placements=placements)))


def test_boxes_behind_one_another_share_the_front_face_and_are_counted(view: ElevationView, session: Session) -> None:
    files(session)
    front, middle, rear = (view.shown.drawers_by_box[box_id] for box_id in "abe")
    assert front.areas.box.right == pytest.approx(middle.areas.box.left)
    assert middle.areas.box.right == pytest.approx(rear.areas.box.left)
    assert front.areas.box.width + middle.areas.box.width + rear.areas.box.width == pytest.approx(300)
    style = FaceStyle(view._style.colours, view.font(), session.project.unit)
    room = view.canvas.rect().size().toSizeF()
    assert face_lines(front, style, room, selected=False)[1].text.startswith("2 behind · ")
    item = view.canvas.drawer_item("e")
    assert item is not None
    assert "Place 3 of 3 from the front" in item.toolTip()


def test_arrows_go_through_the_boxes_of_a_drawer(view: ElevationView, session: Session) -> None:
    files(session)
    view.select_boxes(["a"])
    for expected in ("b", "e", "e"):
        QTest.keyClick(view.canvas, Qt.Key.Key_Right)
        assert view.selected_ids == (expected,)


def test_each_box_of_a_shared_drawer_is_clicked_on_its_own(view: ElevationView, session: Session) -> None:
    files(session)
    viewport = view.canvas.viewport()
    for box_id in ("e", "a", "b"):
        place = viewport.mapFromGlobal(view.canvas.middle_of(box_id))
        QTest.mouseClick(viewport, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, place)
        assert view.selected_ids == (box_id,)


def test_a_wished_box_is_drawn_without_a_tray_and_says_so(view: ElevationView, session: Session) -> None:
    view.canvas.clearFocus()
    before = view.canvas.grab().toImage()
    session.do(EditBox("a", "status", BoxStatus.WISHED))
    drawer = view.shown.drawer("a")
    assert drawer is not None
    assert not drawer.has_tray
    item = view.canvas.drawer_item("a")
    assert item is not None
    assert "Only wished for" in item.toolTip()
    assert view.canvas.grab().toImage() != before
    session.undo()
    assert view.canvas.grab().toImage() == before


def test_bays_that_stand_as_built_are_marked(view: ElevationView, session: Session) -> None:
    view.canvas.clearFocus()
    before = view.canvas.grab().toImage()
    session.do(MarkBuilt((1,)))
    assert [view.shown.drawers_by_box[box_id].is_built for box_id in "ac"] == [False, True]
    marked = view.canvas.grab().toImage()
    assert marked != before
    session.do(MarkBuilt((2,)))
    assert view.canvas.grab().toImage() != marked
    session.do(ForgetBuilt())
    assert view.canvas.grab().toImage() == before


def test_a_bay_under_the_slope_without_a_row_leaves_the_others_drawn(session: Session) -> None:
    session.do(AddCeilingPoint())
    session.do(EditCeilingPoint(1, "height_mm", 100.0))
    frame = frame_of(session)
    assert frame.bay_rows[-1] < frame.bay_rows[0]
    assert frame.bays[-1].height < frame.bays[0].height
    session.do(EditCeilingPoint(0, "height_mm", 120.0))
    assert shown(session).frame is None
