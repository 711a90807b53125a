"""Which bars to take: the cheapest numbers of bars of every kind that no certificate forbids.

Law: the bound is exact. It is worked out in whole numbers, and where the solver is not done its own bound stands.
"""

from dataclasses import dataclass
from math import ceil
from typing import Any

from baywright.making.cutting.bars.budget import Budget
from baywright.making.cutting.bars.certificate import Certificate
from baywright.making.cutting.bars.task import Task

SOLVER_EFFORT = 0.03
"""The most that one question may take, in the solver's deterministic seconds; nobody can stop it meanwhile."""
STEPS_A_UNIT = 2_500.0
STEPS_TO_BEGIN = 8.0


@dataclass(frozen=True)
class Chosen:
    """Numbers of bars of each kind and of pieces left out of each length (no numbers where the solver found none in
    time), what they count, and what nothing counts less than."""

    bars: tuple[int, ...]
    short: tuple[int, ...]
    value: int
    bound: int


@dataclass(frozen=True)
class Cap:
    """What the bars together must not go over: so much for a bar of each kind, and the most."""

    costs: tuple[int, ...]
    most: int


class Choice:
    """The certificates found so far, and the choices that were tried and did not do."""

    def __init__(self, task: Task, cap: Cap | None = None) -> None:
        self._task = task
        self._cap = cap
        self._certificates: list[Certificate] = []
        self._tried: list[Chosen] = []
        self._refuted: list[Chosen] = []

    def learn(self, certificate: Certificate) -> None:
        """Keep an inequality."""
        if certificate.worth:
            self._certificates.append(certificate)

    def try_again(self) -> bool:
        """Offer again what was left; False where nothing was."""
        was_left = bool(self._tried)
        self._tried = []
        return was_left

    def leave(self, chosen: Chosen) -> None:
        """Do not offer a choice again, nor one with no more of anything."""
        self._tried.append(chosen)

    def refute(self, chosen: Chosen) -> None:
        """Never offer a choice again, nor one with no more of anything: it was shown not to hold the pieces."""
        self._refuted.append(chosen)

    def cheapest(self, budget: Budget, below: int, *, proof: bool) -> Chosen | None:
        """The cheapest choice that counts less than `below`, of these the one with the shortest bars; None: none.

        For a `proof` choices that were tried are offered as well.
        """
        if len(self._task.kinds) == 1 and not any(self._task.short_costs):
            return self._of_one_kind(below, proof)
        return self._by_solver(budget, below, proof)

    def _of_one_kind(self, below: int, proof: bool) -> Chosen | None:
        kind = self._task.kinds[0]
        bars = max((-(-each.worth // each.most[0]) for each in self._certificates), default=0)
        bars = max([bars, *(left.bars[0] + 1 for left in self._left_out(proof))])
        if bars * kind.cost >= below or bars > kind.available:
            return None
        return Chosen((bars,), (0,) * len(self._task.lengths), bars * kind.cost, bars * kind.cost)

    def _left_out(self, proof: bool) -> list[Chosen]:
        return self._refuted if proof else self._refuted + self._tried

    def _by_solver(self, budget: Budget, below: int, proof: bool) -> Chosen | None:
        from ortools.sat.python import cp_model  # late: it takes longer to import than most questions to answer

        task = self._task
        model = cp_model.CpModel()
        bars = [model.new_int_var(0, kind.available, "") for kind in task.kinds]
        short = [
            model.new_int_var(0, count if cost else 0, "")
            for count, cost in zip(task.counts, task.short_costs, strict=True)
        ]
        for each in self._certificates:
            held = sum(most * n for most, n in zip(each.most, bars, strict=True))
            missing = sum(price * n for price, n in zip(each.prices, short, strict=True))
            model.add(held + missing >= each.worth)
        for tried in self._left_out(proof):
            more = []
            for variables, numbers in ((bars, tried.bars), (short, tried.short)):
                for variable, n in zip(variables, numbers, strict=True):
                    is_more = model.new_bool_var("")
                    model.add(variable >= n + 1).only_enforce_if(is_more)
                    more.append(is_more)
            model.add_bool_or(more)
        if self._cap is not None:
            model.add(sum(cost * n for cost, n in zip(self._cap.costs, bars, strict=True)) <= self._cap.most)
        value = sum(kind.cost * n for kind, n in zip(task.kinds, bars, strict=True)) + sum(
            cost * n for cost, n in zip(task.short_costs, short, strict=True)
        )
        model.add(value <= below - 1)
        model.minimize(value)
        is_found, is_settled, first = _solved(model, budget)
        if not is_found:
            # Not settled within the effort, which nobody has seen yet: nothing is offered, and nothing is said.
            return None if is_settled else Chosen((), (), below, ceil(first.best_objective_bound - 1e-6))
        least = round(first.objective_value)
        bound = least if is_settled else min(least, ceil(first.best_objective_bound - 1e-6))
        model.add(value <= least)
        model.minimize(sum(kind.length * n for kind, n in zip(task.kinds, bars, strict=True)))
        is_found, _, second = _solved(model, budget)
        solved = second if is_found else first
        return Chosen(tuple(map(solved.value, bars)), tuple(map(solved.value, short)), least, bound)


def _solved(model: Any, budget: Budget) -> tuple[bool, bool, Any]:
    """Whether a solution was found, whether it is the least or none exists, and the solver to read it from."""
    from ortools.sat.python import cp_model

    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.random_seed = 1
    # The solver's own handler of Ctrl-C aborts the whole process when another thread gets the signal.
    solver.parameters.catch_sigint_signal = False
    solver.parameters.max_deterministic_time = SOLVER_EFFORT
    status = solver.solve(model)
    budget.spend(STEPS_A_UNIT * round(float(solver.response_proto.deterministic_time), 6) + STEPS_TO_BEGIN)
    is_found = status in (cp_model.OPTIMAL, cp_model.FEASIBLE)
    return is_found, status in (cp_model.OPTIMAL, cp_model.INFEASIBLE), solver
