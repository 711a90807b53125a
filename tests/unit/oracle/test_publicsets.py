"""The public instances are read alike from both places, where they are here."""

import json
from pathlib import Path

import pytest

from tests.benchmarks import publicsets
from tests.benchmarks.publicsets import (
    BEST_KNOWN_TOTALS,
    FOLDER_VARIABLE,
    PROVED_SHEETS,
    SHEETS_FILE,
    proved_sheet_sets,
    public_file,
    sheet_sets,
    why_missing,
)

TEXT = "a01;1;9;9;3,2\ncl03_020_09;3;40;40;5,9;4,2,2;10,6\n"


@pytest.fixture
def package(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A package that holds a text of instances, in a place without the file."""
    text = tmp_path / "instances.txt"
    text.write_text(TEXT, encoding="utf-8")
    monkeypatch.setenv(FOLDER_VARIABLE, str(tmp_path))
    monkeypatch.setattr(publicsets, "package_text", lambda: text)
    return tmp_path


def test_the_text_of_the_package_is_read_part_by_part(package: Path) -> None:
    (one,) = sheet_sets(package).values()
    assert (one.name, one.sheet, one.best_known) == ("class03_20_9", (40, 40), {})
    assert one.parts == ((5, 9), (4, 2), (4, 2), (10, 6))
    assert list(proved_sheet_sets(package)) == ["class03_20_9"]


def test_the_file_comes_before_the_package(package: Path) -> None:
    given = {"name": "mine", "sheet": [7, 5], "parts": [[3, 2, 2], [1, 1, 1]], "best_known": {"free_rotation": 1}}
    (package / SHEETS_FILE).write_text(json.dumps({"instances": [given]}), encoding="utf-8")
    (one,) = sheet_sets(package).values()
    assert (one.name, one.sheet, one.parts) == ("mine", (7, 5), ((3, 2), (3, 2), (1, 1)))


def test_without_both_there_is_nothing_and_a_reason(package: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(publicsets, "package_text", lambda: None)
    assert sheet_sets(package) == {}
    assert SHEETS_FILE in why_missing(package)


def test_the_totals_are_those_of_the_file(checkout: Path) -> None:
    if not public_file(checkout, SHEETS_FILE).is_file():
        pytest.skip(why_missing(checkout))
    sets = sheet_sets(checkout)
    assert len(sets) == 250
    assert all(set(one.best_known) == set(BEST_KNOWN_TOTALS) for one in sets.values())
    for problem, total in BEST_KNOWN_TOTALS.items():
        assert sum(one.best_known[problem] for one in sets.values()) == total


def test_the_proved_numbers_are_those_of_the_file(checkout: Path) -> None:
    file = public_file(checkout, "proven_2bp_instances.json")
    if not file.is_file():
        pytest.skip(why_missing(checkout))
    assert list(proved_sheet_sets(checkout)) == list(PROVED_SHEETS)
    given = json.loads(file.read_text(encoding="utf-8"))
    assert sorted(PROVED_SHEETS.values()) == sorted((one["opt_2BP_O_G"], one["opt_2BP_R_G"]) for one in given)
