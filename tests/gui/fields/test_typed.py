"""The field for a length: what it takes, how it refuses, and that nothing typed or stored is lost."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLineEdit, QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from baywright.gui.fields.kinds import CountKind, LengthKind, LengthsKind, MassesKind, NumberKind, TextKind
from baywright.gui.fields.typed import TypedField
from baywright.model.length import LengthUnit


class Desk:
    """A field beside another one that can take the focus, in a shown window; what was committed is kept."""

    def __init__(self, qtbot: QtBot, field: TypedField, value: object) -> None:
        self.qtbot, self.field, self.committed = qtbot, field, list[object]()
        self.refusal = ""
        self.window = QWidget()
        self.other = QLineEdit()
        column = QVBoxLayout(self.window)
        column.addWidget(field)
        column.addWidget(self.other)
        qtbot.addWidget(self.window)
        field.show_value(value)
        field.committed.connect(self._on_committed)
        with qtbot.waitExposed(self.window):
            self.window.show()
        self.window.activateWindow()
        self.other.setFocus()

    def _on_committed(self, value: object) -> None:
        self.committed.append(value)
        if self.refusal:
            self.field.refuse(self.refusal)
        else:
            self.field.show_value(value)

    def type(self, text: str) -> None:
        self.field.edit.setFocus(Qt.FocusReason.TabFocusReason)
        self.field.edit.selectAll()
        if text.isascii():
            QTest.keyClicks(self.field.edit, text)
        else:
            self.field.edit.insert(text)

    def enter(self) -> None:
        QTest.keyClick(self.field.edit, Qt.Key.Key_Return)

    @property
    def text(self) -> str:
        return self.field.edit.text()


@pytest.mark.parametrize("text", ["396", "396 mm", "39.6cm", "0.396 m", "39,6 cm"])
def test_a_length_is_taken_in_any_unit(qtbot: QtBot, text: str) -> None:
    desk = Desk(qtbot, TypedField("Depth", LengthKind()), 400.0)
    desk.type(text)
    desk.enter()
    assert desk.committed == [396.0]
    assert not desk.field.is_refused


def test_it_is_exact_in_focus_and_rounded_with_the_rounding_shown_out_of_it(qtbot: QtBot) -> None:
    field = TypedField("Depth", LengthKind())
    field.set_unit(LengthUnit.INCH)
    desk = Desk(qtbot, field, 396.0)
    assert desk.text == '15 19/32" (+0.08 mm)'
    field.edit.setFocus(Qt.FocusReason.TabFocusReason)
    assert desk.text == "396 mm"
    desk.other.setFocus()
    assert desk.text == '15 19/32" (+0.08 mm)'
    assert desk.committed == []


def test_nonsense_is_refused_beside_the_field_with_what_it_accepts(qtbot: QtBot) -> None:
    desk = Desk(qtbot, TypedField("Depth", LengthKind()), 400.0)
    desk.type("very deep")
    desk.enter()
    assert desk.committed == []
    assert "“very deep” is not a length" in desk.field.refusal.text()
    assert "39.6 cm" in desk.field.refusal.text()
    assert "Still 400 mm." in desk.field.refusal.text()
    assert desk.text == "very deep"
    assert desk.field.value == 400.0


def test_leaving_the_field_keeps_the_wrong_text_to_be_mended(qtbot: QtBot) -> None:
    desk = Desk(qtbot, TypedField("Depth", LengthKind()), 400.0)
    desk.type("39.6 km")
    desk.other.setFocus()
    assert desk.text == "39.6 km"
    assert desk.field.is_refused
    desk.type("39.6 cm")
    desk.other.setFocus()
    assert desk.committed == [396.0]
    assert desk.text == "396 mm"
    assert not desk.field.is_refused


def test_escape_gives_the_old_value_back(qtbot: QtBot) -> None:
    desk = Desk(qtbot, TypedField("Depth", LengthKind()), 400.0)
    desk.type("wrong")
    desk.enter()
    QTest.keyClick(desk.field.edit, Qt.Key.Key_Escape)
    assert desk.text == "400 mm"
    assert not desk.field.is_refused
    desk.other.setFocus()
    assert desk.committed == []


def test_what_the_document_refuses_stands_beside_the_field(qtbot: QtBot) -> None:
    desk = Desk(qtbot, TypedField("Depth", LengthKind()), 400.0)
    desk.refusal = "The depth must be over 0."
    desk.type("0")
    desk.enter()
    assert desk.committed == [0.0]
    assert desk.field.refusal.text() == "⚠ The depth must be over 0."
    assert desk.text == "0"
    QTest.keyClick(desk.field.edit, Qt.Key.Key_Escape)
    assert desk.text == "400 mm"


def test_nothing_means_what_the_field_says_where_that_is_allowed(qtbot: QtBot) -> None:
    desk = Desk(qtbot, TypedField("Runner length", LengthKind("the longest that fits")), 400.0)
    desk.type(" ")
    desk.enter()
    assert desk.committed == [None]
    assert desk.text == ""
    assert desk.field.edit.placeholderText() == "the longest that fits"


def test_a_missing_length_is_refused_where_one_is_needed(qtbot: QtBot) -> None:
    desk = Desk(qtbot, TypedField("Depth", LengthKind()), 400.0)
    desk.type(" ")
    desk.enter()
    assert desk.committed == []
    assert "A length is missing" in desk.field.refusal.text()


def test_undo_is_the_fields_while_typing_and_the_windows_afterwards(qtbot: QtBot) -> None:
    desk = Desk(qtbot, TypedField("Depth", LengthKind()), 400.0)
    desk.type("39")
    assert desk.field.edit.isUndoAvailable()
    desk.enter()
    assert not desk.field.edit.isUndoAvailable()


@pytest.mark.parametrize("text", ["-1", "0", "501", "1.5", "two", "1e3", "９"])
def test_a_count_outside_its_bounds_is_refused(qtbot: QtBot, text: str) -> None:
    desk = Desk(qtbot, TypedField("Bays", CountKind(1, 500, "as many as needed")), 4)
    desk.type(text)
    desk.enter()
    assert desk.committed == []
    assert "whole number from 1 to 500, or nothing for “as many as needed”" in desk.field.refusal.text()


def test_a_count_and_no_count(qtbot: QtBot) -> None:
    desk = Desk(qtbot, TypedField("Bays", CountKind(1, 500, "as many as needed")), 4)
    desk.type("12")
    desk.enter()
    desk.type(" ")
    desk.enter()
    assert desk.committed == [12, None]


def test_several_lengths_are_sorted_and_each_is_kept_once(qtbot: QtBot) -> None:
    desk = Desk(qtbot, TypedField("Lengths", LengthsKind()), (300.0, 400.0))
    assert desk.text == "300 mm; 400 mm"
    desk.type("40 cm; 250;400; 30cm")
    desk.enter()
    assert desk.committed == [(250.0, 300.0, 400.0)]
    desk.type("250; long")
    desk.enter()
    assert "“long” is not a length" in desk.field.refusal.text()
    assert "Still 250 mm; 300 mm; 400 mm." in desk.field.refusal.text()


def test_loads_are_read_in_kilograms_and_pounds(qtbot: QtBot) -> None:
    desk = Desk(qtbot, TypedField("Load classes", MassesKind()), (35.0, 45.0))
    assert desk.text == "35 kg; 45 kg"
    desk.type("100 lb; 30")
    desk.enter()
    assert desk.committed == [(30.0, pytest.approx(45.359237))]


def test_text_that_must_not_be_empty(qtbot: QtBot) -> None:
    desk = Desk(qtbot, TypedField("Name", TextKind(may_be_empty=False)), "Workshop")
    desk.type("  ")
    desk.enter()
    assert desk.committed == []
    assert "It must not be empty." in desk.field.refusal.text()


def test_a_refused_name_tells_the_one_that_still_holds(qtbot: QtBot) -> None:
    desk = Desk(qtbot, TypedField("Name", TextKind(may_be_empty=False)), "Shed of mine")
    desk.field.edit.setFocus(Qt.FocusReason.TabFocusReason)
    desk.field.edit.selectAll()
    QTest.keyClick(desk.field.edit, Qt.Key.Key_Delete)
    desk.enter()
    assert desk.field.refusal.text().endswith("Still “Shed of mine”.")


@pytest.mark.parametrize(
    ("unit", "text", "words"),
    [("kg", "-5", "“-5” is negative"), ("°", "steep", "a number of degrees"), ("", "x", "Takes a number, for")],
)
def test_a_number_is_refused_for_what_is_wrong_with_it(qtbot: QtBot, unit: str, text: str, words: str) -> None:
    desk = Desk(qtbot, TypedField("Turn", NumberKind(unit)), 30.0)
    desk.type(text)
    desk.enter()
    assert words in desk.field.refusal.text()
