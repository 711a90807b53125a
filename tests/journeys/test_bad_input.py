"""Input that makes no sense, or no wall could hold: the answer is a sentence about what to change, never a defect."""

from pathlib import Path

import pytest

from baywright.app.files import open_project, save_project
from baywright.cli.main import Surroundings, run
from baywright.model.arrangement import Arrangement, Lock, Placement
from baywright.model.inventory import Box, BoxSize
from baywright.model.plan import LimitKind, PlanStatus
from baywright.model.project import Project
from baywright.model.space import HIGHEST_LIMIT_MM, LONGEST_WALL_MM, Space
from baywright.planner import plan

EURO = BoxSize(id="euro", name="Euro", width_mm=400, depth_mm=300, height_mm=320)


def shop(boxes: int, **space: float) -> Project:
    """So many boxes of one size along a wall."""
    return Project(
        space=Space.model_validate({"depth_mm": 410, **space}),
        box_sizes=(EURO,),
        boxes=tuple(Box(id=f"box-{number}", label=f"Box {number}", size_id="euro") for number in range(boxes)),
    )


def test_more_boxes_than_the_longest_wall_holds_are_refused_with_numbers() -> None:
    # What would help is sought in longer walls; none longer than a project may have is even tried.
    result = plan(shop(700, length_mm=LONGEST_WALL_MM, height_limit_mm=1150))
    assert result.status is PlanStatus.IMPOSSIBLE
    assert "rows needed" in result.conflicts[0].message


def test_more_boxes_than_the_highest_run_holds_are_refused_with_numbers() -> None:
    project = shop(70, length_mm=600, height_limit_mm=HIGHEST_LIMIT_MM)
    holes = project.construction.hole_rows.replace(pitch_mm=64.0)
    result = plan(project.replace(construction=project.construction.replace(hole_rows=holes)))
    assert result.status is PlanStatus.IMPOSSIBLE
    assert "rows needed" in result.conflicts[0].message


def test_a_runner_line_that_leaves_no_row_is_named_once_and_with_the_amounts() -> None:
    project = shop(3, length_mm=2400, height_limit_mm=1150)
    runners = project.construction.runners.replace(line_offset_mm=5000.0)
    result = plan(project.replace(construction=project.construction.replace(runners=runners)))
    assert result.status is PlanStatus.IMPOSSIBLE
    (conflict,) = result.conflicts
    assert conflict.kind is LimitKind.CONSTRUCTION
    assert "runner line is 5000 mm over" in conflict.message
    assert conflict.needed is not None
    assert conflict.available is not None
    assert conflict.needed > conflict.available


def command(*arguments: str | Path) -> int:
    """Runs the command line without a window."""
    return run([str(argument) for argument in arguments], Surroundings(lambda _path, _demo: 0, lambda: Path("none")))


@pytest.fixture
def two_on_one_row(tmp_path: Path) -> Path:
    """A project file in which two boxes are locked in the same place and a third has none."""
    at = {"bay": 0, "row": 4, "lock": Lock.DRAWER}
    placements = tuple(Placement.model_validate({"box_id": f"box-{number}", **at}) for number in range(2))
    arrangement = Arrangement(bay_count=2, upright_rows=30, placements=placements)
    path = tmp_path / "shop.baywright"
    save_project(path, shop(3, length_mm=2400, height_limit_mm=1150).replace(arrangement=arrangement))
    return path


@pytest.mark.parametrize("job", ["schedule", "workbook"])
def test_what_is_made_from_an_arrangement_with_faults_says_so(
    job: str, two_on_one_row: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert command(job, two_on_one_row) == 0
    told = capsys.readouterr().err
    assert "do not order or drill from this yet" in told
    assert "without a drawer: 1" in told


def test_two_boxes_locked_on_one_row_are_both_named(two_on_one_row: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert command("plan", two_on_one_row) == 1
    told = capsys.readouterr().out
    assert "Locked: “Box 0” and “Box 1” cannot share the drawer at row 5 of bay 1" in told


@pytest.mark.parametrize("job", ["result", "workbook"])
def test_no_job_writes_over_the_project_it_is_about(
    job: str, two_on_one_row: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    before = open_project(two_on_one_row)
    assert command(job, two_on_one_row, "-o", two_on_one_row) == 4
    assert "is the name of a project" in capsys.readouterr().err
    assert open_project(two_on_one_row) == before
