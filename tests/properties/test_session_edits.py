"""Random edits on one session: undo always leads back, redo forward again, and every document stays whole."""

import pytest
from hypothesis import settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, invariant, precondition, rule

from baywright.app.commands import Command, EditRefused, SetField
from baywright.app.edits.arrangement import ClearArrangement, PlaceBox, SetLock, UnplaceBoxes
from baywright.app.edits.built import ForgetBuilt, MarkBuilt
from baywright.app.edits.inventory import AddBoxes, DuplicateBoxes, EditBox, EditBoxSize, RemoveBoxes, RemoveBoxSize
from baywright.app.edits.wall import (
    AddCeilingPoint,
    AddZone,
    DuplicateZones,
    EditCeilingPoint,
    EditZone,
    RemoveCeilingPoints,
    RemoveZones,
)
from baywright.app.edits.wishes import ClearBayWishes, MoveGoal, SetBayWish, WishForBay
from baywright.app.session import Session
from baywright.model.arrangement import Arrangement, Lock
from baywright.model.goals import Goal
from baywright.model.identity import next_id
from baywright.model.inventory import Box, BoxSize, BoxStatus
from baywright.model.project import Project
from baywright.model.space import Zone, ZoneEffect
from baywright.storage.projects import decode_project, encode_project

SIZES = tuple(
    BoxSize(id=f"euro-{height}", name=f"Euro {height}", width_mm=396, depth_mm=297, height_mm=height)
    for height in (75, 120, 220)
)


class Editing(RuleBasedStateMachine):
    """Keeps its own list of documents beside the session's history."""

    def __init__(self) -> None:
        super().__init__()
        run = Arrangement(bay_count=3, upright_rows=20)
        self.session = Session(Project(box_sizes=SIZES, arrangement=run), synchronous=True)
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

    @rule(number=st.integers(0, 30), status=st.sampled_from(list(BoxStatus)))
    def set_status(self, number: int, status: BoxStatus) -> None:
        self._do(EditBox(self._box_id(number), "status", status))

    @rule(size=st.sampled_from(SIZES), field=st.sampled_from(["most_abreast", "most_behind"]), most=st.integers(0, 4))
    def share(self, size: BoxSize, field: str, most: int) -> None:
        self._do(EditBoxSize(size.id, field, most))

    @rule(effect=st.sampled_from(list(ZoneEffect)), left=st.floats(0, 3000), width=st.floats(1, 900))
    def add_zone(self, effect: ZoneEffect, left: float, width: float) -> None:
        zone_id = next_id("zone", {zone.id for zone in self.session.project.space.zones})
        depth = width / 10
        self._do(AddZone(Zone(
            id=zone_id, label=zone_id, effect=effect, left_mm=left, width_mm=width, bottom_mm=left / 4, depth_mm=depth
        )))  # fmt: skip

    @rule(number=st.integers(1, 4), lift=st.floats(-5, 1500))
    def change_zones(self, number: int, lift: float) -> None:
        self._do(EditZone(f"zone-{number}", "bottom_mm", lift))
        self._do(DuplicateZones((f"zone-{number}",)))
        self._do(RemoveZones((f"zone-{number + 1}",)))

    @rule(number=st.integers(0, 3), height=st.floats(-5, 2000), along=st.floats(0, 4000))
    def slope(self, number: int, height: float, along: float) -> None:
        self._do(AddCeilingPoint())
        self._do(EditCeilingPoint(number, "height_mm", height))
        self._do(EditCeilingPoint(number, "along_mm", along))
        self._do(RemoveCeilingPoints((number + 1,)))

    @rule(bay=st.integers(-1, 5), wish=st.sampled_from([("rows", 12), ("drawers", 2), ("box_width_mm", 420.0)]))
    def wish(self, bay: int, wish: tuple[str, object]) -> None:
        self._do(SetBayWish(bay, *wish))

    @rule(bay=st.integers(0, 5), wished=st.booleans())
    def unwish(self, bay: int, wished: bool) -> None:
        self._do(WishForBay(bay) if wished else ClearBayWishes((bay,)))

    @rule(goal=st.sampled_from(list(Goal)), by=st.integers(-3, 3))
    def reorder(self, goal: Goal, by: int) -> None:
        self._do(MoveGoal(goal, by))

    @rule(bay=st.integers(0, 3), forget=st.booleans())
    def build(self, bay: int, forget: bool) -> None:
        self._do(ForgetBuilt() if forget else MarkBuilt((bay,)))

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
        assert self.session.report.drawers == len(project.arrangement.drawers)

    @invariant()
    def nobody_stands_where_somebody_stands(self) -> None:
        for team in self.session.project.arrangement.drawers.values():
            places = {(p.abreast, p.behind) for p in team}
            assert len(places) == len(team) or len(team) > 3
            assert all(not p.abreast or not p.behind for p in team)


TestEditing = pytest.mark.timeout(240)(Editing.TestCase)
TestEditing.settings = settings(max_examples=40, stateful_step_count=30, deadline=None)
