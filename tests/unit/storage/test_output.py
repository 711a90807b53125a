"""Documents for others: written whole, and not under a program that has them open."""

from pathlib import Path

import pytest

from baywright.model.project import Project
from baywright.storage.output import write_output
from baywright.storage.projects import read_project, write_project
from baywright.storage.trouble import OutputError


def test_written(tmp_path: Path) -> None:
    write_output(tmp_path / "order.xlsx", b"1")
    write_output(tmp_path / "order.xlsx", b"22")
    assert (tmp_path / "order.xlsx").read_bytes() == b"22"


@pytest.mark.parametrize("lock", [".~lock.order.xlsx#", "~$order.xlsx", "~$der.xlsx"])
def test_open_in_another_program(tmp_path: Path, lock: str) -> None:
    path = tmp_path / "order.xlsx"
    path.write_bytes(b"old")
    (tmp_path / lock).write_text("someone", encoding="utf-8")
    with pytest.raises(OutputError, match="is open in another program"):
        write_output(path, b"new")
    assert path.read_bytes() == b"old"


def test_read_only_folder(ordinary_person: Path) -> None:
    ordinary_person.chmod(0o500)
    with pytest.raises(OutputError, match=r"“order\.xlsx” cannot be written: there is no permission"):
        write_output(ordinary_person / "order.xlsx", b"new")


@pytest.mark.parametrize("name", ["gone/order.xlsx", "", "a\0b"])
def test_places_that_are_none(tmp_path: Path, name: str) -> None:
    with pytest.raises(OutputError, match="cannot be written"):
        write_output(tmp_path / name, b"new")


def test_missing_folder_is_what_is_named(tmp_path: Path) -> None:
    with pytest.raises(OutputError, match=r"“order\.xlsx” cannot be written: there is no folder “.*gone”"):
        write_output(tmp_path / "gone" / "order.xlsx", b"new")


@pytest.mark.parametrize("name", ["shop.baywright", "shop.json"])
def test_no_document_replaces_a_project(tmp_path: Path, name: str) -> None:
    path = tmp_path / name
    write_project(path, Project(name="Shop"))
    with pytest.raises(OutputError, match="is the name of a project"):
        write_output(path, b"a workbook")
    assert read_project(path).name == "Shop"
