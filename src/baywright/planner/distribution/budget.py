"""The effort of one run: what is left of it, what was spent, and the caller's wish to stop."""

from __future__ import annotations

from dataclasses import dataclass

from baywright.planner.distribution.solver import cp_model
from baywright.planner.distribution.solving import Outcome, Stop, fit, minimise


class StoppedError(Exception):
    """The caller asked to stop."""


@dataclass
class Budget:
    """The effort left, in deterministic units of the solver, and the caller's wish to stop."""

    left: float
    stop: Stop | None = None
    spent: float = 0.0

    def check(self) -> None:
        """Raise `StoppedError` where the caller wants to stop."""
        if self.stop is not None and self.stop():
            raise StoppedError

    def fit(self, model: cp_model.CpModel, share: float) -> Outcome:
        """Whether a model has a solution, asked with a share of what is left."""
        return self._count(fit(model, self.left * share, self.stop))

    def minimise(
        self, model: cp_model.CpModel, share: float, *, is_probed: bool = False, is_loose: bool = False
    ) -> Outcome:
        """The least of a model, sought with a share of what is left."""
        return self._count(minimise(model, self.left * share, self.stop, is_probed=is_probed, is_loose=is_loose))

    def spend(self, effort: float) -> None:
        """Count effort that was spent without the solver."""
        self.left = max(0.0, self.left - effort)
        self.spent += effort

    def _count(self, outcome: Outcome) -> Outcome:
        self.spend(outcome.effort)
        if outcome.value is None:
            self.check()
        return outcome
