"""Cutting in a session: asked for once, then following the edits; stale answers dropped; the document untouched."""

import queue
import threading
from collections.abc import Callable, Iterator

import pytest

import baywright.app.cutting as module
from baywright.app.commands import SetField
from baywright.app.edits.arrangement import PlaceBox
from baywright.app.edits.inventory import EditBox
from baywright.app.edits.materials import AdoptMaterial
from baywright.app.edits.rests import KeepRests
from baywright.app.edits.stock import AddSheet, ChangeSheet
from baywright.app.notices import CuttingEnded, CuttingFailed, CuttingProgressed, CuttingStarted, Notice
from baywright.app.session import Session
from baywright.making.cutting.plan import cutting_plan
from baywright.model.arrangement import Arrangement, Placement
from baywright.model.cutting import CuttingPlan
from baywright.model.inventory import Box, BoxSize
from baywright.model.project import Project
from baywright.model.stock import BoardRole, Sheet
from baywright.workings.material import material_of
from tests.oracle.sawyer import check_plan


def run_of_two() -> Project:
    """Two drawers in one bay."""
    size = BoxSize(id="low", name="Low", width_mm=400, depth_mm=300, height_mm=120)
    boxes = tuple(Box(id=f"box-{n}", label=f"Box {n}", size_id="low", loaded_mass_kg=9) for n in (1, 2))
    places = tuple(Placement(box_id=f"box-{n}", bay=0, row=8 * n - 8) for n in (1, 2))
    return Project(
        box_sizes=(size,), boxes=boxes, arrangement=Arrangement(bay_count=1, upright_rows=24, placements=places)
    )


def told(session: Session) -> list[Notice]:
    notices: list[Notice] = []
    session.subscribe(notices.append)
    return notices


def cut(session: Session) -> CuttingPlan:
    """The plan that the session tells, checked at the saw."""
    plan, made = session.cutting.plan, session.manufacture
    assert plan is not None
    assert made is not None
    check_plan(session.project, made.parts, plan)
    return plan


@pytest.fixture
def session() -> Session:
    """A session that has planned its cutting."""
    made = Session(run_of_two(), synchronous=True)
    made.cutting.request()
    return made


@pytest.fixture
def searches(monkeypatch: pytest.MonkeyPatch) -> list[Project]:
    """The projects that the engine was asked about."""
    asked: list[Project] = []
    engine = cutting_plan

    def counted(project: Project, *arguments: object, **named: object) -> CuttingPlan:
        asked.append(project)
        return engine(project, *arguments, **named)  # type: ignore[arg-type]

    monkeypatch.setattr(module, "cutting_plan", counted)
    return asked


def test_nothing_is_sought_before_somebody_asks(searches: list[Project]) -> None:
    session = Session(run_of_two(), synchronous=True)
    session.do(SetField("stock.rules.kerf_mm", 4))
    assert session.cutting.plan is None
    assert session.cutting.cost is None
    assert searches == []


def test_the_first_layouts_are_told_then_better_ones_and_the_document_is_untouched() -> None:
    session = Session(run_of_two(), synchronous=True)
    before, notices = session.project, told(session)
    session.cutting.request()
    assert isinstance(notices[0], CuttingStarted)
    assert isinstance(notices[1], CuttingProgressed)
    assert notices[-1] == CuttingEnded(session.cutting.plan)
    assert cut(session).is_finished
    assert session.project is before
    assert not session.cutting.is_searching


def test_it_follows_the_edits_that_matter(session: Session) -> None:
    first = cut(session)
    session.do(SetField("construction.boards.upright_mm", 21))
    assert "birch plywood 21 mm" in {cutting.material for cutting in cut(session).sheets}
    session.undo()
    assert cut(session) == first
    granted = material_of(session.project, BoardRole.UPRIGHT).id
    session.do(AdoptMaterial(granted))
    session.do(AddSheet(Sheet(id="full", material_id=granted, length_mm=2800, width_mm=2070)))
    assert cut(session).sheet_layouts[0].sheet_id == "full"
    session.do(ChangeSheet("full", "price", 60))
    assert cut(session).sheets[0].cost == 60 * cut(session).sheets[0].bought


@pytest.mark.parametrize(
    "edit",
    [
        EditBox("box-1", "label", "Pumps"),
        SetField("name", "Another name"),
        SetField("pricing.currency", "CHF"),
        PlaceBox("box-2", 0, 12),
    ],
)
def test_an_edit_that_leaves_parts_and_stock_alike_keeps_the_plan_without_a_search(
    session: Session, searches: list[Project], edit: EditBox | SetField | PlaceBox
) -> None:
    before = cut(session)
    session.do(edit)
    assert session.cutting.plan is before
    assert searches == []


def test_names_and_notes_leave_a_search_alone(session: Session) -> None:
    notices = told(session)
    session.do(EditBox("box-1", "label", "Pumps"))
    session.do(SetField("name", "Another name"))
    assert not any(isinstance(notice, CuttingStarted | CuttingEnded) for notice in notices)
    session.do(PlaceBox("box-2", 0, 12))
    assert any(isinstance(notice, CuttingEnded) for notice in notices)


def test_the_cost_belongs_to_the_plan_and_the_present_prices(session: Session) -> None:
    cost = session.cutting.cost
    assert cost is not None
    assert session.cutting.cost is cost
    session.do(SetField("pricing.currency", "CHF"))
    assert session.cutting.cost is not None
    assert session.cutting.cost.currency == "CHF"


def test_rests_kept_are_one_step_and_cut_from_at_once(session: Session) -> None:
    plan, before = cut(session), session.project
    session.do(KeepRests(plan))
    assert session.undo_title == "Keep the rests"
    assert any(layout.is_owned for layout in cut(session).sheet_layouts)
    session.undo()
    assert session.project == before
    assert cut(session) == plan


def test_before_anything_is_arranged_there_is_nothing_to_cut() -> None:
    session = Session(Project(), synchronous=True)
    session.cutting.request()
    assert session.cutting.plan == CuttingPlan()
    assert session.cutting.cost is None


def test_another_document_has_nothing_of_it(session: Session) -> None:
    session.new_project(run_of_two())
    assert session.cutting.plan is None
    session.do(SetField("stock.rules.kerf_mm", 4))
    assert session.cutting.plan is None


def test_a_defect_is_told_and_leaves_the_document(monkeypatch: pytest.MonkeyPatch) -> None:
    def broken(*_: object, **__: object) -> CuttingPlan:
        raise RuntimeError("saw blade off")

    monkeypatch.setattr(module, "cutting_plan", broken)
    session = Session(run_of_two(), synchronous=True)
    notices = told(session)
    session.cutting.request()
    assert isinstance(notices[-1], CuttingFailed)
    assert "saw blade off" in notices[-1].message
    assert session.cutting.plan is None


class Beside:
    """A session whose cutting runs beside it; what it hands back is taken in when asked."""

    def __init__(self) -> None:
        self.calls: queue.SimpleQueue[Callable[[], None]] = queue.SimpleQueue()
        self.session = Session(run_of_two(), deliver=self.calls.put)
        self.notices = told(self.session)

    def until_ended(self) -> None:
        while not any(isinstance(notice, CuttingEnded) for notice in self.notices):
            self.calls.get(timeout=20)()


@pytest.fixture
def beside() -> Iterator[Beside]:
    made = Beside()
    yield made
    made.session.close()


def test_beside_the_window_the_answer_to_an_older_document_is_dropped(
    beside: Beside, monkeypatch: pytest.MonkeyPatch
) -> None:
    engine, started, go_on = cutting_plan, threading.Event(), threading.Event()

    def slow(project: Project, *arguments: object, **named: object) -> CuttingPlan:
        started.set()
        assert go_on.wait(20)
        return engine(project, *arguments, **named)  # type: ignore[arg-type]

    monkeypatch.setattr(module, "cutting_plan", slow)
    session = beside.session
    session.cutting.request()
    assert started.wait(20)
    assert session.cutting.is_searching
    session.do(SetField("construction.boards.upright_mm", 21))
    assert session.cutting.plan is None
    go_on.set()
    beside.until_ended()
    assert "birch plywood 21 mm" in {cutting.material for cutting in cut(session).sheets}
    assert sum(isinstance(notice, CuttingEnded) for notice in beside.notices) == 1


def test_a_stopped_search_tells_the_best_so_far(beside: Beside) -> None:
    session = beside.session

    def stop_at_the_first(notice: Notice) -> None:
        if isinstance(notice, CuttingProgressed):
            session.cutting.cancel()

    session.subscribe(stop_at_the_first)
    session.cutting.request()
    beside.until_ended()
    cut(session)
    assert not session.cutting.is_searching
