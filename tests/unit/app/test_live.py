"""Planning along with the edits: which make the planner act, what it leaves alone, what one undo takes back."""

from collections.abc import Callable

import pytest

from baywright.app.commands import Command, SetField
from baywright.app.edits.arrangement import PlaceBox, SetLock, UnplaceBoxes
from baywright.app.edits.inventory import AddBoxes, EditBox, RemoveBoxes
from baywright.app.live import LiveMode
from baywright.app.notices import Notice, ReplanEnded, ReplanStarted, ReplanWanted
from baywright.app.session import Session
from baywright.model.arrangement import Lock, Placement
from baywright.model.goals import Goal
from baywright.model.inventory import Box, BoxSize
from baywright.model.plan import GoalValue, PlanResult, PlanStatus
from baywright.model.project import Project
from baywright.model.repair import FieldChange, Repair
from baywright.model.space import Space

Answer = Callable[[PlanResult], None]
LOW = BoxSize(id="low", name="Low", width_mm=396, depth_mm=297, height_mm=120)
HIGH = BoxSize(id="high", name="High", width_mm=396, depth_mm=297, height_mm=320)


def box(name: str, size: BoxSize = LOW, mass_kg: float = 4.0) -> Box:
    return Box(id=name, label=name.capitalize(), size_id=size.id, loaded_mass_kg=mass_kg)


def shop() -> Project:
    """Six boxes before a wall of four bays."""
    names = ("pumps", "tubes", "chains", "cables", "pedals", "saddles")
    return Project(
        space=Space(length_mm=2400, height_limit_mm=1200),
        box_sizes=(LOW, HIGH),
        boxes=tuple(box(name, mass_kg=2.0 + number) for number, name in enumerate(names)),
    )


class Shop:
    """A planned session and everything that it told since."""

    def __init__(self, project: Project | None = None) -> None:
        self.session = Session(project or shop(), synchronous=True)
        self.session.request_plan()
        assert self.session.plan is not None
        self.notices: list[Notice] = []
        self.session.subscribe(self.notices.append)

    def do(self, command: Command) -> None:
        """An edit, and the planner's part as soon as it is wanted."""
        self.session.do(command)
        self.session.live.act()

    @property
    def searches(self) -> int:
        return sum(isinstance(notice, ReplanStarted) for notice in self.notices)

    @property
    def ended(self) -> ReplanEnded:
        return [notice for notice in self.notices if isinstance(notice, ReplanEnded)][-1]

    def place(self, box_id: str) -> tuple[int, int] | None:
        placement = self.session.project.arrangement.placement_of(box_id)
        return None if placement is None else (placement.bay, placement.row)


def test_a_new_box_gets_a_drawer_and_one_undo_takes_back_both() -> None:
    desk = Shop()
    before = desk.session.project
    desk.do(AddBoxes((box("brakes"),)))
    assert desk.place("brakes") is not None
    assert desk.session.report.conflicts == ()
    assert desk.ended.placed == ("brakes",)
    assert desk.session.undo_title == "Add “Brakes”"
    with_plan = desk.session.project
    desk.session.undo()
    assert desk.session.project is before
    desk.session.redo()
    assert desk.session.project is with_plan
    assert desk.session.live.is_wanted is False


def test_the_answer_comes_with_its_proof() -> None:
    desk = Shop()
    desk.do(AddBoxes((box("brakes"),)))
    assert desk.session.plan is not None
    assert desk.session.plan.status is PlanStatus.PROVED_BEST


def test_nothing_is_planned_before_the_first_plan() -> None:
    session = Session(shop(), synchronous=True)
    session.do(AddBoxes((box("brakes"),)))
    assert not session.live.is_wanted
    session.live.act()
    assert session.project.arrangement.placements == ()


@pytest.mark.parametrize(
    "edit",
    [
        EditBox("pumps", "label", "Air pumps"),
        EditBox("pumps", "contents", "three"),
        SetField("note", "rear wall"),
        EditBox("pumps", "loaded_mass_kg", 5.0),
        RemoveBoxes(("pumps",)),
        SetLock(("pumps",), Lock.DRAWER),
        UnplaceBoxes(("pumps",)),
    ],
)
def test_an_edit_that_leaves_nothing_wrong_moves_nothing(edit: Command) -> None:
    desk = Shop()
    places = {p.box_id: (p.bay, p.row) for p in desk.session.project.arrangement.placements}
    desk.do(edit)
    assert desk.searches == 0
    assert all(desk.place(key) in (place, None) for key, place in places.items())


def test_only_checking_tells_and_moves_nothing() -> None:
    desk = Shop()
    desk.session.live.mode = LiveMode.CHECK
    desk.do(EditBox("pumps", "size_id", "high"))
    assert desk.searches == 0
    assert desk.session.report.conflicts


def test_always_the_best_plans_after_every_edit_that_is_weighed() -> None:
    desk = Shop()
    desk.session.live.mode = LiveMode.BEST
    desk.do(EditBox("pumps", "note", "blue"))
    assert desk.searches == 0
    desk.do(EditBox("pumps", "loaded_mass_kg", 5.0))
    assert desk.searches == 1
    assert desk.session.plan is not None


def test_a_box_put_somewhere_by_hand_stays_and_the_others_make_room() -> None:
    desk = Shop()
    other = desk.session.project.arrangement.placement_of("tubes")
    assert other is not None
    desk.do(PlaceBox("pumps", other.bay, other.row))
    assert desk.place("pumps") == (other.bay, other.row)
    assert desk.place("tubes") not in (None, (other.bay, other.row))
    assert desk.session.report.conflicts == ()
    placement = desk.session.project.arrangement.placement_of("pumps")
    assert placement is not None
    assert placement.lock is Lock.NONE, "it was held for this search, not locked"
    desk.do(EditBox("tubes", "size_id", "high"))
    assert desk.place("pumps") == (other.bay, other.row)
    desk.session.undo()
    desk.session.undo()
    assert desk.place("tubes") == (other.bay, other.row)


def test_what_was_taken_out_by_hand_stays_out_until_a_whole_plan() -> None:
    desk = Shop()
    desk.do(UnplaceBoxes(("pumps",)))
    desk.do(AddBoxes((box("brakes"),)))
    assert desk.place("brakes") is not None
    assert desk.place("pumps") is None
    desk.session.request_plan()
    assert desk.place("pumps") is not None


def test_where_no_plan_is_possible_nothing_is_changed_and_the_reason_is_kept() -> None:
    desk = Shop()
    desk.do(SetField("limits.bay_count", 1))
    before = desk.session.project
    places = before.arrangement
    desk.do(SetField("limits.drawers_per_bay", 2))
    assert desk.session.project.arrangement == places
    assert desk.session.plan is not None
    assert desk.session.plan.status is PlanStatus.IMPOSSIBLE
    assert desk.session.plan.conflicts
    assert desk.session.undo_title.lower().startswith("change")
    desk.session.undo()
    assert desk.session.project is before


def test_it_acts_as_soon_as_an_edit_makes_it_possible() -> None:
    desk = Shop()
    desk.do(SetField("limits.drawers_per_bay", 1))
    refusal = desk.session.plan
    assert refusal is not None
    assert refusal.status is PlanStatus.IMPOSSIBLE
    desk.do(SetField("limits.drawers_per_bay", 4))
    assert desk.session.report.conflicts == ()
    assert desk.session.plan is not None
    assert desk.session.plan.status is PlanStatus.PROVED_BEST


def test_where_only_hands_stand_against_a_plan_they_are_named_and_left() -> None:
    desk = Shop()
    arrangement = desk.session.project.arrangement
    desk.do(PlaceBox("pumps", 0, arrangement.upright_rows - 1))
    assert desk.place("pumps") == (0, arrangement.upright_rows - 1)
    assert desk.ended.by_hand == ("Pumps",)
    assert desk.session.plan is None
    assert desk.session.report.conflicts


def test_a_newer_edit_begins_the_search_anew_and_the_older_answer_is_dropped() -> None:
    calls: list[Callable[[], None]] = []
    session = Session(shop(), deliver=calls.append)
    drain(session, calls, session.request_plan)
    session.do(AddBoxes((box("brakes"),)))
    session.live.act()
    session.do(AddBoxes((box("bells"),)))
    assert session.live.is_wanted
    drain(session, calls, lambda: None)
    assert session.project.arrangement.placement_of("brakes") is None, "the answer to the older document"
    drain(session, calls, session.live.act)
    assert session.report.unplaced == ()
    assert not session.live.is_busy


def test_a_name_given_while_it_searches_keeps_the_answer() -> None:
    calls: list[Callable[[], None]] = []
    session = Session(shop(), deliver=calls.append)
    drain(session, calls, session.request_plan)
    session.do(AddBoxes((box("brakes"),)))
    session.live.act()
    session.do(EditBox("brakes", "note", "new"))
    drain(session, calls, lambda: None)
    assert session.project.arrangement.placement_of("brakes") is not None
    session.undo()
    assert session.project.box("brakes").note == ""
    assert session.project.arrangement.placement_of("brakes") is not None, "the answer stands under both edits"
    session.undo()
    assert "brakes" not in session.project.boxes_by_id


def test_undo_while_it_searches_ends_the_search() -> None:
    calls: list[Callable[[], None]] = []
    session = Session(shop(), deliver=calls.append)
    drain(session, calls, session.request_plan)
    before = session.project
    session.do(AddBoxes((box("brakes"),)))
    session.live.act()
    session.undo()
    drain(session, calls, lambda: None)
    assert session.project is before
    assert not session.live.is_busy


def test_a_repair_is_made_and_planned_in_one_step_whatever_the_mode() -> None:
    project = shop()
    limits = project.limits.replace(bay_count=1, drawers_per_bay=5)
    session = Session(project.replace(limits=limits), synchronous=True)
    session.live.mode = LiveMode.CHECK
    session.request_plan()
    assert session.plan is not None
    assert session.plan.status is PlanStatus.IMPOSSIBLE
    before = session.project
    repair = Repair(text="Six drawers in a bay", changes=(FieldChange(path="limits.drawers_per_bay", value=6),))
    session.live.apply_repair(repair)
    assert session.report.unplaced == ()
    assert session.undo_title == "Six drawers in a bay"
    session.undo()
    assert session.project is before


def test_a_repair_that_is_made_while_a_whole_plan_is_sought_ends_that() -> None:
    desk = roomy()
    planner = Desk(desk.session)
    desk.session.request_replan()
    assert desk.session.is_planning
    repair = Repair(text="Five in a bay", changes=(FieldChange(path="limits.drawers_per_bay", value=5),))
    desk.session.live.apply_repair(repair)
    assert not desk.session.is_planning
    assert len(planner.asked) == 2
    whole, _ = planner.asked
    before = desk.session.project
    whole[2](PlanResult(status=PlanStatus.FEASIBLE, arrangement=before.arrangement.replace(bay_count=9)))
    assert desk.session.project is before, "its answer is for nobody"


def test_it_tells_that_it_is_wanted_began_and_ended() -> None:
    desk = Shop()
    desk.do(AddBoxes((box("brakes"),)))
    told = [type(n) for n in desk.notices if isinstance(n, ReplanWanted | ReplanStarted | ReplanEnded)]
    assert told == [ReplanWanted, ReplanStarted, ReplanEnded]


class Desk:
    """Stands in for the planner's desk: keeps what was asked and answers when told."""

    def __init__(self, session: Session) -> None:
        self.asked: list[tuple[Project, Answer, Answer]] = []
        session._desk.request = self._request  # type: ignore[method-assign]

    def _request(
        self, project: Project, on_progress: Answer, on_end: Answer, on_failure: object, *, keep: bool = False
    ) -> None:
        assert keep
        self.asked.append((project, on_progress, on_end))


def roomy() -> Shop:
    """A shop with more room than its boxes need."""
    project = shop()
    return Shop(project.replace(limits=project.limits.replace(upright_rows=33, bay_count=2)))


def answer(project: Project, moves: float, bound: float, row: int) -> PlanResult:
    """The present places and the new box at that row of the last bay, so many moves, at least `bound` needed."""
    arrangement = project.arrangement
    new = Placement(box_id="brakes", bay=arrangement.bay_count - 1, row=row)
    goals = (GoalValue(goal=Goal.MOVES, value=moves, bound=bound, unit="boxes"),)
    placements = (*arrangement.placements, new)
    return PlanResult(status=PlanStatus.FEASIBLE, arrangement=arrangement.replace(placements=placements), goals=goals)


def free_rows(session: Session) -> list[int]:
    """Rows of the last bay where the new box could stand."""
    bay = session.project.arrangement.bay_count - 1
    return [row for row in range(33) if not session.place_conflicts("brakes", bay, row)]


def test_a_plan_with_proved_moves_is_taken_in_at_once_and_a_better_place_follows_in_the_same_step() -> None:
    desk = roomy()
    planner, before = Desk(desk.session), desk.session.project
    desk.do(AddBoxes((box("brakes"),)))
    ((task, on_better, on_end),) = planner.asked
    first, *_, last = free_rows(desk.session)
    on_better(answer(task, moves=6, bound=0, row=first))
    assert desk.place("brakes") is None, "nobody knows yet whether so many must move"
    on_better(answer(task, moves=0, bound=0, row=first))
    assert desk.place("brakes") == (before.arrangement.bay_count - 1, first)
    assert desk.session.report.conflicts == ()
    assert desk.session.live.is_busy
    desk.session.do(EditBox("brakes", "note", "new"))
    on_end(answer(task, moves=0, bound=0, row=last))
    assert desk.place("brakes") == (before.arrangement.bay_count - 1, last)
    assert desk.ended.placed == ("brakes",)
    assert desk.ended.moved == ()
    desk.session.undo()
    assert desk.place("brakes") == (before.arrangement.bay_count - 1, last)
    desk.session.undo()
    assert desk.session.project is before


def test_an_edit_after_the_first_answer_ends_the_search_and_nothing_moves_again() -> None:
    desk = roomy()
    planner = Desk(desk.session)
    desk.do(AddBoxes((box("brakes"),)))
    ((task, on_better, on_end),) = planner.asked
    first, *_, last = free_rows(desk.session)
    on_better(answer(task, moves=0, bound=0, row=first))
    placed = desk.place("brakes")
    desk.do(EditBox("pumps", "loaded_mass_kg", 5.0))
    assert not desk.session.live.is_busy
    on_end(answer(task, moves=0, bound=0, row=last))
    assert desk.place("brakes") == placed
    assert len(planner.asked) == 1


def test_a_plan_that_may_move_more_than_it_must_is_not_taken_in() -> None:
    desk = roomy()
    planner = Desk(desk.session)
    desk.do(AddBoxes((box("brakes"),)))
    before = desk.session.project
    ((task, _, on_end),) = planner.asked
    on_end(answer(task, moves=6, bound=0, row=free_rows(desk.session)[0]))
    assert desk.session.project is before
    assert desk.ended.is_unsettled
    assert not desk.session.live.is_busy


def drain(session: Session, calls: list[Callable[[], None]], begin: Callable[[], None]) -> None:
    """Do something, wait for the search, and run what it hands back."""
    begin()
    thread = session._desk.search.thread
    if thread is not None:
        thread.join(20)
    while calls:
        calls.pop(0)()
