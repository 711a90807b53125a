"""The tabs of the lists: all stay in sight in a narrow window, and their whole titles are still there to be read."""

from PySide6.QtWidgets import QToolButton
from pytestqt.qtbot import QtBot

from baywright.app.commands import SetField
from tests.gui.desk import OpenDesk


def test_no_tab_hides_behind_arrows_in_a_narrow_window(open_desk: OpenDesk, qtbot: QtBot) -> None:
    desk = open_desk()
    desk.actions.plan.trigger()
    desk.session.do(SetField("space.height_limit_mm", 300.0))
    desk.window.resize(1000, 640)
    bar = desk.panels.lists.bar
    qtbot.waitUntil(lambda: bar.is_slim)
    assert desk.panels.lists.tabText(0).startswith("⚠ What's wrong (")
    assert bar.shown_text(0) == "⚠ Wrong"
    assert bar.shown_text(2) == "Parts"
    assert not any(button.isVisible() for button in bar.findChildren(QToolButton))
    assert bar.tabRect(bar.count() - 1).right() <= desk.panels.lists.width()


def test_titles_are_whole_where_there_is_room(open_desk: OpenDesk, qtbot: QtBot) -> None:
    desk = open_desk()
    desk.actions.plan.trigger()
    desk.window.resize(1000, 640)
    bar = desk.panels.lists.bar
    qtbot.waitUntil(lambda: bar.is_slim)
    desk.window.resize(1700, 900)
    qtbot.waitUntil(lambda: not bar.is_slim)
    assert bar.shown_text(2) == desk.panels.lists.tabText(2)
    assert "(" in bar.shown_text(2)


def test_the_entries_too_stay_in_sight_in_large_letters(open_desk: OpenDesk, qtbot: QtBot) -> None:
    desk = open_desk()
    desk.window.resize(1000, 640)
    desk.window.choose_points(13.0)
    bar = desk.panels.entries.bar
    qtbot.waitUntil(lambda: bar.is_slim)
    assert bar.shown_text(3) == "Wa&ll"
    assert desk.panels.entries.tabText(3) == "Wa&ll and bays"
    assert bar.tabRect(bar.count() - 1).right() <= desk.panels.entries.width()
