"""Imports run downwards only, Qt stays in the window, and the engine touches no file, clock or chance.

The rules are read from the source text (`ast`), so an import in a function or under `TYPE_CHECKING` counts as well.
Every rule is first shown to fail on a snippet that breaks it.
"""

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

ENGINE = frozenset({"model", "workings", "planner", "making", "checks"})

LAYERS: dict[str, frozenset[str]] = {
    "model": frozenset(),
    "workings": frozenset({"model"}),
    "planner": frozenset({"model", "workings"}),
    "making": frozenset({"model", "workings", "planner"}),
    "checks": frozenset({"model", "workings", "planner", "making"}),
    "documents": ENGINE,
    "storage": ENGINE,
    "app": ENGINE | {"documents", "storage"},
    "cli": frozenset({"app", "model"}),
    "gui": frozenset({"app", "model"}),
}
"""Each package, and the packages of the program that it may import besides itself."""

PUTS_TOGETHER = frozenset({"bootstrap", "__main__"})
"""The modules that may import everything, the window only inside a function (no Qt for the command line)."""

HOMES = {
    "PySide6": frozenset({"gui"}),
    "shiboken6": frozenset({"gui"}),
    "openpyxl": frozenset({"documents", "storage"}),
    "matplotlib": frozenset({"documents"}),
    "ortools": frozenset({"planner", "making"}),
}
"""Outside libraries, and the packages in which alone they may be used."""

OUTSIDE_WORLD = frozenset(
    {
        *("fcntl", "glob", "io", "mmap", "os", "pathlib", "pickle", "shutil", "sqlite3", "tempfile", "zipfile"),
        *("datetime", "time", "secrets", "uuid"),
        *(
            "asyncio",
            "concurrent",
            "ctypes",
            "multiprocessing",
            "signal",
            "socket",
            "subprocess",
            "threading",
            "urllib",
        ),
        *("locale", "logging", "platform", "sys", "warnings"),
    }
)
"""Modules that the engine does not import: files, clock, processes, chance, the machine."""

OUTSIDE_CALLS = frozenset({"open", "input", "print", "eval", "exec", "__import__", "breakpoint"})

EXCEPTIONS: dict[tuple[str, str], str] = {
    (
        "baywright/planner/distribution/solving.py",
        "threading",
    ): "asks whether to stop while the solver runs; decides nothing else",
}
"""(file, imported module or called name) → why the engine may use it there. One that is no longer needed fails."""


def _imports(tree: ast.Module, module: tuple[str, ...], is_package: bool) -> Iterator[tuple[ast.AST, str, list[str]]]:
    """Every import as (node, absolute module name, names taken from it)."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            for alias in node.names:
                yield node, alias.name, []
        elif isinstance(node, ast.ImportFrom):
            steps_up = node.level - (1 if is_package else 0)
            base = list(module[: len(module) - steps_up]) if node.level else []
            name = ".".join([*base, *([node.module] if node.module else [])])
            names = [alias.name for alias in node.names]
            if name == "baywright":
                yield from ((node, f"baywright.{each}", []) for each in names)
            else:
                yield node, name, names


def _inside_functions(tree: ast.Module) -> set[ast.AST]:
    """All nodes that stand inside a function and so run only when it is called."""
    functions = (node for node in ast.walk(tree) if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef))
    return {inner for function in functions for inner in ast.walk(function)}


def _import_findings(home: str, imported: str, names: list[str], is_late: bool) -> Iterator[str]:
    """What is wrong with one import of `imported` in the package (or top module) `home`."""
    first, *rest = imported.split(".")
    if first == "baywright":
        target = rest[0] if rest else ""
        if target in PUTS_TOGETHER and home != "__main__":
            yield f"{imported} puts the program together and is imported by nothing below it"
        elif home in PUTS_TOGETHER:
            if target == "gui" and not is_late:
                yield "the window is imported inside a function only, so that the command line needs no Qt"
        elif home not in LAYERS:
            if target in LAYERS:
                yield f"{home} belongs to no layer and imports {imported}"
        elif target in LAYERS and target != home and target not in LAYERS[home]:
            # The window and the command line may name the engine's result types, but call only the session.
            only_types = bool(names) and all(name[:1].isupper() and not name.isupper() for name in names)
            if not (home in {"gui", "cli"} and target in ENGINE and only_types):
                yield f"{home} imports {imported}, which is not below it"
    elif first in HOMES and home not in HOMES[first]:
        starts_window = home in PUTS_TOGETHER and HOMES[first] == {"gui"} and is_late
        if not starts_window:
            yield f"{first} belongs to {', '.join(sorted(HOMES[first]))}, not to {home}"


def _purity_findings(tree: ast.Module, imported: list[str]) -> Iterator[tuple[str, str]]:
    """What in an engine module reaches outside, as (exception key, message)."""
    for name in imported:
        if name.split(".")[0] in OUTSIDE_WORLD:
            yield name.split(".")[0], f"the engine imports {name}"
    for node in ast.walk(tree):
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id in OUTSIDE_CALLS:
            yield node.func.id, f"the engine calls {node.func.id}()"
        yield from (("random", message) for message in _chance_findings(node))


def _chance_findings(node: ast.AST) -> Iterator[str]:
    """What in one node draws chance that a seed of ours does not repeat."""
    match node:
        case ast.ImportFrom(module="random"):
            yield "the engine takes names out of random; make a random.Random(seed)"
        case ast.Attribute(value=ast.Name(id="random"), attr=name) if name != "Random":
            yield f"random.{name} has no seed of ours; make a random.Random(seed)"
        case ast.Call(func=ast.Attribute(value=ast.Name(id="random"), attr="Random"), args=[], keywords=[]):
            yield "random.Random() without a seed differs on every run"


def findings(file: str, source: str, used: set[tuple[str, str]] | None = None) -> list[str]:
    """What breaks the rules in `source`, which stands at `file`, relative to src."""
    tree = ast.parse(source)
    path = Path(file).with_suffix("")
    is_package = path.name == "__init__"
    module = path.parts[:-1] if is_package else path.parts
    home = module[1] if len(module) > 1 else "__init__"
    late = _inside_functions(tree)
    found: list[str] = []
    imported: list[str] = []
    for node, name, names in _imports(tree, module, is_package):
        imported.append(name)
        found += _import_findings(home, name, names, node in late)
    if home in ENGINE:
        for key, message in _purity_findings(tree, imported):
            if (file, key) in EXCEPTIONS:
                (used if used is not None else set()).add((file, key))
            else:
                found.append(message)
    if home not in PUTS_TOGETHER and ("importlib.import_module" in source or "__import__(" in source):
        found.append("imports by text hide from this check")
    return [f"{file}: {message}" for message in found]


@pytest.fixture(scope="module")
def sources(checkout: Path) -> dict[str, str]:
    source_folder = checkout / "src"
    files = sorted((source_folder / "baywright").rglob("*.py"))
    return {file.relative_to(source_folder).as_posix(): file.read_text(encoding="utf-8") for file in files}


def test_the_whole_program_keeps_the_layers(sources: dict[str, str]) -> None:
    assert len(sources) > 20
    assert [finding for file, source in sources.items() for finding in findings(file, source)] == []


def test_every_package_has_its_layer(checkout: Path) -> None:
    packages = {folder.parent.name for folder in (checkout / "src" / "baywright").glob("*/__init__.py")}
    assert packages == set(LAYERS)


def test_every_exception_is_still_needed(sources: dict[str, str]) -> None:
    used: set[tuple[str, str]] = set()
    for file, source in sources.items():
        findings(file, source, used)
    assert used == set(EXCEPTIONS)
    assert all(reason.strip() for reason in EXCEPTIONS.values())


@pytest.mark.parametrize(
    ("file", "source"),
    [
        ("baywright/model/space.py", "from baywright.workings import derive"),
        ("baywright/model/space.py", "def late():\n    import baywright.gui"),
        ("baywright/workings/drawer.py", "from baywright.planner.distribution.flow import plan"),
        ("baywright/planner/distribution/flow.py", "from ...making import parts"),
        ("baywright/planner/__init__.py", "from ..app.session import Session"),
        ("baywright/storage/project.py", "from baywright import app"),
        (
            "baywright/documents/workbook.py",
            "from typing import TYPE_CHECKING\nif TYPE_CHECKING:\n    import baywright.app",
        ),
        ("baywright/cli/plan.py", "from baywright.planner import plan"),
        ("baywright/cli/plan.py", "from baywright.gui.window import Window"),
        ("baywright/gui/window.py", "import baywright.planner"),
        ("baywright/gui/window.py", "from baywright.storage import Folder"),
        ("baywright/app/session.py", "from baywright.bootstrap import run"),
        ("baywright/odds.py", "from baywright.gui import window"),
        ("baywright/bootstrap.py", "from baywright.gui import window"),
        ("baywright/app/session.py", "from PySide6.QtCore import QObject"),
        ("baywright/cli/plan.py", "def late():\n    import shiboken6"),
        ("baywright/__main__.py", "import PySide6"),
        ("baywright/app/session.py", "import openpyxl"),
        ("baywright/gui/window.py", "from matplotlib import pyplot"),
        ("baywright/making/sheet.py", "open('list.txt')"),
        ("baywright/checks/sag.py", "from pathlib import Path"),
        ("baywright/planner/distribution/flow.py", "import time"),
        ("baywright/planner/distribution/flow.py", "from datetime import date"),
        ("baywright/planner/distribution/flow.py", "import os.path"),
        ("baywright/planner/distribution/flow.py", "from random import shuffle"),
        ("baywright/planner/distribution/flow.py", "import random\nrandom.shuffle([])"),
        ("baywright/planner/distribution/flow.py", "import random\nrandom.Random()"),
        ("baywright/app/session.py", "import importlib\nimportlib.import_module('baywright.gui')"),
    ],
)
def test_a_breach_is_found(file: str, source: str) -> None:
    assert len(findings(file, source)) == 1


@pytest.mark.parametrize(
    ("file", "source"),
    [
        ("baywright/checks/sag.py", "from baywright.making import parts\nfrom baywright.model import plan"),
        ("baywright/planner/distribution/flow.py", "from . import bound\nfrom .bound import rows"),
        ("baywright/planner/distribution/flow.py", "import random\nchance = random.Random(7)"),
        ("baywright/gui/window.py", "from PySide6.QtCore import QObject\nfrom baywright.workings import Entry"),
        ("baywright/bootstrap.py", "def window():\n    from baywright.gui import window"),
        ("baywright/__main__.py", "from baywright.bootstrap import run"),
        ("baywright/storage/project.py", "import os\nopen('project')"),
    ],
)
def test_what_is_allowed_passes(file: str, source: str) -> None:
    assert findings(file, source) == []
