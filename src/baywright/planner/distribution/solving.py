"""Running a model on the CP-SAT solver: reproducible, and stopped within a moment when asked.

One search worker, a fixed seed and a limit in the solver's own deterministic units make the same model give the same
answer everywhere; no clock decides anything.
"""

from __future__ import annotations

import threading
from collections.abc import Callable
from dataclasses import dataclass, replace
from enum import Enum
from math import ceil

from baywright.planner.distribution.flow import Value
from baywright.planner.distribution.solver import cp_model

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
    """The solver's answer: how to read its solution (None without one), a bound for what was minimised, effort."""

    verdict: Verdict
    value: Value | None = None
    bound: int = 0
    effort: float = 0.0


FIRST_EFFORT = 1.0
"""What the way that follows the linear relaxation gets before a question is put in the other way."""


def fit(model: cp_model.CpModel, effort: float, stop: Stop | None = None) -> Outcome:
    """Whether a model that minimises nothing has a solution.

    Following the linear relaxation settles ordinary questions at once. The rare one that it does not, many long rows
    of odd numbers, goes to the solver's usual way.
    """
    solver = _reading_all(min(effort, FIRST_EFFORT))
    solver.parameters.search_branching = cp_model.LP_SEARCH
    first = _outcome(solver, _run(solver, model, stop))
    rest = effort - first.effort
    if first.verdict is not Verdict.OPEN or rest <= 0 or (stop is not None and stop()):
        return first
    solver = _solver(rest)
    second = _outcome(solver, _run(solver, model, stop))
    return replace(second, effort=first.effort + second.effort)


def minimise(
    model: cp_model.CpModel, effort: float, stop: Stop | None = None, *, is_probed: bool = False, is_loose: bool = False
) -> Outcome:
    """The least that a model can have, within `effort` deterministic units.

    With `is_probed` the solver first tries what each choice brings and looks for cuts, which pays where few choices
    are left free. With `is_loose` it goes its usual way, which pays where the linear relaxation is far from the truth,
    as it is with shared drawers (100 boxes, 20 of them in pairs: proved in 0.2 units, else not in 6).
    """
    solver = _solver(effort) if is_loose else _reading_all(effort)
    if is_probed:
        solver.parameters.cut_level = 1
        solver.parameters.cp_model_probing_level = 2
    return _outcome(solver, _run(solver, model, stop))


def _reading_all(effort: float) -> cp_model.CpSolver:
    """A solver that reads the whole linear relaxation from the start and looks neither for cuts nor by probing.

    The relaxation of a flow is so close to the truth that this proves the least of priced models about ten times as
    fast as the solver's usual way (measured on runs of 28 to 300 boxes).
    """
    solver = _solver(effort)
    solver.parameters.linearization_level = 2
    solver.parameters.add_lp_constraints_lazily = False
    solver.parameters.root_lp_iterations = 10_000
    solver.parameters.cut_level = 0
    solver.parameters.cp_model_probing_level = 0
    return solver


def _solver(effort: float) -> cp_model.CpSolver:
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.random_seed = 1
    # The solver's own handler of Ctrl-C aborts the whole process when another thread gets the signal (measured).
    solver.parameters.catch_sigint_signal = False
    solver.parameters.max_deterministic_time = max(effort, 1e-3)
    return solver


def _outcome(solver: cp_model.CpSolver, status: cp_model.CpSolverStatus) -> Outcome:
    spent = round(float(solver.response_proto.deterministic_time), 6)  # the last digits differ from run to run
    if status == cp_model.INFEASIBLE:
        return Outcome(Verdict.NONE, effort=spent)
    bound = max(0, ceil(solver.best_objective_bound - 1e-6))
    if status == cp_model.OPTIMAL:
        return Outcome(Verdict.BEST, solver.value, bound, spent)
    if status == cp_model.FEASIBLE:
        return Outcome(Verdict.FOUND, solver.value, bound, spent)
    return Outcome(Verdict.OPEN, None, bound, spent)


def _run(solver: cp_model.CpSolver, model: cp_model.CpModel, stop: Stop | None) -> cp_model.CpSolverStatus:
    if stop is None:
        return solver.solve(model)
    done = threading.Event()

    def watch() -> None:
        while not done.wait(POLL_SECONDS):
            if stop():
                solver.stop_search()

    watcher = threading.Thread(target=watch, name="planner-stop", daemon=True)
    watcher.start()
    try:
        return solver.solve(model)
    finally:
        done.set()
        watcher.join()
