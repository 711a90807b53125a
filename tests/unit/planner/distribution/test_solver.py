"""The solver is imported when it is first used, never by importing the planner."""

import subprocess
import sys
from pathlib import Path

import baywright.planner


def test_modules_that_use_the_solver_do_not_evaluate_their_annotations() -> None:
    folder = Path(baywright.planner.__file__).parent
    users = [path for path in folder.rglob("*.py") if "cp_model" in path.read_text(encoding="utf-8")]
    users = [path for path in users if path.name != "solver.py"]
    assert len(users) > 5
    for path in users:
        text = path.read_text(encoding="utf-8")
        assert "from ortools" not in text, f"{path.name}: take cp_model from baywright.planner.distribution.solver"
        assert "from __future__ import annotations" in text, f"{path.name}: its annotations would import the solver"


def test_importing_the_planner_does_not_import_the_solver() -> None:
    code = "import sys, baywright.planner; print('ortools' in sys.modules)"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, timeout=60, check=True)
    assert done.stdout.strip() == "False"
