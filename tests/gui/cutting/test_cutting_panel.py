"""The tab “Cutting”: layouts, the drawing, the cuts one by one, rests put into stock, and what stands in the way."""

import time
from decimal import Decimal

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QAbstractItemModelTester, QTest
from pytestqt.qtbot import QtBot

from baywright.app.commands import SetField
from baywright.app.edits.needed import AddNeeded, Several, roles_needed
from baywright.app.edits.stock import ChangeSheet
from baywright.app.session import Session
from baywright.gui.cutting.cost import cost_words, share_lines
from baywright.gui.cutting.drawing import CuttingDrawing
from baywright.gui.cutting.line import CutLine, LayoutLine, cut_lines, cut_words, layout_lines, rest_words
from baywright.gui.cutting.panel import CuttingPanel
from baywright.gui.cutting.words import details_words, plan_words, unplaced_lines, unplaced_words
from baywright.gui.tables.model import MARK
from baywright.model.cost import Cost, CostGroup, CostLine, CostShare
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
from tests.gui.desk import Desk, OpenDesk
from tests.gui.heart import GAPS_FORGIVEN, Heart
from tests.gui.test_heartbeat import many_boxes

SHEET = SheetLayout(
    number="C1",
    sheet_id="sheet-1",
    sheet_name="",
    material_id="ply",
    length_mm=1000,
    width_mm=500,
    trim_mm=10,
    is_owned=False,
    pieces=(
        CutPiece(part_number="U1", piece=1, x_mm=10, y_mm=10, length_mm=600, width_mm=300),
        CutPiece(part_number="U2", piece=1, x_mm=613, y_mm=10, length_mm=300, width_mm=300, is_turned=True),
    ),
    rests=(
        RestPiece(x_mm=10, y_mm=313, length_mm=980, width_mm=177, is_reusable=True),
        RestPiece(x_mm=916, y_mm=10, length_mm=74, width_mm=300),
    ),
    cuts=(
        SawCut(
            number=1, panel="sheet", x_mm=10, y_mm=10, length_mm=980, width_mm=480, is_across=False, at_mm=310,
            measure_mm=300, gives=("1", "rest"),
        ),
        SawCut(
            number=2, panel="1", x_mm=10, y_mm=10, length_mm=980, width_mm=300, is_across=True, at_mm=610,
            measure_mm=600, gives=("U1", "2"),
        ),
        SawCut(
            number=3, panel="2", x_mm=613, y_mm=10, length_mm=377, width_mm=300, is_across=True, at_mm=913,
            measure_mm=300, gives=("U2", "waste"),
        ),
    ),
    stages=2,
)  # fmt: skip
BAR = BarLayout(
    number="L1",
    bar_id="bar-1",
    bar_name="birch band",
    length_mm=2500,
    is_owned=True,
    pieces=(
        BarPiece(part_number="U1", piece=1, from_mm=0, length_mm=620),
        BarPiece(part_number="T1", piece=1, from_mm=623, length_mm=900),
    ),
    rest_mm=974,
    is_rest_reusable=True,
)
PLAN = CuttingPlan(
    sheets=(
        SheetCutting(
            material_id="ply", material="birch plywood 18 mm", thickness_mm=18, layouts=(SHEET,), bought=1,
            bound=95.0, value=100.0,
            unplaced=(Unplaced(part_number="T1", pieces=2, reason="it is longer than every sheet"),),
        ),
    ),
    bars=(BarCutting(id="edging", name="edging 18 mm", layouts=(BAR,), is_proved=True, value=1, bound=1),),
)  # fmt: skip


@pytest.fixture
def cutting(desk: Desk) -> CuttingPanel:
    """The panel of a planned workshop, in front, its parts cut."""
    panel = desk.panels.cutting
    for table in (panel.layouts, panel.cuts, panel.cost.table):
        QAbstractItemModelTester(table, QAbstractItemModelTester.FailureReportingMode.Fatal, table)
    desk.actions.plan.trigger()
    desk.panels.lists.setCurrentWidget(panel)
    return panel


def pieces_of(session: Session) -> dict[str, int]:
    made = session.manufacture
    assert made is not None
    return {part.number: part.quantity for part in made.parts}


# ---- words


def test_the_plan_says_how_sure_it_is_and_what_could_not_be_cut() -> None:
    whole = PLAN.replace(sheets=(PLAN.sheets[0].replace(unplaced=()),))
    assert plan_words(whole, is_searching=False) == (
        "1 sheet and 0 bars to buy, 1 owned one used. "
        "Proved best for 1 of 2 materials; for the others at most 5.0% less is possible."
    )
    assert plan_words(PLAN, is_searching=False) == (
        "1 sheet and 0 bars to buy, 1 owned one used. 2 pieces are missing: it is longer than every sheet. Proved best."
    )
    assert plan_words(PLAN, is_searching=True).endswith("Still looking for better layouts …")
    stopped = PLAN.replace(is_finished=False)
    assert plan_words(stopped, is_searching=False).endswith("Stopped before the search was over.")
    assert "birch plywood 18 mm: 1 sheet to buy, not proved best: at most 5.0% less" in details_words(whole)
    assert "1 sheet to buy, 2 pieces are missing: it is longer than every sheet" in details_words(PLAN)
    assert "edging 18 mm: 0 bars to buy and 1 owned, proved best" in details_words(PLAN)
    assert unplaced_words(PLAN.unplaced) == "Not cut: T1. The rest is. Why stands under “Not cut”."
    assert unplaced_words(()) == ""
    assert unplaced_lines(PLAN.unplaced) == ["T1, 2 pieces. It is longer than every sheet."]
    assert plan_words(CuttingPlan(), is_searching=False) == "There is nothing to cut."


def test_cuts_are_told_one_by_one_and_pieces_of_bars_from_the_left() -> None:
    lines = [line for _, line in cut_lines(SHEET)]
    assert cut_words(lines[0], 3, LengthUnit.MILLIMETRE) == (
        "Cut 1 of 3: sheet, along the length, 300 mm; gives panel 1, rest."
    )
    assert cut_words(lines[1], 3, LengthUnit.MILLIMETRE) == (
        "Cut 2 of 3: panel 1, across the length, 600 mm; gives U1, panel 2."
    )
    bar = [line for _, line in cut_lines(BAR)]
    assert [(line.from_mm, line.measure_mm, line.gives) for line in bar] == [
        (0, 620, ("U1 · 1",)),
        (623, 900, ("T1 · 1",)),
    ]
    assert cut_lines(None) == []


def test_a_layout_is_listed_with_what_is_used_and_kept() -> None:
    (_, sheet), (_, bar) = layout_lines(PLAN)
    assert sheet.used == pytest.approx((600 * 300 + 300 * 300) / (1000 * 500))
    assert bar.used == pytest.approx(1520 / 2500)
    assert rest_words(sheet, LengthUnit.MILLIMETRE) == "980 mm × 177 mm"
    assert rest_words(bar, LengthUnit.MILLIMETRE) == "974 mm"
    assert (sheet.has_grain, bar.has_grain) == (True, False)


def test_a_missing_price_is_told_and_never_nothing() -> None:
    cost = Cost(
        currency="EUR",
        lines=(
            CostLine(group=CostGroup.SHEETS, number="s", name="ply", quantity=2, unit="sheets", unit_price=Decimal(60),
                     cost=Decimal(120)),
            CostLine(group=CostGroup.HARDWARE, number="H1", name="runners", quantity=9, unit="pairs", unit_price=None,
                     cost=None),
        ),
        by_material=(CostShare(name="birch plywood 18 mm", cost=Decimal(120), missing=0, mass_kg=40),),
        by_bay=(CostShare(name="bay 1", cost=Decimal(30), missing=1, mass_kg=12),),
        net=Decimal(100),
        vat=Decimal(20),
        gross=Decimal(120),
        missing=("runners",),
        mass_kg=52.5,
    )  # fmt: skip
    words = cost_words(cost).replace("\u00a0", " ")
    assert words == (
        "120.00 EUR in all (100.00 EUR and 20.00 EUR tax), 52.5 kg empty. ⚠ 1 price missing: runners; not in the sum."
    )
    texts = [line.cost_words.replace("\u00a0", " ") for _, line in share_lines(cost)]
    assert texts == ["120.00 EUR", "30.00 EUR + 1 price missing", "120.00 EUR", "no price"]
    assert "Every price is known" in cost_words(cost.replace(missing=(), vat=Decimal(0)))


# ---- the drawing


def drawn(qtbot: QtBot, line: LayoutLine) -> CuttingDrawing:
    drawing = CuttingDrawing(lambda: LengthUnit.MILLIMETRE)
    qtbot.addWidget(drawing)
    drawing.resize(600, 400)
    drawing.show()
    drawing.show_layout(line)
    return drawing


@pytest.mark.parametrize("number", [0, 1])
def test_a_piece_is_chosen_by_click_and_by_arrow(qtbot: QtBot, number: int) -> None:
    _, line = layout_lines(PLAN)[number]
    drawing = drawn(qtbot, line)
    chosen: list[object] = []
    drawing.parts_selected.connect(chosen.append)
    second = line.layout.pieces[1].part_number
    QTest.mouseClick(drawing.viewport(), Qt.MouseButton.LeftButton, pos=drawing.piece_middle(1).toPoint())
    assert chosen == [(second,)]
    assert drawing.numbers == {second}
    QTest.keyClick(drawing, Qt.Key.Key_Right)
    assert chosen[-1] == ("U1",)
    QTest.keyClick(drawing, Qt.Key.Key_Left)
    assert chosen[-1] == (second,)
    QTest.mouseClick(drawing.viewport(), Qt.MouseButton.LeftButton, pos=QPoint(2, 2))
    assert chosen[3:] == [()]


def test_the_drawing_changes_with_parts_and_cuts_and_tells_itself_in_words(qtbot: QtBot) -> None:
    (_, line), _ = layout_lines(PLAN)
    drawing = drawn(qtbot, line)
    assert drawing.accessibleDescription() == (
        "Sheet C1, birch plywood 18 mm, 1000 mm × 500 mm: 2 pieces of U1, U2. 54% used; rests to keep: 980 mm × 177 mm."
    )
    plain = drawing.grab().toImage()
    drawing.show_parts(("U2",))
    chosen = drawing.grab().toImage()
    assert chosen != plain
    cuts: list[CutLine] = [cut for _, cut in cut_lines(SHEET)]
    drawing.show_cut(cuts[1])
    assert drawing.grab().toImage() != chosen
    drawing.show_layout(None)
    assert "Select a layout" in drawing.accessibleDescription()


# ---- the panel


def test_opening_the_tab_cuts_every_piece_once(cutting: CuttingPanel, desk: Desk) -> None:
    plan = desk.session.cutting.plan
    assert plan is not None
    assert len(cutting.layouts.ids) == cutting.layouts.total > 0
    cut: dict[str, int] = {}
    for layout in plan.sheet_layouts:
        for piece in layout.pieces:
            cut[piece.part_number] = cut.get(piece.part_number, 0) + 1
    assert cut == pieces_of(desk.session)
    assert cutting.unplaced.message == ""
    assert cutting.progress.isHidden()
    assert desk.panels.lists.tabText(desk.panels.lists.indexOf(cutting)) == f"Cutting ({cutting.layouts.total})"


def test_cuts_are_stepped_through_by_buttons_and_in_the_table(cutting: CuttingPanel, desk: Desk) -> None:
    assert cutting.drawing.line is not None
    assert cutting.drawing.cut is None
    assert not cutting.steps.back.isEnabled()
    QTest.mouseClick(cutting.steps.forth, Qt.MouseButton.LeftButton)
    assert cutting.drawing.cut is not None
    assert cutting.drawing.cut.number == 1
    assert cutting.steps.words.text().startswith(f"Cut 1 of {cutting.cuts.total}: ")
    cutting.tabs.setCurrentIndex(1)
    last = cutting.cuts.index(cutting.cuts.total - 1, 0)
    cutting.cut_view.scrollTo(last)
    where = cutting.cut_view.visualRect(last).center()
    QTest.mouseClick(cutting.cut_view.viewport(), Qt.MouseButton.LeftButton, pos=where)
    assert cutting.drawing.cut.number == cutting.cuts.total
    assert not cutting.steps.forth.isEnabled()
    QTest.mouseClick(cutting.steps.back, Qt.MouseButton.LeftButton)
    assert cutting.cut_view.selected_ids() == (str(cutting.cuts.total - 1),)
    desk.session.do(SetField("name", "Another name"))
    assert cutting.drawing.cut is not None, "an edit that changes no layout leaves the step where it is"


def test_a_part_selected_anywhere_brings_its_layout_to_the_front(cutting: CuttingPanel, desk: Desk) -> None:
    desk.panels.part_selection.select(("D3",))
    line = cutting.drawing.line
    assert line is not None
    assert "D3" in line.part_numbers
    assert cutting.drawing.numbers == {"D3"}
    marked = [key for key in cutting.layouts.ids if "D3" in cutting.layouts.record(key).part_numbers]
    assert cutting.layouts.marked == set(marked)
    assert str(cutting.layouts.index(cutting.layouts.row_of(marked[0]), 0).data()).startswith(MARK)
    other = next(n for n, piece in enumerate(line.layout.pieces))
    QTest.mouseClick(
        cutting.drawing.viewport(), Qt.MouseButton.LeftButton, pos=cutting.drawing.piece_middle(other).toPoint()
    )
    assert desk.panels.part_selection.numbers == (line.layout.pieces[other].part_number,)
    assert desk.panels.parts.view.selected_ids() == desk.panels.part_selection.numbers


def test_a_part_larger_than_every_sheet_is_told_and_the_rest_is_cut(desk: Desk) -> None:
    desk.actions.plan.trigger()
    made, cutting = desk.session.manufacture, desk.panels.cutting
    assert made is not None
    desk.session.do(AddNeeded(roles_needed(desk.session.project, made.parts)))
    sheets = desk.session.project.stock.sheets
    shorter = tuple(ChangeSheet(sheet.id, "length_mm", 1200.0) for sheet in sheets)
    desk.session.do(Several(shorter, "Shorter sheets"))
    desk.panels.lists.setCurrentWidget(cutting)
    assert cutting.unplaced.isVisible()
    assert "T1" in cutting.unplaced.message
    assert "Not cut: " in cutting.unplaced.message
    assert cutting.tabs.tabText(3).startswith("⚠ &Not cut (")
    reason = cutting.reasons.item(0)
    assert reason is not None
    assert "piece. " in reason.text()
    assert cutting.layouts.total > 0
    assert desk.panels.lists.tabText(desk.panels.lists.indexOf(cutting)).startswith("⚠ Cutting")
    desk.session.undo()
    assert cutting.unplaced.isHidden()


def test_rests_are_put_into_the_stock_by_one_undo(desk: Desk) -> None:
    desk.actions.plan.trigger()
    made, cutting = desk.session.manufacture, desk.panels.cutting
    assert made is not None
    desk.session.do(AddNeeded(roles_needed(desk.session.project, made.parts)))
    before = desk.session.project
    desk.panels.lists.setCurrentWidget(cutting)
    rests = sum(line.kept for line in (cutting.layouts.record(key) for key in cutting.layouts.ids))
    assert rests > 0
    assert cutting.keep.isEnabled()
    cutting.keep_all.trigger()
    owned = [sheet for sheet in desk.session.project.stock.sheets if sheet.is_owned]
    owned_bars = [bar for bar in desk.session.project.stock.bars if bar.is_owned]
    assert len(owned) + len(owned_bars) == rests
    assert "offcuts that are owned" in desk.message
    desk.session.undo()
    assert desk.session.project == before


def test_where_no_rest_is_worth_keeping_none_is_offered(desk: Desk) -> None:
    desk.actions.plan.trigger()
    rules = desk.session.project.stock.rules.replace(rest_length_mm=50_000.0, bar_rest_mm=90_000.0)
    desk.session.do(SetField("stock.rules", rules))
    desk.panels.lists.setCurrentWidget(desk.panels.cutting)
    assert desk.panels.cutting.layouts.total > 0
    assert not desk.panels.cutting.keep.isEnabled()


def test_before_anything_is_planned_the_tab_says_so(desk: Desk) -> None:
    panel = desk.panels.cutting
    desk.panels.lists.setVisible(True)
    desk.panels.lists.setCurrentWidget(panel)
    assert panel.words.text() == "Nothing to cut yet: plan the bays first (F5)."
    assert panel.again.isHidden()
    assert not panel.keep.isEnabled()


def test_prices_missing_are_told_beside_the_cost(cutting: CuttingPanel, desk: Desk) -> None:
    cutting.tabs.setCurrentIndex(2)
    cost = desk.session.cutting.cost
    assert cost is not None
    assert not cost.is_complete
    assert f"{len(cost.missing)} prices missing" in cutting.cost.words.text()
    assert cutting.cost.table.total == len(cost.lines) + len(cost.by_material) + len(cost.by_bay)


def test_the_window_answers_while_the_parts_are_cut(open_desk: OpenDesk, qtbot: QtBot) -> None:
    desk = open_desk(many_boxes(20), synchronous=False)
    desk.actions.plan.trigger()
    qtbot.waitUntil(lambda: not desk.session.is_planning, timeout=30_000)
    panel = desk.panels.cutting
    desk.panels.lists.setCurrentWidget(panel)
    qtbot.waitUntil(lambda: panel.layouts.total > 0, timeout=30_000)
    desk.session.do(SetField("construction.boards.top_mm", 30.0))
    heart = Heart(time.thread_time)
    qtbot.wait(1)  # drawing the edit itself is not cutting
    heart.start()
    qtbot.waitUntil(lambda: not desk.session.cutting.is_searching, timeout=60_000)
    heart.stop()
    assert len(heart.gaps) <= GAPS_FORGIVEN, heart.gaps
    assert panel.layouts.total > 0


def test_the_search_runs_beside_the_window_and_follows_edits(open_desk: OpenDesk, qtbot: QtBot) -> None:
    desk = open_desk(synchronous=False)
    desk.actions.plan.trigger()
    qtbot.waitUntil(lambda: not desk.session.is_planning, timeout=30_000)
    panel = desk.panels.cutting
    desk.panels.lists.setCurrentWidget(panel)
    qtbot.waitUntil(lambda: not desk.session.cutting.is_searching, timeout=30_000)
    shown = panel.layouts.total
    assert shown > 0
    desk.session.do(SetField("construction.boards.top_mm", 40.0))
    assert panel.layouts.total == shown
    assert "before it" in panel.words.text()
    assert not panel.keep.isEnabled()
    assert panel.stop.isVisible()
    qtbot.waitUntil(lambda: not desk.session.cutting.is_searching, timeout=30_000)
    assert "before it" not in panel.words.text()
    assert panel.stop.isHidden()
    desk.session.do(SetField("construction.boards.top_mm", 41.0))
    QTest.mouseClick(panel.stop, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: not desk.session.cutting.is_searching, timeout=30_000)
    assert "Stopped before" in panel.words.text()
    QTest.mouseClick(panel.again, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: panel.layouts.total > 0, timeout=30_000)
