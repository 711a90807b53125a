"""A re-plan on offer: accepted whole, box by box, or not at all."""

import pytest

from baywright.app.commands import EditRefused, SetField
from baywright.app.edits.arrangement import SetLock
from baywright.app.edits.inventory import AddBoxes, RemoveBoxes
from baywright.app.live import LiveMode
from baywright.app.notices import Notice, ProposalEnded, ProposalMade
from baywright.app.session import Session
from baywright.model.arrangement import Arrangement, Lock, Placement
from baywright.model.inventory import Box, BoxSize
from baywright.model.plan import PlanResult, PlanStatus
from baywright.model.project import Project

SIZE = BoxSize(id="euro-120", name="Euro 120", width_mm=396, depth_mm=297, height_mm=120)
NAMES = ("bells", "pumps", "tubes")
Places = dict[str, tuple[int, int]]
STANDS: Places = {"bells": (0, 0), "pumps": (0, 5), "tubes": (1, 0)}


def arranged(places: Places, bays: int = 2, rows: int = 24) -> Arrangement:
    placements = tuple(Placement(box_id=name, bay=bay, row=row) for name, (bay, row) in places.items())
    return Arrangement(bay_count=bays, upright_rows=rows, placements=placements)


def places_in(project: Project) -> Places:
    return {p.box_id: (p.bay, p.row) for p in project.arrangement.placements}


class Desk:
    """A session on three boxes to which a plan is offered."""

    def __init__(self, target: Places, **shape: int) -> None:
        boxes = tuple(Box(id=name, label=name.capitalize(), size_id=SIZE.id) for name in NAMES)
        project = Project(box_sizes=(SIZE,), boxes=boxes, arrangement=arranged(STANDS))
        self.session = Session(project, synchronous=True)
        self.notices: list[Notice] = []
        self.session.subscribe(self.notices.append)
        self.target = arranged(target, **shape)
        result = PlanResult(status=PlanStatus.FEASIBLE, arrangement=self.target)
        self.is_offered = self.session.review.offer(result)

    @property
    def told(self) -> list[type]:
        return [type(notice) for notice in self.notices if isinstance(notice, ProposalMade | ProposalEnded)]


def test_a_proposal_changes_nothing_until_it_is_accepted() -> None:
    desk = Desk({**STANDS, "tubes": (1, 8)})
    session = desk.session
    assert session.proposal is not None
    assert [(m.box_id, m.after and m.after.row) for m in session.proposal.moves] == [("tubes", 8)]
    assert session.proposal.difference.steps
    assert places_in(session.project) == STANDS
    session.reject_proposal()
    assert not session.can_undo
    assert desk.told == [ProposalMade, ProposalEnded]
    assert session.proposal is None


def test_a_plan_that_moves_nothing_is_not_offered() -> None:
    desk = Desk(STANDS)
    assert not desk.is_offered
    assert desk.told == []


def test_one_undo_takes_an_accepted_proposal_back() -> None:
    desk = Desk({"bells": (0, 8), "pumps": (1, 0), "tubes": (1, 8)})
    session = desk.session
    assert set(session.accept_proposal()) == set(NAMES)
    assert session.project.arrangement == desk.target
    assert session.plan is not None
    assert session.undo_title == "Re-plan"
    assert desk.told == [ProposalMade, ProposalEnded]
    session.undo()
    assert places_in(session.project) == STANDS


def test_a_box_is_accepted_with_what_stands_in_its_way_and_the_rest_stays_on_offer() -> None:
    desk = Desk({"bells": (0, 5), "pumps": (1, 5), "tubes": (1, 12)})
    session = desk.session
    assert session.accept_proposal(("bells",)) == ("bells", "pumps")
    assert places_in(session.project) == {"bells": (0, 5), "pumps": (1, 5), "tubes": (1, 0)}
    assert session.proposal is not None
    assert [move.box_id for move in session.proposal.moves] == ["tubes"]
    assert session.accept_proposal(("tubes",)) == ("tubes",)
    assert session.proposal is None
    assert session.project.arrangement == desk.target
    session.undo()
    session.undo()
    assert places_in(session.project) == STANDS


def test_a_box_that_alone_would_break_a_limit_is_refused_in_words() -> None:
    """The target is a higher run that also breaks a limit: nobody's leaving makes room for the box there."""
    desk = Desk({**STANDS, "bells": (1, 2), "pumps": (0, 12)})
    session = desk.session
    before = session.project
    with pytest.raises(EditRefused) as refusal:
        session.accept_proposal(("bells",))
    assert "Tubes" in refusal.value.message
    assert session.project is before
    assert session.proposal is not None


def test_a_part_of_a_lower_run_keeps_its_height_until_all_is_accepted() -> None:
    desk = Desk({**STANDS, "bells": (1, 5), "tubes": (1, 0), "pumps": (0, 2)}, bays=2, rows=20)
    session = desk.session
    session.accept_proposal(("bells",))
    assert session.project.arrangement.upright_rows == 24
    session.accept_proposal(("pumps",))
    assert session.project.arrangement == desk.target


def test_bays_of_other_widths_are_accepted_whole_only() -> None:
    desk = Desk({**STANDS, "tubes": (1, 8), "bells": (1, 0)})
    session = desk.session
    wider = desk.target.replace(box_widths_mm=(600.0, 396.0))
    session.review.offer(PlanResult(status=PlanStatus.FEASIBLE, arrangement=wider))
    with pytest.raises(EditRefused, match="as a whole"):
        session.accept_proposal(("tubes",))
    session.accept_proposal()
    assert session.project.arrangement == wider


def test_an_edit_that_asks_for_something_else_ends_the_proposal_and_a_note_does_not() -> None:
    desk = Desk({**STANDS, "tubes": (1, 8)})
    session = desk.session
    session.do(SetField("note", "ask Ada about the tubes"))
    assert session.proposal is not None
    assert session.proposal.after.note == "ask Ada about the tubes"
    session.do(RemoveBoxes(("bells",)))
    assert session.proposal is None
    assert session.accept_proposal() == ()


def test_a_replan_is_offered_where_the_owner_wants_to_look_first_and_taken_in_where_not() -> None:
    desk = Desk(STANDS)
    session = desk.session
    session.live.mode = LiveMode.CHECK
    session.do(AddBoxes((Box(id="locks", label="Locks", size_id=SIZE.id),)))
    session.do(SetLock(NAMES, Lock.DRAWER))
    session.do(SetField("limits.upright_rows", 24))
    session.do(SetField("limits.bay_count", 2))
    session.proposes = True
    session.request_replan()
    assert session.proposal is not None
    assert [(move.box_id, move.before) for move in session.proposal.moves] == [("locks", None)]
    assert session.proposal.result.status is PlanStatus.PROVED_BEST
    assert places_in(session.project) == STANDS
    session.reject_proposal()
    session.proposes = False
    session.request_replan()
    assert session.proposal is None
    assert STANDS.items() < places_in(session.project).items()
    session.proposes = True
    session.request_replan()
    assert session.proposal is None, "nothing would change, so nothing is offered"
    assert session.plan is not None


def test_a_lock_ends_the_proposal_for_it_may_move_what_is_locked_now() -> None:
    desk = Desk({**STANDS, "tubes": (1, 8)})
    desk.session.do(SetLock(("tubes",), Lock.DRAWER))
    assert desk.session.proposal is None
