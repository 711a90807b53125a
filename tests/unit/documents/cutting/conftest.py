"""A sheet and bars laid out by hand."""

import pytest

from baywright.documents.cutting.sheet import Words
from baywright.model.cutting import (
    BarCutting,
    BarLayout,
    BarPiece,
    CutPiece,
    CuttingPlan,
    RestPiece,
    SawCut,
    SheetCutting,
    SheetLayout,
    Unplaced,
)
from baywright.model.length import LengthUnit
from baywright.model.making import Grain, Manufacture, Part


def piece(number: str, which: int, x: float, y: float, length: float, width: float, turned: bool = False) -> CutPiece:
    return CutPiece(part_number=number, piece=which, x_mm=x, y_mm=y, length_mm=length, width_mm=width, is_turned=turned)


def cut(number: int, at: float, across: bool, gives: tuple[str, ...]) -> SawCut:
    return SawCut(
        number=number, panel="sheet", x_mm=0, y_mm=0, length_mm=2500, width_mm=1250, is_across=across, at_mm=at,
        measure_mm=at, gives=gives,
    )  # fmt: skip


@pytest.fixture
def layout() -> SheetLayout:
    """Three large pieces, many low ones side by side, some slivers, a rest to keep and waste."""
    pieces = [piece("U1", i + 1, 10 + 723.2 * i, 10, 720, 380) for i in range(3)]
    pieces += [piece("D1", i + 1, 10 + 453.2 * (i // 7), 393.2 + 63.2 * (i % 7), 450, 60) for i in range(28)]
    pieces += [piece("D4", i + 1, 10 + 23.2 * i, 840, 20, 300, True) for i in range(5)]
    return SheetLayout(
        number="C1", sheet_id="full", sheet_name="from the yard", material_id="ply", length_mm=2500, width_mm=1250,
        trim_mm=10, is_owned=False, pieces=tuple(pieces), stages=3,
        rests=(
            RestPiece(x_mm=140, y_mm=840, length_mm=2340, width_mm=390, is_reusable=True),
            RestPiece(x_mm=2183, y_mm=10, length_mm=297, width_mm=380),
        ),
        cuts=tuple(cut(n, at, False, (f"strip {n}", "rest")) for n, at in enumerate((10, 390, 453, 516, 836), 1)),
    )  # fmt: skip


@pytest.fixture
def bars() -> BarCutting:
    layouts = [
        BarLayout(
            number=f"L{n + 1}", bar_id="strip", bar_name="maple", length_mm=2500, is_owned=n == 0,
            pieces=tuple(
                BarPiece(part_number=f"U{k}", piece=1, from_mm=k * 603.2, length_mm=600) for k in range(3 + n % 2)
            ),
            rest_mm=88 if n % 2 else 700, is_rest_reusable=n % 2 == 0,
        )
        for n in range(17)
    ]  # fmt: skip
    return BarCutting(id="edging", name="Edging 20 mm", layouts=tuple(layouts), bought=16, width_mm=22)


@pytest.fixture
def words() -> Words:
    names = {"U1": "Upright, outer", "D1": "Drawer side", "D4": "Box stop"}
    return Words("birch plywood 18 mm", LengthUnit.MILLIMETRE, names)


@pytest.fixture
def cutting_plan(layout: SheetLayout, bars: BarCutting) -> CuttingPlan:
    sheets = SheetCutting(
        material_id="ply", material="birch plywood 18 mm", thickness_mm=17.6, layouts=(layout, layout), bought=2,
        value=2, bound=1, unplaced=(Unplaced(part_number="T1", pieces=1, reason="longer than every sheet"),),
    )  # fmt: skip
    return CuttingPlan(sheets=(sheets,), bars=(bars,), remarks=("A remark.",))


@pytest.fixture
def made() -> Manufacture:
    def part(number: str, name: str, quantity: int, length: float, width: float) -> Part:
        return Part(
            number=number, name=name, quantity=quantity, length_mm=length, width_mm=width, thickness_mm=18,
            material="birch plywood 18 mm", grain=Grain.LENGTH, mirrored=quantity // 2,
        )  # fmt: skip

    parts = (part("U1", "Upright, outer", 3, 720, 380), part("D1", "Drawer side", 28, 450, 60))
    return Manufacture(parts=parts, hardware=(), schedule=())
