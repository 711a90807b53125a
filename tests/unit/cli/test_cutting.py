"""The sub-command `cut`: layouts, cuts, rests and purchases in words; rests put back; what cannot be cut."""

import json
from decimal import Decimal
from pathlib import Path

import pytest

from baywright.app.files import open_project, save_project
from baywright.cli.cutting import NOT_KEPT, NOTHING_TO_CUT, CuttingText
from baywright.cli.main import Surroundings, run
from baywright.model.arrangement import Arrangement, Placement
from baywright.model.cutting import CuttingPlan
from baywright.model.inventory import Box, BoxSize
from baywright.model.length import LengthUnit
from baywright.model.money import Pricing
from baywright.model.project import Project
from baywright.model.stock import Bar, BoardRole, Material, Sheet, Stock

SIZE = BoxSize(id="euro-120", name="Euro 120", width_mm=396, depth_mm=297, height_mm=120)


def project() -> Project:
    """Two drawers in one bay, uprights of a material in stock."""
    boxes = tuple(Box(id=f"box-{n}", label=f"Box {n}", size_id=SIZE.id, loaded_mass_kg=9) for n in (1, 2))
    places = tuple(Placement(box_id=f"box-{n}", bay=0, row=8 * n - 8) for n in (1, 2))
    larch = Material(id="larch", name="Larch 18 mm", roles=(BoardRole.UPRIGHT,))
    return Project(
        box_sizes=(SIZE,),
        boxes=boxes,
        arrangement=Arrangement(bay_count=1, upright_rows=24, placements=places),
        stock=Stock(
            materials=(larch,),
            sheets=(
                Sheet(
                    id="full", material_id="larch", name="full sheet", length_mm=1700, width_mm=420, price=Decimal(60)
                ),
                Sheet(id="left", material_id="larch", length_mm=900, width_mm=500, quantity=1, is_owned=True),
            ),
        ),
    )


@pytest.fixture
def file(tmp_path: Path) -> Path:
    path = tmp_path / "shop.baywright"
    save_project(path, project())
    return path


def baywright(*arguments: object) -> int:
    return run([str(argument) for argument in arguments], Surroundings(lambda _path, _demo: 0, lambda: Path("no demo")))


def test_layouts_cuts_rests_and_purchases_are_told_and_no_file_is_changed(
    file: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    before = file.read_bytes()
    assert baywright("cut", file) == 0
    out = capsys.readouterr().out
    assert "Larch 18 mm: " in out
    assert "from the rack" in out
    assert " 1. sheet, across, fence at " in out
    assert "U1 no. 1: 768 mm × " in out
    assert "Worth keeping: " in out
    assert "To buy:\n" in out
    assert "Nothing is in stock to cut “birch plywood " in out
    assert file.read_bytes() == before


def test_the_plan_is_given_as_json(file: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert baywright("cut", file, "--json", "--stages", 2) == 0
    plan = CuttingPlan.model_validate_json(json.dumps(json.loads(capsys.readouterr().out)))
    assert plan.is_finished
    assert all(layout.stages <= 2 for layout in plan.sheet_layouts)


def test_rests_are_put_into_the_stock_and_saved_on_request(file: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert baywright("cut", file, "--keep-rests", "--stages", 3) == 0
    assert open_project(file) == project()
    assert NOT_KEPT in capsys.readouterr().err
    assert baywright("cut", file, "--keep-rests", "--stages", 3, "--save") == 0
    assert NOT_KEPT not in capsys.readouterr().err
    stock = open_project(file).stock
    assert stock.rules.stages == 3
    assert any(sheet.name.startswith("rest of C") for sheet in stock.sheets)
    assert baywright("cut", file, "--keep-rests", "C99") == 1
    assert "There is no C99" in capsys.readouterr().err


def test_what_cannot_be_cut_is_named_and_the_answer_is_no(file: Path, capsys: pytest.CaptureFixture[str]) -> None:
    small = Sheet(id="small", material_id="larch", length_mm=700, width_mm=500)
    stock = project().stock
    save_project(file, project().replace(stock=stock.replace(sheets=(small,))))
    assert baywright("cut", file) == 1
    out = capsys.readouterr().out
    assert "Not cut: U1, 1 piece. It is 768 mm × " in out
    assert "88 mm too long" in out
    assert "T1 no. 1" in out
    assert "Larch 18 mm: 0 sheets, 0 to buy; 3 pieces are missing\n" in out


def test_the_sum_of_everything_names_the_tax_and_what_has_no_price(
    file: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Of the boards only larch has a price, and no hardware: three of many names are told."""
    taxed = project().replace(pricing=Pricing(vat_percent=Decimal(19), prices_include_vat=False))
    save_project(file, taxed)
    assert baywright("cut", file) == 0
    out = capsys.readouterr().out.replace("\u202f", " ").replace("\u00a0", " ")
    assert "Sheets and bars: 60.00 EUR before tax, without " in out
    assert "With all hardware: 71.40 EUR, of which 11.40 EUR value added tax; no price for birch plywood " in out
    assert " more\n" in out.split("With all hardware")[1]


def test_where_the_stock_is_used_up_missing_pieces_are_counted_and_no_saving_promised(
    file: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """One owned sheet for three pieces, one owned strip for the edging of 27 mm and of 18 mm boards."""
    stock = project().stock
    left = stock.sheets[1]
    strip = Bar(id="strip", length_mm=800, is_owned=True)
    save_project(file, project().replace(stock=stock.replace(sheets=(left.replace(width_mm=420),), bars=(strip,))))
    assert baywright("cut", file) == 1
    out = capsys.readouterr().out
    assert "Larch 18 mm: 1 sheet, 0 to buy, 1 from the rack; 2 pieces are missing\n" in out
    assert "1 piece. The sheets of “Larch 18 mm” are used up; add sheets to buy" in out
    edging = [line for line in out.splitlines() if line.startswith("Edging for boards of")]
    assert len(edging) == 2
    assert all("missing" in line for line in edging)
    assert "%" not in out


def test_stages_of_another_number_and_unreadable_files_are_refused(
    file: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    with pytest.raises(SystemExit):
        baywright("cut", file, "--stages", 5)
    assert baywright("cut", file.with_name("gone.baywright")) == 3
    capsys.readouterr()


def test_an_empty_plan_says_so() -> None:
    assert CuttingText(LengthUnit.MILLIMETRE, "EUR").whole(CuttingPlan(), None) == NOTHING_TO_CUT


def test_drawings_of_the_parts_are_written_beside_the_file_or_where_asked(
    file: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert baywright("drawings", file, "--out", tmp_path / "parts.pdf") == 0
    assert (tmp_path / "parts.pdf").read_bytes().startswith(b"%PDF")
    for paper, name in (("cuts", "book of cuts"), ("labels", "labels")):
        assert baywright("drawings", file, "--paper", paper) == 0
        assert (tmp_path / f"shop {name}.pdf").read_bytes().startswith(b"%PDF")
    assert baywright("drawings", file) == 0
    assert (tmp_path / "shop drawings of the parts.pdf").exists()
    capsys.readouterr()
    assert baywright("drawings", file, "-o", tmp_path / "gone" / "parts.pdf") == 4
    assert "parts.pdf" in capsys.readouterr().err
