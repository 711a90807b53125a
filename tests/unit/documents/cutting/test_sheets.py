"""The workbook's sheets for the saw and the shop: every cut, every rest, missing prices said and summed nowhere."""

from decimal import Decimal
from io import BytesIO

import openpyxl
import pytest
from openpyxl.worksheet.worksheet import Worksheet

from baywright.documents.workbook import write_workbook
from baywright.model.catalogue import HardwareKind
from baywright.model.cost import Cost, CostGroup, CostLine, CostShare
from baywright.model.cutting import CuttingPlan
from baywright.model.making import HardwareItem, Manufacture
from baywright.model.project import Project
from baywright.planner import report
from baywright.workings import derive


def _item(number: str, price: Decimal | None) -> HardwareItem:
    return HardwareItem(
        number=number, name="Screw", specification="4 × 40", needed=190, allowance=20, unit="pieces", pack_size=100,
        packs=3, kind=HardwareKind.WOOD_SCREW, price=price, supplier="Hardware shop",
    )  # fmt: skip


@pytest.fixture
def sheets(cutting_plan: CuttingPlan, made: Manufacture, small: Project) -> dict[str, Worksheet]:
    line = CostLine(
        group=CostGroup.SHEETS, number="full", name="birch plywood 18 mm", quantity=2, unit="sheets",
        unit_price=Decimal("70.50"), cost=Decimal("141.00"), supplier="Timber yard", note="cut to size on request",
    )  # fmt: skip
    without = line.replace(name="oil", unit_price=None, cost=None)
    share = CostShare(name="Bay 1", cost=Decimal("141.00"), missing=1, mass_kg=40.0)
    cost = Cost(
        currency="EUR", lines=(line, without), by_material=(share,), by_bay=(share,), net=Decimal("118.49"),
        vat=Decimal("22.51"), gross=Decimal("141.00"), missing=("oil",), mass_kg=40.0,
    )  # fmt: skip
    bought = made.replace(hardware=(_item("WS4x40", Decimal("6.20")), _item("WS4x50", None)))
    data = write_workbook(small, derive(small), report(small), None, bought, saw=cutting_plan, costs=cost)
    book = openpyxl.load_workbook(BytesIO(data), data_only=True)
    return {sheet.title: sheet for sheet in book.worksheets}


def _values(sheet: Worksheet) -> list[object]:
    return [cell for row in sheet.iter_rows(values_only=True) for cell in row if cell is not None]


def test_every_sheet_of_the_plan_is_drawn_and_every_cut_listed(sheets: dict[str, Worksheet]) -> None:
    cutting = sheets["Cutting"]
    assert len(cutting._images) == 2 + 2  # type: ignore[attr-defined]  # two sheets; seventeen bars on two pictures
    values = _values(cutting)
    assert [values.count(f"strip {number} and rest") for number in range(1, 6)] == [2] * 5
    assert "longer than every sheet" in values
    assert "1 piece is missing: longer than every sheet" in values
    assert "not proved best" in values
    assert "A remark." in values


def test_sums_print_on_a_page_of_their_own_without_the_heads_of_the_list(sheets: dict[str, Worksheet]) -> None:
    """The list has two lines under its head in row 4; its head is not repeated over the sums' tables."""
    cost = sheets["Cost"]
    assert not cost.print_title_rows
    assert sheets["Offcuts"].print_title_rows == "$4:$4"
    (line,) = (row for row in cost.iter_rows(min_row=5) if row[0].value == "Material")
    assert [each.id for each in cost.row_breaks.brk] == [(line[0].row or 0) - 1]
    assert {row[3].number_format for row in cost.iter_rows(min_row=5, max_row=6)} == {"#,##0"}
    assert {"Timber yard", "cut to size on request"} <= set(_values(cost))


def test_rests_and_owned_pieces_stand_among_the_offcuts(sheets: dict[str, Worksheet]) -> None:
    rows = list(sheets["Offcuts"].iter_rows(min_row=5, values_only=True))
    assert ("keep", "birch plywood 18 mm", "C1", 2340, 390) in [row[:5] for row in rows]
    assert ("used up", "Edging 20 mm", "L1: maple", 2500, None) in [row[:5] for row in rows]
    assert ("keep", "Edging 20 mm", "L1", 700, 22) in [row[:5] for row in rows]


def test_a_missing_price_is_said_and_in_no_sum(sheets: dict[str, Worksheet]) -> None:
    hardware = sheets["Hardware order"]
    rows = {row[0]: row for row in hardware.iter_rows(min_row=5, values_only=True)}
    assert rows["WS4x40"][8:10] == (6.2, 18.6)
    assert rows["WS4x50"][8:10] == (None, "no price")
    (total,) = (row for row in hardware.iter_rows(values_only=True) if row[2] == "Together, of what has a price")
    assert total[9] == 18.6
    assert "1 line has no price and are not in the sum." not in _values(hardware)
    assert "1 line has no price and is not in the sum." in _values(hardware)
    cost = _values(sheets["Cost"])
    assert cost.count("no price") == 2
    assert "1 price is missing and in no sum: oil." in cost


def test_there_is_no_such_sheet_where_nothing_is_known(small: Project, made: Manufacture) -> None:
    data = write_workbook(small, derive(small), report(small), None, made)
    titles = set(openpyxl.load_workbook(BytesIO(data)).sheetnames)
    assert not {"Cutting", "Offcuts", "Cost"} & titles
