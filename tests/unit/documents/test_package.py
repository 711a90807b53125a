"""The finished file: fixed dates, values beside formulas."""

import io
import zipfile

import openpyxl
import pytest

from baywright.documents.package import finished


def _book() -> bytes:
    book = openpyxl.Workbook()
    sheet = book.active
    assert sheet is not None
    sheet["A1"] = 2
    sheet["A2"] = "=A1*3"
    target = io.BytesIO()
    book.save(target)
    return target.getvalue()


def test_values_are_put_beside_formulas() -> None:
    data = finished(_book(), {"xl/worksheets/sheet1.xml": {"A2": 6.25}})
    for data_only, expected in ((True, 6.25), (False, "=A1*3")):
        sheet = openpyxl.load_workbook(io.BytesIO(data), data_only=data_only).active
        assert sheet is not None
        assert sheet["A2"].value == expected


def test_a_value_without_its_formula_is_an_error() -> None:
    with pytest.raises(ValueError, match="A3"):
        finished(_book(), {"xl/worksheets/sheet1.xml": {"A2": 6.0, "A3": 1.0}})


def test_the_file_does_not_tell_when_it_was_written() -> None:
    with zipfile.ZipFile(io.BytesIO(finished(_book(), {}))) as archive:
        assert {member.date_time for member in archive.infolist()} == {(2000, 1, 1, 0, 0, 0)}
        core = archive.read("docProps/core.xml").decode()
    assert core.count("2000-01-01T00:00:00Z") == 2
