"""The tab “Workings”: values and workings, chains down to the inputs, inputs changed where they stand."""

import pytest
from PySide6.QtCore import QModelIndex, Qt
from PySide6.QtTest import QAbstractItemModelTester, QTest
from PySide6.QtWidgets import QComboBox, QLineEdit
from pytestqt.qtbot import QtBot

from baywright.app.commands import SetField
from baywright.app.edits.inventory import AddBoxSize, RemoveBoxSize
from baywright.app.session import Session
from baywright.gui.dimensions.panel import NONE_CHOSEN, WorkingsPanel
from baywright.gui.dimensions.tree import LABEL, VALUE, WORKING, WorkingsTree
from baywright.model.construction import Uprights
from baywright.model.inventory import BoxSize


@pytest.fixture
def panel(qtbot: QtBot, session: Session) -> WorkingsPanel:
    made = WorkingsPanel(session)
    qtbot.addWidget(made)
    session.subscribe(lambda _notice: made.update_from_document())
    made.resize(560, 700)
    with qtbot.waitExposed(made):
        made.show()
    made.activateWindow()
    return made


def child(tree: WorkingsTree, parent: QModelIndex, label: str) -> QModelIndex:
    for row in range(tree.rowCount(parent)):
        index = tree.index(row, LABEL, parent)
        if index.data() == label:
            return index
    raise AssertionError(f"no line “{label}” under “{parent.data()}”")


def open_editor(panel: WorkingsPanel, index: QModelIndex) -> object:
    value = index.siblingAtColumn(VALUE)
    panel.view.scrollTo(value)
    panel.view.setCurrentIndex(value)
    panel.view.edit(value)
    return panel.view.indexWidget(value)


def type_into(panel: WorkingsPanel, index: QModelIndex, text: str) -> QLineEdit:
    editor = open_editor(panel, index)
    assert isinstance(editor, QLineEdit)
    editor.selectAll()
    QTest.keyClicks(editor, text)
    QTest.keyClick(editor, Qt.Key.Key_Return)
    return editor


def test_a_value_stands_beside_its_working(panel: WorkingsPanel) -> None:
    # Drawer outside: box 300 + 2 × play 2 + 2 × side 15 = 334; clear width: 334 + 2 × runner 12.7 = 359.4.
    index = panel.tree.index_of("bay_clear_width")
    assert index.siblingAtColumn(VALUE).data() == "359.4 mm"
    assert index.siblingAtColumn(WORKING).data() == "drawer outside width 334 + 2 × runner thickness 12.7"


def test_the_chain_of_a_value_opens_down_to_its_inputs(panel: WorkingsPanel) -> None:
    tree = panel.tree
    pitch = tree.index_of("bay_pitch")
    clear = child(tree, pitch, "Bay clear width")
    outside = child(tree, clear, "Drawer outside width")
    side = child(tree, outside, "Drawer side thickness")
    assert tree.rowCount(side) == 0
    assert side.siblingAtColumn(VALUE).data() == "15 mm"
    assert tree.flags(side.siblingAtColumn(VALUE)) & Qt.ItemFlag.ItemIsEditable
    assert not tree.flags(clear.siblingAtColumn(VALUE)) & Qt.ItemFlag.ItemIsEditable


def test_every_chain_ends_in_inputs(panel: WorkingsPanel, session: Session) -> None:
    tree, seen = panel.tree, set[str]()

    def go_down(index: QModelIndex, depth: int) -> None:
        entry = tree.entry_at(index)
        assert entry is not None
        assert depth < 20
        count = tree.rowCount(index)
        assert (count == 0) == (entry.is_input or not entry.inputs), entry.label
        if entry.label in seen:
            return
        seen.add(entry.label)
        for row in range(count):
            go_down(tree.index(row, LABEL, index), depth + 1)

    for entry in session.workings.entries:
        if not entry.is_input:
            go_down(tree.index_of(entry.key), 0)
    assert len(seen) > 40


def test_an_input_changed_in_a_chain_re_derives_in_place(panel: WorkingsPanel, session: Session) -> None:
    pitch = panel.tree.index_of("bay_pitch")
    panel.view.setExpanded(pitch, True)
    clear = child(panel.tree, pitch, "Bay clear width")
    panel.view.setExpanded(clear, True)
    scrolled = panel.view.verticalScrollBar().value()
    type_into(panel, child(panel.tree, clear, "Runner thickness"), "1.4 cm")
    assert session.project.construction.runners.thickness_mm == 14
    assert clear.siblingAtColumn(VALUE).data() == "362 mm"
    assert pitch.siblingAtColumn(VALUE).data() == "380 mm"
    assert panel.view.isExpanded(pitch)
    assert panel.view.isExpanded(clear)
    assert panel.view.verticalScrollBar().value() == scrolled
    assert session.undo_title
    session.undo()
    assert clear.siblingAtColumn(VALUE).data() == "359.4 mm"


def test_a_wrong_length_keeps_its_editor_with_what_is_accepted(panel: WorkingsPanel, session: Session) -> None:
    clear = panel.tree.index_of("bay_clear_width")
    panel.view.setExpanded(clear, True)
    editor = type_into(panel, child(panel.tree, clear, "Runner thickness"), "thick")
    assert editor.text() == "thick"
    assert "“thick” is not a length" in panel.messages.message
    assert "39.6 cm" in panel.messages.message
    editor.selectAll()
    QTest.keyClicks(editor, "0")
    QTest.keyClick(editor, Qt.Key.Key_Return)
    assert "must be over 0" in panel.messages.message
    QTest.keyClick(editor, Qt.Key.Key_Escape)
    assert panel.messages.message == ""
    assert session.project.construction.runners.thickness_mm == 12.7


def test_a_choice_is_shown_in_words_and_chosen_from_a_list(panel: WorkingsPanel, session: Session) -> None:
    pitch = panel.tree.index_of("bay_pitch")
    uprights = child(panel.tree, pitch, "Uprights")
    assert uprights.siblingAtColumn(VALUE).data() == "shared: one between two bays"
    panel.view.setExpanded(pitch, True)
    combo = open_editor(panel, uprights)
    assert isinstance(combo, QComboBox)
    combo.setCurrentIndex(1)
    combo.activated.emit(1)
    assert session.project.construction.uprights is Uprights.OWN
    assert pitch.siblingAtColumn(VALUE).data() == "395.4 mm"


def test_a_limit_left_free_is_typed_and_emptied(panel: WorkingsPanel, session: Session) -> None:
    fixed = panel.tree.index_of("fixed_bays")
    panel.view.setExpanded(fixed.parent(), True)
    type_into(panel, fixed, "2")
    assert session.project.limits.bay_count == 2
    type_into(panel, fixed, " ")
    assert session.project.limits.bay_count is None


def test_a_measure_of_a_box_size_is_changed_from_its_chain(panel: WorkingsPanel, session: Session) -> None:
    need = panel.tree.index_of("need_height[low]")
    panel.view.setExpanded(need.parent(), True)
    panel.view.setExpanded(need, True)
    type_into(panel, child(panel.tree, need, "Box height"), "170")
    assert session.project.size("low").height_mm == 170
    assert need.siblingAtColumn(VALUE).data() == "199 mm"
    assert need.parent().data() == "Low: opening 224 mm, 7 rows"


def test_the_model_keeps_qts_rules_while_lines_come_and_go(qtbot: QtBot, session: Session) -> None:
    # Qt's tester goes through all chains at every signal, so this is no place for many changes.
    tree = WorkingsTree(session)
    QAbstractItemModelTester(tree, QAbstractItemModelTester.FailureReportingMode.Fatal, tree)
    for command in (
        AddBoxSize(BoxSize(id="flat", name="Flat", width_mm=300, depth_mm=300, height_mm=75)),
        SetField("limits.shelf_play_mm", 2.0),
        RemoveBoxSize("flat"),
    ):
        session.do(command)
        tree.update_from_document()
    assert tree.rowCount() == 7


def test_sizes_come_and_go_with_the_document(panel: WorkingsPanel, session: Session) -> None:
    before = panel.tree.rowCount()
    clear = panel.tree.index_of("bay_clear_width")
    panel.view.setExpanded(clear, True)
    session.do(AddBoxSize(BoxSize(id="flat", name="Flat", width_mm=300, depth_mm=300, height_mm=75)))
    assert panel.tree.rowCount() == before + 1
    session.do(RemoveBoxSize("flat"))
    assert panel.tree.rowCount() == before
    assert panel.view.isExpanded(panel.tree.index_of("bay_clear_width"))


def test_the_whole_working_of_the_line_looked_at_stands_below(panel: WorkingsPanel) -> None:
    assert panel.details.text() == NONE_CHOSEN
    panel.show_entry("bay_clear_width")
    assert panel.details.text().startswith(
        "Bay clear width = drawer outside width 334 + 2 × runner thickness 12.7 = 359.4 mm"
    )
    assert panel.view.isExpanded(panel.tree.index_of("bay_clear_width"))


def test_enter_unfolds_a_dimension_and_edits_an_input(panel: WorkingsPanel) -> None:
    clear = panel.tree.index_of("bay_clear_width")
    panel.view.setCurrentIndex(clear)
    QTest.keyClick(panel.view, Qt.Key.Key_Return)
    assert panel.view.isExpanded(clear)
    panel.view.setCurrentIndex(child(panel.tree, clear, "Runner thickness"))
    QTest.keyClick(panel.view, Qt.Key.Key_Return)
    assert panel.view.state() == panel.view.State.EditingState


def test_the_unit_of_the_project_is_shown(panel: WorkingsPanel, session: Session) -> None:
    from baywright.model.length import LengthUnit

    session.do(SetField("unit", LengthUnit.INCH))
    assert str(panel.tree.index_of("bay_clear_width").siblingAtColumn(VALUE).data()).startswith('14 5/32"')
