"""The form offers every value of the project that can be set, once, and each path is right."""

from collections import Counter
from collections.abc import Iterator

from pydantic import BaseModel

from baywright.gui.dimensions.entries import SECTIONS, value_at
from baywright.model.project import Project

IN_THE_TABLES = {"space.zones", "space.ceiling", "limits.bays"}
"""Lists that are edited line by line in the tab “Wall and bays”."""


def settable_paths(value: BaseModel, prefix: str) -> Iterator[str]:
    for name in type(value).model_fields:
        inner = getattr(value, name)
        if isinstance(inner, BaseModel):
            yield from settable_paths(inner, f"{prefix}{name}.")
        else:
            yield prefix + name


def test_every_settable_value_stands_in_the_form_once() -> None:
    project = Project()
    wanted = {"name", "note", "unit"}
    for part in ("space", "construction", "limits", "safety"):
        wanted |= set(settable_paths(getattr(project, part), f"{part}."))
    paths = Counter(entry.path for section in SECTIONS for entry in section.entries)
    assert set(paths) == wanted - IN_THE_TABLES
    assert wanted >= IN_THE_TABLES
    assert max(paths.values()) == 1


def test_every_path_leads_to_a_value_and_every_value_is_explained() -> None:
    project = Project()
    for section in SECTIONS:
        for entry in section.entries:
            value_at(project, entry.path)
            assert len(entry.hint) > 12, entry.path
