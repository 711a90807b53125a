"""Ratchets: small files and functions, telling names, the repository's shape, and nothing of a machine in the texts."""

import ast
import re
import tomllib
from collections.abc import Iterator
from pathlib import Path

import pytest

MOST_LINES = 400
MOST_LINES_OF_A_TEST = 600
SMALL_FUNCTION_LINES = 40
LEAST_SHARE_OF_SMALL_FUNCTIONS = 0.95

TOP_LEVEL = frozenset({"README.md", "DEVELOPERS.md", "pyproject.toml", "src", "tests", "resources", "installer"})
MADE_BY_TOOLS = frozenset(
    {"build", "__pycache__", ".git", ".venv", ".mypy_cache", ".pytest_cache", ".ruff_cache", ".hypothesis"}
)
SAYS_NOTHING = frozenset(
    {"util", "utils", "utility", "helper", "helpers", "manager", "common", "misc", "stuff", "tools"}
)
MODULE_NAME = re.compile(r"[a-z]+(_[a-z]+)?")

FOLDERS_OF_ONE_MACHINE = re.compile(r"(?<![\w.$}])/(?:work|farm|root|mnt|home/\w+|Users/\w+|opt/\w+)(?:/|\b)")
"""Absolute folders that exist on one machine only; what `sh` starts with, /usr and /dev are everywhere."""


def _is_ours(path: Path, top: Path) -> bool:
    parts = path.relative_to(top).parts
    return not any(part in MADE_BY_TOOLS or part.endswith(".egg-info") for part in parts)


def _functions(tree: ast.Module) -> Iterator[tuple[str, int]]:
    for node in ast.walk(tree):
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
            yield node.name, (node.end_lineno or node.lineno) - node.lineno + 1


def long_functions(sources: dict[str, str]) -> tuple[list[str], float]:
    """The functions over the small size, longest first, and the share of those that are not."""
    lengths = [
        (length, f"{file}: {name}")
        for file, source in sources.items()
        for name, length in _functions(ast.parse(source))
    ]
    over = sorted((pair for pair in lengths if pair[0] > SMALL_FUNCTION_LINES), reverse=True)
    return [f"{name} ({length} lines)" for length, name in over], 1 - len(over) / max(1, len(lengths))


def machine_paths(text: str) -> list[str]:
    """The lines of a text that name a folder of one machine."""
    return [line.strip() for line in text.splitlines() if FOLDERS_OF_ONE_MACHINE.search(line)]


@pytest.fixture(scope="module")
def sources(checkout: Path) -> dict[str, str]:
    files = sorted((checkout / "src" / "baywright").rglob("*.py"))
    return {file.relative_to(checkout).as_posix(): file.read_text(encoding="utf-8") for file in files}


@pytest.fixture(scope="module")
def texts(checkout: Path) -> dict[str, str]:
    """Every text of the repository that a person or a program wrote for it."""
    found: dict[str, str] = {}
    for path in sorted(checkout.rglob("*")):
        if _is_ours(path, checkout) and path.is_file():
            try:
                found[path.relative_to(checkout).as_posix()] = path.read_text(encoding="utf-8")
            except UnicodeDecodeError:
                continue
    return found


def test_no_source_file_is_too_long(sources: dict[str, str]) -> None:
    assert {file: lines for file, text in sources.items() if (lines := len(text.splitlines())) > MOST_LINES} == {}


def test_no_test_file_is_too_long(checkout: Path) -> None:
    lengths = {file.name: len(file.read_text(encoding="utf-8").splitlines()) for file in checkout.glob("tests/**/*.py")}
    assert {name: length for name, length in lengths.items() if length > MOST_LINES_OF_A_TEST} == {}


def test_nearly_all_functions_are_small(sources: dict[str, str]) -> None:
    over, share = long_functions(sources)
    assert share >= LEAST_SHARE_OF_SMALL_FUNCTIONS, over


def test_the_count_of_long_functions_can_fail() -> None:
    body = "\n".join("    x = 1" for _ in range(SMALL_FUNCTION_LINES))
    over, share = long_functions({"a.py": f"def long() -> None:\n{body}\ndef short() -> None:\n    pass\n"})
    assert over == [f"a.py: long ({SMALL_FUNCTION_LINES + 1} lines)"]
    assert share == 0.5


def test_every_module_opens_with_a_docstring(sources: dict[str, str]) -> None:
    assert [file for file, source in sources.items() if not ast.get_docstring(ast.parse(source))] == []


def test_module_names_say_what_they_hold(sources: dict[str, str]) -> None:
    names = {file: Path(file).stem for file in sources} | {
        f"{file} (folder)": Path(file).parent.name for file in sources
    }
    assert [file for file, name in names.items() if name in SAYS_NOTHING] == []
    ordinary = {file: name for file, name in names.items() if name not in {"__init__", "__main__"}}
    assert [file for file, name in ordinary.items() if not MODULE_NAME.fullmatch(name)] == []


def test_the_top_level_holds_only_what_belongs_there(checkout: Path) -> None:
    names = {path.name for path in checkout.iterdir()} - MADE_BY_TOOLS
    assert {name for name in names if not name.startswith(".")} == TOP_LEVEL


def test_no_text_names_a_folder_of_one_machine(texts: dict[str, str]) -> None:
    assert len(texts) > 40
    assert {file: lines for file, text in texts.items() if (lines := machine_paths(text))} == {}


@pytest.mark.parametrize("line", ["see " + "/ho" + "me/someone/x", "cd " + "/wo" + "rk/main", "'/ro" + "ot/.cache'"])
def test_a_folder_of_one_machine_is_found(line: str) -> None:
    assert machine_paths(f"first\n{line}\n") == [line]


@pytest.mark.parametrize(
    "line", ["#!/usr/bin/env bash", "resources/home/page", "/".join(("src", "work", "plan")), "a home/work balance"]
)
def test_other_paths_are_not_taken_for_one(line: str) -> None:
    assert machine_paths(line) == []


def test_packages_are_pinned_by_name_and_version_alone(checkout: Path) -> None:
    """No registry's address, no local folder: whoever installs brings their own sources."""
    pin = re.compile(r"#.*|-r requirements\.txt|[A-Za-z0-9._-]+==[A-Za-z0-9.]+")
    for file in sorted((checkout / "installer").glob("requirements*.txt")):
        lines = file.read_text(encoding="utf-8").splitlines()
        assert len(lines) > 10
        assert [line for line in lines if not pin.fullmatch(line)] == []


def test_pinned_versions_cover_what_the_project_asks_for(checkout: Path) -> None:
    project = tomllib.loads((checkout / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    pinned = "".join(file.read_text(encoding="utf-8") for file in (checkout / "installer").glob("requirements*.txt"))
    wanted = [*project["dependencies"], *project["optional-dependencies"]["development"]]
    asked = [re.split(r"[^A-Za-z0-9._-]", requirement, maxsplit=1)[0] for requirement in wanted]

    def same_spelling(text: str) -> str:
        return text.lower().replace("_", "-")

    missing = [name for name in asked if f"\n{same_spelling(name)}==" not in same_spelling(pinned)]
    assert missing == [], "run installer/pin"
