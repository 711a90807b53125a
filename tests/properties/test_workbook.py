"""Whatever people type, it arrives in the workbook as they typed it, and never as a formula."""

import io
import re

import openpyxl
from hypothesis import given, settings
from hypothesis import strategies as st

from baywright.documents.sheets.cell import safe_text
from baywright.documents.sheets.inventory import write_inventory
from baywright.documents.sheets.style import add_styles
from baywright.model.arrangement import Arrangement, Placement
from baywright.model.inventory import Box, BoxSize
from baywright.model.project import Project

texts = st.text(st.characters(exclude_categories=["Cs"]), max_size=60)
labels = st.one_of(texts, texts.map("={}".format), st.sampled_from(["=", "+", "-", "@", "'", "#REF!", "TRUE", "1e5"]))
usable = labels.map(str.strip).filter(bool)


def _as_typed(text: str) -> str:
    """What may be lost: characters that XML cannot hold, and the kind of a line end."""
    return re.sub("[\x00-\x08\x0b\x0c\x0e-\x1f\ufffe\uffff]", " ", re.sub("\r\n?", "\n", text))


@given(st.lists(usable, min_size=1, max_size=6), texts)
@settings(max_examples=40)
def test_labels_and_contents_arrive_as_typed(names: list[str], contents: str) -> None:
    size = BoxSize(id="size", name=names[0], width_mm=400, depth_mm=300, height_mm=120)
    boxes = tuple(Box(id=f"box-{n}", label=name, size_id="size", contents=contents) for n, name in enumerate(names))
    places = tuple(Placement(box_id=box.id, bay=0, row=6 * n) for n, box in enumerate(boxes))
    project = Project(
        name=names[-1], box_sizes=(size,), boxes=boxes,
        arrangement=Arrangement(bay_count=1, upright_rows=40, placements=places),
    )  # fmt: skip
    book = openpyxl.Workbook()
    add_styles(book)
    write_inventory(book.create_sheet("Inventory"), project)
    target = io.BytesIO()
    book.save(target)
    sheet = openpyxl.load_workbook(target)["Inventory"]
    for row, box in enumerate(boxes, 5):
        for column, text in ((1, box.label), (2, size.name), (7, box.contents)):
            cell = sheet.cell(row=row, column=column)
            assert cell.data_type != "f"
            shown = (cell.value or "") if isinstance(cell.value, str | None) else f"not text: {cell.value!r}"
            assert shown == safe_text(_as_typed(text))
