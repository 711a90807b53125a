"""A repair is one edit: made by one command, taken back by one undo, refused in words where it no longer applies."""

import pytest

from baywright.app.commands import EditRefused
from baywright.app.edits.repair import ApplyRepair
from baywright.app.session import Session
from baywright.model.repair import FieldChange, Repair

TWO = Repair(
    text="Take 4 bays with 5 drawers each.",
    changes=(FieldChange(path="limits.bay_count", value=4), FieldChange(path="limits.drawers_per_bay", value=5)),
)


def test_all_changes_are_one_edit_and_one_undo() -> None:
    session = Session()
    before = session.project
    session.do(ApplyRepair(TWO))
    assert (session.project.limits.bay_count, session.project.limits.drawers_per_bay) == (4, 5)
    session.undo()
    assert session.project == before


def test_the_undo_menu_says_what_the_repair_said() -> None:
    assert ApplyRepair(TWO).title == "Take 4 bays with 5 drawers each"


@pytest.mark.parametrize(("path", "value"), [("boxes[gone].status", "elsewhere"), ("limits.bay_count", 0)])
def test_what_no_longer_applies_is_refused_in_words_and_changes_nothing(path: str, value: str | int) -> None:
    session = Session()
    before = session.project
    with pytest.raises(EditRefused) as refusal:
        session.do(ApplyRepair(Repair(text="Old", changes=(FieldChange(path=path, value=value),))))
    assert refusal.value.message.endswith(".")
    assert session.project is before
