"""Zones and ceiling in the elevation: where the document says, cut off at the drawing's ends, a chosen one in front."""

import pytest
from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QColor

from baywright.app.edits.wall import AddCeilingPoint, AddZone, EditCeilingPoint, EditZone, RemoveZones
from baywright.app.session import Session
from baywright.gui.elevation.area import Area
from baywright.gui.elevation.view import ElevationView
from baywright.gui.elevation.zones import ceiling_line, label_place, zone_area
from baywright.model.space import Zone, ZoneEffect

WINDOW = Zone(
    id="window", label="Window", effect=ZoneEffect.END_BELOW, left_mm=1300, width_mm=900, bottom_mm=700, height_mm=900
)
SOCKET = Zone(id="socket", label="Socket", effect=ZoneEffect.STAY_IN_FRONT, left_mm=1350, width_mm=60, bottom_mm=300)


def test_a_zone_stands_where_the_document_says_and_ends_with_the_drawing(session: Session, view: ElevationView) -> None:
    frame = view.shown.frame
    assert frame is not None
    assert zone_area(SOCKET.replace(height_mm=80), frame) == Area(frame.wall.left + 1350, 300, 60, 80)
    cut = zone_area(WINDOW, frame)
    assert cut is not None
    assert (cut.right, cut.top) == (frame.extent.right, frame.extent.top)
    assert zone_area(WINDOW.replace(left_mm=5000), frame) is None
    assert zone_area(WINDOW.replace(bottom_mm=5000), frame) is None


def test_the_label_of_a_narrow_zone_at_the_end_of_the_wall_leaves_the_measures_beside_it_free() -> None:
    room = QRectF(100, 0, 900, 400)
    assert label_place(QRectF(980, 200, 20, 20), room, 120, 14) == QRectF(880, 203, 120, 14)
    assert label_place(QRectF(100, 200, 20, 20), room, 120, 14) == QRectF(100, 203, 120, 14)
    assert label_place(QRectF(500, 200, 20, 20), room, 120, 14) == QRectF(450, 203, 120, 14)


def test_zones_come_into_the_picture_and_go_with_an_undo(session: Session, view: ElevationView) -> None:
    view.canvas.clearFocus()
    before = view.canvas.grab().toImage()
    for effect in ZoneEffect:
        session.do(AddZone(WINDOW.replace(effect=effect, width_mm=150)))
        with_zone = view.canvas.grab().toImage()
        assert with_zone != before
        session.do(EditZone("window", "label", "Hatch"))
        assert view.canvas.grab().toImage() != with_zone
        session.do(RemoveZones(("window",)))
        assert view.canvas.grab().toImage() == before


def test_the_outline_of_a_zone_has_its_colour(session: Session, view: ElevationView) -> None:
    session.do(AddZone(WINDOW.replace(effect=ZoneEffect.KEEP_CLEAR, left_mm=1460, width_mm=20, bottom_mm=0)))
    frame = view.shown.frame
    assert frame is not None
    area = zone_area(session.project.space.zones[0], frame)
    assert area is not None
    picture = view.canvas.grab().toImage()
    pixel = view.canvas.mapFromScene(QPointF(area.left, area.centre.y()))
    nearby = [picture.pixelColor(pixel.x() + step, pixel.y()) for step in (-1, 0, 1)]
    assert QColor(view._style.colours.zone) in nearby


def test_a_small_zone_is_named_once_it_is_chosen(session: Session, view: ElevationView) -> None:
    session.do(AddZone(SOCKET.replace(height_mm=60)))
    before = view.canvas.grab().toImage()
    view.canvas.show_zone("socket")
    chosen = view.canvas.grab().toImage()
    assert chosen != before
    view.canvas.show_zone("")
    assert view.canvas.grab().toImage() == before


def test_the_ceiling_runs_from_end_to_end(session: Session, view: ElevationView) -> None:
    frame = view.shown.frame
    assert frame is not None
    assert ceiling_line(session.project.space, frame) == []
    before = view.canvas.grab().toImage()
    session.do(AddCeilingPoint())
    session.do(AddCeilingPoint())
    session.do(EditCeilingPoint(0, "height_mm", 1400.0))
    line = ceiling_line(session.project.space, frame)
    assert [point.x() - frame.wall.left for point in line] == pytest.approx([0, 750, 1500])
    assert [point.y() for point in line] == pytest.approx([1400, 900, 900])
    assert view.canvas.grab().toImage() != before
