"""Prints how long planning takes as workshops grow, beside the plain reference model where that ends at all."""

import sys
import time

from baywright.model.project import Project
from baywright.planner import plan
from baywright.planner.frame import Framer
from tests.benchmarks import refusals
from tests.benchmarks.reference import solve_plainly
from tests.benchmarks.workshops import workshop

REFERENCE_SECONDS = 20.0
REFERENCE_BOXES = 20


def main(sizes: tuple[int, ...] = (10, 20, 25, 40, 60, 100, 300, 1000, 2000)) -> None:
    """Measures one workshop of each size."""
    print("boxes  bays  rows  first plan s  all goals s  status       handling gap  reference")
    for boxes in sizes:
        project = workshop(boxes, drawers_per_bay=6)
        began = time.perf_counter()
        firsts: list[float] = []
        result = plan(project, progress=lambda _, f=firsts, b=began: f.append(time.perf_counter() - b))  # type: ignore[misc]
        seconds = time.perf_counter() - began
        arrangement = result.arrangement
        gap = ""
        if result.goals and result.goals[-1].value:
            goal = result.goals[-1]
            gap = f"{100 * (goal.value - goal.bound) / goal.value:.2f} %"
        shape = f"{arrangement.bay_count:5} {arrangement.upright_rows:5}" if arrangement else f"{'–':>5} {'–':>5}"
        first = f"{firsts[0]:.2f}" if firsts else "–"
        reference = _reference(project, result.arrangement is not None, seconds) if boxes <= REFERENCE_BOXES else ""
        print(f"{boxes:5} {shape}  {first:>12}  {seconds:11.2f}  {result.status.value:11}  {gap:>12}  {reference}")


def _reference(project: Project, is_planned: bool, seconds: float) -> str:
    if not is_planned:
        return ""
    arrangement = plan(project).arrangement
    if arrangement is None:
        return ""
    frame = Framer(project).frame(arrangement.bay_count, arrangement.upright_rows)
    began = time.perf_counter()
    status, _ = solve_plainly(frame.problem, REFERENCE_SECONDS)
    taken = time.perf_counter() - began
    return f"{status.lower()} in {taken:.1f} s, {taken / seconds:.0f} times as long"


if __name__ == "__main__" and sys.argv[1:2] == ["infeasible"]:
    refusals.main(*map(int, sys.argv[2:]))
elif __name__ == "__main__":
    main(*([tuple(map(int, sys.argv[1:]))] if sys.argv[1:] else []))
