"""The sub-command `options`: a numbered table, one of them used and saved, and what is refused."""

import re
from pathlib import Path

import pytest

from baywright.app.files import open_project, save_project
from baywright.cli.main import Surroundings, run
from baywright.cli.options import QUICK
from baywright.model.inventory import Box, BoxSize
from baywright.model.project import Project

SIZE = BoxSize(id="euro-120", name="Euro 120", width_mm=396, depth_mm=297, height_mm=120)


@pytest.fixture
def file(tmp_path: Path) -> Path:
    path = tmp_path / "shop.baywright"
    boxes = tuple(Box(id=f"box-{n}", label=f"Box {n}", size_id=SIZE.id, loaded_mass_kg=n) for n in range(1, 9))
    save_project(path, Project(box_sizes=(SIZE,), boxes=boxes))
    return path


def baywright(*arguments: object) -> int:
    return run([str(argument) for argument in arguments], Surroundings(lambda _path, _demo: 0, lambda: Path("no demo")))


def test_they_are_listed_with_numbers_and_no_file_is_changed(file: Path, capsys: pytest.CaptureFixture[str]) -> None:
    before = file.read_bytes()
    assert baywright("options", file) == 0
    *lines, said = capsys.readouterr().out.splitlines()
    assert said == QUICK
    assert lines[0].startswith("No.  Bays  Rows")
    assert [line.split()[0] for line in lines[1:]] == [str(n) for n in range(1, len(lines))]
    assert len(lines) > 3
    assert all(re.search(r" [0-9]+ +not known yet", line) for line in lines[1:])  # sheets are counted, prices missing
    assert file.read_bytes() == before


def test_one_is_used_and_saved_and_then_marked_as_the_present_one(
    file: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert baywright("options", file) == 0
    chosen = capsys.readouterr().out.splitlines()[2].split()
    assert baywright("options", file, "--use", 2, "--save") == 0
    out = capsys.readouterr().out
    assert out.splitlines()[1].split()[:3] == chosen[:3]
    assert "Box 8" in out
    project = open_project(file)
    assert [str(project.arrangement.bay_count), str(project.arrangement.upright_rows)] == chosen[1:3]
    assert len(project.arrangement.placements) == 8
    assert baywright("options", file) == 0
    assert capsys.readouterr().out.splitlines()[1].endswith("present shape")
    assert baywright("check", file) == 0


def test_a_number_that_is_not_there_and_saving_without_one_are_refused(
    file: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    before = file.read_bytes()
    assert baywright("options", file, "--use", 99, "--save") == 2
    assert "There is no option 99" in capsys.readouterr().err
    assert baywright("options", file, "--save") == 2
    assert "--use" in capsys.readouterr().err
    assert file.read_bytes() == before


def test_where_nothing_fits_the_answer_is_no(file: Path, capsys: pytest.CaptureFixture[str]) -> None:
    project = open_project(file)
    save_project(file, project.replace(space=project.space.replace(height_limit_mm=250)))
    assert baywright("options", file) == 1
    assert "baywright plan" in capsys.readouterr().out
    save_project(file, project.replace(boxes=()))
    assert baywright("options", file) == 0
    assert "no boxes" in capsys.readouterr().out
