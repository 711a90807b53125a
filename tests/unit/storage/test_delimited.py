"""Tables as text: separators, encodings, quotation marks, and what does not look like a table."""

import pytest

from baywright.storage.delimited import decode_text, read_delimited, read_pasted
from baywright.storage.table import Row
from baywright.storage.trouble import TableError


def cells(rows: tuple[Row, ...]) -> list[tuple[str, ...]]:
    return [row.cells for row in rows]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("a,b\nc,d\n", [("a", "b"), ("c", "d")]),
        ("a;4,5\nb;3,2", [("a", "4,5"), ("b", "3,2")]),
        ("label;mass\nx;4,5\n", [("label", "mass"), ("x", "4,5")]),
        ("a\tb;c\td\ne\tf\tg", [("a", "b;c", "d"), ("e", "f", "g")]),
        (
            "label,contents\nx,nuts; bolts\ny,rims; hubs",
            [("label", "contents"), ("x", "nuts; bolts"), ("y", "rims; hubs")],
        ),
        ("a|b\nc|d", [("a", "b"), ("c", "d")]),
        ("Nuts, bolts\nSpokes\nChains", [("Nuts, bolts",), ("Spokes",), ("Chains",)]),
        ("sep=;\r\na;b,c\r\n", [("a", "b,c")]),
        ('"a,1","say ""so"""\r\nb,"two\r\nlines"\r\n', [("a,1", 'say "so"'), ("b", "two\nlines")]),
        ('Spokes,15 19/32"\nRims,12"', [("Spokes", '15 19/32"'), ("Rims", '12"')]),
        ("a,b,,\n,,\n", [("a", "b")]),
        ("", []),
    ],
)
def test_cut_into_cells(text: str, expected: list[tuple[str, ...]]) -> None:
    assert cells(read_delimited(text)) == expected


def test_rows_are_numbered_as_in_a_spreadsheet() -> None:
    assert [row.number for row in read_delimited('a,"1\n2"\n\nb,3\n,,\nc,4')] == [1, 3, 5]


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ('a,b\nc,"d\ne,f\n', "row 2: a quotation mark is opened and never closed"),
        ('a,b\n"c"x,d\n', "row 2: a quotation mark stands inside a quoted cell"),
        ('a,"' + "x" * 200_000, "row 1: a cell is longer than any text could be"),
        ("\n".join(["a,b"] * 20_001), "more than 20,000 rows"),
        ("x," * 200 + "x", "201 columns in row 1"),
        (";" * 30_000, "30,001 columns in row 1"),
    ],
)
def test_refused(text: str, words: str) -> None:
    with pytest.raises(TableError) as refusal:
        read_delimited(text)
    assert words in str(refusal.value)


@pytest.mark.parametrize(
    ("data", "text"),
    [
        ("Größe".encode(), "Größe"),
        ("Größe".encode("utf-8-sig"), "Größe"),
        ("Größe".encode("utf-16"), "Größe"),
    ],
)
def test_encodings_that_tell_themselves(data: bytes, text: str) -> None:
    assert decode_text(data) == (text, ())


def test_other_text_is_read_as_windows_text_and_told() -> None:
    text, remarks = decode_text("Größe – 5 €".encode("cp1252"))
    assert text == "Größe – 5 €"
    assert "Windows-1252" in remarks[0]


@pytest.mark.parametrize("data", [b"a\0b", b"\xff\xfea"])
def test_what_is_no_text(data: bytes) -> None:
    with pytest.raises(TableError):
        decode_text(data)


def test_pasted_text_is_cut_at_tabs_alone() -> None:
    assert cells(read_pasted("a, b; c\td\n")) == [("a, b; c", "d")]
    assert cells(read_pasted('x\t"two\nlines"\n')) == [("x", "two\nlines")]
    assert cells(read_pasted("a,b\nc,d")) == [("a", "b"), ("c", "d")]


def test_pasted_text_with_bare_quotation_marks() -> None:
    assert cells(read_pasted('"Big" box\t15 19/32"\r\nx\ty\r\n')) == [('"Big" box', '15 19/32"'), ("x", "y")]
