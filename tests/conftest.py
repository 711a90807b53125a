"""What all tests share: no screen, the same examples on every run, paths to data, and no thread left behind."""

import os
import sys
import threading
import time
from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import HealthCheck, settings

# Before anything imports Qt: tests never open a window on a real screen.
os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
os.environ.setdefault("MPLBACKEND", "Agg")

CHECKOUT = Path(__file__).resolve().parent.parent

# The same examples on every run, so that a failure can be repeated and a pass means the same everywhere. To search
# further on purpose: HYPOTHESIS_PROFILE=explore installer/test tests/properties
settings.register_profile(
    "steady",
    derandomize=True,
    database=None,
    deadline=None,
    max_examples=50,
    suppress_health_check=[HealthCheck.too_slow],
)
settings.register_profile("explore", deadline=None, max_examples=2_000)
settings.load_profile(os.environ.get("HYPOTHESIS_PROFILE", "steady"))

THREAD_END_SECONDS = 5.0
"""How long after a test its threads may take to end."""


def pytest_configure(config: pytest.Config) -> None:
    """Make the marks known that this suite uses."""
    config.addinivalue_line("markers", "benchmark: compares ratios of effort within one run; never asserts a clock")


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Mark everything under tests/benchmarks, so that `-m "not benchmark"` leaves it out."""
    for item in items:
        if "benchmarks" in item.path.relative_to(CHECKOUT).parts:
            item.add_marker("benchmark")


@pytest.fixture(scope="session")
def checkout() -> Path:
    """The folder that holds pyproject.toml."""
    return CHECKOUT


@pytest.fixture(scope="session")
def resources(checkout: Path) -> Path:
    """The folder of sample projects, pictures and tables."""
    return checkout / "resources"


@pytest.fixture(scope="session")
def cases(checkout: Path) -> Path:
    """The folder of JSON cases: defects met once, and outside check values."""
    return checkout / "tests" / "cases"


@pytest.fixture(autouse=True)
def no_thread_left_behind() -> Iterator[None]:
    """Fail a test after which a thread goes on that was not there before, Python's or in Qt's pool."""
    before = set(threading.enumerate())
    yield
    deadline = time.monotonic() + THREAD_END_SECONDS
    for thread in set(threading.enumerate()) - before:
        thread.join(max(0.0, deadline - time.monotonic()))
    left = [thread.name for thread in threading.enumerate() if thread not in before]
    assert not left, f"threads still running after the test: {', '.join(left)}"
    if "PySide6.QtCore" in sys.modules:
        from PySide6.QtCore import QThreadPool

        pool = QThreadPool.globalInstance()
        assert pool.waitForDone(int(THREAD_END_SECONDS * 1000)), "work still running in Qt's thread pool after the test"
