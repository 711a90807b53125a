"""The workbook in a real spreadsheet program: it opens without a warning and calculates what the engine calculates.

LibreOffice trusts values that stand beside formulas, so each test plants wrong ones (or changes inputs) and has the
program told to calculate everything anew. Skipped only where LibreOffice is not installed.
"""

import io
import re
import shutil
import subprocess
import zipfile
from collections.abc import Callable
from pathlib import Path

import openpyxl
import pytest

from baywright.making import manufacture
from baywright.model.construction import Back, DrawerForm, EndPanels, FirstRowRule, Fronts, Uprights
from baywright.model.length import LengthUnit
from baywright.model.plan import PlanResult
from baywright.model.project import Project
from baywright.workings import derive

OFFICE = shutil.which("soffice") or shutil.which("libreoffice")

pytestmark = [
    pytest.mark.skipif(OFFICE is None, reason="LibreOffice (soffice) is not installed"),
    pytest.mark.timeout(180),
]

ALWAYS_RECALCULATE = """<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load">
<prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
</oor:items>
"""
PLANTED = 123456.75

Written = Callable[..., bytes]


@pytest.fixture(scope="module")
def profile(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A LibreOffice profile of its own that recalculates every file it loads."""
    folder = tmp_path_factory.mktemp("profile")
    (folder / "user").mkdir()
    (folder / "user" / "registrymodifications.xcu").write_text(ALWAYS_RECALCULATE, encoding="utf-8")
    return folder


def _recalculated(data: bytes, folder: Path, profile: Path) -> openpyxl.Workbook:
    """The workbook as LibreOffice saves it after loading and calculating; values in place of formulas."""
    source, target = folder / "order.xlsx", folder / "out"
    source.write_bytes(data)
    command = [
        str(OFFICE), "--headless", "--norestore", f"-env:UserInstallation={profile.as_uri()}",
        "--convert-to", "xlsx", "--outdir", str(target), str(source),
    ]  # fmt: skip
    done = subprocess.run(command, capture_output=True, text=True, timeout=150, check=True)
    # A machine without Java is told of on every start; it has nothing to do with the file.
    said = [line for line in (done.stdout + done.stderr).splitlines() if "javaldx" not in line]
    assert not [line for line in said if re.search("warn|error|repair|corrupt", line, re.IGNORECASE)]
    return openpyxl.load_workbook(target / "order.xlsx", data_only=True)


def _with_planted_values(data: bytes) -> bytes:
    """The file with one wrong number beside every formula."""
    target, planted = io.BytesIO(), 0
    with zipfile.ZipFile(io.BytesIO(data)) as source, zipfile.ZipFile(target, "w", zipfile.ZIP_DEFLATED) as archive:
        for name in source.namelist():
            content, count = re.subn(rb"(</f>)<v>[^<]*</v>", rb"\g<1><v>%r</v>" % PLANTED, source.read(name))
            planted += count
            archive.writestr(name, content)
    assert planted > 60
    return target.getvalue()


def _compare(book: openpyxl.Workbook, project: Project) -> int:
    """Compare every dimension with the engine; answers how many formula cells were compared."""
    compared = 0
    for entry in derive(project).entries:
        (_, place), *_ = book.defined_names[entry.cell].destinations
        value = book["Dimensions"][place.replace("$", "")].value
        assert value == pytest.approx(entry.value, rel=1e-9, abs=1e-9), entry.key
        compared += not entry.is_input
    return compared


def _change(book: openpyxl.Workbook, changes: dict[str, float]) -> None:
    for name, value in changes.items():
        (_, place), *_ = book.defined_names[name].destinations
        cell = book["Dimensions"][place.replace("$", "")]
        assert cell.data_type == "n", f"{name} is no input"
        cell.value = value


def test_every_formula_gives_the_engine_s_value(
    demo_plan: tuple[Project, PlanResult], written: Written, tmp_path: Path, profile: Path
) -> None:
    project, result = demo_plan
    data = written(project, result)
    book = _recalculated(_with_planted_values(data), tmp_path, profile)
    assert _compare(book, project) > 50
    packs = [cell.value for cell in book["Hardware order"]["H"][4:] if isinstance(cell.value, int | float)]
    assert packs == [item.packs for item in manufacture(project).hardware]


def test_changed_inputs_give_what_a_new_engine_run_gives(
    small: Project, written: Written, tmp_path: Path, profile: Path
) -> None:
    book = openpyxl.load_workbook(io.BytesIO(written(small)))
    _change(
        book,
        {
            "wall_length": 3175.5, "upright_thickness": 17.6, "own_uprights": 1, "full_back": 1, "first_row_rule": 3,
            "set_first_row": 9.5, "line_offset": 20.0, "gap_over_side": 150.0, "bay_box_width": 396.0,
            "set_runner_length": 300.0, "planned_bays": 0, "planned_rows": 0, "box_height__size_1": 167.25,
            "lowest_box": 167.25, "fronts": 2, "front_thickness": 21.0, "reveal": 3.5, "tray": 1,
            "set_rail_height": 45.0, "has_box_stop": 1, "left_panel": 1, "end_panel_thickness": 20.5,
        },
    )  # fmt: skip
    target = io.BytesIO()
    book.save(target)
    construction = small.construction
    changed = small.replace(
        space=small.space.replace(length_mm=3175.5),
        limits=small.limits.replace(bay_box_width_mm=396.0),
        construction=construction.replace(
            uprights=Uprights.OWN,
            boards=construction.boards.replace(upright_mm=17.6, front_mm=21.0, end_panel_mm=20.5),
            rear=construction.rear.replace(kind=Back.FULL_BACK),
            hole_rows=construction.hole_rows.replace(first_row_rule=FirstRowRule.SET, first_row_mm=9.5),
            drawers=construction.drawers.replace(
                gap_over_side_mm=150.0,
                fronts=Fronts.OVERLAY,
                reveal_mm=3.5,
                form=DrawerForm.TRAY,
                rail_height_mm=45.0,
                has_box_stop=True,
            ),
            end_panels=EndPanels(left=True),
            runners=construction.runners.replace(line_offset_mm=20.0, length_mm=300.0),
        ),
        box_sizes=(small.box_sizes[0].replace(height_mm=167.25), *small.box_sizes[1:]),
        arrangement=small.arrangement.replace(bay_count=0, upright_rows=0, placements=()),
    )
    assert _compare(_recalculated(target.getvalue(), tmp_path, profile), changed) > 40


def test_inches_follow_and_labels_stay_text(
    small: Project, written: Written, tmp_path: Path, profile: Path, labels: tuple[str, ...]
) -> None:
    project = small.replace(unit=LengthUnit.INCH)
    book = _recalculated(_with_planted_values(written(project)), tmp_path, profile)
    entries = derive(project).entries
    for row, entry in enumerate(entries, 5):
        inches = book["Dimensions"].cell(row=row, column=5).value
        if entry.unit == "mm":
            assert inches == pytest.approx(entry.value / 25.4, abs=1 / 64 + 1e-9), entry.key
            assert isinstance(inches, int | float)
            assert inches * 32 == pytest.approx(round(inches * 32), abs=1e-6)
        else:
            assert inches is None
    shown = [book["Inventory"].cell(row=5 + index, column=1).value for index in range(len(labels))]
    assert shown == [label.replace("\x07", " ") for label in labels]


def test_bays_that_are_not_alike_are_recalculated_kind_by_kind(
    mixed: Project, written: Written, tmp_path: Path, profile: Path
) -> None:
    kinds = derive(mixed).kinds
    assert len(kinds) >= 4
    book = _recalculated(_with_planted_values(written(mixed)), tmp_path, profile)
    assert _compare(book, mixed) > 100
