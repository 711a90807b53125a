"""Rests put back into the stock, and what was owned and cut taken out of it, by one edit."""

import pytest

from baywright.app.commands import EditRefused, made
from baywright.app.edits.materials import AddMaterial
from baywright.app.edits.rests import KeepRests
from baywright.app.edits.stock import AddBar, AddSheet
from baywright.model.cutting import BarCutting, BarLayout, CuttingPlan, RestPiece, SheetCutting, SheetLayout
from baywright.model.project import Project
from baywright.model.stock import Bar, BarUse, BoardRole, Material, Sheet
from baywright.workings.material import material_of

LARGE = RestPiece(x_mm=10, y_mm=500, length_mm=900, width_mm=700, is_reusable=True)
SMALL = RestPiece(x_mm=10, y_mm=1200, length_mm=900, width_mm=40)


def layout(number: str, sheet_id: str = "full", *, owned: bool = False, material: str = "ply") -> SheetLayout:
    return SheetLayout(
        number=number, sheet_id=sheet_id, sheet_name="", material_id=material, length_mm=2500, width_mm=1250,
        trim_mm=10, is_owned=owned, pieces=(), rests=(LARGE, SMALL), cuts=(), stages=1,
    )  # fmt: skip


def plan(*layouts: SheetLayout) -> CuttingPlan:
    cutting = SheetCutting(material_id=layouts[0].material_id, material="Plywood", thickness_mm=18, layouts=layouts)
    bar = BarLayout(
        number="L1", bar_id="stick", bar_name="", length_mm=2400, is_owned=True, pieces=(), rest_mm=700,
        is_rest_reusable=True,
    )  # fmt: skip
    return CuttingPlan(
        sheets=(cutting,), bars=(BarCutting(id="rail-100x18", name="Rail", use=BarUse.RAIL, layouts=(bar,)),)
    )


def strips(*widths_mm: float | None) -> CuttingPlan:
    """Bars of these widths that strips 20 mm wide were cut from."""
    bars = tuple(
        BarLayout(
            number=f"L{number}", bar_id="", bar_name="", length_mm=2400, width_mm=width_mm, is_owned=False, pieces=(),
            rest_mm=700, is_rest_reusable=True,
        )
        for number, width_mm in enumerate(widths_mm, 1)
    )  # fmt: skip
    return CuttingPlan(bars=(BarCutting(id="edging-18", name="Edging", layouts=bars, width_mm=20),))


def stocked(offcuts: int | None = 2) -> Project:
    project = Project()
    for command in (
        AddMaterial(Material(id="ply", name="Plywood")),
        AddSheet(Sheet(id="full", material_id="ply")),
        AddSheet(Sheet(id="left", material_id="ply", quantity=offcuts, is_owned=True)),
        AddBar(Bar(id="stick", use=BarUse.RAIL, quantity=1, is_owned=True)),
    ):
        project = made(command, project)
    return project


def test_rests_worth_keeping_become_owned_offcuts_that_need_no_trimming() -> None:
    project = made(KeepRests(plan(layout("C1"), layout("C2")), ("C2",)), stocked())
    (offcut,) = project.stock.sheets[2:]
    assert (offcut.name, offcut.length_mm, offcut.width_mm) == ("rest of C2", 900, 700)
    assert (offcut.quantity, offcut.is_owned, offcut.is_trimmed, offcut.price) == (1, True, False, None)
    assert project.stock.sheets[:2] == stocked().stock.sheets
    assert project.stock.bars == stocked().stock.bars


def test_what_was_owned_and_cut_leaves_the_stock() -> None:
    one = made(KeepRests(plan(layout("C1", "left", owned=True)), ("C1",)), stocked())
    assert [sheet.quantity for sheet in one.stock.sheets] == [None, 1, 1]
    both = made(KeepRests(plan(layout("C1", "left", owned=True), layout("C2", "left", owned=True))), stocked())
    assert [sheet.id for sheet in both.stock.sheets] == ["full", "offcut-1", "offcut-2"]
    assert [(bar.id, bar.length_mm, bar.use) for bar in both.stock.bars] == [("offcut-1", 700, BarUse.RAIL)]
    single = made(KeepRests(plan(layout("C1", "left", owned=True))), stocked(offcuts=None))
    assert [sheet.id for sheet in single.stock.sheets] == ["full", "offcut-1"]


def test_the_rest_of_a_bar_is_as_wide_as_the_bar_or_as_the_strips_were_to_be() -> None:
    kept = made(KeepRests(strips(None, 29)), stocked()).stock.bars[1:]
    assert [(bar.name, bar.width_mm) for bar in kept] == [("rest of L1", 20), ("rest of L2", 29)]


def test_a_material_that_was_taken_for_granted_comes_into_stock_with_its_rest() -> None:
    granted = material_of(stocked(), BoardRole.TOP)
    project = made(KeepRests(plan(layout("C1", "", material=granted.id)), ("C1",)), stocked())
    assert project.stock.materials[-1].id == granted.id
    assert project.stock.sheets[-1].material_id == granted.id
    assert material_of(project, BoardRole.TOP).id == granted.id


@pytest.mark.parametrize(
    ("command", "words"),
    [
        (KeepRests(plan(layout("C1")), ("C9",)), "no C9"),
        (KeepRests(CuttingPlan()), "worth keeping"),
        (KeepRests(plan(layout("C1", "gone", owned=True))), "no longer in the stock"),
        (KeepRests(plan(*(layout(f"C{n}", "left", owned=True) for n in range(3)))), "stock has changed"),
        (KeepRests(plan(layout("C1", "", material="oak"))), "No board of the run"),
    ],
)
def test_what_cannot_be_kept_is_refused(command: KeepRests, words: str) -> None:
    with pytest.raises(EditRefused, match=words):
        made(command, stocked())
