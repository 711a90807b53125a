"""The public sets of sheets, cut by the engine: `python -m tests.benchmarks sheets [TENTHS [EVERY [STAGES]]]`.

TENTHS of a second of the processor an instance (20), EVERY how many-th instance (1: all), STAGES (0: no limit). Each
layout is cut apart by the tests' own saw. The best known numbers are of three stages; where rectpack is installed, the
fewest sheets of its guillotine variants are compared on every instance that is not proved, counting only those of
its layouts that a saw can cut. Sources: `tests.benchmarks.publicsets`.
"""

import time
from collections import defaultdict
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from baywright.making.cutting.packing import Board, Packing, Piece, Rules, pack
from tests.benchmarks.measuring import heading, row
from tests.benchmarks.publicsets import PROVED_SHEETS, SheetSet, proved_sheet_sets, sheet_sets, why_missing
from tests.benchmarks.variants import fewest_sawable, is_installed
from tests.oracle.saw import Lying, Plank, Wanted, check_parts, cut_apart

CHECKOUT = Path(__file__).resolve().parent.parent.parent
TURNED = {False: "oriented", True: "rotation"}


@dataclass(frozen=True)
class Outcome:
    """One instance: sheets used, the bound, the processor's seconds, and what is best known (None: not told)."""

    name: str
    sheets: int
    bound: int
    seconds: float
    known: int | None
    known_free: int | None


def main(tenths: int = 20, every: int = 1, stages: int = 0) -> None:
    """Pieces as they lie, then turned at will; then the proved instances."""
    sets = list(sheet_sets(CHECKOUT).values())[::every]
    if not sets:
        print(why_missing(CHECKOUT))
    for turning in (False, True):
        outcomes = [measured(each, turning, stages or None, tenths / 10) for each in sets]
        _print_classes(f"{'turned at will' if turning else 'as they lie'}, stages: {stages or 'no limit'}", outcomes)
        _print_worst(outcomes)
        if is_installed():
            _print_variants({each.name: each for each in sets}, outcomes, turning)
    _print_proved(tenths / 10)


def measured(given: SheetSet, turning: bool, stages: int | None, seconds: float) -> Outcome:
    """Pack an instance within so many seconds of the processor, saw it apart, and tell what came out."""
    start = time.process_time()

    def is_late() -> bool:
        return time.process_time() - start > seconds

    packing = packed(given, turning, stages, is_late)
    taken = time.process_time() - start
    sawn_apart(given, turning, stages, packing)
    known = given.best_known.get(f"three_stage_{TURNED[turning]}")
    free = given.best_known.get(f"free_{TURNED[turning]}")
    return Outcome(given.name, packing.cost, packing.bound, taken, known, free)


def packed(given: SheetSet, turning: bool, stages: int | None, stop: Callable[[], bool]) -> Packing:
    """The engine's packing of an instance."""
    pieces = [Piece(number, *part, turning) for number, part in enumerate(given.parts)]
    return pack(pieces, [Board(0, *given.sheet)], Rules(stages), effort=None, stop=stop)


def sawn_apart(given: SheetSet, turning: bool, stages: int | None, packing: Packing) -> None:
    """Every sheet is cut apart, every part comes off once, and no limit of stages is broken."""
    results = [
        cut_apart(
            Plank(*given.sheet),
            [Lying(each.piece, each.x, each.y, each.length, each.width) for each in layout.placed],
        )
        for layout in packing.layouts
    ]
    wanted = [Wanted(number, *part, turning) for number, part in enumerate(given.parts)]
    check_parts(wanted, [part for result in results for part in result.parts])
    assert packing.cost == len(packing.layouts)
    assert stages is None or all(result.stages_before_trimming <= stages for result in results)


def _print_classes(title: str, outcomes: list[Outcome]) -> None:
    print(f"\n{title}\n")
    print(heading("class", "instances", "sheets", "best known, three stages", "bound", "proved", "seconds"))
    groups: dict[str, list[Outcome]] = defaultdict(list)
    for outcome in outcomes:
        groups[outcome.name.split("_")[0]].append(outcome)
    for name, group in [*groups.items(), ("all", outcomes)]:
        known = sum(each.known or 0 for each in group)
        proved = sum(each.sheets == each.bound for each in group)
        seconds = f"{sum(each.seconds for each in group):.0f}"
        sheets, bound = sum(each.sheets for each in group), sum(each.bound for each in group)
        print(row(name, len(group), sheets, known, bound, proved, seconds), flush=True)


def _print_worst(outcomes: list[Outcome]) -> None:
    changes = [(each.name, each.sheets - each.known) for each in outcomes if each.known is not None]
    more = [f"{name} +{change}" for name, change in changes if change > 0]
    fewer = [f"{name} {change}" for name, change in changes if change < 0]
    above = [
        each.name
        for each in outcomes
        if any(known is not None and each.bound > known for known in (each.known, each.known_free))
    ]
    print(f"\nmore than best known: {', '.join(more) or 'none'}")
    print(f"fewer: {', '.join(fewer) or 'none'}")
    print(f"bound above what is known: {', '.join(above) or 'none'}")


def _print_variants(sets: dict[str, SheetSet], outcomes: list[Outcome], turning: bool) -> None:
    open_ones = [each for each in outcomes if each.sheets > each.bound]
    beaten, fewer_than = [], 0
    for outcome in open_ones:
        theirs = fewest_sawable(sets[outcome.name], turning)
        fewer_than += theirs is None or outcome.sheets < theirs
        if theirs is not None and theirs < outcome.sheets:
            beaten.append(f"{outcome.name} ({theirs})")
    print(
        f"rectpack's guillotine variants on the {len(open_ones)} instances not proved: fewer sheets than ours on "
        f"{', '.join(beaten) or 'none'}; more on {fewer_than}"
    )


def _print_proved(seconds: float) -> None:
    sets = proved_sheet_sets(CHECKOUT)
    wrong = []
    for name, given in sets.items():
        found = tuple(measured(given, turning, None, seconds).sheets for turning in (False, True))
        if found != PROVED_SHEETS[name]:
            wrong.append(f"{name}: {found} and not {PROVED_SHEETS[name]}")
    print(f"\nproved instances: {len(sets) - len(wrong)} of {len(sets)} equal; {'; '.join(wrong) or 'none differs'}")
