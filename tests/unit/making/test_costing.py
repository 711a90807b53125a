"""Costs and masses against sums made by hand: two bays of four drawers and a shelf bay."""

from decimal import Decimal

import pytest

from baywright.making import manufacture
from baywright.making.costing import cost, taxed
from baywright.making.cutting.plan import cutting_plan
from baywright.making.purchases import OWNED
from baywright.making.shares import divided
from baywright.model.catalogue import Adjustment, CatalogueItem, ExtraItem, HardwareKind, HardwareStock
from baywright.model.cost import Cost, CostGroup
from baywright.model.cutting import BarCutting, BarLayout, CuttingPlan, SheetCutting, SheetLayout, Unplaced
from baywright.model.making import Manufacture
from baywright.model.money import Pricing
from baywright.model.project import Project
from baywright.model.stock import Bar, BoardRole, Material, Sheet, Stock

CENT = Decimal("0.01")


@pytest.fixture
def priced(two_bays: Project) -> Project:
    """The run with a material for the drawers, sheets at a price, runners and pins in the catalogue."""
    sides = Material(id="ply-15", name="Plywood 15", nominal_mm=15, density_kg_m3=700, roles=(BoardRole.DRAWER_SIDE,))
    sheets = (
        Sheet(id="full", material_id="ply-15", name="full", price=Decimal("52.30")),
        Sheet(id="rest", material_id="ply-15", length_mm=900, width_mm=600, quantity=1, is_owned=True),
    )
    catalogue = (
        CatalogueItem(
            id="runner", kind=HardwareKind.RUNNER, name="Runner 350", length_mm=350, thickness_mm=12.7,
            load_class_kg=45, price=Decimal("11.95"), mass_kg=0.9,
        ),
        CatalogueItem(
            id="pin", kind=HardwareKind.PIN, name="Pin", diameter_mm=5, pack_size=20, price=Decimal("3.45"),
            mass_kg=0.002,
        ),
    )  # fmt: skip
    return two_bays.replace(
        stock=Stock(materials=(sides,), sheets=sheets), hardware=HardwareStock(catalogue=catalogue),
        pricing=Pricing(vat_percent=Decimal(19)),
    )  # fmt: skip


def _layout(sheet_id: str, length_mm: float = 2500, width_mm: float = 1250, *, is_owned: bool = False) -> SheetLayout:
    return SheetLayout(
        number="C1", sheet_id=sheet_id, sheet_name="", material_id="ply-15", length_mm=length_mm, width_mm=width_mm,
        trim_mm=10, is_owned=is_owned, pieces=(), rests=(), cuts=(), stages=2,
    )  # fmt: skip


def _plan(*layouts: SheetLayout, unplaced: tuple[Unplaced, ...] = (), bars: tuple[BarCutting, ...] = ()) -> CuttingPlan:
    sheets = SheetCutting(
        material_id="ply-15", material="Plywood 15", thickness_mm=15, layouts=layouts, unplaced=unplaced
    )  # fmt: skip
    return CuttingPlan(sheets=(sheets,), bars=bars)


@pytest.fixture
def made(priced: Project) -> Manufacture:
    return manufacture(priced)


@pytest.fixture
def two_sheets(priced: Project, made: Manufacture) -> Cost:
    """Two sheets bought and the offcut used."""
    return cost(priced, made, _plan(_layout("full"), _layout("full"), _layout("rest", 900, 600, is_owned=True)))


def test_who_sells_a_sheet_is_told_where_it_is_bought(priced: Project, made: Manufacture) -> None:
    sheets = tuple(sheet.replace(supplier=f"Yard of {sheet.id}") for sheet in priced.stock.sheets)
    project = priced.replace(stock=priced.stock.replace(sheets=sheets))
    told = cost(project, made, _plan(_layout("full"), _layout("rest", 900, 600, is_owned=True))).lines[:2]
    assert [(line.supplier, line.note) for line in told] == [("Yard of full", ""), ("", OWNED)]


def test_sheets_runners_and_pins_are_added_up_by_hand(two_sheets: Cost) -> None:
    """2 × 52.30 + 8 × 11.95 + 3.45 = 104.60 + 95.60 + 3.45 = 203.65 with 19 % tax: 171.13 and 32.52 of tax."""
    lines = {line.name: line for line in two_sheets.lines}
    assert lines["Plywood 15, sheet 2500 mm × 1250 mm"].cost == Decimal("104.60")
    assert (two_sheets.net, two_sheets.vat, two_sheets.gross) == (
        Decimal("171.13"), Decimal("32.52"), Decimal("203.65"),
    )  # fmt: skip
    assert not two_sheets.is_complete


def test_an_offcut_that_is_owned_costs_nothing_and_says_so(two_sheets: Cost) -> None:
    (offcut,) = [line for line in two_sheets.lines if line.number == "rest"]
    assert (offcut.cost, offcut.quantity, offcut.note) == (Decimal(0), 1, "owned already, costs nothing")
    assert not any("offcut" in name for name in two_sheets.missing)


def test_what_has_no_price_is_named_and_not_in_the_sum(two_sheets: Cost) -> None:
    assert "Wood screw, 4 × 40 mm" in two_sheets.missing
    assert "Wall fixing, screw and anchor to suit the wall" in two_sheets.missing
    without_price = [line for line in two_sheets.lines if line.unit_price is None]
    assert all(line.cost is None for line in without_price)
    assert len(two_sheets.missing) == len(without_price)


def test_two_equal_bays_of_drawers_share_their_material_and_runners(two_sheets: Cost) -> None:
    """Drawer sides and runners: half each, 52.30 and 47.80; the pins are the shelf bay's. Nothing else has a price."""
    shares = {share.name: share.cost for share in two_sheets.by_bay}
    assert shares == {"Bay 1": Decimal("100.10"), "Bay 2": Decimal("100.10"), "Shelf bay": Decimal("3.45")}


def test_masses_are_those_of_boards_and_weighed_hardware(priced: Project, made: Manufacture, two_sheets: Cost) -> None:
    """8 pairs of 0.9 kg and 12 pins of 2 g weigh 7.224 kg; the boards are added up part by part."""
    boards = sum(part.quantity * (part.mass_kg or 0) for part in made.parts)
    assert two_sheets.mass_kg == pytest.approx(boards + 7.224)
    assert sum(share.mass_kg for share in two_sheets.by_bay) == pytest.approx(two_sheets.mass_kg)
    assert sum(share.mass_kg for share in two_sheets.by_material) == pytest.approx(two_sheets.mass_kg)
    assert "Wood screw" in two_sheets.not_weighed
    assert "Shelf pin" not in two_sheets.not_weighed


def test_drawer_sides_weigh_what_their_volume_does(two_sheets: Cost) -> None:
    """16 sides and 16 rails: (350 + 404) × 60 × 15 mm × 16 × 700 kg/m³ = 7.600 kg."""
    (share,) = [share for share in two_sheets.by_material if share.name == "Plywood 15"]
    assert share.mass_kg == pytest.approx(7.60032)
    assert share.cost == Decimal("104.60")


def test_before_anything_is_laid_out_the_sheets_are_missing(priced: Project, made: Manufacture) -> None:
    found = cost(priced, made, None)
    assert "Plywood 15: not laid out yet" in found.missing
    assert found.gross == Decimal("99.05")


def test_pieces_that_no_sheet_holds_are_missing(priced: Project, made: Manufacture) -> None:
    plan = _plan(_layout("full"), unplaced=(Unplaced(part_number="D1", pieces=2, reason="longer than every sheet"),))
    found = cost(priced, made, plan)
    assert "Plywood 15 for 2 of D1: not cut from any sheet" in found.missing


def test_an_assumed_sheet_has_no_price(priced: Project, made: Manufacture) -> None:
    assert "Plywood 15, sheet 2500 mm × 1250 mm" in cost(priced, made, _plan(_layout(""))).missing


def test_edging_is_paid_for_once(priced: Project, made: Manufacture) -> None:
    """From bars that are in stock as bars; a roll that was only assumed stays with the hardware."""
    layout = BarLayout(
        number="L1", bar_id="roll", bar_name="", length_mm=25_000, is_owned=False, pieces=(), rest_mm=0,
        is_rest_reusable=False,
    )  # fmt: skip
    assumed = BarCutting(id="edging-18", name="Edging", layouts=(layout.replace(bar_id=""),), is_assumed=True)
    found = cost(priced, made, _plan(bars=(assumed,)))
    assert [line.group for line in found.lines if "dging" in line.name] == [CostGroup.HARDWARE] * 2
    stock = priced.stock.replace(bars=(Bar(id="roll", length_mm=25_000, price=Decimal(14)),))
    project = priced.replace(stock=stock)
    plan = _plan(bars=(BarCutting(id="edging-18", name="Edging", layouts=(layout, layout)),))
    found = cost(project, manufacture(project), plan)
    (line,) = [line for line in found.lines if "dging" in line.name]
    assert (line.group, line.cost) == (CostGroup.BARS, Decimal(28))


@pytest.mark.parametrize(
    ("width_mm", "from_bars"), [("none", set()), (None, {"18", "27"}), (29, {"18", "27"}), (20, {"18"}), (19, set())]
)
def test_edging_of_each_thickness_is_ordered_once(
    priced: Project, width_mm: float | str | None, from_bars: set[str]
) -> None:
    """As bars where one is wide enough for it, else by the metre; so it is before anything is laid out."""
    bars = () if width_mm == "none" else (Bar.model_validate({"id": "strip", "width_mm": width_mm}),)
    project = priced.replace(stock=priced.stock.replace(bars=bars))
    made = manufacture(project)
    for plan in (cutting_plan(project, made, effort=0), None):
        lines = [line for line in cost(project, made, plan).lines if "dging" in line.name]
        ordered = [(line.group, next(mm for mm in ("18", "27") if f"{mm} mm" in line.name)) for line in lines]
        by_the_metre = {"18", "27"} - from_bars
        assert sorted(ordered) == sorted(
            [(CostGroup.BARS, mm) for mm in from_bars] + [(CostGroup.HARDWARE, mm) for mm in by_the_metre]
        )


def test_strips_that_no_bar_holds_are_missing(priced: Project) -> None:
    bars = (Bar(id="strip", length_mm=2000, width_mm=29, price=Decimal(5)),)
    project = priced.replace(stock=priced.stock.replace(bars=bars))
    made = manufacture(project)
    found = cost(project, made, cutting_plan(project, made, effort=0))
    assert "Edging for boards of 27 mm for 1 of T1: not cut from any bar" in found.missing


def test_what_is_left_out_costs_nothing_and_says_so(priced: Project) -> None:
    hardware = priced.hardware.replace(adjustments=(Adjustment(number="RP350-35", is_left_out=True),))
    project = priced.replace(hardware=hardware)
    (line,) = [line for line in cost(project, manufacture(project), None).lines if line.number == "RP350-35"]
    assert (line.cost, line.note) == (Decimal(0), "at hand already, costs nothing")


def test_added_lines_are_shared_by_length(priced: Project) -> None:
    extra = ExtraItem(id="extra-1", name="Castors", needed=3, price=Decimal("0.333"))
    project = priced.replace(hardware=priced.hardware.replace(extras=(extra,)))
    found = cost(project, manufacture(project), None)
    (line,) = [line for line in found.lines if line.number == "extra-1"]
    assert line.cost == Decimal("1.00")
    assert sum(share.cost for share in found.by_bay) == found.gross


@pytest.mark.parametrize(
    ("amount", "rate", "included", "expected"),
    [
        ("119", "19", True, ("100.00", "19.00", "119.00")),
        ("100", "19", False, ("100.00", "19.00", "119.00")),
        ("10", "7.7", True, ("9.29", "0.71", "10.00")),
        ("10", "0", True, ("10.00", "0.00", "10.00")),
        ("0.03", "20", False, ("0.03", "0.01", "0.04")),
    ],
)
def test_tax_is_in_the_prices_or_comes_on_top(
    amount: str, rate: str, included: bool, expected: tuple[str, str, str]
) -> None:
    pricing = Pricing(vat_percent=Decimal(rate), prices_include_vat=included)
    assert taxed(Decimal(amount), pricing) == tuple(map(Decimal, expected))


def test_the_remainder_goes_to_the_largest_share() -> None:
    assert divided(Decimal("10.00"), [1, 1, 1], CENT) == [Decimal("3.34"), Decimal("3.33"), Decimal("3.33")]
    assert divided(Decimal("0.05"), [1, 4, 2], CENT) == [Decimal("0.00"), Decimal("0.04"), Decimal("0.01")]
    assert divided(Decimal("1"), [0, 0], CENT) == [Decimal("0.50"), Decimal("0.50")]


@pytest.mark.parametrize("weights", [[], [1, -1]])
def test_money_needs_shares_to_be_divided_among(weights: list[float]) -> None:
    with pytest.raises(ValueError, match="divided"):
        divided(Decimal(1), weights, CENT)


def test_before_anything_is_arranged_nothing_is_bought() -> None:
    found = cost(Project(), manufacture(Project()), None)
    assert not found.lines
    assert not found.by_bay
    assert (found.gross, found.mass_kg) == (Decimal(0), 0)
