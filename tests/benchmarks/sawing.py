"""Cutting a whole run of three materials, with offcuts: `python -m tests.benchmarks sawing [EFFORT]`.

Seconds of the processor. First: until there is a layout of everything; stopped: from asking for a stop to the answer.
"""

import time
from decimal import Decimal

from baywright.making import manufacture
from baywright.making.cutting.plan import cutting_plan
from baywright.model.construction import Construction
from baywright.model.cutting import CuttingPlan
from baywright.model.making import Manufacture
from baywright.model.project import Project
from baywright.model.safety import BoardMaterial
from baywright.model.stock import Bar, BoardRole, CuttingRules, Material, Sheet, Stock
from baywright.planner import plan
from tests.benchmarks.measuring import heading, row, seconds
from tests.benchmarks.workshops import workshop

MATERIALS = (
    Material(
        id="birch-18", name="birch plywood 18 mm", nominal_mm=18,
        roles=(
            BoardRole.UPRIGHT, BoardRole.BASE, BoardRole.TOP, BoardRole.BRACE, BoardRole.SHELF, BoardRole.PLINTH,
            BoardRole.END_PANEL,
        ),
    ),
    Material(id="birch-15", name="birch plywood 15 mm", nominal_mm=15, roles=(BoardRole.DRAWER_SIDE, BoardRole.FRONT)),
    Material(
        id="fibre-9", name="fibreboard 9 mm", nominal_mm=9, kind=BoardMaterial.FIBREBOARD, has_grain=False,
        roles=(BoardRole.DRAWER_BOTTOM, BoardRole.BACK),
    ),
)  # fmt: skip


def _sheet(identifier: str, material: str, length_mm: float, width_mm: float, price: str) -> Sheet:
    return Sheet(
        id=identifier, material_id=material, length_mm=length_mm, width_mm=width_mm, price=Decimal(price)
    )  # fmt: skip


def _offcut(number: int, material: str, length_mm: float, width_mm: float) -> Sheet:
    return Sheet(
        id=f"offcut-{number}", material_id=material, name=f"offcut {number}", length_mm=length_mm, width_mm=width_mm,
        quantity=1, is_owned=True, is_trimmed=False,
    )  # fmt: skip


STOCK = Stock(
    materials=MATERIALS,
    sheets=(
        _sheet("b18-large", "birch-18", 2500, 1250, "86.50"),
        _sheet("b18-square", "birch-18", 1525, 1525, "58.90"),
        _sheet("b15-square", "birch-15", 1525, 1525, "49.20"),
        _sheet("b15-half", "birch-15", 1250, 1250, "38"),
        _sheet("f9", "fibre-9", 2440, 1220, "21.40"),
        _offcut(1, "birch-18", 1180, 410),
        _offcut(2, "birch-18", 900, 760),
        _offcut(3, "birch-15", 1100, 320),
        _offcut(4, "birch-15", 640, 250),
        _offcut(5, "fibre-9", 1220, 700),
        _offcut(6, "fibre-9", 900, 450),
    ),
    bars=(
        Bar(id="band", length_mm=2600, price=Decimal("3.10")),
        Bar(id="left", length_mm=1400, quantity=2, is_owned=True),
    ),
    rules=CuttingRules(kerf_mm=3.2, trim_mm=10),
)  # fmt: skip


def sawing_job(boxes: int = 25) -> tuple[Project, Manufacture]:
    """A planned workshop with that stock, and what is to be made."""
    plain = Construction()
    project = workshop(boxes, drawers_per_bay=6)
    project = project.replace(
        construction=plain.replace(boards=plain.boards.replace(top_mm=18)),
        space=project.space.replace(length_mm=3400, height_limit_mm=2000),
        stock=STOCK,
    )
    arrangement = plan(project, effort=0.3).arrangement
    if arrangement is None:
        raise RuntimeError("The workshop of this benchmark has no plan any more.")
    planned = project.replace(arrangement=arrangement)
    return planned, manufacture(planned)


def main(effort: int | None = None) -> None:
    """Print the table: one line for the run, one for each material."""
    project, made = sawing_job()
    pieces = sum(part.quantity for part in made.parts)
    told: list[tuple[float, CuttingPlan]] = []
    begun = time.process_time()
    found = cutting_plan(
        project, made, effort=effort, progress=lambda plan: told.append((time.process_time() - begun, plan))
    )
    whole = time.process_time() - begun
    print(heading("pieces", "materials", "offcuts", "first s", "all s", "better ones told", "stopped s"))
    print(row(
        pieces, len(found.sheets), sum(sheet.is_owned for sheet in STOCK.sheets), seconds(told[0][0]), seconds(whole),
        len(told) - 1, seconds(_stopped(project, made)),
    ))  # fmt: skip
    print()
    print(heading("material", "pieces", "first", "sheets to buy", "from the rack", "cost", "bound", "gap"))
    for cutting, first in zip(found.sheets, told[0][1].sheets, strict=True):
        count = sum(len(layout.pieces) for layout in cutting.layouts)
        owned = sum(layout.is_owned for layout in cutting.layouts)
        print(row(
            cutting.material, count, f"{first.value:.2f}", cutting.bought, owned, f"{cutting.value:.2f}",
            f"{cutting.bound:.2f}", "proved" if cutting.is_proved else f"{1 - cutting.bound / cutting.value:.1%}",
        ))  # fmt: skip


def _stopped(project: Project, made: Manufacture) -> float:
    """The longest time to an answer after a stop, asked for at ten moments of the search."""
    worst = 0.0
    for tenth in range(10):
        begun, asked = time.process_time(), 0.0

        def stop(begun: float = begun, tenth: int = tenth) -> bool:
            nonlocal asked
            if not asked and time.process_time() - begun >= 0.05 + tenth * 0.2:
                asked = time.process_time()
            return bool(asked)

        cutting_plan(project, made, stop=stop)
        if asked:
            worst = max(worst, time.process_time() - asked)
    return worst
