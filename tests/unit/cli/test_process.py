"""The command line as a process of its own: streams, signals, a reader who goes away, and a defect."""

import os
import signal
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path

import pytest

from baywright.app.files import save_project
from baywright.app.session import Session
from baywright.cli.main import DEFECT, INTERRUPTED, Surroundings, run
from baywright.model.inventory import Box, BoxSize
from baywright.model.project import Project
from baywright.model.space import Space


def shop(boxes: int) -> Project:
    """A project whose boxes differ, so that planning many of them takes its time."""
    sizes = tuple(
        BoxSize(id=f"size-{n}", name=f"Size × {n}", width_mm=400, depth_mm=300, height_mm=75 + 17 * n) for n in range(9)
    )
    return Project(
        space=Space(length_mm=100_000, height_limit_mm=2_000),
        box_sizes=sizes,
        boxes=tuple(
            Box(id=f"box-{n}", label=f"Box {n}", size_id=sizes[n % 9].id, loaded_mass_kg=n * 7919 % 200 / 10)
            for n in range(boxes)
        ),
    )


def command(*arguments: object) -> list[str]:
    return [sys.executable, "-m", "baywright", *map(str, arguments)]


def test_a_reader_who_goes_away_prevents_no_saving(tmp_path: Path) -> None:
    path = tmp_path / "shop.baywright"
    save_project(path, shop(5))
    before = path.read_bytes()
    with subprocess.Popen(
        command("plan", path, "--save"), stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True
    ) as process:
        assert process.stdout is not None
        assert process.stderr is not None
        process.stdout.close()
        messages = process.stderr.read()
        process.wait()
    assert process.returncode == 141
    assert "Traceback" not in messages
    assert "Exception" not in messages
    assert path.read_bytes() != before


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="needs the device that is always full")
def test_output_that_cannot_be_written(tmp_path: Path) -> None:
    with open("/dev/full", "w") as full:
        process = subprocess.run(command("result-schema"), stdout=full, stderr=subprocess.PIPE, text=True)
    assert process.returncode == 4
    assert process.stderr == "The output cannot be written: No space left on device.\n"


def test_a_terminal_that_knows_few_letters(tmp_path: Path) -> None:
    path = tmp_path / "shop.baywright"
    save_project(path, shop(2))
    environment = {**os.environ, "PYTHONIOENCODING": "ascii"}
    process = subprocess.run(command("plan", path), env=environment, capture_output=True, text=True)
    assert process.returncode == 0
    assert "Size ? 0" in process.stdout


@pytest.fixture
def keyboard_is_heard() -> Iterator[None]:
    """A run in the background of a shell ignores the keyboard's signal, and so would all that it starts."""
    before = signal.signal(signal.SIGINT, signal.default_int_handler)
    yield
    signal.signal(signal.SIGINT, before)


@pytest.mark.usefixtures("keyboard_is_heard")
@pytest.mark.parametrize("seconds", [0.3, 0.9, 4.0])
def test_stopped_from_the_keyboard(tmp_path: Path, seconds: float) -> None:
    """While the program loads or while it plans: it ends soon, without a traceback, and nothing is saved."""
    path = tmp_path / "shop.baywright"
    save_project(path, shop(900))
    before = path.read_bytes()
    with subprocess.Popen(
        command("plan", path, "--save"), stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True
    ) as process:
        time.sleep(seconds)
        process.send_signal(signal.SIGINT)
        begin = time.monotonic()
        _, messages = process.communicate()
    assert time.monotonic() - begin < 20
    assert "Traceback" not in messages
    assert process.returncode in (INTERRUPTED, -signal.SIGINT)
    assert path.read_bytes() == before


def test_a_defect_ends_with_words(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "shop.baywright"
    save_project(path, shop(1))

    def fail(session: Session) -> None:
        raise ZeroDivisionError("made to fail")

    monkeypatch.setattr(Session, "report", property(fail))
    assert run(["check", str(path)], Surroundings(lambda _, __: 0, Path)) == DEFECT
    message = capsys.readouterr().err
    assert message.startswith(
        "This is a defect of the program: ZeroDivisionError: made to fail (test_process.py, line "
    )
    assert "Traceback" not in message


def test_a_planner_that_breaks_off_is_told(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "shop.baywright"
    save_project(path, shop(1))

    def fail(*_: object, **__: object) -> None:
        raise ZeroDivisionError("made to fail")

    monkeypatch.setattr("baywright.app.planning.plan", fail)
    for name in ("plan", "schedule", "result"):
        assert run([name, str(path)], Surroundings(lambda _, __: 0, Path)) == DEFECT
        assert "made to fail" in capsys.readouterr().err
