"""The process apart: what comes back from it, and how it is ended when it does not come back."""

import operator
import os
import time
from collections.abc import Callable

import pytest

from baywright.storage.isolation import run_apart
from baywright.storage.spreadsheet import look_over
from baywright.storage.trouble import TableError


def test_the_answer_comes_back() -> None:
    assert run_apart(os.path.join, "a\udcff", "b") == "a\udcff/b"
    assert run_apart(os.getpid) != os.getpid()


@pytest.mark.parametrize(
    ("work", "arguments", "words"),
    [
        (look_over, (__file__,), "is damaged, or not a workbook."),
        (operator.getitem, ("a", "b"), "is damaged, or not a workbook."),
        (operator.mul, ("x", 4_000_000_000), "is too large to be read."),
        (os._exit, (3,), "is damaged, or too large to be read."),
    ],
)
def test_failures_come_back_as_words(work: Callable[..., object], arguments: tuple[object, ...], words: str) -> None:
    with pytest.raises(TableError) as refusal:
        run_apart(work, *arguments)
    assert str(refusal.value) == words


def test_given_up_when_it_takes_too_long() -> None:
    begin = time.monotonic()
    with pytest.raises(TableError, match=r"takes more than 0\.5 s"):
        run_apart(time.sleep, 60, seconds=0.5)
    assert time.monotonic() - begin < 30
