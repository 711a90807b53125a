"""Laws of project files over all projects and all bytes: nothing is lost, and nothing but one error comes back."""

import json
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from baywright.model.arrangement import Arrangement, Lock, Placement
from baywright.model.construction import Boards, Construction, FirstRowRule, HoleRows, Uprights
from baywright.model.inventory import Box, BoxSize, Use
from baywright.model.length import LengthUnit
from baywright.model.limits import Limits
from baywright.model.project import Project
from baywright.model.space import Space
from baywright.storage.projects import decode_project, encode_project, read_project
from baywright.storage.trouble import ProjectFileError

LABELS = st.text(min_size=1, max_size=30).filter(lambda text: bool(text.strip()))
TEXTS = st.text(max_size=60)
DIMENSIONS = st.floats(10, 3_000)


@st.composite
def project_documents(draw: st.DrawFn) -> Project:
    sizes = draw(
        st.lists(
            st.builds(
                BoxSize,
                id=st.from_regex(r"[a-z][a-z0-9_-]{0,10}", fullmatch=True),
                name=LABELS,
                width_mm=DIMENSIONS,
                depth_mm=DIMENSIONS,
                height_mm=DIMENSIONS,
            ),
            min_size=1,
            max_size=3,
            unique_by=lambda size: size.id,
        )
    )
    boxes = [
        Box(
            id=f"box-{number}",
            label=draw(LABELS),
            size_id=draw(st.sampled_from(sizes)).id,
            loaded_mass_kg=draw(st.none() | st.floats(0, 1_000)),
            contents=draw(TEXTS),
            group=draw(TEXTS),
            use=draw(st.sampled_from(list(Use))),
            note=draw(TEXTS),
        )
        for number in range(draw(st.integers(0, 3)))
    ]
    places = [
        Placement(
            box_id=box.id,
            bay=draw(st.integers(0, 499)),
            row=draw(st.integers(0, 299)),
            lock=draw(st.sampled_from(list(Lock))),
        )
        for box in boxes
        if draw(st.booleans())
    ]
    return Project(
        name=draw(LABELS),
        note=draw(TEXTS),
        unit=draw(st.sampled_from(list(LengthUnit))),
        space=Space(length_mm=draw(st.floats(1, 100_000)), existing_wall=draw(st.booleans())),
        construction=Construction(
            uprights=draw(st.sampled_from(list(Uprights))),
            boards=Boards(upright_mm=draw(st.floats(1, 100))),
            hole_rows=HoleRows(first_row_rule=draw(st.sampled_from(list(FirstRowRule)))),
        ),
        limits=Limits(drawers_per_bay=draw(st.none() | st.integers(1, 300))),
        box_sizes=tuple(sizes),
        boxes=tuple(boxes),
        arrangement=Arrangement(bay_count=draw(st.integers(0, 500)), placements=tuple(places)),
    )


SAMPLE = encode_project(
    Project(
        box_sizes=(BoxSize(id="euro-120", name="Euro 120", width_mm=400, depth_mm=300, height_mm=120),),
        boxes=(Box(id="box-1", label="Spokes", size_id="euro-120", loaded_mass_kg=7.25),),
        arrangement=Arrangement(bay_count=1, upright_rows=12, placements=(Placement(box_id="box-1", bay=0, row=1),)),
    )
)


def answer(data: bytes) -> Project | str:
    """The project in the bytes or the message of the one error there is."""
    try:
        return decode_project(data)
    except ProjectFileError as trouble:
        return str(trouble)


@given(project_documents())
def test_every_project_survives_to_the_byte(project: Project) -> None:
    data = encode_project(project)
    read = decode_project(data)
    assert read == project
    assert encode_project(read) == data


@settings(max_examples=200)
@given(st.binary(max_size=200))
def test_any_bytes_are_a_project_or_a_message(data: bytes) -> None:
    assert isinstance(answer(data), str)


@settings(max_examples=300)
@given(st.lists(st.tuples(st.integers(0, len(SAMPLE)), st.integers(0, 40), st.binary(max_size=12)), max_size=3))
def test_a_file_damaged_anywhere_is_a_project_or_a_message(splices: list[tuple[int, int, bytes]]) -> None:
    data = SAMPLE
    for start, length, inserted in splices:
        data = data[:start] + inserted + data[start + length :]
    result = answer(data)
    assert isinstance(result, Project) or result.endswith(".")


JSON_VALUES = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=8),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=8), inner, max_size=3),
    max_leaves=6,
)


def _slots(value: Any) -> list[tuple[Any, Any]]:
    """Every place in a JSON document into which another value can be put, as (container, key)."""
    keys: list[Any] = (
        list(value) if isinstance(value, dict) else list(range(len(value))) if isinstance(value, list) else []
    )
    return [(value, key) for key in keys] + [slot for key in keys for slot in _slots(value[key])]


@settings(max_examples=300)
@given(st.data())
def test_any_value_at_any_place_is_a_project_or_a_message(data: st.DataObject) -> None:
    document = json.loads(SAMPLE)
    container, key = data.draw(st.sampled_from(_slots(document)))
    container[key] = data.draw(JSON_VALUES)
    result = answer(json.dumps(document).encode())
    assert isinstance(result, Project) or result.endswith(".")


def test_the_message_names_the_file(tmp_path: Path) -> None:
    path = tmp_path / "odd\nname.baywright"
    path.write_bytes(b"{}")
    with pytest.raises(ProjectFileError, match="odd\ufffdname\\.baywright"):
        read_project(path)
