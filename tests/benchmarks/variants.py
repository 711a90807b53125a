"""All guillotine variants of the library rectpack, as a comparison; where it is not installed there is none.

It joins free sections again, so that some of its layouts cannot be cut by a saw: only those that the tests' saw cuts
apart are counted.
"""

import importlib
import importlib.util
from collections import defaultdict
from collections.abc import Iterator
from typing import Any

from tests.benchmarks.publicsets import SheetSet
from tests.oracle.saw import Lying, NotSawn, Plank, cut_apart

SORTED_BY = ("SORT_AREA", "SORT_PERI", "SORT_DIFF", "SORT_SSIDE", "SORT_LSIDE", "SORT_RATIO")
FILLED_BY = ("BFF", "BBF", "BNF")


def is_installed() -> bool:
    """Whether there is anything to compare with."""
    return importlib.util.find_spec("rectpack") is not None


def fewest_sawable(given: SheetSet, turning: bool) -> int | None:
    """The fewest sheets of all variants, of those layouts that can be cut; None where none can."""
    counts = [
        len(sheets) for sheets in _layouts(given, turning) if all(_is_sawable(given, sheet) for sheet in sheets)
    ]  # fmt: skip
    return min(counts, default=None)


def _is_sawable(given: SheetSet, sheet: list[Lying]) -> bool:
    try:
        cut_apart(Plank(*given.sheet), sheet)
    except NotSawn:
        return False
    return True


def _layouts(given: SheetSet, turning: bool) -> Iterator[list[list[Lying]]]:
    library: Any = importlib.import_module("rectpack")
    algorithms = [getattr(library, name) for name in dir(library) if name.startswith("Guillotine")]
    for algorithm in algorithms:
        for sorted_by in SORTED_BY:
            for filled_by in FILLED_BY:
                packer = library.newPacker(
                    mode=library.PackingMode.Offline,
                    bin_algo=getattr(library.PackingBin, filled_by),
                    pack_algo=algorithm,
                    sort_algo=getattr(library, sorted_by),
                    rotation=turning,
                )
                packer.add_bin(*given.sheet, count=len(given.parts))
                for number, (length, width) in enumerate(given.parts):
                    packer.add_rect(length, width, rid=number)
                packer.pack()
                sheets: dict[int, list[Lying]] = defaultdict(list)
                for sheet, x, y, length, width, number in packer.rect_list():
                    sheets[sheet].append(Lying(number, x, y, length, width))
                if sum(len(sheet) for sheet in sheets.values()) == len(given.parts):
                    yield list(sheets.values())
