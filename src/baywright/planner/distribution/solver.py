"""The solver, imported when it is first used.

It takes longer to import than all the rest of the program; nobody who opens the window, lists a project or exports a
workbook should wait for it. Law: the planner's modules take `cp_model` from here, and touch it only inside functions
(annotations are not evaluated).
"""

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from ortools.sat.python import cp_model
else:

    class _Late:
        """Stands for the module until somebody needs something of it."""

        def __getattr__(self, name: str) -> object:
            from ortools.sat.python import cp_model as solver

            found = getattr(solver, name)
            setattr(self, name, found)
            return found

    cp_model = _Late()

__all__ = ["cp_model", "warm_up"]


def warm_up() -> None:
    """Import the solver now, so that the first search need not wait for it."""
    _ = cp_model.CpModel
