"""The seam for older formats, with steps made up for the test."""

import pytest

from baywright.model.project import FORMAT_VERSION
from baywright.storage.migrations import OLDEST_VERSION, STEPS, Document, migrate


def rename(document: Document) -> Document:
    return {"name" if key == "title" else key: value for key, value in document.items()}


def wrap(document: Document) -> Document:
    return {**document, "space": {"length_mm": document["length_mm"]}}


def test_steps_follow_each_other() -> None:
    document: Document = {"format_version": 1, "title": "Wall", "length_mm": 2940}
    newest = migrate(document, 1, 3, {1: rename, 2: wrap})
    assert newest["format_version"] == 3
    assert newest["name"] == "Wall"
    assert newest["space"] == {"length_mm": 2940}


def test_only_the_steps_that_are_needed() -> None:
    assert "title" in migrate({"title": "Wall", "length_mm": 1}, 2, 3, {1: rename, 2: wrap})


def test_the_newest_format_is_left_alone() -> None:
    document: Document = {"format_version": 3}
    assert migrate(document, 3, 3, {}) is document


def test_a_missing_step_is_told() -> None:
    with pytest.raises(LookupError, match="format 2"):
        migrate({"title": "Wall"}, 1, 3, {1: rename})


def test_a_step_leads_on_from_every_format_before_the_present_one() -> None:
    assert set(STEPS) == set(range(OLDEST_VERSION, FORMAT_VERSION))
