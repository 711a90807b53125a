"""Calls beside the window: what only looks may be overtaken, what does something is always told."""

import threading
from collections.abc import Iterator

import pytest
from pytestqt.qtbot import QtBot

from baywright.gui.bridge import Bridge, Errands


@pytest.fixture
def errands(qtbot: QtBot) -> Iterator[Errands]:
    made = Errands(Bridge())
    yield made
    made.close()


def _unexpected(error: Exception) -> None:
    raise AssertionError(error)


def test_a_newer_look_makes_an_older_one_void(errands: Errands, qtbot: QtBot) -> None:
    gate, told = threading.Event(), list[str]()
    errands.run(lambda: gate.wait(5) and "old", lambda answer: told.append(str(answer)), _unexpected)
    errands.run(lambda: "new", told.append, _unexpected)
    qtbot.waitUntil(lambda: told == ["new"])
    gate.set()
    qtbot.wait(50)
    assert told == ["new"]


def test_what_does_something_is_told_whatever_comes_after_it(errands: Errands, qtbot: QtBot) -> None:
    gate, told = threading.Event(), list[str]()

    def write() -> None:
        gate.wait(5)
        raise OSError("the disk is full")

    errands.run(write, lambda _: None, lambda error: told.append(str(error)), lasting=True)
    errands.run(lambda: "looked", told.append, _unexpected)
    qtbot.waitUntil(lambda: told == ["looked"])
    gate.set()
    qtbot.waitUntil(lambda: told == ["looked", "the disk is full"])


def test_what_does_something_overtakes_no_look(errands: Errands, qtbot: QtBot) -> None:
    gate, told = threading.Event(), list[str]()
    errands.run(lambda: str(gate.wait(5)), told.append, _unexpected)
    errands.run(lambda: "written", told.append, _unexpected, lasting=True)
    qtbot.waitUntil(lambda: told == ["written"])
    gate.set()
    qtbot.waitUntil(lambda: told == ["written", "True"])


def test_after_closing_nothing_is_told(qtbot: QtBot) -> None:
    errands, told = Errands(Bridge()), list[str]()
    errands.run(lambda: "written", told.append, _unexpected, lasting=True)
    errands.run(lambda: "looked", told.append, _unexpected)
    errands.close()
    qtbot.wait(50)
    assert not told
