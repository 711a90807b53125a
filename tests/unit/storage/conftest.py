"""What the storage tests share: a project with something of everything, and a person without the superuser's rights."""

import os
import shutil
import tempfile
import zipfile
from collections.abc import Callable, Iterator, Mapping, Sequence
from pathlib import Path

import openpyxl
import pytest

from baywright.model.arrangement import Arrangement, Lock, Placement
from baywright.model.inventory import Box, BoxSize, Use
from baywright.model.length import LengthUnit
from baywright.model.project import Project

NOBODY = 65534


@pytest.fixture
def project() -> Project:
    """A small project that uses every part of the document."""
    return Project(
        name="Spoke & rim — Werkstatt “Süd”",
        note="two\nlines",
        unit=LengthUnit.INCH,
        box_sizes=(
            BoxSize(id="euro-120", name="Euro 120", width_mm=400, depth_mm=300, height_mm=120),
            BoxSize(id="euro-170", name="Euro 170", width_mm=400, depth_mm=300, height_mm=170.5),
        ),
        boxes=(
            Box(id="box-1", label="Spokes", size_id="euro-120", loaded_mass_kg=7.25, group="wheels", use=Use.DAILY),
            Box(id="box-2", label="=Chains", size_id="euro-170", contents="“9” and ‘10’ speed", note="…"),
        ),
        arrangement=Arrangement(
            bay_count=1, upright_rows=12, placements=(Placement(box_id="box-1", bay=0, row=1, lock=Lock.DRAWER),)
        ),
    )


@pytest.fixture
def ordinary_person() -> Iterator[Path]:
    """A folder of one's own, and no superuser's rights while the test runs."""
    folder = Path(tempfile.mkdtemp(prefix="baywright-test-"))
    rights = os.geteuid()
    try:
        if rights == 0:
            os.chown(folder, NOBODY, -1)
            os.seteuid(NOBODY)
        yield folder
    finally:
        if rights == 0:
            os.seteuid(0)
        folder.chmod(0o700)
        shutil.rmtree(folder)


_MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"
_RELATIONS = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
_PACKAGE = "http://schemas.openxmlformats.org/package/2006"

_PARTS = {
    "[Content_Types].xml": f'<Types xmlns="{_PACKAGE}/content-types">'
    '<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>'
    '<Override PartName="/xl/workbook.xml" '
    'ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/>'
    '<Override PartName="/xl/worksheets/sheet1.xml" '
    'ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml"/></Types>',
    "_rels/.rels": f'<Relationships xmlns="{_PACKAGE}/relationships">'
    f'<Relationship Id="r1" Type="{_RELATIONS}/officeDocument" Target="xl/workbook.xml"/></Relationships>',
    "xl/_rels/workbook.xml.rels": f'<Relationships xmlns="{_PACKAGE}/relationships">'
    f'<Relationship Id="r1" Type="{_RELATIONS}/worksheet" Target="worksheets/sheet1.xml"/></Relationships>',
    "xl/workbook.xml": f'<workbook xmlns="{_MAIN}" xmlns:r="{_RELATIONS}">'
    '<sheets><sheet name="One" sheetId="1" r:id="r1"/></sheets></workbook>',
}


@pytest.fixture
def pack() -> Callable[..., Path]:
    """Makes a workbook by hand out of the XML of its rows, with extra parts, honest or hostile."""

    def make(path: Path, rows: str = "", before: str = "", extra: Mapping[str, bytes] | None = None) -> Path:
        with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as archive:
            for name, text in _PARTS.items():
                archive.writestr(name, text)
            sheet = f'{before}<worksheet xmlns="{_MAIN}">{rows}</worksheet>'
            archive.writestr("xl/worksheets/sheet1.xml", sheet)
            for name, data in (extra or {}).items():
                archive.writestr(name, data)
        return path

    return make


@pytest.fixture
def save_sheets() -> Callable[[Path, Mapping[str, Sequence[Sequence[object]]]], Path]:
    """Makes a workbook as the usual library writes it, from the values of its sheets."""

    def make(path: Path, sheets: Mapping[str, Sequence[Sequence[object]]]) -> Path:
        workbook = openpyxl.Workbook()
        workbook.remove(workbook.worksheets[0])
        for name, rows in sheets.items():
            worksheet = workbook.create_sheet(name)
            for row in rows:
                worksheet.append(list(row))
        workbook.save(path)
        return path

    return make
