"""Sheets against published numbers of two-dimensional bin packing with cuts from edge to edge.

Sources: `tests.benchmarks.publicsets`. Marks: V2, proved optima and best known values as they stand in the files; each
layout is really sawn here, and where the bound meets the number of sheets the optimum is proved anew.
"""

from pathlib import Path

import pytest

from baywright.making.cutting.packing import Board, Packing, Piece, Rules, pack
from tests.benchmarks.publicsets import PROVED_SHEETS, SheetSet, proved_sheet_sets, sheet_sets, why_missing
from tests.oracle.saw import Lying, Plank, Wanted, check_parts, cut_apart

EFFORT = 3_000
TURNED = (False, True)


def packed(instance: SheetSet, may_turn: bool, effort: int) -> Packing:
    """The engine's answer, every sheet of it sawn."""
    pieces = [Piece(n, length, width, may_turn) for n, (length, width) in enumerate(instance.parts)]
    packing = pack(pieces, [Board(0, *instance.sheet)], Rules(), effort=effort)
    sawn = [
        cut_apart(Plank(*instance.sheet), [Lying(p.piece, p.x, p.y, p.length, p.width) for p in layout.placed])
        for layout in packing.layouts
    ]
    wanted = [Wanted(piece.id, piece.length, piece.width, may_turn) for piece in pieces]
    check_parts(wanted, [part for each in sawn for part in each.parts])
    assert len(packing.layouts) == packing.cost
    return packing


@pytest.fixture(scope="module")
def proved(checkout: Path) -> dict[str, SheetSet]:
    found = proved_sheet_sets(checkout)
    if not found:
        pytest.skip(why_missing(checkout))
    return found


@pytest.mark.parametrize("may_turn", TURNED)
@pytest.mark.parametrize("name", list(PROVED_SHEETS))
def test_the_proved_number_of_sheets_is_reached(proved: dict[str, SheetSet], name: str, may_turn: bool) -> None:
    packing = packed(proved[name], may_turn, EFFORT)
    optimum = PROVED_SHEETS[name][may_turn]
    assert packing.cost == optimum
    assert packing.bound <= optimum


@pytest.mark.parametrize("may_turn", TURNED)
def test_no_bound_is_above_a_best_known_number(checkout: Path, may_turn: bool) -> None:
    known = {name: each for name, each in sheet_sets(checkout).items() if each.best_known}
    if not known:
        pytest.skip(f"{why_missing(checkout)}; best known numbers stand in the file only")
    problem = "three_stage_rotation" if may_turn else "three_stage_oriented"
    for name, instance in list(known.items())[::4]:
        packing = packed(instance, may_turn, effort=1)
        assert packing.bound <= instance.best_known[problem], name
