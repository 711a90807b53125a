"""Whatever is edited while the planner plans along: one undo is one edit, and what was fixed or put by hand stays."""

from hypothesis import given, settings
from hypothesis import strategies as st

from baywright.app.commands import Command, SetField
from baywright.app.edits.arrangement import PlaceBox, SetLock, UnplaceBoxes
from baywright.app.edits.inventory import AddBoxes, EditBox, RemoveBoxes
from baywright.app.live import LiveMode
from baywright.app.notices import Notice, ReplanEnded
from baywright.app.session import Session
from baywright.model.arrangement import Lock
from baywright.model.inventory import Box, BoxSize
from baywright.model.plan import PlanStatus
from baywright.model.project import Project
from baywright.model.space import Space

SIZES = tuple(
    BoxSize(id=f"h{height}", name=f"Euro {height}", width_mm=296, depth_mm=297, height_mm=height)
    for height in (75, 120, 220)
)
SHOP = Project(
    space=Space(length_mm=1500, height_limit_mm=800),
    box_sizes=SIZES,
    boxes=tuple(Box(id=f"b{n}", label=f"Box {n}", size_id=SIZES[n % 3].id, loaded_mass_kg=2 + n) for n in range(7)),
)
BOX = st.sampled_from([box.id for box in SHOP.boxes])
EDITS: st.SearchStrategy[Command] = st.one_of(
    st.builds(EditBox, BOX, st.just("size_id"), st.sampled_from([size.id for size in SIZES])),
    st.builds(EditBox, BOX, st.just("loaded_mass_kg"), st.sampled_from([1.0, 9.5, 14.0])),
    st.builds(PlaceBox, BOX, st.integers(0, 1), st.integers(0, 14)),
    st.builds(SetLock, st.tuples(BOX), st.sampled_from(list(Lock))),
    st.builds(UnplaceBoxes, st.tuples(BOX)),
    st.builds(RemoveBoxes, st.tuples(BOX)),
    st.builds(SetField, st.just("limits.drawers_per_bay"), st.sampled_from([2, 4, None])),
    st.builds(lambda n: AddBoxes((Box(id=f"n{n}", label=f"New {n}", size_id="h75"),)), st.integers(0, 3)),
)


@settings(max_examples=12, deadline=None)
@given(edits=st.lists(EDITS, min_size=1, max_size=5), mode=st.sampled_from([LiveMode.MEND, LiveMode.BEST]))
def test_every_edit_with_its_plan_is_one_step(edits: list[Command], mode: LiveMode) -> None:
    session = Session(SHOP, synchronous=True)
    session.request_plan()
    session.live.mode = mode
    ended: list[ReplanEnded] = []
    session.subscribe(lambda notice: _keep(notice, ended))
    steps = [session.project]
    for edit in edits:
        try:
            session.do(edit)
        except ValueError:  # a box that is gone, an id that is taken: refused, and nothing is changed
            assert session.project is steps[-1]
            continue
        edited = session.project
        ended.clear()
        session.live.act()
        _check_plan(session, edited, ended)
        if edited is not steps[-1]:
            steps.append(session.project)
    for document in reversed(steps[:-1]):
        session.undo()
        assert session.project is document
        assert not session.live.is_wanted
    for document in steps[1:]:
        session.redo()
        assert session.project is document


def _keep(notice: Notice, ended: list[ReplanEnded]) -> None:
    if isinstance(notice, ReplanEnded):
        ended.append(notice)


def _check_plan(session: Session, edited: Project, ended: list[ReplanEnded]) -> None:
    """What the planner did with the edit that made `edited`."""
    present = session.project
    assert present.replace(arrangement=edited.arrangement) == edited, "it changes nothing but the arrangement"
    assert not session.live.is_busy
    if not ended:
        assert present is edited
        return
    (end,) = ended
    if end.result is None or end.result.status is PlanStatus.IMPOSSIBLE or end.by_hand or end.is_unsettled:
        assert present is edited, "where there is no plan nothing is moved"
        return
    assert session.report.conflicts == ()
    before, after = edited.arrangement.placements_by_box, present.arrangement.placements_by_box
    for box_id, placement in before.items():
        if placement.lock is Lock.DRAWER:
            assert (after[box_id].bay, after[box_id].row) == (placement.bay, placement.row)
        if placement.lock is Lock.BAY:
            assert after[box_id].bay == placement.bay
        assert after[box_id].lock is placement.lock
