"""The window of the gui tests, for whole jobs."""

from tests.gui.conftest import open_desk

__all__ = ["open_desk"]
