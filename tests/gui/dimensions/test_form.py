"""The tab “Measures”: every value set in its field, a mistake in each kind, and nothing typed elsewhere lost."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from baywright.app.commands import SetField
from baywright.app.session import Session
from baywright.gui.dimensions.entries import ENTRIES, value_at
from baywright.gui.dimensions.form import DimensionForm
from baywright.gui.fields.choice import ChoiceField, FlagField
from baywright.gui.fields.kinds import ChoiceKind, FlagKind, NoteKind
from baywright.gui.fields.note import NoteField
from baywright.gui.fields.typed import TypedField
from baywright.model.length import LengthUnit

TYPED = [path for path, entry in ENTRIES.items() if not isinstance(entry.kind, ChoiceKind | FlagKind | NoteKind)]


@pytest.fixture
def form(qtbot: QtBot, session: Session) -> DimensionForm:
    made = DimensionForm(session)
    qtbot.addWidget(made)
    session.subscribe(lambda _notice: made.update_from_document())
    made.resize(420, 700)
    with qtbot.waitExposed(made):
        made.show()
    made.activateWindow()
    return made


def enter(form: DimensionForm, path: str, text: str) -> TypedField:
    form.show_field(path)
    field = form.field(path)
    assert isinstance(field, TypedField)
    field.edit.selectAll()
    QTest.keyClicks(field.edit, text)
    QTest.keyClick(field.edit, Qt.Key.Key_Return)
    return field


@pytest.mark.parametrize("text", ["rubbish", "-3", "1e99", "3 fathoms"])
def test_a_mistake_in_any_field_is_refused_beside_it(form: DimensionForm, session: Session, text: str) -> None:
    before = session.project
    for path in TYPED:
        if path == "name":
            continue
        field = enter(form, path, text)
        assert field.is_refused, path
        assert len(field.refusal.text()) > 30, path
        assert field.refusal.isVisible(), path
        assert session.project is before, path
        QTest.keyClick(field.edit, Qt.Key.Key_Escape)
        assert not field.is_refused, path
        assert field.value == value_at(before, path), path


def test_the_name_must_not_be_empty(form: DimensionForm, session: Session) -> None:
    field = enter(form, "name", "   ")
    assert "must not be empty" in field.refusal.text()
    assert session.project.name == "Shed"


@pytest.mark.parametrize(("text", "words"), [("0", "over 0"), ("101 m", "at most")])
def test_a_length_that_cannot_be_is_refused_by_the_document(
    form: DimensionForm, session: Session, text: str, words: str
) -> None:
    field = enter(form, "space.length_mm", text)
    assert words in field.refusal.text()
    assert session.project.space.length_mm == 1500


def test_values_that_clash_are_refused_with_the_reason(form: DimensionForm, session: Session) -> None:
    field = enter(form, "construction.drawers.groove_depth_mm", "15")
    assert "would cut through the drawer side" in field.refusal.text()
    assert session.project.construction.drawers.groove_depth_mm == 6


def test_a_value_is_taken_in_as_one_step(form: DimensionForm, session: Session) -> None:
    enter(form, "space.length_mm", "2.94 m")
    assert session.project.space.length_mm == 2940
    session.undo()
    field = form.field("space.length_mm")
    assert isinstance(field, TypedField)
    assert field.value == 1500


def test_a_free_limit(form: DimensionForm, session: Session) -> None:
    enter(form, "limits.bay_count", "4")
    assert session.project.limits.bay_count == 4
    enter(form, "limits.bay_count", " ")
    assert session.project.limits.bay_count is None


def test_several_widths_or_none_at_all(form: DimensionForm, session: Session) -> None:
    enter(form, "limits.other_box_widths_mm", "40 cm; 250")
    assert session.project.limits.other_box_widths_mm == (250, 400)
    refused = enter(form, "limits.other_box_widths_mm", "wide")
    assert "Still 250 mm; 400 mm." in refused.refusal.text()
    enter(form, "limits.other_box_widths_mm", " ")
    assert session.project.limits.other_box_widths_mm == ()


def test_a_worktop_that_cannot_be_is_refused(form: DimensionForm, session: Session) -> None:
    enter(form, "limits.worktop_least_mm", "850")
    field = enter(form, "limits.worktop_most_mm", "800")
    assert "at least 850 mm and at most 800 mm" in field.refusal.text()
    assert session.project.limits.worktop_most_mm is None


def test_choices_flags_and_notes(form: DimensionForm, session: Session) -> None:
    choice, flag, note = (form.field(p) for p in ("construction.uprights", "limits.shelf_bay", "note"))
    assert isinstance(choice, ChoiceField)
    assert isinstance(flag, FlagField)
    assert isinstance(note, NoteField)
    choice.combo.setCurrentIndex(1)
    choice.combo.activated.emit(1)
    assert session.project.construction.uprights == "own"
    form.show_field("limits.shelf_bay")
    flag.box.click()
    assert session.project.limits.shelf_bay is False
    form.show_field("note")
    note.edit.insertPlainText("two\nlines")
    form.search.setFocus()
    assert session.project.note == "two\nlines"
    session.undo()
    session.undo()
    session.undo()
    assert flag.box.isChecked()
    assert choice.combo.currentIndex() == 0
    assert note.edit.toPlainText() == ""


def test_a_change_elsewhere_does_not_take_away_what_is_being_typed(form: DimensionForm, session: Session) -> None:
    form.show_field("space.length_mm")
    field = form.field("space.length_mm")
    assert isinstance(field, TypedField)
    field.edit.selectAll()
    QTest.keyClicks(field.edit, "29")
    session.do(SetField("space.depth_mm", 500.0))
    assert field.edit.text() == "29"


def test_lengths_are_shown_in_the_unit_of_the_project(form: DimensionForm, session: Session) -> None:
    session.do(SetField("unit", LengthUnit.INCH))
    field = form.field("space.depth_mm")
    assert isinstance(field, TypedField)
    assert field.edit.text() == '15 3/4" (+0.05 mm)'
    enter(form, "space.depth_mm", "16 1/2")
    assert session.project.space.depth_mm == pytest.approx(419.1)


def test_the_search_shows_only_what_fits_and_gives_the_folds_back(form: DimensionForm) -> None:
    groove = form.field("construction.drawers.groove_depth_mm")
    assert not groove.isVisible()
    form.search.setText("groove dep")
    assert groove.isVisible()
    assert not form.field("space.length_mm").isVisible()
    form.search.setText("no such measure")
    assert form.nothing.isVisible()
    form.search.clear()
    assert not groove.isVisible()
    assert form.field("space.length_mm").isVisible()
