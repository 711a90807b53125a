"""Proposed matchings of columns, with headings and without."""

import pytest

from baywright.model.project import Project
from baywright.storage.columns import Column
from baywright.storage.matching import Matching, propose_matching
from baywright.storage.tables import table_from_text


@pytest.mark.parametrize(
    ("headings", "expected"),
    [
        ("Label\tSize\tkg\tContents", {Column.LABEL: 0, Column.SIZE: 1, Column.MASS: 2, Column.CONTENTS: 3}),
        ("Anzahl\tKiste\tBreite\tTiefe\tHöhe", {Column.QUANTITY: 0, Column.LABEL: 1, Column.WIDTH: 2, Column.DEPTH: 3,
                                               Column.HEIGHT: 4}),
        ("Length\tWidth\tHeight", {Column.DEPTH: 0, Column.WIDTH: 1, Column.HEIGHT: 2}),
        ("Length\tDepth\tHeight", {Column.WIDTH: 0, Column.DEPTH: 1, Column.HEIGHT: 2}),
        ("Length\tHeight\tColour", {Column.HEIGHT: 1}),
        ("Label\tName\tSize", {Column.LABEL: 0, Column.SIZE: 2}),
    ],
)  # fmt: skip
def test_proposed_by_headings(headings: str, expected: dict[Column, int], project: Project) -> None:
    assert propose_matching(table_from_text(f"{headings}\n1\t2\t3\t4\t5"), project).columns == expected


def test_proposed_by_contents(project: Project) -> None:
    table = table_from_text("7\tEuro 120\tSpokes\n8\teuro  170\tRims\n9\tEuro 120\tHubs")
    assert not table.headings
    assert propose_matching(table, project).columns == {Column.SIZE: 1, Column.LABEL: 2}


def test_changed_by_a_person() -> None:
    matching = Matching({Column.LABEL: 0, Column.SIZE: 1})
    assert matching.using(Column.SIZE, None).columns == {Column.LABEL: 0}
    assert matching.using(Column.LABEL, 2).using(Column.NOTE, 0).columns == {
        Column.LABEL: 2, Column.SIZE: 1, Column.NOTE: 0
    }  # fmt: skip
    assert matching.place(Column.NOTE) is None
