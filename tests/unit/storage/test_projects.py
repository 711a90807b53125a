"""Project files: the same bytes every time, one clear message for everything that can be wrong, and nothing lost."""

import json
import os
from pathlib import Path

import pytest

from baywright.model.project import FORMAT_VERSION, Project
from baywright.storage import projects
from baywright.storage.projects import decode_project, encode_project, read_project, write_project
from baywright.storage.trouble import ProjectFileError


def refusal(path: Path) -> str:
    """What is said when the file is read."""
    with pytest.raises(ProjectFileError) as caught:
        read_project(path)
    return str(caught.value)


def damaged(folder: Path, project: Project, **changes: object) -> Path:
    """A project file in which some top-level fields were changed by hand."""
    document = {**json.loads(encode_project(project)), **changes}
    path = folder / "hand.baywright"
    path.write_text(json.dumps(document), encoding="utf-8")
    return path


def test_saved_project_is_read_back(tmp_path: Path, project: Project) -> None:
    path = tmp_path / "wall.baywright"
    write_project(path, project)
    assert read_project(path) == project


def test_save_load_save_gives_the_same_bytes(tmp_path: Path, project: Project) -> None:
    first, second = tmp_path / "first.baywright", tmp_path / "second.baywright"
    write_project(first, project)
    write_project(second, read_project(first))
    assert first.read_bytes() == second.read_bytes()


def test_the_file_can_be_read_by_a_person(project: Project) -> None:
    lines = encode_project(project).decode().splitlines()
    assert lines[:3] == ["{", '  "format_version": 3,', '  "name": "Spoke & rim — Werkstatt “Süd”",']
    assert encode_project(project).endswith(b"}\n")


def test_a_byte_order_mark_is_no_harm(tmp_path: Path, project: Project) -> None:
    path = tmp_path / "marked.baywright"
    path.write_bytes(b"\xef\xbb\xbf" + encode_project(project))
    assert read_project(path) == project


@pytest.mark.parametrize(
    ("data", "words"),
    [
        (b"", "is empty"),
        (b" \n", "is empty"),
        (b"PK\x03\x04\x00\xff", "is not a Baywright project (it is not a text in UTF-8)"),
        (b"once upon a time", "is not a Baywright project (it is no JSON document)"),
        (b"[1, 2]", "is not a Baywright project (it has no “format_version”)"),
        (b"{}", "is not a Baywright project (it has no “format_version”)"),
        (b'{"format_version": 1,\n  "name": "x"', "damaged at line 2, column 13: the file ends too early"),
        (b'{"format_version": 1\n  "name": "x"}', "damaged at line 2, column 3: a comma, bracket"),
        (b'{"format_version": 1} more', "damaged at line 1, column 23: something follows after the end"),
        (b'{"format_version": 1, "note": "a\x01"}', "a control character"),
        (b'{"format_version": 1, "x": ' + b"[" * 100_000, "nested too deeply"),
        (b'{"format_version": 1, "x": ' + b"9" * 5_000 + b"}", "a number is too large"),
        (b'{"format_version": 4, "walls": []}', "made by a newer Baywright (format 4); this one reads formats up to 3"),
        (b'{"format_version": 0}', "must be a whole number, 1 or more"),
        (b'{"format_version": "1"}', "must be a whole number, 1 or more"),
        (b'{"format_version": NaN}', "must be a whole number, 1 or more"),
        (b'{"format_version": true}', "must be a whole number, 1 or more"),
    ],
)
def test_a_file_that_is_no_project(tmp_path: Path, data: bytes, words: str) -> None:
    path = tmp_path / "odd.baywright"
    path.write_bytes(data)
    message = refusal(path)
    assert path.read_bytes() == data
    assert words in message
    assert message.startswith("“odd.baywright” ")
    assert message.endswith("The file was left as it is.")


BOX = {"id": "box-9", "label": "Hubs", "size_id": "euro-120"}


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        ({"colour": "red"}, "at “colour”: this field is not known here"),
        ({"unit": "km"}, "at “unit”: “km” must be one of 'mm' or 'in'"),
        ({"name": 7}, "at “name”: 7 must be text"),
        ({"name": " "}, "at “name”: “ ” must not be empty"),
        ({"space": 3}, "at “space”: an object in { } is expected here"),
        ({"space": {"length_mm": float("nan")}}, "at “space”, “length_mm”: nan must be a finite number"),
        ({"space": {"length_mm": float("inf")}}, "at “space”, “length_mm”: inf must be a finite number"),
        ({"space": {"length_mm": 0}}, "at “space”, “length_mm”: 0 must be over 0"),
        ({"space": {"depth_mm": 1e6}}, "at “space”, “depth_mm”: 1e+06 must be at most"),
        ({"space": {"depth_mm": "400"}}, "at “space”, “depth_mm”: “400” must be a number"),
        ({"space": {"depth_mm": None}}, "at “space”, “depth_mm”: null must be a number"),
        ({"space": {"existing_wall": 1}}, "1 must be true or false"),
        ({"limits": {"bay_count": 1.5}}, "at “limits”, “bay_count”: 1.5 must be a whole number"),
        ({"boxes": {}}, "at boxes: a list in [ ] is expected here"),
        ({"boxes": [BOX, {"id": "box-8", "label": "Rims"}]}, "at boxes, no. 2 (“Rims”), “size_id”: it is missing"),
        ({"boxes": [{**BOX, "loaded_mass_kg": -3}]}, "boxes, no. 1 (“Hubs”), “loaded_mass_kg”: -3 must be at least 0"),
        ({"boxes": [{**BOX, "id": "Box 9"}]}, "“Box 9” must begin with a lower-case letter"),
        ({"boxes": [{"id": "b"}]}, "at boxes, no. 1, “label”: it is missing (and 1 more fault)"),
        ({"boxes": [BOX, BOX]}, "has a fault: The box id “box-9” is used twice"),
        ({"boxes": [{**BOX, "size_id": "gone"}]}, "“Hubs” has the size “gone”, which is not in the list"),
        (
            {"arrangement": {"placements": [{"box_id": "nix", "bay": 0, "row": 0}]}},
            "“nix” that is not in the inventory",
        ),
        (
            {"arrangement": {"placements": [{"box_id": "box-1", "bay": -1, "row": 0}]}},
            "placements, no. 1 (“box-1”), “bay”",
        ),
    ],
)
def test_the_place_of_a_fault_is_named(
    tmp_path: Path, project: Project, changes: dict[str, object], words: str
) -> None:
    assert words in refusal(damaged(tmp_path, project, **changes))


def test_what_is_no_file(tmp_path: Path) -> None:
    assert "“gone.baywright” cannot be opened: it does not exist" in refusal(tmp_path / "gone.baywright")
    assert "is a folder" in refusal(tmp_path)
    assert "this is not a file name" in refusal(tmp_path / "a\0b")
    os.mkfifo(tmp_path / "pipe")
    assert "not an ordinary file" in refusal(tmp_path / "pipe")
    (tmp_path / "loop").symlink_to(tmp_path / "loop")
    assert "round in a circle" in refusal(tmp_path / "loop")
    assert "name is too long" in refusal(tmp_path / ("x" * 300))


def test_a_huge_file_is_not_read(tmp_path: Path) -> None:
    path = tmp_path / "huge.baywright"
    with path.open("wb") as file:
        file.truncate(2_000_000_000)
    with pytest.raises(ProjectFileError, match="too large to be read: 2000 MB, and at most 64 MB are read"):
        read_project(path)


def test_no_permission_to_read(ordinary_person: Path, project: Project) -> None:
    path = ordinary_person / "secret.baywright"
    write_project(path, project)
    path.chmod(0)
    with pytest.raises(ProjectFileError, match="cannot be opened: there is no permission"):
        read_project(path)


def test_read_only_folder(ordinary_person: Path, project: Project) -> None:
    path = ordinary_person / "wall.baywright"
    write_project(path, project)
    before = path.read_bytes()
    ordinary_person.chmod(0o500)
    with pytest.raises(ProjectFileError, match=r"“wall\.baywright” cannot be saved: there is no permission"):
        write_project(path, project.replace(name="other"))
    assert path.read_bytes() == before
    assert os.listdir(ordinary_person) == ["wall.baywright"]


def test_write_protected_file(ordinary_person: Path, project: Project) -> None:
    path = ordinary_person / "wall.baywright"
    write_project(path, project)
    path.chmod(0o400)
    with pytest.raises(ProjectFileError, match="no permission"):
        write_project(path, project.replace(name="other"))
    assert read_project(path) == project


@pytest.mark.parametrize("name", ["no/folder/wall.baywright", "", "a\0b", "x" * 300])
def test_places_where_nothing_can_be_saved(tmp_path: Path, project: Project, name: str) -> None:
    with pytest.raises(ProjectFileError, match="cannot be saved"):
        write_project(tmp_path / name, project)
    assert list(tmp_path.iterdir()) == []


def test_a_project_that_would_not_read_back_is_not_saved(tmp_path: Path, project: Project) -> None:
    path = tmp_path / "wall.baywright"
    write_project(path, project)
    unchecked = project.model_copy(update={"name": ""})
    with pytest.raises(ProjectFileError, match="cannot be saved"):
        write_project(path, unchecked)
    assert read_project(path) == project


def test_a_project_too_large_to_be_read_is_not_saved(project: Project, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(projects, "MOST_BYTES", 1_000)
    with pytest.raises(ProjectFileError, match="too large to be saved"):
        encode_project(project)


def test_older_format_is_brought_up_to_date(project: Project, monkeypatch: pytest.MonkeyPatch) -> None:
    """The seam itself: an older format that called the name `title`."""
    older = {**json.loads(encode_project(project)), "format_version": 1}
    older["title"] = older.pop("name")

    def migrate(data: dict[str, object], version: int, newest: int) -> dict[str, object]:
        assert (version, newest) == (1, FORMAT_VERSION)
        kept = {key: value for key, value in data.items() if key != "title"}
        return {**kept, "name": data["title"], "format_version": newest}

    monkeypatch.setattr(projects, "migrate", migrate)
    assert decode_project(json.dumps(older).encode()) == project
    del older["title"]
    with pytest.raises(ProjectFileError, match="is of format 1 and damaged"):
        decode_project(json.dumps(older).encode())


def test_format_1_still_opens(project: Project) -> None:
    """A file of the first format, which knew neither zones nor goals nor what is as built."""
    first = {**json.loads(encode_project(project)), "format_version": 1}
    for later in ("goals", "built"):
        del first[later]
    del first["space"]["zones"], first["space"]["ceiling"], first["limits"]["bays"]
    assert decode_project(json.dumps(first).encode()) == project
