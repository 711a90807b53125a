"""What the window remembers between two starts: theme, text size, how edits are planned, where it stood.

Never anything of a project.

Law: a broken or unwritable settings file costs the memory, never the start.
"""

from pathlib import Path

from PySide6.QtCore import QByteArray, QSettings

from baywright.app.live import LiveMode
from baywright.gui.theme import LARGEST_POINTS, NORMAL_POINTS, SMALLEST_POINTS, Theme

FILE_NAME = "window.ini"


class Preferences:
    """Reads and writes the settings file in `folder`; with None nothing is kept."""

    def __init__(self, folder: Path | None = None) -> None:
        self._settings: QSettings | None = None
        if folder is not None:
            self._settings = QSettings(str(folder / FILE_NAME), QSettings.Format.IniFormat)

    @property
    def theme(self) -> Theme:
        """The colours chosen; the system's where none or an unknown one is stored."""
        stored = self._read("theme")
        return Theme(str(stored)) if stored in set(Theme) else Theme.SYSTEM

    @theme.setter
    def theme(self, theme: Theme) -> None:
        self._write("theme", theme.value)

    @property
    def points(self) -> float:
        """The text size in points, within its bounds."""
        try:
            return max(SMALLEST_POINTS, min(LARGEST_POINTS, float(str(self._read("points")))))
        except ValueError:
            return NORMAL_POINTS

    @points.setter
    def points(self, points: float) -> None:
        self._write("points", str(points))

    @property
    def live_mode(self) -> LiveMode:
        """Which edits make the planner act; the usual ones where nothing or something unknown is stored."""
        stored = self._read("live")
        return LiveMode(str(stored)) if stored in set(LiveMode) else LiveMode.MEND

    @live_mode.setter
    def live_mode(self, mode: LiveMode) -> None:
        self._write("live", mode.value)

    def layout(self, name: str) -> QByteArray | None:
        """The stored state of a window or splitter; None where there is none."""
        stored = self._read(f"layout/{name}")
        return stored if isinstance(stored, QByteArray) and not stored.isEmpty() else None

    def keep_layout(self, name: str, state: QByteArray) -> None:
        """Store the state of a window or splitter."""
        self._write(f"layout/{name}", state)

    def _read(self, key: str) -> object:
        return None if self._settings is None else self._settings.value(key)

    def _write(self, key: str, value: object) -> None:
        if self._settings is not None:
            self._settings.setValue(key, value)
