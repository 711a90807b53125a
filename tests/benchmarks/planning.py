"""How long planning afresh takes: small walls, a hundred shops, hundreds and thousands of boxes, growth.

`python -m tests.benchmarks small | shops [SHOPS] | large [BOXES BAYS …] | growth`; rows are Markdown.
"""

from collections.abc import Iterable
from statistics import median

from baywright.model.goals import Goal
from baywright.model.project import Project
from tests.benchmarks.measuring import (
    Measure,
    heading,
    measured,
    middle_and_most,
    peak_mib,
    percentile,
    row,
    seconds,
    share,
)  # fmt: skip
from tests.benchmarks.reference import beside
from tests.benchmarks.shops import Wanted, mixed_shop, shop

REFERENCE_SHOPS = 2
LARGE = ((100, 20), (300, 60), (2_000, 400))
NARROW_MM = 150.0
"""Boxes so narrow that the longest wall holds 400 bays of them."""
MOST_WIDE_BAYS = 200


def small() -> None:
    """20 boxes in 4 bays with at most 5 drawers each, ten seeds, beside the plain model."""
    print(heading("20 boxes, 4 bays", "first plan s", "all goals s", "not proved", "plain model, handling alone"))
    wanted = Wanted(4, 20, drawers_per_bay=5)
    for seed in range(10):
        project = shop(wanted, seed)
        print(_line(f"seed {seed}", project, measured(project), is_referred=seed < REFERENCE_SHOPS), flush=True)


def shops(count: int = 100) -> None:
    """Seeded shops of up to 100 boxes in 8 to 20 bays, 95 % full, with locks and lower bays."""
    measures: list[tuple[Project, Measure]] = []
    for seed in range(count):
        project = mixed_shop(seed)
        measures.append((project, measured(project)))
    print(f"{count} shops, {min(len(p.boxes) for p, _ in measures)} to {max(len(p.boxes) for p, _ in measures)} boxes")
    first, whole = [m.first_s for _, m in measures if m.first_s is not None], [m.all_s for _, m in measures]
    print(heading("of all shops", "median / 95th percentile / most"))
    print(row("first plan s", middle_and_most(first)))
    print(row("all goals s", middle_and_most(whole)))
    print(row("without a plan", sum(m.result.arrangement is None for _, m in measures)))
    print(heading("goal", "proved, it and all before it", "largest gap", "95th percentile", "gap over 1 %"))
    for goal in (Goal.BAYS, Goal.ROWS, Goal.HANDLING, Goal.GROUPS, Goal.FREE_PIECE):
        proved = sum(m.proved_to(goal) for _, m in measures)
        found = [(g, share(g)) for _, m in measures for g in m.result.goals if g.goal is goal]
        widest = max(found, key=lambda pair: pair[1])
        over = sum(gap > 1 for _, gap in found)
        told = f"{widest[1]:.2f} % ({widest[0].value:g}, bound {widest[0].bound:g})"
        print(row(goal.value, f"{proved} of {count}", told, f"{percentile((g for _, g in found), 0.95):.2f} %", over))
    for project, measure in measures[:REFERENCE_SHOPS]:
        print(_line(project.name, project, measure, is_referred=True), flush=True)


def large(*numbers: int) -> None:
    """Boxes and bays, in pairs; each beside the memory that the process has had so far."""
    pairs = list(zip(numbers[::2], numbers[1::2], strict=True)) or list(LARGE)
    print(heading("boxes", "bays", "rows", "first plan s", "all goals s", "not proved", "peak memory MiB"))
    for boxes, bays in pairs:
        width = NARROW_MM if bays > MOST_WIDE_BAYS else 396.0
        measure = measured(shop(Wanted(bays, boxes, box_width_mm=width), 1))
        plan = measure.result.arrangement
        shape = (plan.bay_count, plan.upright_rows) if plan else ("–", "–")
        cells = (*shape, seconds(measure.first_s), seconds(measure.all_s), measure.gaps, f"{peak_mib():.0f}")
        print(row(boxes, *cells), flush=True)


def growth() -> None:
    """More boxes in as many bays more, and as many boxes in fewer bays that are higher stacked: medians of 3 seeds."""
    print(heading("boxes", "bays", "first plan s", "all goals s", "proved", "largest gap"))
    along = [(n, n // 5) for n in (10, 20, 40, 80, 160, 320)]
    apart = [(60, bays) for bays in (10, 12, 15, 20, 30)]
    for boxes, bays in [*along, *apart]:
        many = [measured(shop(Wanted(bays, boxes), seed)) for seed in range(3)]
        first = median(m.first_s or 0.0 for m in many)
        whole = median(m.all_s for m in many)
        proved = f"{sum(m.is_proved for m in many)} of 3"
        print(row(boxes, bays, seconds(first), seconds(whole), proved, f"{_widest(many):.1f} %"), flush=True)


def _widest(many: Iterable[Measure]) -> float:
    return max(measure.largest_gap for measure in many)


def _line(name: str, project: Project, measure: Measure, *, is_referred: bool) -> str:
    plan = measure.result.arrangement
    other = ""
    if is_referred and plan is not None:
        other = beside(project, plan.bay_count, plan.upright_rows, measure.all_s)
    return row(name, seconds(measure.first_s), seconds(measure.all_s), measure.gaps, other)
