"""An impossible project on the command line: the clash in words and numbers, numbered changes, one of them made."""

import json
from pathlib import Path

import pytest

from baywright.app.files import open_project, save_project
from baywright.app.refusal import refusal
from baywright.cli.main import Surroundings, run
from baywright.model.inventory import Box, BoxSize
from baywright.model.project import Project

SIZE = BoxSize(id="low", name="Low", width_mm=396, depth_mm=297, height_mm=120)


@pytest.fixture
def tight(tmp_path: Path) -> Path:
    """Six boxes, and one bay with two drawers."""
    boxes = tuple(Box(id=f"box-{n}", label=f"Box {n}", size_id="low", loaded_mass_kg=n) for n in range(1, 7))
    project = Project(name="Tight", box_sizes=(SIZE,), boxes=boxes)
    project = project.replace(limits=project.limits.replace(bay_count=1, drawers_per_bay=2))
    path = tmp_path / "tight.baywright"
    save_project(path, project)
    return path


def baywright(*arguments: object) -> int:
    return run([str(a) for a in arguments], Surroundings(lambda _path, _demo: 0, lambda: Path("no demo")))


def test_plan_names_the_clash_with_its_inequality_and_numbers_what_helps(
    tight: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert baywright("plan", tight) == 1
    out = capsys.readouterr().out
    assert "6 drawers needed, 1 bay × 2 drawers = 2 allowed." in out
    assert "at most 2 drawers in a bay; and 1 bay fixed" in out
    offered = open_repairs(tight)
    assert len(offered) >= 2
    for number, text in enumerate(offered, 1):
        assert f"{number}. {text}" in out


def open_repairs(path: Path) -> list[str]:
    answer = refusal(open_project(path))
    assert answer is not None
    return [repair.text for repair in answer.repairs]


def test_check_tells_the_same_and_says_nothing_of_it_once_it_is_mended(
    tight: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert baywright("check", tight) == 1
    out = capsys.readouterr().out
    assert "6 drawers needed" in out
    assert f"1. {open_repairs(tight)[0]}" in out
    assert baywright("plan", tight, "--repair", 1, "--save") == 0
    capsys.readouterr()
    assert baywright("check", tight) == 0
    assert "Nothing is wrong" in capsys.readouterr().out


def test_every_change_by_its_number_makes_a_plan(tight: Path, tmp_path: Path) -> None:
    for number in range(1, len(open_repairs(tight)) + 1):
        target = tmp_path / f"mended-{number}.baywright"
        assert baywright("plan", tight, "--repair", number, "--save", target) == 0
        assert refusal(open_project(target)) is None
    assert refusal(open_project(tight)) is not None


@pytest.mark.parametrize("number", [0, 99])
def test_a_number_that_was_not_offered_is_refused_and_changes_nothing(
    tight: Path, number: int, capsys: pytest.CaptureFixture[str]
) -> None:
    before = tight.read_bytes()
    assert baywright("plan", tight, "--repair", number, "--save") == 2
    assert f"There is no change number {number}" in capsys.readouterr().err
    assert tight.read_bytes() == before


def test_the_result_for_programs_carries_clash_and_changes(tight: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert baywright("result", tight) == 1
    answer = json.loads(capsys.readouterr().out)["plan"]
    assert answer["conflicts"][0]["fields"] == ["limits.drawers_per_bay", "limits.bay_count"]
    assert answer["conflicts"][0]["needed"] > answer["conflicts"][0]["available"]
    first = answer["repairs"][0]
    assert first["changes"][0].keys() == {"path", "value"}
    weights = [repair["weight"] for repair in answer["repairs"]]
    assert weights == sorted(weights)


def test_a_change_that_is_not_needed_is_not_made_and_the_plan_is_told_once(
    tight: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert baywright("plan", tight, "--repair", 1, "--save") == 0
    capsys.readouterr()
    mended = tight.read_bytes()
    assert baywright("plan", tight, "--repair", 1) == 0
    told = capsys.readouterr()
    assert told.out.count("Plan found") == 1
    assert "No change was made: there is a plan without one." in told.err
    assert tight.read_bytes() == mended
