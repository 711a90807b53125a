"""Calls from worker threads run in the window's thread; errands answer once, and an older answer is void."""

import threading

from pytestqt.qtbot import QtBot

from baywright.gui.bridge import Bridge, Errands


def test_calls_run_in_the_windows_thread_in_their_order(qtbot: QtBot) -> None:
    bridge, seen = Bridge(), list[tuple[int, bool]]()
    here = threading.current_thread()

    def hand_in() -> None:
        for number in range(50):
            bridge.deliver(lambda number=number: seen.append((number, threading.current_thread() is here)))  # type: ignore[misc]

    worker = threading.Thread(target=hand_in)
    worker.start()
    worker.join()
    qtbot.waitUntil(lambda: len(seen) == 50)
    assert seen == [(number, True) for number in range(50)]


def test_nothing_runs_after_the_bridge_is_closed(qtbot: QtBot) -> None:
    bridge, seen = Bridge(), list[int]()
    bridge.deliver(lambda: seen.append(1))
    bridge.close()
    qtbot.wait(20)
    assert seen == []


def test_an_errand_answers_or_fails_in_the_windows_thread(qtbot: QtBot) -> None:
    errands, answers, failures = Errands(Bridge()), list[int](), list[Exception]()
    errands.run(lambda: 6 * 7, answers.append, failures.append)
    qtbot.waitUntil(lambda: answers == [42])
    errands.run(lambda: 1 // 0, answers.append, failures.append)
    qtbot.waitUntil(lambda: len(failures) == 1)
    assert isinstance(failures[0], ZeroDivisionError)
    errands.close()


def test_a_newer_errand_makes_an_older_answer_void(qtbot: QtBot) -> None:
    errands, answers = Errands(Bridge()), list[str]()
    gate = threading.Event()

    def slow() -> str:
        gate.wait(5)
        return "old"

    errands.run(slow, answers.append, lambda _error: None)
    errands.run(lambda: "new", answers.append, lambda _error: None)
    qtbot.waitUntil(lambda: answers == ["new"])
    gate.set()
    qtbot.wait(30)
    assert answers == ["new"]
    errands.close()


def test_a_forgotten_errand_does_not_answer(qtbot: QtBot) -> None:
    errands, answers = Errands(Bridge()), list[str]()
    errands.run(lambda: "late", answers.append, lambda _error: None)
    errands.forget()
    qtbot.wait(30)
    assert answers == []
    errands.close()
