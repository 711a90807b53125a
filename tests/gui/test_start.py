"""A project that is still empty tells what to do first, next and then, and each step has its button."""

from PySide6.QtWidgets import QPushButton
from pytestqt.qtbot import QtBot

from baywright.app.files import save_project
from baywright.model.project import Project
from tests.gui.desk import Desk, OpenDesk, workshop


def button(desk: Desk, text: str) -> QPushButton:
    found = [b for b in desk.panels.start.findChildren(QPushButton) if b.text().replace("&", "").startswith(text)]
    assert len(found) == 1
    return found[0]


def test_the_wall_button_puts_the_cursor_into_the_walls_length(open_desk: OpenDesk, qtbot: QtBot) -> None:
    desk = open_desk(Project())
    button(desk, "Set the wall").click()
    assert desk.panels.entries.currentWidget() is desk.panels.form
    field = desk.panels.form.field("space.length_mm").focusProxy()
    assert field is not None
    qtbot.waitUntil(field.hasFocus)


def test_the_steps_say_how_far_the_project_has_got(open_desk: OpenDesk) -> None:
    desk = open_desk(Project())
    assert not button(desk, "Plan now").isEnabled()
    desk.session.new_project(workshop())
    assert button(desk, "Plan now").isEnabled()
    assert "6 boxes in 2 sizes" in desk.panels.start.boxes.findChildren(type(desk.panels.boxes.count))[1].text()
    button(desk, "Plan now").click()
    assert desk.panels.stack.currentWidget() is desk.panels.elevation


def test_the_demo_is_offered_where_there_is_one(open_desk: OpenDesk) -> None:
    desk = open_desk(Project())
    assert not [b for b in desk.panels.start.findChildren(QPushButton) if "demo" in b.text()]
    path = desk.folder / "demo.baywright"
    save_project(path, workshop())
    with_demo = open_desk(Project(), demo=path)
    button(with_demo, "Look at the demo").click()
    assert with_demo.session.project.boxes == workshop().boxes
