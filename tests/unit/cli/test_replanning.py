"""Re-planning and “where could this box go?” on the command line."""

from pathlib import Path

import pytest

from baywright.app.files import open_project, save_project
from baywright.cli.main import Surroundings, run
from baywright.model.arrangement import Arrangement, Lock, Placement
from baywright.model.inventory import Box, BoxSize, BoxStatus
from baywright.model.project import Built, Project

SIZE = BoxSize(id="euro-120", name="Euro 120", width_mm=396, depth_mm=297, height_mm=120)


def baywright(*arguments: object) -> int:
    return run([str(argument) for argument in arguments], Surroundings(lambda _path, _demo: 0, lambda: Path("no demo")))


def shop() -> Project:
    """Two bays with pumps and tubes; bells have no drawer yet."""
    names = ("pumps", "tubes", "bells")
    placements = (
        Placement(box_id="pumps", bay=0, row=0, lock=Lock.DRAWER),
        Placement(box_id="tubes", bay=1, row=12),
    )
    plain = Project()
    return plain.replace(
        limits=plain.limits.replace(bay_count=2, upright_rows=20),
        box_sizes=(SIZE,),
        boxes=tuple(Box(id=name, label=name.capitalize(), size_id=SIZE.id, loaded_mass_kg=4) for name in names),
        arrangement=Arrangement(bay_count=2, upright_rows=20, placements=placements),
    )


@pytest.fixture
def file(tmp_path: Path) -> Path:
    path = tmp_path / "shop.baywright"
    save_project(path, shop())
    return path


def test_a_replan_tells_what_to_do_and_saves_only_when_asked(file: Path, capsys: pytest.CaptureFixture[str]) -> None:
    before = file.read_bytes()
    assert baywright("replan", file) == 0
    out = capsys.readouterr().out
    assert "boxes moved: 0 (proved)" in out
    assert "New boxes (1):" in out
    assert "Steps (3):" in out
    assert "  1. Cut what is new: 2 × Drawer side" in out
    assert file.read_bytes() == before
    assert baywright("replan", file, "--save") == 0
    after = open_project(file).arrangement
    assert {p.box_id for p in after.placements} == {"pumps", "tubes", "bells"}
    assert {(p.box_id, p.bay, p.row) for p in shop().arrangement.placements} <= {
        (p.box_id, p.bay, p.row) for p in after.placements
    }
    capsys.readouterr()
    assert baywright("replan", file) == 0
    assert "Nothing has to be done" in capsys.readouterr().out


def test_the_work_is_told_from_what_is_built(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    standing = shop()
    moved = standing.arrangement.replace(placements=(standing.arrangement.placements[0],))
    path = tmp_path / "built.baywright"
    save_project(path, standing.replace(arrangement=moved, built=Built(bays=(0, 1), project=standing)))
    assert baywright("replan", path) == 0
    out = capsys.readouterr().out
    assert "boxes moved: 0 (proved)" in out
    assert "“Tubes”" not in out


def test_an_impossible_replan_exits_with_1(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "tight.baywright"
    project = shop()
    save_project(path, project.replace(limits=project.limits.replace(drawers_per_bay=1)))
    assert baywright("replan", path, "--save") == 1
    assert "No plan keeps every limit" in capsys.readouterr().out
    assert len(open_project(path).arrangement.placements) == 2


def test_where_tells_the_best_places_first_and_why_not_elsewhere(
    file: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert baywright("where", file, "BELLS", "--most", 3, "--why-not") == 0
    out = capsys.readouterr().out.splitlines()
    assert out[0].startswith("“Bells” can go to ")
    assert len([line for line in out if line.startswith("  bay") and "handling effort" in line]) <= 3
    assert any("… and " in line for line in out)
    assert any("“Tubes” at row 13 takes" in line for line in out)


def test_where_knows_the_place_where_a_box_stands(file: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert baywright("where", file, "tubes", "--most", 100) == 0
    assert "bay 2 row 13: where it stands now" in capsys.readouterr().out


@pytest.mark.parametrize(
    ("typed", "words"), [("tube", "There are “Tubes”."), ("x", "There is no box “x”."), ("twin", "are called “twin”")]
)
def test_a_box_that_is_not_clear_exits_with_2(
    tmp_path: Path, typed: str, words: str, capsys: pytest.CaptureFixture[str]
) -> None:
    project = shop()
    twins = tuple(Box(id=f"twin-{n}", label="Twin", size_id=SIZE.id) for n in (1, 2))
    path = tmp_path / "twins.baywright"
    save_project(path, project.replace(boxes=(*project.boxes, *twins)))
    assert baywright("where", path, typed) == 2
    assert words in capsys.readouterr().err


def test_a_box_that_can_go_nowhere_exits_with_1(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    project = shop()
    path = tmp_path / "full.baywright"
    full = project.limits.replace(drawers_per_bay=1)
    save_project(path, project.replace(limits=full))
    assert baywright("where", path, "bells") == 1
    assert "can go nowhere" in capsys.readouterr().out
    away = tuple(box.replace(status=BoxStatus.ELSEWHERE) if box.id == "bells" else box for box in project.boxes)
    save_project(path, project.replace(boxes=away))
    assert baywright("where", path, "bells") == 1
    assert "kept elsewhere" in capsys.readouterr().err
    save_project(path, project.replace(arrangement=Arrangement()))
    assert baywright("where", path, "bells") == 1
    assert "Nothing is arranged yet" in capsys.readouterr().err


def test_bays_are_marked_as_built_and_the_work_that_is_left_is_told(
    file: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert baywright("built", file) == 0
    assert "No bay is marked as built" in capsys.readouterr().out
    assert baywright("built", file, 1) == 0
    out = capsys.readouterr().out
    assert "Bay 1 stands as built." in out
    assert "Put up bay 2." in out
    assert baywright("built", file, "--all") == 0
    assert "Bays 1, 2 stand as built.\nNothing has to be done" in capsys.readouterr().out
    assert open_project(file).built is not None
    assert baywright("built", file, 3) == 1
    assert "There is no bay 3" in capsys.readouterr().err
    assert baywright("built", file, "--forget") == 0
    assert open_project(file).built is None
