"""The window can be used without eyes and without a mouse: names for everything, keys for everything, no key twice."""

from collections import Counter

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAction
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractItemView,
    QComboBox,
    QLineEdit,
    QMenu,
    QPlainTextEdit,
    QScrollBar,
    QWidget,
)

from baywright.gui.help import KeysDialog
from tests.gui.desk import Desk, answer_dialog


def nameless(root: QWidget) -> list[str]:
    """Controls that take the focus and have neither a text nor a name."""
    found = []
    for widget in root.findChildren(QWidget):
        is_popup = widget.window().windowType() == Qt.WindowType.Popup
        if is_popup or isinstance(widget, QScrollBar) or not widget.focusPolicy().value:
            continue
        if isinstance(widget, QAbstractButton):
            named = bool(widget.text() or widget.accessibleName())
        elif isinstance(widget, QLineEdit | QComboBox | QAbstractItemView | QPlainTextEdit):
            named = bool(widget.accessibleName())
        else:
            continue
        if not named and not isinstance(widget.parent(), QAbstractItemView):
            found.append(f"{type(widget).__name__} in {type(widget.parent()).__name__}")
    return found


def menu_actions(menu: QMenu) -> list[QAction]:
    actions: list[QAction] = []
    for action in menu.actions():
        inner = action.menu()
        if isinstance(inner, QMenu):
            actions += menu_actions(inner)
        elif not action.isSeparator():
            actions.append(action)
    return actions


def all_menus(desk: Desk) -> list[QMenu]:
    return [menu for action in desk.window.menuBar().actions() if isinstance(menu := action.menu(), QMenu)]


def test_every_control_has_a_name(desk: Desk) -> None:
    desk.actions.plan.trigger()
    assert "; ".join(nameless(desk.window)) == ""


def test_no_key_means_two_things_in_the_window(desk: Desk) -> None:
    actions = {action for menu in all_menus(desk) for action in menu_actions(menu)} | set(desk.actions.everything)
    keys = Counter(key.toString() for action in actions for key in action.shortcuts() if not key.isEmpty())
    assert len(keys) > 25
    assert {key: count for key, count in keys.items() if count > 1} == {}


@pytest.mark.parametrize("title", ["&File", "&Edit", "&Plan", "&View", "&Help"])
def test_every_line_of_a_menu_has_a_letter_of_its_own(desk: Desk, title: str) -> None:
    menu = next(menu for menu in all_menus(desk) if menu.title() == title)
    letters = Counter(
        text[text.index("&") + 1].lower()
        for action in menu.actions()
        if not action.isSeparator() and "&" in (text := action.text().replace("&&", ""))
    )
    assert {letter: count for letter, count in letters.items() if count > 1} == {}
    assert all("&" in action.text() for action in menu.actions() if not action.isSeparator())


def test_every_action_explains_itself(desk: Desk) -> None:
    unexplained = [
        action.text() for menu in all_menus(desk) for action in menu_actions(menu) if action.toolTip() == action.text()
    ]
    assert unexplained == []


def test_tab_leads_through_the_boxes_in_reading_order(desk: Desk) -> None:
    panel = desk.panels.boxes
    order: list[str] = []
    widget = panel.filter
    while not order or widget is not panel.filter:
        if widget.isVisible() and widget.focusPolicy().value & 1 and panel.isAncestorOf(widget):
            order.append(widget.text() if isinstance(widget, QAbstractButton) else widget.accessibleName())
        widget = widget.nextInFocusChain()  # type: ignore[assignment]
    assert order == ["Filter the boxes", "Add box", "Duplicate", "Delete", "Boxes"]


def test_the_keys_are_listed(desk: Desk) -> None:
    listed: list[str] = []

    def read(dialog: KeysDialog) -> None:
        table = dialog.table
        for row in range(table.rowCount()):
            item = table.item(row, 0)
            if item is not None:
                listed.append(item.text())

    answer_dialog(KeysDialog, read)
    desk.actions.keys.trigger()
    assert {"Everywhere", "In the picture of the run", "In tables", "F5", "Ctrl+S", "Esc"} <= set(listed)
