"""Bays marked as built, and what that asks of later edits."""

import pytest

from baywright.app.commands import EditRefused, SetField
from baywright.app.edits.arrangement import PlaceBox
from baywright.app.edits.built import ForgetBuilt, MarkBuilt
from baywright.app.live import LiveMode
from baywright.app.session import Session
from baywright.model.arrangement import Arrangement, Placement
from baywright.model.difference import Place, RunnerMove, StepKind
from baywright.model.inventory import Box, BoxSize
from baywright.model.project import Project

SIZE = BoxSize(id="euro-120", name="Euro 120", width_mm=396, depth_mm=297, height_mm=120)


def shop(bays: int = 3) -> Session:
    """Two boxes in a run of three bays."""
    placements = (Placement(box_id="bells", bay=0, row=0), Placement(box_id="pumps", bay=0, row=5))
    project = Project(
        box_sizes=(SIZE,),
        boxes=tuple(Box(id=name, label=name.capitalize(), size_id=SIZE.id) for name in ("bells", "pumps")),
        arrangement=Arrangement(bay_count=bays, upright_rows=24, placements=placements if bays else ()),
    )
    session = Session(project, synchronous=True)
    session.live.mode = LiveMode.CHECK
    return session


def test_before_anything_is_built_there_is_no_work_to_tell() -> None:
    assert shop().difference is None


def test_from_what_is_built_every_later_move_is_told_as_work() -> None:
    session = shop()
    session.do(MarkBuilt((0, 1)))
    assert session.difference is not None
    assert session.difference.moves == ()
    assert session.difference.runners == ()
    session.do(PlaceBox("pumps", 0, 7))
    work = session.difference
    assert work is not None
    assert [move.box_id for move in work.moves] == ["pumps"]
    assert work.runners == (RunnerMove(before=Place(bay=0, row=5), after=Place(bay=0, row=7)),)
    session.do(MarkBuilt(()))
    assert session.difference is not None
    assert session.difference.moves == ()


def test_bays_are_added_to_those_that_stand() -> None:
    session = shop()
    session.do(MarkBuilt((0,)))
    session.do(MarkBuilt((2,)))
    assert session.project.built is not None
    assert session.project.built.bays == (0, 2)
    assert session.project.built.project.built is None
    session.do(ForgetBuilt())
    assert session.project.built is None
    session.undo()
    assert session.project.built is not None


def test_what_is_not_cut_yet_is_asked_for() -> None:
    session = shop()
    session.do(MarkBuilt((0,)))
    work = session.difference
    assert work is not None
    assert {part.name for part in work.parts_to_cut} >= {"Upright, inner", "Shelf"}
    assert [step.kind for step in work.steps] == [StepKind.CUT, StepKind.PUT_UP]
    assert work.steps[1].text == "Put up bays 2 and 3."
    session.do(MarkBuilt((1, 2)))
    assert session.difference is not None
    assert session.difference.is_empty


@pytest.mark.parametrize(
    ("session", "command", "words"),
    [
        (shop(), MarkBuilt((3,)), "no bay 4"),
        (shop(), MarkBuilt(()), "Choose the bays"),
        (shop(0), MarkBuilt((0,)), "plan the run first"),
    ],
)
def test_what_cannot_be_built_is_refused(session: Session, command: MarkBuilt, words: str) -> None:
    with pytest.raises(EditRefused, match=words):
        session.do(command)


@pytest.mark.parametrize(
    ("field", "value"),
    [
        ("construction.hole_rows.pitch_mm", 25.0),
        ("construction.boards.upright_mm", 17.0),
        ("arrangement.upright_rows", 26),
        ("limits.bay_box_width_mm", 500.0),
    ],
)
def test_a_run_that_contradicts_what_stands_is_refused_in_words_and_holes_stay_as_they_are(
    field: str, value: object
) -> None:
    session = shop()
    session.do(MarkBuilt((0,)))
    session.do(SetField(field, value))
    with pytest.raises(EditRefused, match="contradicts"):
        session.do(MarkBuilt((1,)))
    assert session.difference is not None
    assert session.difference.remarks
    assert session.difference.steps == ()


def test_runners_that_carry_too_little_after_a_swap_are_told() -> None:
    session = shop()
    session.do(SetField("boxes", tuple(
        box.replace(loaded_mass_kg=mass) for box, mass in zip(session.project.boxes, (40.0, 5.0), strict=True)
    )))  # fmt: skip
    session.do(MarkBuilt((0, 1, 2)))
    session.do(SetField("arrangement.placements", (
        Placement(box_id="bells", bay=0, row=5), Placement(box_id="pumps", bay=0, row=0),
    )))  # fmt: skip
    assert session.difference is not None
    told = session.difference.remarks
    assert len(told) == 1
    assert "bay 1 row 6" in told[0]
