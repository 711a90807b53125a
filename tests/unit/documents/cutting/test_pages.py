"""The book for the saw and the labels: nothing left out, readable by a PDF reader."""

import re

from baywright.documents.cutting.pages import cutting_pages
from baywright.documents.cutting.text import cut_words
from baywright.documents.labels import labels
from baywright.model.cutting import CuttingPlan
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
    layout = cutting_plan.sheets[0].layouts[0]
    many = layout.replace(cuts=layout.cuts * 40)
    longer = cutting_plan.replace(sheets=(cutting_plan.sheets[0].replace(layouts=(many,)),), bars=())
    assert _pages(cutting_pages(Project(), made, longer)) == 4


def test_the_same_plan_gives_the_same_book(cutting_plan: CuttingPlan, made: Manufacture) -> None:
    assert cutting_pages(Project(), made, cutting_plan) == cutting_pages(Project(), made, cutting_plan)


def test_no_font_is_drawn_letter_by_letter(cutting_plan: CuttingPlan, made: Manufacture) -> None:
    """Type 3 fonts, which matplotlib takes where the settings lapse, are what some readers and printers refuse."""
    assert b"/Type3" not in cutting_pages(Project(), made, cutting_plan)


def test_a_cut_in_words(cutting_plan: CuttingPlan) -> None:
    cut = cutting_plan.sheets[0].layouts[0].cuts[1]
    assert cut_words(cut, LengthUnit.MILLIMETRE) == "Sheet, along at 390 mm: gives strip 2 and rest"


def test_there_is_a_label_for_every_piece(cutting_plan: CuttingPlan, made: Manufacture) -> None:
    assert _pages(labels(Project(), made)) == 2  # 31 pieces, 24 a page
    once = cutting_plan.sheets[0].replace(layouts=cutting_plan.sheets[0].layouts[:1])
    assert _pages(labels(Project(), made, cutting_plan.replace(sheets=(once,)))) == 2
