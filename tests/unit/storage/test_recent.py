"""The list of recent files: short, in order, and never in the way."""

import os
from pathlib import Path

import pytest

from baywright.storage.recent import FILE_NAME, MOST_RECENT, forget, read_recent, remember


def test_most_recent_first_without_doubles(tmp_path: Path) -> None:
    settings = tmp_path / "settings" / "baywright"
    a, b = tmp_path / "a.baywright", tmp_path / "b.baywright"
    assert read_recent(settings) == ()
    remember(settings, a)
    remember(settings, b)
    assert remember(settings, a) == (a, b)
    assert read_recent(settings) == (a, b)


def test_only_so_many(tmp_path: Path) -> None:
    for number in range(MOST_RECENT + 5):
        remember(tmp_path, tmp_path / f"{number}.baywright")
    recent = read_recent(tmp_path)
    assert len(recent) == MOST_RECENT
    assert recent[0] == tmp_path / f"{MOST_RECENT + 4}.baywright"


def test_forgotten(tmp_path: Path) -> None:
    remember(tmp_path, tmp_path / "a")
    remember(tmp_path, tmp_path / "b")
    assert forget(tmp_path, tmp_path / "b") == (tmp_path / "a",)
    assert read_recent(tmp_path) == (tmp_path / "a",)


def test_a_path_is_remembered_as_it_stands_on_the_disk(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    assert remember(tmp_path, Path("x/../wall.baywright")) == (tmp_path / "wall.baywright",)


@pytest.mark.parametrize(
    "broken",
    [b"", b"{", b"[]", b'{"recent": 7}', b'{"recent": [7]}', b"\xff\xfe", b'{"recent": ["", "relative", "a\\u0000b"]}',
     b'{"recent": ' + b"[" * 10_000, b'{"recent": ["' + b"x" * 1_000_000 + b'"]}'],
)  # fmt: skip
def test_a_broken_list_is_empty_and_is_rewritten(tmp_path: Path, broken: bytes) -> None:
    (tmp_path / FILE_NAME).write_bytes(broken)
    assert read_recent(tmp_path) == ()
    remember(tmp_path, tmp_path / "a")
    assert read_recent(tmp_path) == (tmp_path / "a",)


def test_settings_that_cannot_be_written_are_no_failure(ordinary_person: Path) -> None:
    ordinary_person.chmod(0o500)
    assert remember(ordinary_person / "settings", ordinary_person / "a") == (ordinary_person / "a",)
    assert read_recent(ordinary_person / "settings") == ()


def test_a_name_that_is_no_text_is_not_kept(tmp_path: Path) -> None:
    odd = Path(os.fsdecode(os.fsencode(tmp_path) + b"/\xff.baywright"))
    assert remember(tmp_path, odd) == ()
    assert read_recent(tmp_path) == ()
