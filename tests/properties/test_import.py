"""Laws of the inventory import over all texts and files: every row accepted or refused with reasons, nothing lost."""

import io
from pathlib import Path

import openpyxl
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from baywright.model.inventory import BoxSize
from baywright.model.project import Project
from baywright.storage.columns import Column
from baywright.storage.inventory import read_inventory
from baywright.storage.matching import Matching, propose_matching
from baywright.storage.tables import read_table, table_from_text
from baywright.storage.trouble import TableError

PROJECT = Project(box_sizes=(BoxSize(id="low", name="Low", width_mm=400, depth_mm=300, height_mm=120),))
CELLS = st.one_of(
    st.sampled_from(
        ["", "Low", "low ", "400", "39.6 cm", "2,940", '15 19/32"', "4,5 kg", "daily", "3", "-1", "nan", "=1+1"]
    ),
    st.text(max_size=12),
)
TABLES = st.lists(st.lists(CELLS, min_size=1, max_size=6), min_size=1, max_size=6)
MATCHINGS = st.dictionaries(st.sampled_from(list(Column)), st.integers(0, 5), min_size=1, max_size=8)


@settings(max_examples=300)
@given(TABLES, MATCHINGS, st.booleans())
def test_every_row_is_accepted_or_refused_with_reasons(
    cells: list[list[str]], columns: dict[Column, int], with_headings: bool
) -> None:
    text = "\n".join("\t".join(row) for row in cells)
    try:
        table = table_from_text(text).with_headings(with_headings)
        preview = read_inventory(table, Matching(columns), PROJECT)
    except TableError:
        return
    numbers = [row.number for row in preview.accepted] + [row.number for row in preview.refused]
    assert sorted(numbers) == [row.number for row in table.rows]
    assert all(row.faults for row in preview.refused)
    after = preview.apply_to(PROJECT)
    assert after.box_sizes[:1] == PROJECT.box_sizes
    assert after.boxes == preview.boxes
    assert {size.id for size in preview.new_sizes} <= {box.size_id for box in preview.boxes}


@settings(max_examples=200)
@given(st.text(max_size=200))
def test_any_text_is_a_table_or_refused(text: str) -> None:
    try:
        table = table_from_text(text)
    except TableError:
        return
    assert table.filled_rows
    propose_matching(table, PROJECT)


def _workbook() -> bytes:
    workbook = openpyxl.Workbook()
    worksheet = workbook.worksheets[0]
    for row in (["Label", "Size", "kg"], ["Rims", "Low", 4.5], ["Hubs", "Low", "=2*3"]):
        worksheet.append(row)
    stream = io.BytesIO()
    workbook.save(stream)
    return stream.getvalue()


WORKBOOK = _workbook()


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("tables")


@settings(max_examples=200)
@given(data=st.binary(max_size=200))
def test_any_file_is_a_table_or_refused(folder: Path, data: bytes) -> None:
    path = folder / "any.csv"
    path.write_bytes(data)
    try:
        assert read_table(path).filled_rows
    except TableError as refusal:
        assert "“any.csv”" in str(refusal)  # noqa: PT017 (either outcome is right)
    assert path.read_bytes() == data


@settings(max_examples=12)
@given(place=st.integers(4, len(WORKBOOK)), length=st.integers(0, 300), inserted=st.binary(max_size=30))
def test_a_workbook_damaged_anywhere_is_a_table_or_refused(
    folder: Path, place: int, length: int, inserted: bytes
) -> None:
    path = folder / "damaged.xlsx"
    path.write_bytes(WORKBOOK[:place] + inserted + WORKBOOK[place + length :])
    try:
        assert read_table(path).filled_rows
    except TableError as refusal:
        assert "“damaged.xlsx”" in str(refusal)  # noqa: PT017 (either outcome is right)
