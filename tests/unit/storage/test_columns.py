"""What headings mean, in several languages, and which row is the row of headings."""

import pytest

from baywright.storage.columns import Column, column_meant, find_headings, is_length_heading, unit_in_heading
from baywright.storage.table import Row


@pytest.mark.parametrize(
    ("heading", "meaning"),
    [
        ("Label", Column.LABEL),
        ("Bezeichnung", Column.LABEL),
        ("Box size", Column.SIZE),
        ("Größe", Column.SIZE),
        ("outside width (mm)", Column.WIDTH),
        ("width_mm", Column.WIDTH),
        ("Breite [cm]", Column.WIDTH),
        ("Tiefe in mm", Column.DEPTH),
        ("Profondeur", Column.DEPTH),
        ("Höhe", Column.HEIGHT),
        ("Height of the box", Column.HEIGHT),
        ("Weight (lb)", Column.MASS),
        ("kg", Column.MASS),
        ("Loaded mass, kg", Column.MASS),
        ("Poids", Column.MASS),
        ("What's inside", None),
        ("Contents:", Column.CONTENTS),
        ("Inhalt", Column.CONTENTS),
        ("Catégorie", Column.GROUP),
        ("How often", Column.USE),
        ("Häufigkeit", Column.USE),
        ("Bemerkungen", Column.NOTE),
        ("Qty.", Column.QUANTITY),
        ("Stück", Column.QUANTITY),
        ("Inside height", None),
        ("Group of contents", None),
        ("Colour", None),
        ("", None),
        ("400", None),
    ],
)
def test_meaning_of_a_heading(heading: str, meaning: Column | None) -> None:
    assert column_meant(heading) is meaning


@pytest.mark.parametrize(
    ("heading", "column", "unit"),
    [
        ("Height (cm)", Column.HEIGHT, "cm"),
        ('Height ["]', Column.HEIGHT, '"'),
        ("height_in", Column.HEIGHT, "in"),
        ("Breite/mm", Column.WIDTH, "mm"),
        ("Tiefe in mm", Column.DEPTH, "mm"),
        ("Weight (lbs)", Column.MASS, "lbs"),
        ("lb", Column.MASS, "lb"),
        ("Height (kg)", Column.HEIGHT, ""),
        ("Weight (cm)", Column.MASS, ""),
        ("Contents (g)", Column.CONTENTS, ""),
        ("Height", Column.HEIGHT, ""),
    ],
)
def test_unit_in_a_heading(heading: str, column: Column, unit: str) -> None:
    assert unit_in_heading(heading, column) == unit


def test_length_is_told_apart() -> None:
    assert is_length_heading("Länge (mm)")
    assert not is_length_heading("Width")


def rows(*texts: str) -> list[Row]:
    return [Row(number, tuple(text.split("|"))) for number, text in enumerate(texts, start=1)]


@pytest.mark.parametrize(
    ("table", "place"),
    [
        (rows("Label|Size", "Spokes|Euro 120"), 0),
        (rows("Our boxes", "made in spring", "Label|Size", "Spokes|Euro 120"), 2),
        (rows("Was ist das|Wie schwer ist es", "Spokes|7.5"), 0),
        (rows("Label", "Spokes", "Rims"), 0),
        (rows("Spokes|Euro 120", "Rims|Euro 170"), None),
        (rows("Spokes|Euro|7", "Rims|Euro|8"), None),
        (rows("Weight set|Width gauge", "Rims|Hubs"), None),
        (rows("Spokes"), None),
        ([], None),
    ],
)
def test_row_of_headings(table: list[Row], place: int | None) -> None:
    assert find_headings(table) == place
