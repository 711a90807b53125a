"""Atomic writing: every input/output call is made to fail in turn, and the file is the old or the new one, whole."""

import os
import stat
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from baywright.storage import atomic
from baywright.storage.atomic import write_atomically

OLD, NEW = b"old " * 50_000, b"new " * 70_000


class FailingDisk:
    """The `os` module, of which the calls from number `first` on (or only that one) fail; counts the calls."""

    COUNTED = frozenset({"open", "write", "fsync", "fchmod", "close", "replace", "unlink", "stat", "access", "listdir"})

    def __init__(self, first: int, *, persistent: bool) -> None:
        self.first = first
        self.persistent = persistent
        self.calls: list[str] = []

    def __getattr__(self, name: str) -> Any:
        original = getattr(os, name)
        return self._counted(name, original) if name in self.COUNTED else original

    def _counted(self, name: str, original: Callable[..., object]) -> Callable[..., object]:
        def call(*arguments: object, **named: object) -> object:
            self.calls.append(name)
            number = len(self.calls)
            if number == self.first or (self.persistent and number > self.first):
                if name == "close":
                    original(*arguments, **named)  # what the kernel does when close reports a fault
                raise OSError(5, "made to fail")
            return original(*arguments, **named)

        return call


@pytest.mark.parametrize("persistent", [False, True])
def test_each_call_fails_in_turn(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, persistent: bool) -> None:
    path = tmp_path / "wall.baywright"
    for number in range(1, 100):
        path.write_bytes(OLD)
        disk = FailingDisk(number, persistent=persistent)
        monkeypatch.setattr(atomic, "os", disk)
        try:
            write_atomically(path, NEW)
            failed = False
        except OSError:
            failed = True
        monkeypatch.undo()
        has_replaced = "replace" in disk.calls[: number - 1]
        assert path.read_bytes() == (NEW if has_replaced or not failed else OLD)
        if not persistent:
            assert os.listdir(tmp_path) == ["wall.baywright"]
        for left_over in tmp_path.glob(".baywright-*"):
            left_over.unlink()
        if number > len(disk.calls):
            break
    else:
        pytest.fail("the number of calls has no end")
    assert not failed
    assert number > 10


def test_the_bytes_are_on_the_disk_before_the_name_is_theirs(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    disk = FailingDisk(10_000, persistent=False)
    monkeypatch.setattr(atomic, "os", disk)
    write_atomically(tmp_path / "wall.baywright", NEW)
    assert disk.calls == ["listdir", "stat", "open", "write", "fsync", "close", "replace", "open", "fsync", "close"]


def test_killed_in_the_middle(tmp_path: Path) -> None:
    """A process that saves for ever is killed at odd moments; what is there afterwards is always whole."""
    path = tmp_path / "wall.baywright"
    path.write_bytes(OLD)
    program = (
        (
            "import pathlib, sys\n"
            "from baywright.storage.atomic import write_atomically\n"
            f"contents = [{OLD!r}[:4] * 50_000, {NEW!r}[:4] * 70_000]\n"
            "print('ready', flush=True)\n"
            "while True:\n"
            "    for content in contents:\n"
            "        write_atomically(pathlib.Path(sys.argv[1]), content)\n"
        )
        .replace(repr(OLD), "b'old '")
        .replace(repr(NEW), "b'new '")
    )
    for milliseconds in (0, 3, 7, 12, 20):
        with subprocess.Popen([sys.executable, "-c", program, str(path)], stdout=subprocess.PIPE) as process:
            assert process.stdout is not None
            process.stdout.readline()
            time.sleep(milliseconds / 1000)
            process.kill()
        assert path.read_bytes() in (OLD, NEW)


def test_left_over_temporary_files_are_swept(tmp_path: Path) -> None:
    old, fresh, other = (tmp_path / name for name in (".baywright-aa.part", ".baywright-bb.part", ".other.part"))
    for file in (old, fresh, other):
        file.write_bytes(b"half")
    an_hour_ago = time.time() - 3600
    os.utime(old, (an_hour_ago, an_hour_ago))
    os.utime(other, (an_hour_ago, an_hour_ago))
    write_atomically(tmp_path / "wall.baywright", NEW)
    assert sorted(os.listdir(tmp_path)) == [".baywright-bb.part", ".other.part", "wall.baywright"]


def test_permissions_are_kept(tmp_path: Path) -> None:
    path = tmp_path / "wall.baywright"
    path.write_bytes(OLD)
    path.chmod(0o640)
    write_atomically(path, NEW)
    assert stat.S_IMODE(path.stat().st_mode) == 0o640


def test_a_new_file_gets_the_usual_permissions(tmp_path: Path) -> None:
    write_atomically(tmp_path / "wall.baywright", NEW)
    (tmp_path / "plain").write_bytes(NEW)
    assert (tmp_path / "wall.baywright").stat().st_mode == (tmp_path / "plain").stat().st_mode


def test_a_link_stays_a_link(tmp_path: Path) -> None:
    (tmp_path / "store").mkdir()
    path, link = tmp_path / "store" / "wall.baywright", tmp_path / "link.baywright"
    path.write_bytes(OLD)
    link.symlink_to(path)
    write_atomically(link, NEW)
    assert link.is_symlink()
    assert path.read_bytes() == NEW


def test_only_ordinary_files_are_replaced(tmp_path: Path) -> None:
    with pytest.raises(IsADirectoryError):
        write_atomically(tmp_path, NEW)
    os.mkfifo(tmp_path / "pipe")
    with pytest.raises(OSError, match="not an ordinary file"):
        write_atomically(tmp_path / "pipe", NEW)


def test_a_folder_that_cannot_be_forced_to_the_disk_is_no_failure(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def fsync(handle: int) -> None:
        if stat.S_ISDIR(os.fstat(handle).st_mode):
            raise OSError(22, "not on this file system")

    disk = FailingDisk(10_000, persistent=False)
    monkeypatch.setattr(disk, "fsync", fsync, raising=False)
    monkeypatch.setattr(atomic, "os", disk)
    write_atomically(tmp_path / "wall.baywright", NEW)
    assert (tmp_path / "wall.baywright").read_bytes() == NEW
