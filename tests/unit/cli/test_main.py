"""The command line: every job, every exit code, never a traceback."""

import csv
import io
import json
import re
from pathlib import Path

import pytest
from openpyxl import load_workbook

from baywright.app.files import open_project, save_project
from baywright.app.result import CompleteResult
from baywright.cli.main import Surroundings, run
from baywright.model.inventory import Box, BoxSize
from baywright.model.plan import PlanResult, PlanStatus
from baywright.model.project import Project

SIZE = BoxSize(id="euro-120", name="Euro 120", width_mm=396, depth_mm=297, height_mm=120)


def shop(boxes: int = 6) -> Project:
    return Project(
        name="Shop",
        box_sizes=(SIZE,),
        boxes=tuple(
            Box(id=f"box-{n}", label=f"Box {n}", size_id=SIZE.id, loaded_mass_kg=n) for n in range(1, boxes + 1)
        ),
    )


@pytest.fixture
def file(tmp_path: Path) -> Path:
    path = tmp_path / "shop.baywright"
    save_project(path, shop())
    return path


@pytest.fixture
def impossible(tmp_path: Path) -> Path:
    path = tmp_path / "tight.baywright"
    project = shop()
    save_project(path, project.replace(limits=project.limits.replace(bay_count=1, drawers_per_bay=2)))
    return path


def baywright(
    *arguments: object, demo: Path = Path("no demo"), opened: list[tuple[Path | None, bool]] | None = None
) -> int:
    def open_window(path: Path | None, begin_with_demo: bool) -> int:
        if opened is not None:
            opened.append((path, begin_with_demo))
        return 0

    return run([str(argument) for argument in arguments], Surroundings(open_window, lambda: demo))


def test_plan_prints_goals_proof_and_schedule_and_changes_no_file(
    file: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    before = file.read_bytes()
    assert baywright("plan", file) == 0
    out = capsys.readouterr().out
    assert "proved best" in out
    assert "bays: 1 (proved)" in out
    assert len(re.findall(r"Box \d", out)) == 6
    assert file.read_bytes() == before


def test_plan_can_be_saved_in_the_file_or_elsewhere(file: Path, tmp_path: Path) -> None:
    before = file.read_bytes()
    assert baywright("plan", file, "--save", tmp_path / "planned.baywright") == 0
    assert file.read_bytes() == before
    assert len(open_project(tmp_path / "planned.baywright").arrangement.placements) == 6
    assert baywright("plan", file, "--save") == 0
    assert open_project(file) == open_project(tmp_path / "planned.baywright")


def test_an_impossible_plan_says_why_and_exits_with_1(impossible: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert baywright("plan", impossible) == 1
    out = capsys.readouterr().out
    assert "No plan keeps every limit" in out
    assert "6" in out
    assert "2" in out
    assert baywright("schedule", impossible) == 1
    assert baywright("workbook", impossible) == 1
    assert not impossible.with_suffix(".xlsx").exists()


def test_schedule_as_text_and_as_csv(file: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert baywright("schedule", file) == 0
    assert capsys.readouterr().out.splitlines()[0].split()[:3] == ["Bay", "Drawer", "Row"]
    assert baywright("schedule", file, "--csv") == 0
    rows = list(csv.DictReader(io.StringIO(capsys.readouterr().out)))
    assert sorted(row["box_label"] for row in rows) == [f"Box {n}" for n in range(1, 7)]
    assert {row["runner_holes_mm"] for row in rows} == {"37 165 325"}


def test_a_label_like_a_formula_stays_text_in_csv(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "formula.baywright"
    save_project(path, shop(1).replace(boxes=(Box(id="box-1", label="=1+1", size_id=SIZE.id),)))
    assert baywright("schedule", path, "--csv") == 0
    assert "'=1+1" in capsys.readouterr().out


def test_result_follows_the_published_schema(file: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert baywright("result-schema") == 0
    schema = json.loads(capsys.readouterr().out)
    assert baywright("result", file) == 0
    text = capsys.readouterr().out
    result = json.loads(text)
    assert set(result) == set(schema["properties"]) == set(schema["required"])
    assert CompleteResult.model_validate_json(text).model_dump_json(indent=2) == text.rstrip("\n")
    assert result["plan"]["status"] == "proved_best"


def test_result_into_a_file(file: Path, tmp_path: Path) -> None:
    assert baywright("result", file, "-o", tmp_path / "result.json") == 0
    assert json.loads((tmp_path / "result.json").read_text())["project"]["name"] == "Shop"


def test_workbook_beside_the_file_or_where_it_is_wanted(
    file: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert baywright("workbook", file) == 0
    assert capsys.readouterr().out.strip() == str(tmp_path / "shop.xlsx")
    assert baywright("workbook", file, "-o", tmp_path / "order.xlsx") == 0
    assert load_workbook(tmp_path / "order.xlsx").sheetnames


def test_demo_workbook_into_a_folder(file: Path, tmp_path: Path) -> None:
    (tmp_path / "out").mkdir()
    assert baywright("workbook", "--demo", "-o", tmp_path / "out", demo=file) == 0
    assert (tmp_path / "out" / "shop.xlsx").exists()


def test_check_tells_what_is_wrong(file: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert baywright("check", file) == 1
    assert "Without a drawer: “Box 1”" in capsys.readouterr().out
    baywright("plan", file, "--save")
    capsys.readouterr()
    assert baywright("check", file) == 0
    assert "Nothing is wrong: 6 drawers" in capsys.readouterr().out


def test_safety_tells_what_the_checks_found(file: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert baywright("safety", file) == 1
    assert "nothing to check" in capsys.readouterr().out
    baywright("plan", file, "--save")
    capsys.readouterr()
    baywright("safety", file)
    told = capsys.readouterr().out
    assert "Tipping, The run" in told
    assert "? not checked" in told
    assert "no permission" in told


@pytest.mark.parametrize("command", ["plan", "workbook", "schedule", "result", "check", "safety"])
def test_a_file_that_cannot_be_read_exits_with_3(
    command: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    broken = tmp_path / "broken.baywright"
    broken.write_text('{"format_version": 1, "name": 5}')
    for path in (broken, tmp_path / "missing.baywright", tmp_path):
        assert baywright(command, path) == 3
        streams = capsys.readouterr()
        assert path.name in streams.err
        assert streams.out == ""
    assert broken.read_text() == '{"format_version": 1, "name": 5}'


def test_a_file_that_cannot_be_written_exits_with_4(file: Path, tmp_path: Path) -> None:
    nowhere = tmp_path / "no folder"
    assert baywright("plan", file, "--save", nowhere / "a.baywright") == 4
    assert baywright("workbook", file, "-o", nowhere / "a.xlsx") == 4
    assert baywright("result", file, "-o", nowhere / "a.json") == 4


@pytest.mark.parametrize("arguments", [["nonsense"], ["plan"], ["plan", "a", "b"], ["workbook"], ["plan", "--no"]])
def test_a_wrong_command_line_exits_with_2(arguments: list[str], capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as ended:
        baywright(*arguments)
    assert ended.value.code == 2
    assert "usage: baywright" in capsys.readouterr().err


@pytest.mark.parametrize(
    "command", [[], ["plan"], ["workbook"], ["schedule"], ["result"], ["check"], ["safety"], ["import"], ["open"]]
)
def test_help_tells_the_exit_codes(command: list[str], capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as ended:
        baywright(*command, "--help")
    assert ended.value.code == 0
    assert "the answer is no" in capsys.readouterr().out


def test_without_a_sub_command_the_window_opens() -> None:
    opened: list[tuple[Path | None, bool]] = []
    baywright(opened=opened)
    baywright("open", "a.baywright", opened=opened)
    baywright("open", "--demo", opened=opened)
    assert opened == [(None, False), (Path("a.baywright"), False), (None, True)]


def test_an_empty_inventory_is_said_and_does_no_harm(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "empty.baywright"
    save_project(path, Project())
    baywright("plan", path)
    assert "no boxes" in capsys.readouterr().out
    assert baywright("schedule", path) == 1
    assert "no boxes" in capsys.readouterr().err


@pytest.mark.parametrize("status", [PlanStatus.IMPOSSIBLE, PlanStatus.STOPPED])
@pytest.mark.parametrize("command", ["plan", "result"])
def test_without_a_plan_every_job_answers_no(
    file: Path, monkeypatch: pytest.MonkeyPatch, command: str, status: PlanStatus
) -> None:
    monkeypatch.setattr("baywright.app.planning.plan", lambda *_, **__: PlanResult(status=status))
    assert baywright(command, file) == 1


def test_without_what_a_window_needs_the_way_out_is_said(capsys: pytest.CaptureFixture[str]) -> None:
    def no_window(_path: Path | None, _demo: bool) -> int:
        raise ImportError("libEGL.so.1: cannot open shared object file")

    assert run(["open"], Surroundings(no_window, lambda: Path("no demo"))) == 3
    told = capsys.readouterr().err
    assert "libEGL.so.1" in told
    assert "installer/start" in told
