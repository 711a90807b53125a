"""Random edits on one session: undo always leads back, redo forward again, and every document stays whole."""

import pytest
from hypothesis import settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, invariant, precondition, rule

from baywright.app.commands import Command, EditRefused, SetField
from baywright.app.edits.arrangement import ClearArrangement, PlaceBox, SetLock, UnplaceBoxes
from baywright.app.edits.inventory import AddBoxes, DuplicateBoxes, EditBox, EditBoxSize, RemoveBoxes, RemoveBoxSize
from baywright.app.session import Session
from baywright.model.arrangement import Lock
from baywright.model.identity import next_id
from baywright.model.inventory import Box, BoxSize
from baywright.model.project import Project
from baywright.storage.projects import decode_project, encode_project

SIZES = tuple(
    BoxSize(id=f"euro-{height}", name=f"Euro {height}", width_mm=396, depth_mm=297, height_mm=height)
    for height in (75, 120, 220)
)


class Editing(RuleBasedStateMachine):
    """Keeps its own list of documents beside the session's history."""

    def __init__(self) -> None:
        super().__init__()
        self.session = Session(Project(box_sizes=SIZES), synchronous=True)
        self.past: list[Project] = []
        self.future: list[Project] = []

    def _do(self, command: Command) -> None:
        before, refused = self.session.project, ""
        try:
            self.session.do(command)
        except EditRefused as refusal:
            refused = refusal.message
            assert self.session.project is before
        assert not refused or refused[-1] in ".”)", refused
        if self.session.project is not before:
            self.past.append(before)
            self.future.clear()

    def _box_id(self, number: int) -> str:
        boxes = self.session.project.boxes
        return boxes[number % len(boxes)].id if boxes else "box-none"

    @rule(size=st.sampled_from(SIZES), mass=st.none() | st.floats(0, 40))
    def add(self, size: BoxSize, mass: float | None) -> None:
        box_id = next_id("box", {box.id for box in self.session.project.boxes})
        self._do(AddBoxes((Box(id=box_id, label=box_id, size_id=size.id, loaded_mass_kg=mass),)))

    @rule(number=st.integers(0, 30), times=st.integers(-1, 3))
    def duplicate(self, number: int, times: int) -> None:
        self._do(DuplicateBoxes((self._box_id(number),), times))

    @rule(number=st.integers(0, 30))
    def remove(self, number: int) -> None:
        self._do(RemoveBoxes((self._box_id(number),)))

    @rule(number=st.integers(0, 30), label=st.text(max_size=10))
    def rename(self, number: int, label: str) -> None:
        self._do(EditBox(self._box_id(number), "label", label))

    @rule(size=st.sampled_from(SIZES), height=st.floats(-10, 400))
    def resize(self, size: BoxSize, height: float) -> None:
        self._do(EditBoxSize(size.id, "height_mm", height))

    @rule(size=st.sampled_from(SIZES))
    def remove_size(self, size: BoxSize) -> None:
        self._do(RemoveBoxSize(size.id))

    @rule(number=st.integers(0, 30), bay=st.integers(-1, 4), row=st.integers(-1, 40))
    def place(self, number: int, bay: int, row: int) -> None:
        self._do(PlaceBox(self._box_id(number), bay, row))

    @rule(number=st.integers(0, 30), lock=st.sampled_from(list(Lock)))
    def lock(self, number: int, lock: Lock) -> None:
        self._do(SetLock((self._box_id(number),), lock))

    @rule(number=st.integers(0, 30))
    def take_out(self, number: int) -> None:
        self._do(UnplaceBoxes((self._box_id(number),)))

    @rule()
    def clear(self) -> None:
        self._do(ClearArrangement())

    @rule(length=st.floats(-100, 6000))
    def set_wall(self, length: float) -> None:
        self._do(SetField("space.length_mm", length))

    @precondition(lambda self: self.past)
    @rule()
    def undo(self) -> None:
        self.future.append(self.session.project)
        self.session.undo()
        assert self.session.project is self.past.pop()

    @precondition(lambda self: self.future)
    @rule()
    def redo(self) -> None:
        self.past.append(self.session.project)
        self.session.redo()
        assert self.session.project is self.future.pop()

    @invariant()
    def history_agrees(self) -> None:
        assert self.session.can_undo == bool(self.past)
        assert self.session.can_redo == bool(self.future)

    @invariant()
    def the_document_can_be_saved_and_reckoned_with(self) -> None:
        project = self.session.project
        assert decode_project(encode_project(project)) == project
        assert self.session.workings.entries
        assert self.session.report.drawers == len(project.arrangement.placements)


TestEditing = pytest.mark.timeout(240)(Editing.TestCase)
TestEditing.settings = settings(max_examples=40, stateful_step_count=30, deadline=None)
