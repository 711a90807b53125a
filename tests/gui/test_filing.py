"""New, open, save, close: nothing unsaved is left without a question, and no failed file changes anything."""

from functools import partial
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QCloseEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLineEdit
from pytestqt.qtbot import QtBot

from baywright.app.commands import SetField
from baywright.app.files import open_project, save_project
from baywright.gui.dialogs import Unsaved
from baywright.model.project import Project
from tests.gui.desk import Desk, workshop


def change(desk: Desk, length_mm: float = 1600.0) -> None:
    desk.session.do(SetField("space.length_mm", length_mm))


def test_the_title_tells_what_is_open_and_whether_it_is_saved(desk: Desk) -> None:
    assert desk.window.windowTitle() == "Shed[*] – Baywright"
    assert not desk.window.isWindowModified()
    change(desk)
    assert desk.window.isWindowModified()
    desk.actions.undo.trigger()
    assert not desk.window.isWindowModified()


def test_saving_asks_for_a_name_once(desk: Desk, tmp_path: Path) -> None:
    change(desk)
    target = tmp_path / "wall.baywright"
    desk.answers.files_to_write = [target]
    desk.actions.save.trigger()
    assert desk.answers.suggestions[0].name == "Shed.baywright"
    assert open_project(target) == desk.session.project
    assert not desk.window.isWindowModified()
    assert desk.window.windowTitle() == "wall[*] – Baywright"
    change(desk, 1700)
    desk.actions.save.trigger()
    assert open_project(target).space.length_mm == 1700
    assert [action.toolTip() for action in desk.window.menus.recent.actions()] == [str(target)]


def test_giving_up_the_name_saves_nothing(desk: Desk) -> None:
    change(desk)
    desk.answers.files_to_write = [None]
    desk.actions.save.trigger()
    assert desk.window.isWindowModified()


def test_a_folder_that_is_not_there_is_one_message_and_nothing_is_lost(desk: Desk, tmp_path: Path) -> None:
    change(desk)
    desk.answers.files_to_write = [tmp_path / "gone" / "wall.baywright"]
    desk.actions.save_as.trigger()
    assert len(desk.answers.troubles) == 1
    assert "wall.baywright" in desk.answers.troubles[0]
    assert desk.window.isWindowModified()
    assert desk.session.path is None


@pytest.mark.parametrize("text", ["", "{", "[1, 2]", '{"format_version": 99}', "\x00\x01"])
def test_a_damaged_file_is_one_message_and_the_project_stays(desk: Desk, tmp_path: Path, text: str) -> None:
    bad = tmp_path / "bad.baywright"
    bad.write_text(text)
    before = desk.session.project
    desk.answers.files_to_open = [bad]
    desk.actions.open.trigger()
    assert len(desk.answers.troubles) == 1
    assert "bad.baywright" in desk.answers.troubles[0]
    assert desk.session.project is before
    assert bad.read_text() == text


def test_opening_replaces_everything_shown(desk: Desk, tmp_path: Path) -> None:
    path = tmp_path / "other.baywright"
    save_project(path, Project(name="Other"))
    desk.panels.boxes.filter.setText("chains")
    desk.panels.boxes.view.selectRow(0)
    desk.answers.files_to_open = [path]
    desk.actions.open.trigger()
    assert desk.panels.boxes.table.total == 0
    assert desk.panels.boxes.filter.text() == ""
    assert not desk.actions.delete.isEnabled()
    assert not desk.actions.undo.isEnabled()
    assert desk.window.windowTitle() == "other[*] – Baywright"


@pytest.mark.parametrize(
    ("answer", "leaves", "saves"),
    [(Unsaved.STAY, False, False), (Unsaved.DISCARD, True, False), (Unsaved.SAVE, True, True)],
)
def test_a_new_project_asks_about_unsaved_changes(
    desk: Desk, tmp_path: Path, answer: Unsaved, leaves: bool, saves: bool
) -> None:
    change(desk)
    target = tmp_path / "kept.baywright"
    desk.answers.unsaved, desk.answers.files_to_write = [answer], [target]
    desk.actions.new.trigger()
    assert (desk.session.project == Project()) == leaves
    assert target.exists() == saves


def test_saving_that_fails_does_not_leave_the_project(desk: Desk, tmp_path: Path) -> None:
    change(desk)
    desk.answers.unsaved = [Unsaved.SAVE]
    desk.answers.files_to_write = [tmp_path / "gone" / "x.baywright"]
    desk.actions.new.trigger()
    assert desk.session.project.space.length_mm == 1600
    assert desk.answers.troubles


def test_closing_asks_and_can_be_given_up(desk: Desk) -> None:
    change(desk)
    desk.answers.unsaved = [Unsaved.STAY]
    event = QCloseEvent()
    desk.window.closeEvent(event)
    assert not event.isAccepted()
    desk.answers.unsaved = [Unsaved.DISCARD]
    assert desk.window.close()
    assert not desk.window.isVisible()


def test_closing_without_changes_asks_nothing(desk: Desk) -> None:
    assert desk.window.close()


def test_the_demo_opens_as_a_new_project_so_that_its_file_is_safe(desk: Desk, tmp_path: Path) -> None:
    demo = tmp_path / "demo.baywright"
    save_project(demo, workshop().replace(name="Demo"))
    desk.window.filing.open_copy(demo)
    assert desk.session.project.name == "Demo"
    assert desk.session.path is None


def test_the_workbook_needs_a_plan_first(desk: Desk) -> None:
    desk.actions.export_workbook.trigger()
    assert "plan first" in desk.message


def test_a_workbook_that_cannot_be_written_is_one_message(desk: Desk, tmp_path: Path) -> None:
    desk.actions.plan.trigger()
    desk.answers.files_to_write = [tmp_path / "gone" / "wall.xlsx"]
    desk.actions.export_workbook.trigger()
    assert len(desk.answers.troubles) == 1
    assert "wall.xlsx" in desk.answers.troubles[0]


def _is_told(desk: Desk, words: str) -> bool:
    return desk.message == words


def test_papers_for_the_workshop_are_written(desk: Desk, tmp_path: Path, qtbot: QtBot) -> None:
    desk.actions.write_cuts.trigger()
    assert "plan first" in desk.message
    desk.actions.plan.trigger()
    paths = [tmp_path / "cuts.pdf", tmp_path / "labels.pdf", tmp_path / "parts.pdf"]
    desk.answers.files_to_write = list(paths)
    actions = [desk.actions.write_cuts, desk.actions.write_labels, desk.actions.write_drawings]
    for action, path in zip(actions, paths, strict=True):
        action.trigger()
        qtbot.waitUntil(partial(_is_told, desk, f"Written: {path}"), timeout=30_000)
        assert path.read_bytes().startswith(b"%PDF")
    desk.answers.files_to_write = [tmp_path / "gone" / "cuts.pdf"]
    desk.actions.write_cuts.trigger()
    qtbot.waitUntil(lambda: len(desk.answers.troubles) == 1, timeout=30_000)
    assert "cuts.pdf" in desk.answers.troubles[0]


def type_length(desk: Desk, text: str) -> QLineEdit:
    """Type a wall length without leaving the field."""
    desk.panels.show_field("space.length_mm")
    edit = desk.panels.form.field("space.length_mm").focusProxy()
    assert isinstance(edit, QLineEdit)
    QTest.keyClicks(edit, text)
    return edit


def test_what_is_being_typed_is_saved_too(desk: Desk, tmp_path: Path) -> None:
    type_length(desk, "1700")
    desk.answers.files_to_write = [tmp_path / "wall.baywright"]
    desk.actions.save.trigger()
    assert open_project(tmp_path / "wall.baywright").space.length_mm == 1700


def test_what_is_being_typed_into_a_cell_is_planned_with(desk: Desk) -> None:
    view = desk.panels.boxes.view
    index = desk.panels.boxes.table.index(0, desk.panels.boxes.table.column_of("loaded_mass_kg"))
    view.setFocus()
    view.setCurrentIndex(index)
    view.edit(index)
    editor = view.indexWidget(index)
    assert isinstance(editor, QLineEdit)
    editor.selectAll()
    QTest.keyClicks(editor, "6.25")
    desk.actions.plan.trigger()
    assert desk.session.project.boxes[0].loaded_mass_kg == 6.25
    assert desk.window.status.proof.text() == "✓ proved best"


def test_closing_takes_in_what_is_being_typed_and_asks(desk: Desk) -> None:
    type_length(desk, "1700")
    desk.answers.unsaved = [Unsaved.STAY]
    assert not desk.window.close()
    assert desk.answers.unsaved == []
    assert desk.session.project.space.length_mm == 1700


def test_a_wrong_text_being_typed_stays_and_the_old_value_is_saved(desk: Desk, tmp_path: Path) -> None:
    type_length(desk, "wide")
    desk.answers.files_to_write = [tmp_path / "wall.baywright"]
    desk.actions.save.trigger()
    assert desk.panels.form.field("space.length_mm").is_refused
    assert open_project(tmp_path / "wall.baywright").space.length_mm == 1500


def test_undo_takes_typing_back_before_anything_else(desk: Desk) -> None:
    change(desk)
    field = type_length(desk, "17")
    QTest.keyClick(field, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert desk.session.project.space.length_mm == 1600
    QTest.keyClick(field, Qt.Key.Key_Escape)
    QTest.keyClick(field, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert desk.session.project.space.length_mm == 1500
