"""Runs to write about: a small one made by hand, a long one, and the demo as it is planned."""

from collections.abc import Callable
from io import BytesIO
from pathlib import Path

import openpyxl
import pytest

from baywright.checks import inspect
from baywright.documents.workbook import write_workbook
from baywright.making import manufacture
from baywright.model.arrangement import Arrangement, Lock, Placement
from baywright.model.inventory import Box, BoxSize
from baywright.model.limits import BayWish, Limits
from baywright.model.plan import PlanResult
from baywright.model.project import Project
from baywright.model.space import Space, Zone, ZoneEffect
from baywright.planner import plan, report
from baywright.workings import derive

LABELS = ("=1+1", "+44 tubes", "-5 mm keys", "@home", "Chains & “rings”", "a\tb\x07c", "#N/A", "工具 keys")


def run(bays: int, per_bay: int, length_mm: float = 2400.0) -> Project:
    """A run of `bays` bays with `per_bay` drawers each, of two sizes that take 5 and 8 rows."""
    sizes = (
        BoxSize(id="low", name="Low", width_mm=400, depth_mm=300, height_mm=120),
        BoxSize(id="high", name="High", width_mm=400, depth_mm=300, height_mm=220),
    )
    boxes, placements = [], []
    for number in range(bays * per_bay):
        label = LABELS[number] if number < len(LABELS) else f"Box {number} with a rather long label of many words"
        mass = None if number == 2 else 5.0 + number / 8
        size = "high" if number % 2 else "low"
        boxes.append(Box(id=f"box-{number}", label=label, size_id=size, loaded_mass_kg=mass, contents="=SUM(A1)\nnuts"))
        placements.append(
            Placement(
                box_id=f"box-{number}",
                bay=number // per_bay,
                row=8 * (number % per_bay),
                lock=Lock.DRAWER if number == 1 else Lock.NONE,
            )
        )
    arrangement = Arrangement(bay_count=bays, upright_rows=8 * per_bay, placements=tuple(placements))
    space = Space(length_mm=length_mm)
    return Project(name="Sums & =more", space=space, box_sizes=sizes, boxes=tuple(boxes), arrangement=arrangement)


@pytest.fixture
def small() -> Project:
    return run(2, 4)


@pytest.fixture
def long() -> Project:
    return run(12, 5, 6500.0)


@pytest.fixture(scope="session")
def demo_plan(resources: Path) -> tuple[Project, PlanResult]:
    project = Project.model_validate_json((resources / "demo.baywright").read_text(encoding="utf-8"))
    result = plan(project)
    assert result.arrangement is not None
    return project.replace(arrangement=result.arrangement), result


def workbook_of(project: Project, result: PlanResult | None = None) -> bytes:
    workings = derive(project)
    made, findings = manufacture(project, workings), inspect(project, workings)
    return write_workbook(project, workings, report(project), result, made, findings)


@pytest.fixture
def written() -> Callable[..., bytes]:
    """The workbook of a project (and the planner's answer), as bytes."""
    return workbook_of


@pytest.fixture
def opened() -> Callable[..., openpyxl.Workbook]:
    """The workbook of a project (and the planner's answer), read back; formula cells give their formula."""

    def read(project: Project, result: PlanResult | None = None) -> openpyxl.Workbook:
        return openpyxl.load_workbook(BytesIO(workbook_of(project, result)))

    return read


@pytest.fixture
def labels() -> tuple[str, ...]:
    """The labels of the first boxes of the runs here: texts that other programs stumble over."""
    return LABELS


@pytest.fixture
def mixed() -> Project:
    """A run around a door and in front of a pipe, with a wider bay, a lower one, and drawers that boxes share."""
    sizes = (
        BoxSize(id="full", name="Full", width_mm=400, depth_mm=300, height_mm=120),
        BoxSize(id="half", name="Half", width_mm=190, depth_mm=300, height_mm=120, most_abreast=2),
        BoxSize(id="wide", name="Wide", width_mm=600, depth_mm=300, height_mm=220),
    )
    zones = (
        Zone(id="door", label="Door", effect=ZoneEffect.KEEP_CLEAR, left_mm=1300, width_mm=900),
        Zone(id="pipe", label="Pipe", effect=ZoneEffect.STAY_IN_FRONT, left_mm=0, width_mm=5000, bottom_mm=200,
             height_mm=60, depth_mm=60),
        Zone(id="window", label="Window", effect=ZoneEffect.END_BELOW, left_mm=2900, width_mm=500, bottom_mm=800),
    )  # fmt: skip
    places = (("full", 0, 2), ("half", 0, 12), ("half", 0, 12), ("wide", 1, 2), ("full", 2, 4), ("full", 3, 10))
    boxes = tuple(
        Box(id=f"box-{n}", label=f"Box {n}", size_id=size, loaded_mass_kg=4.0 + n)
        for n, (size, _, _) in enumerate(places)
    )
    placements = tuple(
        Placement(box_id=f"box-{n}", bay=bay, row=row, abreast=int(n == 2)) for n, (_, bay, row) in enumerate(places)
    )
    return Project(
        name="Around the door",
        space=Space(length_mm=5200, depth_mm=420, height_limit_mm=1300, zones=zones),
        limits=Limits(bay_box_width_mm=400, bays=(BayWish(), BayWish(box_width_mm=600), BayWish(rows=24))),
        box_sizes=sizes,
        boxes=boxes,
        arrangement=Arrangement(bay_count=4, upright_rows=30, placements=placements),
    )
