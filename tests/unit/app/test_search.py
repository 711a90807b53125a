"""Searches off the owner's thread: what is told, what is dropped, and how they end."""

import threading
from collections.abc import Callable

from baywright.app.search import Search

Calls = list[Callable[[], None]]


def begin(search: Search, told: list[object], work: Callable[[threading.Event, Callable[[int], None]], str]) -> None:
    search.begin(work, told.append, told.append, told.append)


def answers(search: Search, calls: Calls) -> None:
    """Wait for the search, and run what it hands back in this thread."""
    assert search.thread is not None
    search.thread.join(20)
    while calls:
        calls.pop(0)()


def test_what_is_found_is_told_in_the_owners_thread_and_in_order() -> None:
    calls: Calls = []
    told: list[object] = []
    threads: list[str] = []
    search = Search("looking", calls.append)

    def work(stop: threading.Event, progress: Callable[[int], None]) -> str:
        threads.append(threading.current_thread().name)
        progress(1)
        progress(2)
        return "three"

    begin(search, told, work)
    assert told == []
    answers(search, calls)
    assert (told, threads) == ([1, 2, "three"], ["looking"])


def test_a_new_search_stops_the_one_before_and_its_answers_are_dropped() -> None:
    calls: Calls = []
    told: list[object] = []
    search = Search("looking", calls.append)

    def endless(stop: threading.Event, progress: Callable[[int], None]) -> str:
        progress(1)
        return "stopped" if stop.wait(20) else "never stopped"

    begin(search, told, endless)
    first = search.thread
    begin(search, told, lambda stop, progress: "newer")
    assert first is not None
    first.join(20)
    assert not first.is_alive()
    answers(search, calls)
    assert told == ["newer"]


def test_a_search_that_is_asked_to_stop_still_answers_but_not_one_that_is_forgotten() -> None:
    for end, expected in ((Search.cancel, ["best so far"]), (Search.forget, [])):
        calls: Calls = []
        told: list[object] = []
        search = Search("looking", calls.append)
        begin(search, told, lambda stop, progress: "best so far" if stop.wait(20) else "never stopped")
        end(search)
        answers(search, calls)
        assert told == expected


def test_a_defect_is_told_and_the_next_search_answers_all_the_same() -> None:
    told: list[object] = []
    search = Search("looking", lambda call: call(), synchronous=True)

    def fail(stop: threading.Event, progress: Callable[[int], None]) -> str:
        raise ZeroDivisionError("of the program")

    begin(search, told, fail)
    assert [str(one) for one in told] == ["of the program"]
    begin(search, told, lambda stop, progress: "well")
    assert told[1:] == ["well"]
    assert search.thread is None


def test_closing_waits_for_the_thread() -> None:
    search = Search("looking", lambda call: call())
    begin(search, [], lambda stop, progress: "" if stop.wait(20) else "never stopped")
    search.close()
    assert search.thread is not None
    assert not search.thread.is_alive()
