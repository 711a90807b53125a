"""Options in a session: looked for beside the window, dropped when they are outdated, taken over as one edit."""

import queue
import threading
from collections.abc import Callable
from pathlib import Path

import pytest
from openpyxl import load_workbook

from baywright.app.commands import EditRefused, SetField
from baywright.app.edits.arrangement import SetLock
from baywright.app.edits.inventory import AddBoxes, EditBox, RemoveBoxes
from baywright.app.edits.shape import ChooseOption, FreeShape, PinShape, is_pinned
from baywright.app.notices import (
    Notice,
    OptionsDropped,
    OptionsFailed,
    OptionsFound,
    OptionsProgressed,
    OptionsStarted,
)
from baywright.app.session import Session
from baywright.model.arrangement import Lock
from baywright.model.construction import Uprights
from baywright.model.inventory import Box, BoxSize
from baywright.model.option import Option
from baywright.model.project import Project
from baywright.model.space import Space

SIZES = (
    BoxSize(id="low", name="Low", width_mm=396, depth_mm=297, height_mm=120),
    BoxSize(id="high", name="High", width_mm=396, depth_mm=297, height_mm=220),
)


def shop() -> Project:
    """Eight boxes before a wall of six bays, not planned yet."""
    return Project(
        space=Space(length_mm=3000, height_limit_mm=900),
        box_sizes=SIZES,
        boxes=tuple(
            Box(id=f"box-{n}", label=f"Box {n}", size_id=SIZES[n % 2].id, loaded_mass_kg=n) for n in range(1, 9)
        ),
    )


def told(session: Session) -> list[Notice]:
    notices: list[Notice] = []
    session.subscribe(notices.append)
    return notices


def looked() -> Session:
    """A planned session that has looked for options."""
    session = Session(shop(), synchronous=True)
    session.request_plan()
    session.options.request()
    return session


def another(session: Session) -> Option:
    """An option in another shape than the run's."""
    assert session.options.found
    return next(option for option in session.options.found if not session.options.is_present(option))


def test_they_are_told_as_they_are_found_and_nothing_changes_by_looking() -> None:
    session = Session(shop(), synchronous=True)
    notices = told(session)
    assert session.options.found is None
    session.options.request()
    assert isinstance(notices[0], OptionsStarted)
    assert isinstance(notices[-1], OptionsFound)
    assert any(isinstance(notice, OptionsProgressed) for notice in notices)
    assert notices[-1].is_complete
    assert notices[-1].options == session.options.found
    assert len(notices[-1].options) > 1
    assert not session.can_undo


def test_one_is_taken_over_pinned_and_undone_as_one_edit() -> None:
    session = looked()
    before, option = session.project, another(session)
    session.choose_option(option)
    assert session.options.is_present(option)
    assert session.project.arrangement == option.arrangement
    assert session.report.conflicts == () == session.report.unplaced
    assert is_pinned(session.project)
    assert session.undo_title == "Use another shape"
    session.request_plan()
    assert (session.project.arrangement.bay_count, session.project.arrangement.upright_rows) == (
        option.bays,
        option.rows,
    )
    while session.can_undo and session.project != before:
        session.undo()
    assert session.project == before


def test_taking_one_over_leaves_the_others_on_offer_and_each_can_be_taken_from_any_other() -> None:
    session = looked()
    found = session.options.found
    assert found
    for option in (*found, *reversed(found)):
        session.choose_option(option)
        assert session.options.found == found
        assert [o.id for o in found if session.options.is_present(o)] == [option.id]


@pytest.mark.parametrize(
    "edit",
    [
        SetField("construction.drawers.clearance_mm", 25),
        SetField("limits.drawers_per_bay", 3),
        EditBox("box-1", "loaded_mass_kg", 20),
        AddBoxes((Box(id="box-9", label="Box 9", size_id="low"),)),
        RemoveBoxes(("box-2",)),
        SetLock(("box-3",), Lock.DRAWER),
    ],
)
def test_what_an_edit_outdates_is_dropped(edit: SetField | EditBox | AddBoxes | RemoveBoxes | SetLock) -> None:
    session = looked()
    notices = told(session)
    session.do(edit)
    assert session.options.found is None
    assert sum(isinstance(notice, OptionsDropped) for notice in notices) == 1


@pytest.mark.parametrize(
    "edit",
    [
        EditBox("box-1", "label", "Pumps"),
        SetField("name", "Another name"),
        SetField("limits.bay_count", 4),
        SetField("construction.uprights", Uprights.OWN),
    ],
)
def test_what_says_nothing_about_the_choice_leaves_them(edit: EditBox | SetField) -> None:
    session = looked()
    found = session.options.found
    session.do(edit)
    assert session.options.found == found


def test_another_document_has_none_of_them() -> None:
    session = looked()
    session.new_project()
    assert session.options.found is None


def test_an_option_found_for_other_boxes_is_refused() -> None:
    session = looked()
    option = another(session)
    session.do(RemoveBoxes(("box-1",)))
    before = session.project
    with pytest.raises(EditRefused, match="Look for options again"):
        session.do(ChooseOption(option))
    assert session.project is before


def test_the_workbook_gets_those_that_are_known_for_the_document(tmp_path: Path) -> None:
    session = looked()
    option = another(session)
    session.choose_option(option)
    assert [o.id for o in session.options.as_they_stand if o.is_present] == [option.id]
    session.export_workbook(tmp_path / "order.xlsx")
    assert "Options" in load_workbook(tmp_path / "order.xlsx").sheetnames
    session.do(EditBox("box-1", "loaded_mass_kg", 20))
    assert session.options.as_they_stand == ()
    session.export_workbook(tmp_path / "other.xlsx")
    assert "Options" not in load_workbook(tmp_path / "other.xlsx").sheetnames


def test_a_shape_is_pinned_and_freed() -> None:
    session = Session(shop(), synchronous=True)
    with pytest.raises(EditRefused, match="plan the bays first"):
        session.do(PinShape())
    session.request_plan()
    shape = session.project.arrangement
    assert not is_pinned(session.project)
    session.do(PinShape())
    assert is_pinned(session.project)
    assert (session.project.limits.bay_count, session.project.limits.upright_rows) == (
        shape.bay_count,
        shape.upright_rows,
    )
    session.do(FreeShape())
    assert not is_pinned(session.project)
    assert session.project.arrangement == shape
    session.undo()
    session.undo()
    assert session.undo_title == "Plan"


class Waiting:
    """A session whose searches run beside it; what they hand back is taken in when asked."""

    def __init__(self) -> None:
        self.calls: queue.SimpleQueue[Callable[[], None]] = queue.SimpleQueue()
        self.session = Session(shop(), deliver=self.calls.put)
        self.notices = told(self.session)

    def take_in(self, until: type[Notice]) -> None:
        while not any(isinstance(notice, until) for notice in self.notices):
            self.calls.get(timeout=30)()

    def take_in_the_rest(self) -> None:
        for thread in threading.enumerate():
            if thread.name == "options":
                thread.join(30)
        while not self.calls.empty():
            self.calls.get()()


def test_an_answer_to_a_document_that_has_changed_is_dropped() -> None:
    desk = Waiting()
    desk.session.options.request()
    desk.session.do(SetField("limits.drawers_per_bay", 2))
    desk.take_in_the_rest()
    assert not any(isinstance(notice, OptionsProgressed | OptionsFound) for notice in desk.notices)
    assert desk.session.options.found is None
    assert not desk.session.options.is_looking
    desk.session.close()


def test_stopped_it_tells_what_it_has_and_that_there_may_be_more() -> None:
    desk = Waiting()
    desk.session.options.request()
    assert desk.session.options.is_looking
    desk.take_in(OptionsProgressed)
    desk.session.options.cancel()
    desk.take_in(OptionsFound)
    ended = desk.notices[-1]
    assert isinstance(ended, OptionsFound)
    assert ended.options
    assert not desk.session.options.is_looking
    desk.session.close()


def test_a_defect_in_the_search_is_told_and_changes_nothing(monkeypatch: pytest.MonkeyPatch) -> None:
    def broken(*_: object, **__: object) -> tuple[Option, ...]:
        raise RuntimeError("a wheel came off")

    monkeypatch.setattr("baywright.app.options.options", broken)
    session = Session(shop(), synchronous=True)
    notices, before = told(session), session.project
    session.options.request()
    assert isinstance(notices[-1], OptionsFailed)
    assert "a wheel came off" in notices[-1].message
    assert session.project is before
    assert session.options.found is None
