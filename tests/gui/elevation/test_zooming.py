"""Zooming about the pointer, fitting, panning."""

from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from baywright.app.commands import SetField
from baywright.app.session import Session
from baywright.gui.elevation.sheet import LEAST_SCALE
from baywright.gui.elevation.view import ElevationView
from baywright.model.space import LONGEST_WALL_MM


def _wheel(view: ElevationView, pixel: QPointF, turn: int, modifier: Qt.KeyboardModifier) -> None:
    viewport = view.canvas.viewport()
    event = QWheelEvent(
        pixel, viewport.mapToGlobal(pixel), QPoint(), QPoint(0, turn), Qt.MouseButton.NoButton, modifier,
        Qt.ScrollPhase.NoScrollPhase, False,
    )  # fmt: skip
    QApplication.sendEvent(viewport, event)


def _is_all_seen(view: ElevationView) -> bool:
    frame = view.shown.frame
    assert frame is not None
    seen = view.canvas.mapToScene(view.canvas.viewport().rect()).boundingRect()
    return seen.contains(frame.extent.rect())


def test_it_fits_at_the_start_and_when_resized(view: ElevationView) -> None:
    assert _is_all_seen(view)
    before = view.canvas.pixels_per_mm
    view.resize(1400, 900)
    assert _is_all_seen(view)
    assert view.canvas.pixels_per_mm > before
    view.resize(500, 360)
    assert _is_all_seen(view)


def test_fitting_uses_the_room_in_one_direction(view: ElevationView) -> None:
    frame = view.shown.frame
    assert frame is not None
    room = view.canvas.viewport().size()
    left, top, right, bottom = view.canvas.margins_px(room)
    across = frame.extent.width * view.canvas.pixels_per_mm + left + right
    up = frame.extent.height * view.canvas.pixels_per_mm + top + bottom
    assert abs(across - room.width()) < 4 or abs(up - room.height()) < 4


def test_control_and_wheel_zoom_about_the_pointer(view: ElevationView) -> None:
    for _ in range(4):
        view.zoom_in()
    pixel = QPointF(view.canvas.viewport().mapFromGlobal(view.canvas.middle_of("d")))
    held = view.canvas.at_pixel(pixel)
    scale = view.canvas.pixels_per_mm
    _wheel(view, pixel, 120, Qt.KeyboardModifier.ControlModifier)
    assert view.canvas.pixels_per_mm > scale * 1.2
    after = view.canvas.at_pixel(pixel)
    assert abs(after.x() - held.x()) * view.canvas.pixels_per_mm < 2
    assert abs(after.y() - held.y()) * view.canvas.pixels_per_mm < 2
    _wheel(view, pixel, -120, Qt.KeyboardModifier.ControlModifier)
    assert abs(view.canvas.pixels_per_mm - scale) < 1e-9


def test_the_wheel_alone_does_not_zoom(view: ElevationView) -> None:
    scale = view.canvas.pixels_per_mm
    _wheel(view, QPointF(100, 100), 120, Qt.KeyboardModifier.NoModifier)
    assert view.canvas.pixels_per_mm == scale


def test_keys_zoom_and_fit(view: ElevationView) -> None:
    scale = view.canvas.pixels_per_mm
    QTest.keyClick(view.canvas, Qt.Key.Key_Plus)
    assert view.canvas.pixels_per_mm > scale
    QTest.keyClick(view.canvas, Qt.Key.Key_Minus)
    QTest.keyClick(view.canvas, Qt.Key.Key_Minus)
    assert view.canvas.pixels_per_mm < scale
    assert not view.canvas.is_fitting
    QTest.keyClick(view.canvas, Qt.Key.Key_0)
    assert view.canvas.is_fitting
    assert view.canvas.pixels_per_mm == scale


def test_zoom_has_ends(view: ElevationView) -> None:
    for _ in range(80):
        view.zoom_in()
    assert view.canvas.pixels_per_mm == 12.0
    for _ in range(80):
        view.zoom_out()
    assert view.canvas.pixels_per_mm == LEAST_SCALE


def test_the_longest_run_fits_a_small_view(view: ElevationView, session: Session) -> None:
    session.do(SetField("space.length_mm", LONGEST_WALL_MM))
    shape = session.project.arrangement.replace(bay_count=200)
    session.do(SetField("arrangement", shape))
    view.resize(620, 300)
    view.zoom_to_fit()
    frame = view.shown.frame
    assert frame is not None
    assert len(frame.bays) == 200
    left, right = (view.canvas.mapFromScene(x, 0.0).x() for x in (frame.wall.left, frame.wall.right))
    assert 0 <= left < right <= view.canvas.viewport().width()


def test_after_zooming_a_new_size_keeps_the_scale_and_an_edit_too(view: ElevationView, session: Session) -> None:
    view.zoom_in()
    scale = view.canvas.pixels_per_mm
    view.resize(1200, 800)
    view.refresh()
    assert view.canvas.pixels_per_mm == scale


def test_the_middle_button_and_the_space_bar_pan(view: ElevationView) -> None:
    for _ in range(5):
        view.zoom_in()
    canvas, viewport = view.canvas, view.canvas.viewport()
    for button, space in ((Qt.MouseButton.MiddleButton, False), (Qt.MouseButton.LeftButton, True)):
        across, down = canvas.horizontalScrollBar().value(), canvas.verticalScrollBar().value()
        if space:
            QTest.keyPress(canvas, Qt.Key.Key_Space)
        QTest.mousePress(viewport, button, Qt.KeyboardModifier.NoModifier, QPoint(200, 150))
        QTest.mouseMove(viewport, QPoint(150, 130))
        QTest.mouseRelease(viewport, button, Qt.KeyboardModifier.NoModifier, QPoint(150, 130))
        if space:
            QTest.keyRelease(canvas, Qt.Key.Key_Space)
        assert canvas.horizontalScrollBar().value() == across + 50
        assert canvas.verticalScrollBar().value() == down + 20
    assert view.selected_ids == ()
