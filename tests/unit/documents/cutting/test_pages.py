"""The book for the saw and the labels: nothing left out, readable by a PDF reader."""

import re

import pytest

from baywright.documents import labels as labels_module
from baywright.documents.cutting.pages import cutting_pages
from baywright.documents.cutting.text import cut_runs, run_words
from baywright.documents.labels import labels
from baywright.documents.sketch import Sketch
from baywright.model.cutting import CuttingPlan, SawCut
from baywright.model.length import LengthUnit
from baywright.model.making import Manufacture
from baywright.model.project import Project


def _pages(data: bytes) -> int:
    return len(re.findall(rb"/Type /Page\b", data))


def test_the_book_has_a_page_for_each_sheet_and_more_where_cuts_need_them(
    cutting_plan: CuttingPlan, made: Manufacture
) -> None:
    data = cutting_pages(Project(), made, cutting_plan)
    assert data.startswith(b"%PDF")
    first, sheets, bars = 1, 2, 2
    assert _pages(data) == first + sheets + bars
    assert len(re.findall(rb"/MediaBox \[ 0 0 842 595 \]", data)) == first + sheets + bars, "all A4 landscape"
    layout = cutting_plan.sheets[0].layouts[0]
    cuts = [cut.replace(measure_mm=float(number)) for number, cut in enumerate(layout.cuts * 40)]
    many = layout.replace(cuts=tuple(cuts))
    longer = cutting_plan.replace(sheets=(cutting_plan.sheets[0].replace(layouts=(many,)),), bars=())
    assert _pages(cutting_pages(Project(), made, longer)) == 4


def test_the_same_plan_gives_the_same_book(cutting_plan: CuttingPlan, made: Manufacture) -> None:
    assert cutting_pages(Project(), made, cutting_plan) == cutting_pages(Project(), made, cutting_plan)


def test_the_first_page_tells_what_is_missing_and_why(
    cutting_plan: CuttingPlan, made: Manufacture, monkeypatch: pytest.MonkeyPatch
) -> None:
    written: list[str] = []
    monkeypatch.setattr(Sketch, "text", lambda _sheet, _x, _y, text, *_, **_named: written.append(text))
    cutting_pages(Project(), made, cutting_plan)
    assert "birch plywood 18 mm: 2 sheets, 2 to buy; 1 piece is missing: longer than every sheet." in written
    assert "Edging 20 mm: 17 bars, 16 to buy." in written


def test_no_font_is_drawn_letter_by_letter(cutting_plan: CuttingPlan, made: Manufacture) -> None:
    """Type 3 fonts, which matplotlib takes where the settings lapse, are what some readers and printers refuse."""
    assert b"/Type3" not in cutting_pages(Project(), made, cutting_plan)


def _cut(number: int, panel: str, measure: float, *gives: str) -> SawCut:
    return SawCut(
        number=number, panel=panel, x_mm=0, y_mm=0, length_mm=900, width_mm=60, is_across=True, at_mm=measure,
        measure_mm=measure, gives=gives,
    )  # fmt: skip


def test_like_cuts_one_after_the_other_are_one_line() -> None:
    cuts = [
        _cut(1, "sheet", 900, "1", "sheet"),
        _cut(2, "1", 350, "D1", "1"),
        _cut(3, "1", 350, "D1", "waste"),
        _cut(4, "2", 350, "D1", "2"),
        _cut(5, "2", 350, "D1", "D1"),
        _cut(6, "2", 200, "D2", "2.2"),
        *(_cut(7 + k, "3", 60, f"3.{1 + k}", "3") for k in range(8)),
        _cut(15, "3", 60, "3.9", "3.10"),
        _cut(16, "4", 60, "4.1", "4"),
        _cut(17, "4", 60, "4.2", "waste"),
    ]
    assert [f"{run.numbers}. {run_words(run, LengthUnit.MILLIMETRE)}" for run in cut_runs(cuts)] == [
        "1. Sheet, across at 900 mm: gives panel 1 and sheet",
        "2–3. Panel 1, across 2 times at 350 mm: gives 2 × D1 and waste",
        "4–5. Panel 2, across 2 times at 350 mm: gives 3 × D1",
        "6. Panel 2, across at 200 mm: gives D2 and panel 2.2",
        "7–15. Panel 3, across 9 times at 60 mm: gives panels 3.1 to 3.10",
        "16–17. Panel 4, across 2 times at 60 mm: gives panel 4.1 and panel 4.2 and waste",
    ]
    assert [cut for run in cut_runs(cuts) for cut in run.cuts] == cuts


def test_there_is_a_label_for_every_piece(cutting_plan: CuttingPlan, made: Manufacture) -> None:
    assert _pages(labels(Project(), made)) == 2  # 31 pieces, 24 a page
    once = cutting_plan.sheets[0].replace(layouts=cutting_plan.sheets[0].layouts[:1])
    assert _pages(labels(Project(), made, cutting_plan.replace(sheets=(once,)))) == 2


def test_a_label_says_where_its_piece_stands(made: Manufacture) -> None:
    part = made.parts[0]
    assert labels_module._where(part.replace(bays=(1, 1, 1))) == "bay 2"
    assert labels_module._where(part.replace(bays=(-1,))) == "shelf bay"
    assert labels_module._where(part.replace(bays=(2, -1))) == "", "between two bays it is of neither"
    assert labels_module._where(part) == ""
