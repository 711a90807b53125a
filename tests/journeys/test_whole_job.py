"""The whole job in the real window, by keys and mouse: from an empty start to a workbook that is read back."""

from pathlib import Path

import openpyxl
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLineEdit, QWidget
from pytestqt.qtbot import QtBot
from python_calamine import CalamineWorkbook

from baywright.app.files import open_project
from baywright.app.session import Session
from baywright.gui.importing.dialog import ImportDialog
from baywright.gui.sizes.dialog import SizeDialog
from baywright.model.plan import PlanStatus
from baywright.model.project import Project
from tests.gui.desk import Desk, OpenDesk, answer_dialog
from tests.gui.elevation.hand import Hand

PASTED = """Label\tSize\tMass (kg)\tContents\tGroup\tUse\tNumber
Wood screws\tFlat\t6.5\t4 × 40 and 5 × 60\tFixings\tdaily\t2
Nails\tFlat\t8\t\tFixings\tweekly\t1
Chisels\tMiddle\t5.2\t12 chisels\tHand tools\tdaily\t1
Planes\tMiddle\t9,4\tthree planes\tHand tools\tweekly\t1
Clamps\tHigh\t14\tten small clamps\tClamps\tweekly\t2
Sander\tHigh\tfar too heavy\t\tPower tools\tseldom\t1
=1+2\tMiddle\t1\tlabel like a formula\t\tseldom\t1
"""


def focused() -> QWidget:
    """The control that has the keyboard."""
    widget = QGuiApplication.focusObject()
    assert isinstance(widget, QWidget)
    return widget


def set_the_wall(desk: Desk) -> None:
    desk.window.set_wall.trigger()
    for text in ("2.2 m", "40 cm", "1300"):
        QTest.keyClicks(focused(), text)
        QTest.keyClick(focused(), Qt.Key.Key_Tab)
    space = desk.session.project.space
    assert (space.length_mm, space.depth_mm, space.height_limit_mm) == (2200, 400, 1300)
    # Uprights higher than needed, so that there is room to drag a box to.
    desk.panels.show_field("limits.upright_rows")
    QTest.keyClicks(focused(), "36")
    QTest.keyClick(focused(), Qt.Key.Key_Return)
    assert desk.session.project.limits.upright_rows == 36


def add_size(desk: Desk, qtbot: QtBot, name: str, height: str) -> None:
    def answer(dialog: SizeDialog) -> None:
        for field, text in (("width_mm", "400"), ("depth_mm", "300"), ("height_mm", height), ("name", name)):
            dialog.fields[field].edit.setFocus()
            QTest.keyClicks(dialog.fields[field].edit, text)
        QTest.keyClick(dialog.fields["name"].edit, Qt.Key.Key_Return)

    answer_dialog(SizeDialog, answer)
    desk.panels.entries.setCurrentWidget(desk.panels.sizes)
    desk.panels.sizes.add.click()
    # Where no window manager is, nobody gives the keyboard back when a dialog closes.
    desk.window.activateWindow()
    qtbot.waitUntil(lambda: isinstance(QGuiApplication.focusObject(), QWidget) and desk.window.isActiveWindow())


def add_a_box_by_hand(desk: Desk) -> None:
    desk.actions.add_box.trigger()
    for text in ("Drills", "", "7.25"):
        editor = focused()
        assert isinstance(editor, QLineEdit) or not text
        if text:
            QTest.keyClicks(editor, text)
        QTest.keyClick(editor, Qt.Key.Key_Tab if text != "7.25" else Qt.Key.Key_Return)
    box = desk.session.project.boxes[-1]
    assert (box.label, box.loaded_mass_kg) == ("Drills", 7.25)


def paste_the_others(desk: Desk, qtbot: QtBot) -> None:
    QGuiApplication.clipboard().setText(PASTED)

    def take(dialog: ImportDialog) -> None:
        qtbot.waitUntil(dialog.take.isEnabled)
        dialog.take.click()

    answer_dialog(ImportDialog, take)
    desk.actions.paste.trigger()
    assert len(desk.session.project.boxes) == 9
    assert "1 row of the table was left out" in desk.message


def plan(desk: Desk, qtbot: QtBot) -> None:
    desk.actions.plan.trigger()
    qtbot.waitUntil(lambda: not desk.session.is_planning, timeout=20_000)
    assert desk.session.plan is not None
    assert desk.session.plan.status is PlanStatus.PROVED_BEST
    assert desk.window.status.placed.text() == "9 of 9 placed"
    assert desk.window.status.proof.text() == "✓ proved best"


def drag_a_box(desk: Desk, qtbot: QtBot) -> None:
    """Drag a box to a free place, then take that back."""
    session = desk.session
    box_id, bay, row = free_place(session)
    before = session.project
    hand = Hand(desk.panels.elevation)
    desk.panels.elevation.zoom_to_fit()
    qtbot.wait(50)
    hand.press_box(box_id)
    hand.move_to(hand.at_place(bay, row))
    hand.release()
    placement = session.project.arrangement.placement_of(box_id)
    assert placement is not None
    assert (placement.bay, placement.row) == (bay, row)
    assert session.report.conflicts == ()
    desk.actions.undo.trigger()
    assert session.project == before


def free_place(session: Session) -> tuple[str, int, int]:
    """A box and another place for it, not just beside, that keeps every limit."""
    arrangement = session.project.arrangement
    for placement in arrangement.placements:
        for bay in range(arrangement.bay_count):
            for row in range(arrangement.upright_rows):
                elsewhere = bay != placement.bay or abs(row - placement.row) > 2
                if elsewhere and not session.place_conflicts(placement.box_id, bay, row):
                    return placement.box_id, bay, row
    raise AssertionError("no box could stand elsewhere")


def test_from_an_empty_start_to_the_ordering_workbook(open_desk: OpenDesk, qtbot: QtBot, tmp_path: Path) -> None:
    desk = open_desk(Project(), synchronous=False)
    assert desk.panels.stack.currentWidget() is desk.panels.start
    set_the_wall(desk)
    for name, height in (("Flat", "75"), ("Middle", "17 cm"), ("High", "0.27 m")):
        add_size(desk, qtbot, name, height)
    add_a_box_by_hand(desk)
    paste_the_others(desk, qtbot)
    plan(desk, qtbot)
    drag_a_box(desk, qtbot)

    saved = tmp_path / "workshop.baywright"
    desk.answers.files_to_write = [saved]
    desk.actions.save.trigger()
    assert desk.answers.troubles == []
    assert not desk.window.isWindowModified()
    assert desk.window.close()

    again = open_desk(Project(), synchronous=False)
    again.answers.files_to_open = [saved]
    again.actions.open.trigger()
    assert again.session.project == open_project(saved) == desk.session.project
    assert again.panels.stack.currentWidget() is again.panels.elevation
    assert again.window.status.placed.text() == "9 of 9 placed"
    plan(again, qtbot)

    workbook = tmp_path / "workshop.xlsx"
    again.answers.files_to_write = [workbook]
    again.actions.export_workbook.trigger()
    qtbot.waitUntil(lambda: "Workbook written" in again.message, timeout=30_000)
    read_back(again.session, workbook)


def read_back(session: Session, path: Path) -> None:
    book = openpyxl.load_workbook(path)
    ordering = ["Parts", "Hardware order", "Cutting", "Offcuts", "Cost"]
    assert book.sheetnames == ["Summary", "Inventory", "Drawer schedule", *ordering, "Checks", "Dimensions"]
    labels = {row[0] for row in book["Inventory"].iter_rows(min_row=5, max_col=1, values_only=True) if row[0]}
    assert {box.label for box in session.project.boxes} <= labels
    formula_like = next(cell for cell in book["Inventory"]["A"] if cell.value == "=1+2")
    assert formula_like.data_type == "s"
    made = session.manufacture
    assert made is not None
    drawers = [row for row in book["Drawer schedule"].iter_rows(min_row=5, values_only=True) if row[2] in labels]
    assert [(row[0], row[2], row[7]) for row in drawers] == [
        (line.bay, line.box_label, line.runner_row) for line in made.schedule
    ]
    # A second reader that does not calculate finds the engine's values beside the formulas.
    second = CalamineWorkbook.from_path(str(path))
    rows = second.get_sheet_by_name("Dimensions").to_python()
    values = {row[5]: row[2] for row in rows if len(row) > 5 and row[5]}
    for name in ("bay_clear_width", "bay_pitch", "run_length", "upright_height"):
        assert abs(float(str(values[name])) - session.workings.value(name)) < 1e-9, name
