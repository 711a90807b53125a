"""Taking boxes over from a table: matching, preview, refused rows with reasons, and one undo for all of it."""

from dataclasses import replace
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QAbstractItemModelTester, QTest
from PySide6.QtWidgets import QDialogButtonBox
from pytestqt.qtbot import QtBot

from baywright.app.importing import Column, table_from_text
from baywright.app.session import Session
from baywright.gui.bridge import Bridge, Errands
from baywright.gui.importing.dialog import ImportDialog
from tests.gui.desk import Desk, OpenDesk, answer_dialog

TABLE = (
    "Name;Size;Weight (kg);Inside;Often\n"
    "Wheels;High;6,5;two pairs;weekly\n"
    "Forks;Low;heavy;;daily\n"
    "Lamps;Huge;2;;\n"
    "Bells;low;1.5;30 bells;seldom\n"
)


@pytest.fixture
def dialog(qtbot: QtBot, session: Session) -> ImportDialog:
    made = ImportDialog(session.project, table_from_text(TABLE), Errands(Bridge(), synchronous=True))
    qtbot.addWidget(made)
    for model in (made.coming, made.refused):
        QAbstractItemModelTester(model, QAbstractItemModelTester.FailureReportingMode.Fatal, model)
    with qtbot.waitExposed(made):
        made.show()
    return made


def column(model: object, number: int) -> list[str]:
    count = model.rowCount()  # type: ignore[attr-defined]
    return [str(model.index(row, number).data()) for row in range(count)]  # type: ignore[attr-defined]


def test_headings_are_recognised_and_the_preview_shows_what_would_come(dialog: ImportDialog) -> None:
    assert column(dialog.coming, 1) == ["Wheels", "Bells"]
    assert column(dialog.coming, 2) == ["High", "Low"]
    assert column(dialog.coming, 3) == ["6.5", "1.5"]
    assert dialog.tabs.tabText(0) == "2 boxes to take over"
    assert dialog.take.text() == "&Take over 2 boxes"


def test_refused_rows_name_cell_reason_and_mend(dialog: ImportDialog) -> None:
    assert dialog.tabs.tabText(1) == "⚠ 2 rows refused"
    assert column(dialog.refused, 1) == ["C3", "B4"]
    assert column(dialog.refused, 3) == ["heavy", "Huge"]
    assert all(column(dialog.refused, 4))


def test_a_defect_of_the_program_is_not_told_as_a_fault_of_the_file(
    dialog: ImportDialog, monkeypatch: pytest.MonkeyPatch
) -> None:
    def broken(*_arguments: object) -> None:
        raise ZeroDivisionError("a defect")

    monkeypatch.setattr(dialog, "_subject", replace(dialog._subject, read=broken))
    with pytest.raises(ZeroDivisionError):
        dialog._on_matched(dialog._matching)
    assert not dialog.messages.isVisible()
    assert not dialog.take.isEnabled()
    assert dialog.preview is None


def test_another_matching_makes_another_preview(dialog: ImportDialog) -> None:
    dialog.matching.choose(Column.MASS, None)
    assert column(dialog.coming, 1) == ["Wheels", "Forks", "Bells"]
    dialog.matching.choose(Column.NOTE, 2)
    assert column(dialog.coming, 7) == ["6,5", "heavy", "1.5"]


def test_two_meanings_never_share_a_column(dialog: ImportDialog) -> None:
    dialog.matching.choose(Column.CONTENTS, 2)
    assert column(dialog.coming, 3) == ["", "", ""]
    assert column(dialog.coming, 4) == ["6,5", "heavy", "1.5"]


def test_without_a_size_nothing_can_be_taken_over_and_the_reason_stands_there(dialog: ImportDialog) -> None:
    dialog.matching.choose(Column.SIZE, None)
    assert "No column gives the size" in dialog.messages.message
    assert not dialog.take.isEnabled()
    assert dialog.preview is None
    dialog.matching.choose(Column.SIZE, 1)
    assert dialog.messages.message == ""
    assert dialog.take.isEnabled()


def test_the_first_row_can_be_a_box_too(dialog: ImportDialog) -> None:
    dialog.has_headings.click()
    assert dialog.coming.columns
    assert "5 rows" in dialog.source.text()
    dialog.has_headings.click()
    assert "4 rows" in dialog.source.text()
    assert column(dialog.coming, 1) == ["Wheels", "Bells"]


def test_enter_in_a_list_takes_nothing_over(dialog: ImportDialog) -> None:
    dialog.coming_view.setFocus()
    QTest.keyClick(dialog.coming_view, Qt.Key.Key_Return)
    assert dialog.isVisible()
    QTest.keyClick(dialog, Qt.Key.Key_Escape)
    assert not dialog.isVisible()


def in_dialog(deed: QDialogButtonBox.StandardButton | None) -> None:
    """Answer the import dialog that opens next: take over, or press a button."""
    answer_dialog(ImportDialog, lambda opened: (opened.take if deed is None else opened.buttons.button(deed)).click())


def test_pasted_cells_are_taken_over_as_one_step(desk: Desk) -> None:
    QGuiApplication.clipboard().setText(TABLE.replace(";", "\t"))
    in_dialog(None)
    desk.actions.paste.trigger()
    assert [box.label for box in desk.session.project.boxes[-2:]] == ["Wheels", "Bells"]
    assert desk.message == "2 boxes taken over. Undo takes them out again. 2 rows of the table were left out."
    desk.actions.undo.trigger()
    assert len(desk.session.project.boxes) == 6
    assert not desk.session.can_undo


def test_cells_pasted_into_the_table_go_the_same_way(desk: Desk) -> None:
    QGuiApplication.clipboard().setText("Wheels\tHigh\n")
    in_dialog(None)
    desk.panels.boxes.view.setFocus()
    QTest.keyClick(desk.panels.boxes.view, Qt.Key.Key_V, Qt.KeyboardModifier.ControlModifier)
    assert desk.session.project.boxes[-1].label == "Wheels"


def test_cancelling_takes_nothing_over(desk: Desk) -> None:
    before = desk.session.project
    QGuiApplication.clipboard().setText(TABLE)
    in_dialog(QDialogButtonBox.StandardButton.Cancel)
    desk.actions.paste.trigger()
    assert desk.session.project is before


def test_an_empty_clipboard_is_told(desk: Desk) -> None:
    QGuiApplication.clipboard().setText("  \n")
    desk.actions.paste.trigger()
    assert "nothing to paste" in desk.message


def test_a_file_is_read_and_previewed(desk: Desk, tmp_path: Path) -> None:
    path = tmp_path / "boxes.csv"
    path.write_text(TABLE)
    desk.answers.files_to_open = [path]
    in_dialog(None)
    desk.actions.import_inventory.trigger()
    assert len(desk.session.project.boxes) == 8


@pytest.mark.parametrize(
    ("name", "content"), [("empty.csv", b""), ("gone.csv", None), ("old.xlsx", b"PK\x03\x04nonsense")]
)
def test_a_file_that_is_no_table_is_one_message(desk: Desk, tmp_path: Path, name: str, content: bytes | None) -> None:
    path = tmp_path / name
    if content is not None:
        path.write_bytes(content)
    before = desk.session.project
    desk.answers.files_to_open = [path]
    desk.actions.import_inventory.trigger()
    assert name in desk.message
    assert desk.session.project is before


def test_a_table_is_read_beside_the_window(open_desk: OpenDesk, tmp_path: Path, qtbot: QtBot) -> None:
    desk = open_desk(synchronous=False)
    path = tmp_path / "boxes.csv"
    path.write_text(TABLE)
    desk.answers.files_to_open = [path]
    seen: list[str] = []

    def look(opened: ImportDialog) -> None:
        qtbot.waitUntil(opened.take.isEnabled)
        seen.append(opened.take.text())

    answer_dialog(ImportDialog, look)
    desk.actions.import_inventory.trigger()
    qtbot.waitUntil(lambda: bool(seen))
    assert seen == ["&Take over 2 boxes"]
    assert len(desk.session.project.boxes) == 6


def test_sizes_that_are_not_there_yet_come_with_the_boxes(desk: Desk) -> None:
    QGuiApplication.clipboard().setText("Box\tWidth\tDepth\tHeight\nVices\t400\t300\t170\n")
    in_dialog(None)
    desk.actions.paste.trigger()
    assert desk.session.project.size_of(desk.session.project.boxes[-1]).height_mm == 170
    assert len(desk.session.project.box_sizes) == 3
    desk.actions.undo.trigger()
    assert len(desk.session.project.box_sizes) == 2
