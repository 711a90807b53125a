"""The tab “Options” as a person uses it: looking, comparing, using a shape, pinning and freeing it, and empty."""

import threading
from collections.abc import Callable

import pytest
from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QColor, QImage, QPainter
from PySide6.QtTest import QAbstractItemModelTester, QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from baywright.app.commands import SetField
from baywright.app.edits.inventory import EditBox, RemoveBoxes
from baywright.gui.elevation.colours import DARK_ELEVATION, LIGHT_ELEVATION, ElevationColours
from baywright.gui.options.line import UNKNOWN
from baywright.gui.options.panel import CHANGED, NO_BOXES, NOTHING_FITS, NOTHING_LOOKED_FOR, OptionPanel
from baywright.gui.options.picture import paint_picture
from baywright.gui.theme import Theme
from baywright.model.length import LengthUnit
from baywright.model.option import Option
from baywright.model.project import Project
from tests.gui.desk import Desk, OpenDesk


@pytest.fixture
def panel(desk: Desk) -> OptionPanel:
    """The panel in front, on the planned workshop."""
    desk.actions.plan.trigger()
    desk.actions.options.trigger()
    return desk.panels.options


def cells(panel: OptionPanel, title: str) -> list[str]:
    """A column as it is read, from the top."""
    number = [column.title for column in panel.table.columns].index(title)
    return [str(panel.table.index(row, number).data()) for row in range(panel.table.rowCount())]


def other(panel: OptionPanel) -> str:
    """The id of the first option that is not the present shape."""
    return next(i for i in panel.table.ids if not panel.table.record(i).is_present)


def test_whoever_opens_the_tab_sees_the_options_with_the_present_shape_marked(panel: OptionPanel, desk: Desk) -> None:
    found = desk.session.options.found
    assert found is not None
    assert panel.table.ids == tuple(option.id for option in found)
    assert len(found) > 1
    assert panel.isVisible()
    assert panel.strip.isVisible()
    assert [text for text in cells(panel, "Now") if text] == ["✓ now"]
    assert panel.view.selected_ids() == (found[0].id,)
    assert panel.words.text() == f"{len(found)} shapes hold every box and are not beaten by another."
    assert "left out" in panel.words.toolTip()
    assert not panel.progress.isVisible()


def test_lengths_are_in_the_project_s_unit_and_what_is_not_known_is_said(panel: OptionPanel, desk: Desk) -> None:
    assert all(text.endswith(" mm") for text in cells(panel, "Worktop"))
    assert all(cell.isdigit() for cell in cells(panel, "Sheets"))
    assert set(cells(panel, "Cost")) == {UNKNOWN}
    changed: list[bool] = []
    panel.table.dataChanged.connect(lambda *_: changed.append(True))
    desk.session.do(SetField("unit", LengthUnit.INCH))
    assert all('"' in text for title in ("Worktop", "Runner", "Left over") for text in cells(panel, title))
    assert changed == [True]


def test_the_table_obeys_qt_and_sorts_by_what_is_behind_the_words(panel: OptionPanel) -> None:
    QAbstractItemModelTester(panel.table, QAbstractItemModelTester.FailureReportingMode.Fatal)
    titles = [column.title for column in panel.table.columns]
    panel.view.sortByColumn(titles.index("Worktop"), Qt.SortOrder.AscendingOrder)
    heights = [panel.table.record(i).option.unit_height_mm for i in panel.table.ids]
    assert heights == sorted(heights)
    panel.view.sortByColumn(titles.index("Left over"), Qt.SortOrder.DescendingOrder)
    rests = [panel.table.record(i).option.left_over_mm for i in panel.table.ids]
    assert rests == sorted(rests, reverse=True)


def test_one_is_used_by_the_button_and_taken_back_by_one_undo(panel: OptionPanel, desk: Desk) -> None:
    before = desk.session.project
    chosen = panel.table.record(other(panel)).option
    panel.view.selectRow(panel.table.row_of(chosen.id))
    panel.use.click()
    assert desk.session.project.arrangement == chosen.arrangement
    assert f"{chosen.bays} bays × {chosen.rows} rows" in desk.message
    assert desk.panels.problems.list.has_problems is False
    assert [i for i in panel.table.ids if panel.table.record(i).is_present] == [chosen.id]
    desk.actions.plan.trigger()
    assert (desk.session.project.arrangement.bay_count, desk.session.project.arrangement.upright_rows) == (
        chosen.bays,
        chosen.rows,
    )
    while desk.session.undo_title != "Use another shape":
        desk.actions.undo.trigger()
    desk.actions.undo.trigger()
    assert desk.session.project == before


def test_everything_can_be_done_from_the_keyboard(panel: OptionPanel, desk: Desk) -> None:
    panel.strip.setFocus()
    first = panel.view.selected_ids()
    QTest.keyClick(panel.strip, Qt.Key.Key_Right)
    second = panel.view.selected_ids()
    assert second == (panel.table.ids[1],) != first
    assert {index.column() for index in panel.view.selectionModel().selectedIndexes()} == set(
        range(panel.table.columnCount())
    )
    QTest.keyClick(panel.strip, Qt.Key.Key_Return)
    assert panel.table.record(second[0]).is_present
    panel.view.setFocus()
    QTest.keyClick(panel.view, Qt.Key.Key_Up)
    assert panel.view.selected_ids() == first
    QTest.keyClick(panel.view, Qt.Key.Key_Return)
    assert panel.table.record(first[0]).is_present


def test_the_present_shape_cannot_be_used_again_but_pinned_and_freed(panel: OptionPanel, desk: Desk) -> None:
    assert not panel.use.isEnabled()
    assert panel.pin.isEnabled()
    assert not panel.free.isEnabled()
    panel.pin.click()
    shape, limits = desk.session.project.arrangement, desk.session.project.limits
    assert (limits.bay_count, limits.upright_rows) == (shape.bay_count, shape.upright_rows)
    assert not panel.pin.isEnabled()
    assert panel.free.isEnabled()
    panel.free.click()
    assert desk.session.project.limits.bay_count is None
    assert panel.pin.isEnabled()
    assert desk.session.undo_title == "Free the shape"


def test_outdated_options_are_dropped_and_looked_for_again(panel: OptionPanel, desk: Desk) -> None:
    desk.session.do(EditBox("box-1", "loaded_mass_kg", 20.0))
    assert panel.table.total == 0
    assert panel.words.text() == CHANGED
    assert not panel.strip.isVisible()
    assert panel.look.text().replace("&", "") == "Look again"
    panel.look.click()
    assert panel.table.total > 1
    desk.session.new_project()
    assert panel.table.total == 0
    assert panel.words.text() == NO_BOXES


def test_it_says_what_it_is_for_before_anything_was_looked_for(desk: Desk) -> None:
    assert desk.panels.options.words.text() == NOTHING_LOOKED_FOR
    assert desk.session.options.found is None
    desk.session.do(RemoveBoxes(tuple(box.id for box in desk.session.project.boxes)))
    assert desk.panels.options.words.text() == NO_BOXES
    assert not desk.panels.options.look.isEnabled()
    assert not desk.actions.options.isEnabled()


def test_before_there_is_a_plan_it_can_be_opened_and_one_be_used(desk: Desk) -> None:
    desk.actions.options.trigger()
    panel = desk.panels.options
    assert panel.isVisible()
    assert not panel.pin.isEnabled()
    panel.view.selectRow(panel.table.row_of(other(panel)))
    panel.use.click()
    assert desk.session.report.unplaced == ()
    assert desk.panels.stack.currentWidget() is desk.panels.elevation


def test_where_nothing_fits_it_points_to_why_not(desk: Desk) -> None:
    desk.session.do(SetField("space.height_limit_mm", 250.0))
    desk.actions.options.trigger()
    panel = desk.panels.options
    assert panel.words.text() == NOTHING_FITS
    assert panel.why_not.isVisible()
    panel.why_not.click()
    assert desk.panels.lists.currentWidget() is desk.panels.problems
    assert desk.panels.problems.list.has_problems


def test_looking_shows_that_it_goes_on_and_can_be_stopped(
    open_desk: OpenDesk, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    from baywright.planner import options as real

    held = threading.Event()

    def slow(
        project: Project, *, stop: Callable[[], bool], progress: Callable[[tuple[Option, ...]], None], **_: object
    ) -> tuple[Option, ...]:
        found = real(project)[:2]
        progress(found)
        while not stop():
            held.wait(0.01)
        return found

    monkeypatch.setattr("baywright.app.options.options", slow)
    desk = open_desk(synchronous=False)
    desk.actions.options.trigger()
    panel = desk.panels.options
    assert panel.progress.isVisible()
    assert panel.stop.isVisible()
    assert not panel.look.isEnabled()
    qtbot.waitUntil(lambda: panel.table.total == 2)
    assert panel.words.text() == "Looking for options … 2 shapes so far."
    panel.stop.click()
    qtbot.waitUntil(lambda: not panel.progress.isVisible())
    assert panel.words.text().endswith("Stopped before all were tried; there may be more.")
    assert panel.table.total == 2
    assert panel.look.isEnabled()


def test_a_defect_is_told_over_the_panels(desk: Desk, monkeypatch: pytest.MonkeyPatch) -> None:
    def broken(*_: object, **__: object) -> tuple[Option, ...]:
        raise RuntimeError("a wheel came off")

    monkeypatch.setattr("baywright.app.options.options", broken)
    desk.actions.options.trigger()
    assert "a wheel came off" in desk.message
    assert desk.panels.options.words.text() == NOTHING_LOOKED_FOR


def test_the_lists_make_room_for_it_and_go_back(desk: Desk) -> None:
    desk.actions.plan.trigger()
    before = desk.panels.right.sizes()
    desk.actions.options.trigger()
    during = desk.panels.right.sizes()
    assert during[1] > before[1]
    assert desk.panels.options.view.height() >= desk.panels.options.view.minimumHeight()
    desk.panels.lists.setCurrentWidget(desk.panels.drawers)
    assert desk.panels.right.sizes() == before


@pytest.mark.parametrize("theme", [Theme.LIGHT, Theme.DARK])
def test_cards_show_the_run_in_the_theme_s_colours(desk: Desk, theme: Theme) -> None:
    desk.actions.plan.trigger()
    desk.actions.options.trigger()
    desk.window.choose_theme(theme)
    QApplication.processEvents()
    colours = LIGHT_ELEVATION if theme is Theme.LIGHT else DARK_ELEVATION
    seen = colours_in(desk.panels.options.strip.grab().toImage())
    assert {colours.ground, colours.box, colours.board_line, colours.selected_line} <= seen
    desk.window.choose_theme(Theme.LIGHT)


def colours_in(image: QImage) -> set[str]:
    return {image.pixelColor(x, y).name() for x in range(image.width()) for y in range(image.height())}


def test_pictures_are_drawn_to_one_scale(panel: OptionPanel) -> None:
    lines = [panel.table.record(i) for i in panel.table.ids]
    low = min(lines, key=lambda line: line.option.unit_height_mm)
    high = max(lines, key=lambda line: line.option.unit_height_mm)
    assert low.option.unit_height_mm < high.option.unit_height_mm
    tops = []
    for line in (low, high):
        image = painted(panel, line.option, LIGHT_ELEVATION)
        board = QColor(LIGHT_ELEVATION.board_line).name()
        tops.append(next(y for y in range(400) if board in {image.pixelColor(x, y).name() for x in range(400)}))
    scale = 400 / panel.strip.extent.width
    drawn = (tops[0] - tops[1]) / scale
    assert drawn == pytest.approx(high.option.unit_height_mm - low.option.unit_height_mm, abs=2 / scale)


def painted(panel: OptionPanel, option: Option, colours: ElevationColours) -> QImage:
    """The picture of one option, 400 pixels wide and high enough."""
    image = QImage(QSize(400, 400), QImage.Format.Format_RGB32)
    image.fill(QColor(colours.ground))
    line = panel.table.record(option.id)
    painter = QPainter(image)
    paint_picture(painter, panel.strip.layout_of(line), QRectF(0, 0, 400, 400), panel.strip.extent, colours)
    painter.end()
    return image


def test_parts_of_it_have_names_for_those_who_cannot_see(panel: OptionPanel) -> None:
    assert panel.view.accessibleName() == "Options"
    assert panel.strip.accessibleName() == "Options in pictures"
    assert panel.progress.accessibleName()
    for button in (panel.look, panel.stop, panel.use, panel.pin, panel.free, panel.why_not):
        assert button.toolTip()
        assert "&" in button.text()


def test_in_a_narrow_window_every_button_is_in_sight(panel: OptionPanel, desk: Desk) -> None:
    desk.window.resize(760, 480)
    QApplication.processEvents()
    for button in (panel.look, panel.use, panel.pin, panel.free):
        right = button.mapTo(panel, button.rect().topRight()).x()
        assert 0 < right <= panel.width()
    desk.window.resize(1600, 1000)
    QApplication.processEvents()
    assert len({button.y() for button in (panel.look, panel.use, panel.pin, panel.free)}) == 1
