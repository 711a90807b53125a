"""New ids: free, short, and the same on every run."""

from itertools import islice

import pytest

from baywright.model.identity import free_ids, id_from_name, next_id


@pytest.mark.parametrize(
    ("taken", "expected"),
    [
        ((), "box-1"),
        (("box-1", "box-2"), "box-3"),
        (("box-7",), "box-8"),
        (("box-x", "boxes-9", "box-2b"), "box-1"),
        (("box-3", "box-10"), "box-11"),
    ],
)
def test_the_next_id_follows_the_highest(taken: tuple[str, ...], expected: str) -> None:
    assert next_id("box", taken) == expected


def test_further_ids_go_on_from_there() -> None:
    assert list(islice(free_ids("box", {"box-4"}), 3)) == ["box-5", "box-6", "box-7"]


@pytest.mark.parametrize(
    ("name", "taken", "expected"),
    [
        ("Euro 120", (), "euro-120"),
        ("Euro 120", ("euro-120",), "euro-120-1"),
        ("400 × 300", (), "size-400-300"),
        ("×", (), "size-1"),
        ("Ünit", (), "nit"),
    ],
)
def test_an_id_reads_like_its_name(name: str, taken: tuple[str, ...], expected: str) -> None:
    assert id_from_name(name, "size", taken) == expected
