"""Keeping the lists of what is made up to date: checks, parts, hardware, and what of them shows elsewhere.

Laws: at once where somebody sees them; else when the edits have paused, and not while a search runs that will change
them again. What is made of many boxes is worked out beside the window, and dropped where the document has changed.
"""

from collections.abc import Callable

from PySide6.QtCore import QObject, QTimer
from PySide6.QtWidgets import QTabWidget

from baywright.app.derived import Derived
from baywright.app.session import Session
from baywright.gui.bridge import Errands
from baywright.gui.checks.panel import CheckPanel
from baywright.gui.elevation.pointing import MOST_AT_ONCE
from baywright.gui.hardware.panel import HardwarePanel
from baywright.gui.parts.panel import PartPanel

LATE_MS = 150
"""How long after the last edit the lists are brought up to date while nobody sees them."""


class MadeLists(QObject):
    """The lists under the picture that show what the arrangement needs."""

    def __init__(
        self,
        session: Session,
        tabs: QTabWidget,
        pages: tuple[CheckPanel, PartPanel, HardwarePanel],
        shown: Callable[[], None],
        parent: QObject | None = None,
    ) -> None:
        super().__init__(parent)
        self._session, self._tabs, self._shown = session, tabs, shown
        self._checks, self._parts, self._hardware = pages
        self.errands: Errands | None = None
        """Works out what is made of many boxes beside the window; None does it at once."""
        self.late = QTimer(self)
        self.late.setSingleShot(True)
        self.late.setInterval(LATE_MS)
        self.late.timeout.connect(self._on_late)

    def update_in_time(self) -> None:
        """At once where somebody sees them or they come and go as a whole; else when the edits have paused."""
        seen = self._tabs.isVisible() and self._tabs.currentWidget() in (self._checks, self._parts, self._hardware)
        is_first = not self._parts.table.total and not self._is_beside
        self.late.stop()
        if seen or is_first or not self._session.project.arrangement.bay_count:
            self.update()
        else:
            self.late.start()

    @property
    def _is_beside(self) -> bool:
        """Whether what is made is worked out beside the window."""
        return self.errands is not None and len(self._session.project.boxes) > MOST_AT_ONCE

    def catch_up(self) -> None:
        """Bring up to date what is late: somebody looks."""
        if self.late.isActive():
            self.late.stop()
            self.update()

    def _on_late(self) -> None:
        if self._session.live.is_busy or self._session.is_planning:
            self.late.start()
        else:
            self.update()

    def update(self) -> None:
        """The lists of the present document."""
        self._checks.update_from_document()
        derived = self._session.derived
        if self.errands is None or not self._is_beside:
            self._show(derived)
        else:
            self.errands.run(lambda: derived.manufacture, lambda _made: self._show(derived), _on_failed)

    def _show(self, derived: Derived) -> None:
        if derived is not self._session.derived:
            return
        self._parts.update_from_document()
        self._hardware.update_from_document()
        self._shown()
        for page, title, count in (
            (self._parts, "Parts", self._parts.table.total),
            (self._hardware, "Hardware", self._hardware.total),
        ):
            self._tabs.setTabText(self._tabs.indexOf(page), f"{title} ({count})" if count else title)


def _on_failed(error: Exception) -> None:
    raise error
