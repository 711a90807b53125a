"""The journeys go through the same window as the tests of its parts."""

from tests.gui.conftest import open_desk

__all__ = ["open_desk"]
