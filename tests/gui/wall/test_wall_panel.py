"""The tab “Wall and bays”: zones, ceiling points, wishes and goals as a person enters them, mistakes included."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QAbstractItemModelTester, QTest
from PySide6.QtWidgets import QComboBox, QLineEdit

from baywright.app.commands import SetField
from baywright.gui.tables.block import Block
from baywright.gui.wall.panel import WallPanel
from baywright.model.goals import Goal
from baywright.model.length import LengthUnit
from baywright.model.limits import BayWish
from baywright.model.space import ZoneEffect
from tests.gui.desk import Desk


@pytest.fixture
def wall(desk: Desk) -> WallPanel:
    desk.panels.entries.setCurrentWidget(desk.panels.wall)
    for block in (desk.panels.wall.zones, desk.panels.wall.ceiling, desk.panels.wall.wishes):
        QAbstractItemModelTester(block.table, QAbstractItemModelTester.FailureReportingMode.Fatal, block.table)
    return desk.panels.wall


def editor(block: Block) -> QLineEdit:
    """The editor that is open in a block's table."""
    found = block.view.indexWidget(block.view.currentIndex())
    assert isinstance(found, QLineEdit)
    return found


def enter(block: Block, identifier: str, field: str, text: str) -> None:
    if block.view.state() != block.view.State.EditingState:
        block.begin_editing(identifier, field)
    edit = editor(block)
    edit.selectAll()
    QTest.keyClick(edit, Qt.Key.Key_Delete)
    QTest.keyClicks(edit, text)
    QTest.keyClick(edit, Qt.Key.Key_Return)


def shown(block: Block, identifier: str, field: str) -> object:
    rows = block.view.rows
    return rows.index(rows.row_of(identifier), rows.column_of(field)).data()


def test_a_zone_is_added_at_the_walls_end_and_its_place_typed(wall: WallPanel, desk: Desk) -> None:
    actions = wall.zones.add.menu().actions()
    assert len(actions) == 3
    actions[1].trigger()
    (zone,) = desk.session.project.space.zones
    assert (zone.label, zone.effect, zone.right_mm) == ("Window", ZoneEffect.END_BELOW, 1500)
    enter(wall.zones, zone.id, "left_mm", "20 cm")
    assert desk.session.project.space.zones[0].left_mm == 200
    assert desk.session.undo_title == "Change place of zone"
    desk.session.undo()
    assert desk.session.undo_title == "Add zone “Window”"
    desk.session.undo()
    assert wall.zones.table.ids == ()


def test_a_wrong_length_stays_in_its_editor_with_the_reason(wall: WallPanel, desk: Desk) -> None:
    wall.zones.add.menu().actions()[2].trigger()
    before = desk.session.project
    enter(wall.zones, "zone-1", "left_mm", "left of the door")
    assert "not a length" in wall.zones.messages.message
    assert editor(wall.zones).text() == "left of the door"
    QTest.keyClick(editor(wall.zones), Qt.Key.Key_Escape)
    enter(wall.zones, "zone-1", "width_mm", "0")
    assert "Width must be over 0" in wall.zones.messages.message
    assert desk.session.project is before


def test_the_effect_is_chosen_and_zones_are_copied_and_removed_by_key(wall: WallPanel, desk: Desk) -> None:
    wall.zones.add.menu().actions()[0].trigger()
    QTest.keyClick(editor(wall.zones), Qt.Key.Key_Escape)
    view = wall.zones.view
    view.setCurrentIndex(view.rows.index(0, view.rows.column_of("effect")))
    view.edit(view.currentIndex())
    combo = view.indexWidget(view.currentIndex())
    assert isinstance(combo, QComboBox)
    combo.setCurrentIndex(combo.findText("stay in front"))
    combo.activated.emit(combo.currentIndex())
    assert desk.session.project.space.zones[0].effect is ZoneEffect.STAY_IN_FRONT
    wall.zones.duplicate.click()
    assert len(wall.zones.table.ids) == 2
    view.select_ids(("zone-1",))
    QTest.keyClick(view, Qt.Key.Key_Delete)
    assert list(wall.zones.table.ids) == ["zone-2"]


def test_two_zones_of_a_kind_have_names_of_their_own(wall: WallPanel, desk: Desk) -> None:
    for _ in range(2):
        wall.zones.add.menu().actions()[2].trigger()
    assert [zone.label for zone in desk.session.project.space.zones] == ["Socket", "Socket 2"]


def test_the_ceiling_begins_at_both_ends_and_its_height_is_typed(wall: WallPanel, desk: Desk) -> None:
    wall.ceiling.add.click()
    assert [point.along_mm for point in desk.session.project.space.ceiling] == [0, 1500]
    enter(wall.ceiling, "0", "height_mm", "800")
    wall.ceiling.add.click()
    assert shown(wall.ceiling, "1", "height_mm") == "850 mm"
    enter(wall.ceiling, "1", "along_mm", "1500")
    assert desk.session.project.space.ceiling[1].along_mm == 750


def test_lengths_follow_the_unit(wall: WallPanel, desk: Desk) -> None:
    wall.ceiling.add.click()
    QTest.keyClick(editor(wall.ceiling), Qt.Key.Key_Escape)
    desk.session.do(SetField("unit", LengthUnit.INCH))
    assert str(shown(wall.ceiling, "1", "along_mm")).startswith('59 1/16"')
    enter(wall.ceiling, "1", "height_mm", "30 1/2")
    assert desk.session.project.space.ceiling[1].height_mm == pytest.approx(774.7)


def test_wishes_for_bays_that_are_there_and_for_one_more(wall: WallPanel, desk: Desk) -> None:
    assert wall.wishes.table.ids == ()
    desk.session.request_plan()
    bays = desk.session.project.arrangement.bay_count
    assert len(wall.wishes.table.ids) == bays
    enter(wall.wishes, "0", "drawers", "2")
    assert desk.session.project.limits.wish(0) == BayWish(drawers=2)
    wall.wishes.add.click()
    QTest.keyClick(editor(wall.wishes), Qt.Key.Key_Escape)
    assert len(desk.session.project.limits.bays) == bays + 1
    assert shown(wall.wishes, "0", "rows") == "as the others"
    enter(wall.wishes, "0", "drawers", "")
    assert desk.session.project.limits.bays == ()


def test_a_wish_that_is_no_number_is_refused(wall: WallPanel, desk: Desk) -> None:
    desk.session.request_plan()
    before = desk.session.project
    enter(wall.wishes, "0", "rows", "many")
    assert "whole number from 1 to 300" in wall.wishes.messages.message
    assert desk.session.project is before


def test_goals_are_moved_by_button_and_key_and_the_first_two_stay(wall: WallPanel, desk: Desk) -> None:
    goals = wall.goals
    goals.list.setCurrentRow(0)
    assert not goals.up.isEnabled()
    assert not goals.down.isEnabled()
    goals.list.setCurrentRow(5)
    assert goals.current is Goal.GROUPS
    goals.up.click()
    assert goals.current is Goal.GROUPS
    QTest.keyClick(goals.list, Qt.Key.Key_Up, Qt.KeyboardModifier.AltModifier)
    assert desk.session.project.goals[1] is Goal.GROUPS
    assert goals.list.item(3).text().startswith("4. groups together\n")
    desk.session.undo()
    desk.session.undo()
    assert goals.list.item(5).text().startswith("6. groups together\n")
