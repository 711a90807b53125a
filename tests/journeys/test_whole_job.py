"""A person's whole job in the real window: new project, boxes, plan, drag, undo, save, reopen, export, read it back."""

from collections.abc import Callable
from pathlib import Path

from openpyxl import load_workbook
from PySide6.QtCore import Qt
from PySide6.QtGui import QAction, QGuiApplication
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from baywright.app.files import open_project
from baywright.gui.fields.typed import TypedField
from baywright.gui.importing.dialog import ImportDialog
from baywright.model.plan import PlanStatus
from baywright.model.project import Project
from tests.gui.desk import Desk, OpenDesk, answer_dialog
from tests.gui.elevation.hand import Hand
from tests.oracle.measure import faults

CELLS = (
    "Label\tWidth\tDepth\tHeight\tMass\tContents\tUse\tQuantity\n"
    "Brake pads\t396\t297\t120\t4.5\t60 pairs\tdaily\t2\n"
    "Chains\t396\t297\t170\t11\t30 chains\tweekly\t2\n"
    "Saddles\t396\t297\t320\t4.8\t6 saddles\tseldom\t1\n"
    "=Tubes\t396\t297\t220\t9\t50 inner tubes\tweekly\t2\n"
    "Broken\t396\t297\t-5\t1\t\tweekly\t1\n"
)


def enter(desk: Desk, path: str, text: str) -> None:
    form = desk.panels.form
    desk.panels.entries.setCurrentWidget(form)
    form.show_field(path)
    field = form.field(path)
    assert isinstance(field, TypedField)
    field.edit.selectAll()
    QTest.keyClicks(field.edit, text)
    QTest.keyClick(field.edit, Qt.Key.Key_Return)
    assert not field.is_refused, field.refusal.text()


def do(action: QAction) -> None:
    assert action.isEnabled(), action.text()
    action.trigger()


def place(desk: Desk, box_id: str) -> tuple[int, int]:
    placement = desk.session.project.arrangement.placement_of(box_id)
    assert placement is not None
    return placement.bay, placement.row


def a_free_place(desk: Desk, box_id: str) -> tuple[int, int]:
    """A legal place in another bay, found by asking, as a person finds it by looking."""
    arrangement = desk.session.project.arrangement
    here = place(desk, box_id)
    return next(
        (bay, row)
        for bay in range(arrangement.bay_count)
        for row in range(arrangement.upright_rows)
        if bay != here[0] and not desk.session.place_conflicts(box_id, bay, row)
    )


def test_from_an_empty_start_to_the_ordering_workbook(open_desk: OpenDesk, qtbot: QtBot, tmp_path: Path) -> None:
    desk = open_desk(Project(), synchronous=False)
    wait: Callable[[Callable[[], bool]], None] = lambda until: qtbot.waitUntil(until, timeout=20_000)  # noqa: E731
    do(desk.actions.new)
    enter(desk, "name", "Corner shop")
    enter(desk, "space.length_mm", "1.8 m")
    enter(desk, "limits.bay_count", "2")

    QGuiApplication.clipboard().setText(CELLS)
    answer_dialog(ImportDialog, lambda dialog: dialog.take.click())
    do(desk.actions.paste)
    assert len(desk.session.project.boxes) == 7
    assert len(desk.session.project.box_sizes) == 4

    do(desk.actions.plan)
    wait(lambda: not desk.session.is_planning)
    assert desk.session.plan is not None
    assert desk.session.plan.status is PlanStatus.PROVED_BEST
    assert faults(desk.session.project) == []

    # One more row than the plan needs, so that there is room to move something about.
    rows = desk.session.project.arrangement.upright_rows
    enter(desk, "limits.upright_rows", str(rows + 7))
    do(desk.actions.plan)
    wait(lambda: not desk.session.is_planning)
    planned = desk.session.project

    moved = desk.session.project.boxes[0].id
    before, target = place(desk, moved), a_free_place(desk, moved)
    desk.panels.elevation.zoom_to_fit()
    hand = Hand(desk.panels.elevation)
    hand.press_box(moved)
    hand.move_to(hand.at_place(*target))
    hand.release()
    assert place(desk, moved) == target
    do(desk.actions.undo)
    assert place(desk, moved) == before
    assert desk.session.project is planned

    file, workbook = tmp_path / "corner.baywright", tmp_path / "corner.xlsx"
    desk.answers.files_to_write = [file]
    do(desk.actions.save)
    assert not desk.session.is_modified
    assert open_project(file) == planned

    do(desk.actions.new)
    assert not desk.session.project.boxes
    desk.answers.files_to_open = [file]
    do(desk.actions.open)
    assert desk.session.project == planned

    desk.answers.files_to_write = [workbook]
    do(desk.actions.export_workbook)
    wait(lambda: workbook.exists() and "Workbook written" in desk.message)
    assert desk.answers.troubles == []
    read_back(workbook, planned)


def read_back(workbook: Path, project: Project) -> None:
    book = load_workbook(workbook)
    names = " ".join(book.sheetnames).lower()
    for sheet in ("summary", "inventory", "schedule", "parts", "hardware", "dimensions"):
        assert sheet in names
    schedule = next(book[name] for name in book.sheetnames if "schedule" in name.lower())
    cells = [cell for row in schedule.iter_rows() for cell in row if cell.value is not None]
    labels = sorted(str(cell.value) for cell in cells if cell.value in {box.label for box in project.boxes})
    assert labels == sorted(box.label for box in project.boxes)
    assert all(cell.data_type == "s" for cell in cells if cell.value == "=Tubes")
