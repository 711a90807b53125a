"""Running a model on the CP-SAT solver: reproducible, and stopped within a moment when asked.

One search worker, a fixed seed and a limit in the solver's own deterministic units make the same model give the same
answer everywhere; no clock decides anything.
"""

import threading
from collections.abc import Callable
from dataclasses import dataclass
from enum import Enum

from ortools.sat.python import cp_model

from baywright.planner.flow import FlowModel, Start

Stop = Callable[[], bool]

POLL_SECONDS = 0.02
"""How often a running solver asks whether it should stop; says when it ends, never what it answers."""


class Verdict(Enum):
    """What the solver could show."""

    BEST = "best"
    """A solution, and no better one exists (or any solution, where nothing was to be minimised)."""
    FOUND = "found"
    """A solution; better ones may exist."""
    NONE = "none"
    """Proved: no solution exists."""
    OPEN = "open"
    """Neither found nor refuted within the effort, or stopped."""


@dataclass(frozen=True)
class Outcome:
    """The solver's answer: a solution as starts and rows of items (empty without one), bound, effort, and whether
    it was stopped.
    """

    verdict: Verdict
    starts: tuple[Start, ...] = ()
    rows: tuple[int, ...] = ()
    bound: int = 0
    effort: float = 0.0

    @property
    def has_solution(self) -> bool:
        """Whether there is a solution to read."""
        return self.verdict in (Verdict.BEST, Verdict.FOUND)


def solve(flow: FlowModel, effort: float, stop: Stop | None = None) -> Outcome:
    """Solve a model within `effort` deterministic units."""
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.random_seed = 1
    solver.parameters.catch_sigint_signal = False  # the keyboard's interrupt belongs to the program
    solver.parameters.max_deterministic_time = max(effort, 1e-3)
    solver.parameters.linearization_level = 2 if flow.priced else 1
    status = _run(solver, flow, stop)
    spent = float(solver.response_proto.deterministic_time)
    if status == cp_model.INFEASIBLE:
        return Outcome(Verdict.NONE, effort=spent)
    if status not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
        return Outcome(Verdict.OPEN, bound=_bound(solver, flow), effort=spent)
    starts = flow.starts(solver.value)
    rows = flow.rows_of_items(solver.value, starts)
    verdict = Verdict.BEST if status == cp_model.OPTIMAL else Verdict.FOUND
    return Outcome(verdict, starts, rows, _bound(solver, flow), spent)


def _bound(solver: cp_model.CpSolver, flow: FlowModel) -> int:
    return max(0, round(solver.best_objective_bound)) if flow.priced else 0


def _run(solver: cp_model.CpSolver, flow: FlowModel, stop: Stop | None) -> cp_model.CpSolverStatus:
    if stop is None:
        return solver.solve(flow.model)
    done = threading.Event()

    def watch() -> None:
        while not done.wait(POLL_SECONDS):
            if stop():
                solver.stop_search()

    watcher = threading.Thread(target=watch, name="planner-stop", daemon=True)
    watcher.start()
    try:
        return solver.solve(flow.model)
    finally:
        done.set()
        watcher.join()
