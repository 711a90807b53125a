"""Prints how long one edit takes in the window, from the command to the last pixel, as planned workshops grow.

`python -m tests.benchmarks.window [BOXES …]`. The window is the real one, drawn without a screen; planning itself is
left out (it runs beside the window). Each figure is the middle one of several runs, in ms of the window's own thread,
so that other work on the machine does not count.
"""

import os
import statistics
import sys
import time
from collections.abc import Callable

from baywright.app.commands import Command, SetField
from baywright.app.edits.arrangement import PlaceBox
from baywright.app.edits.inventory import EditBox
from baywright.app.live import LiveMode
from baywright.app.session import Session
from baywright.model.project import Project
from baywright.planner import plan
from tests.benchmarks.workshops import workshop

RUNS = 5
NEVER_MS = 10_000_000
"""Lists that nobody sees follow after a pause in the edits, and are no part of one."""
EFFORT = 0.2
"""Enough for some plan; which one does not matter here."""


def planned_workshop(boxes: int) -> Project:
    """A seeded workshop with every box in a drawer."""
    project = workshop(boxes)
    arrangement = plan(project, effort=EFFORT).arrangement
    assert arrangement is not None
    return project.replace(arrangement=arrangement)


def edits(project: Project) -> dict[str, tuple[Command, Command]]:
    """Typical edits and what takes them back, by name; each is done and taken back in turn."""
    first, last = project.boxes[0], project.boxes[-1]
    place = project.arrangement.placements_by_box[last.id]
    clearance = project.construction.drawers.clearance_mm
    path = "construction.drawers.clearance_mm"
    return {
        "label": (EditBox(first.id, "label", "Pumps"), EditBox(first.id, "label", first.label)),
        "mass": (EditBox(first.id, "loaded_mass_kg", 7.5), EditBox(first.id, "loaded_mass_kg", first.loaded_mass_kg)),
        "place": (PlaceBox(last.id, place.bay, place.row + 1), PlaceBox(last.id, place.bay, place.row)),
        "clearance": (SetField(path, clearance - 0.5), SetField(path, clearance)),
    }


def main(sizes: tuple[int, ...] = (20, 300, 2000)) -> None:
    """Measures a window on a workshop of each size."""
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    from baywright.gui.application import make_application
    from baywright.gui.bridge import Bridge
    from baywright.gui.theme import Theme, apply_theme
    from baywright.gui.window import MainWindow

    application = make_application()
    apply_theme(application, Theme.LIGHT)
    print("boxes  edit        command ms  with repaint ms")
    for boxes in sizes:
        session = Session(planned_workshop(boxes), synchronous=True)
        window = MainWindow(session, Bridge())
        session.live.mode = LiveMode.CHECK
        window.panels.made.late.setInterval(NEVER_MS)
        window.resize(1600, 1000)
        window.show()
        window.panels.lists.setCurrentWidget(window.panels.drawers)
        _settle(application.processEvents)
        for name, (there, back) in edits(session.project).items():
            alone, whole = [], []
            for number in range(RUNS * 2):
                command = back if number % 2 else there
                began = time.thread_time()
                session.do(command)
                alone.append(time.thread_time() - began)
                _settle(application.processEvents)
                whole.append(time.thread_time() - began)
            print(f"{boxes:5}  {name:10}  {_middle(alone):10.1f}  {_middle(whole):15.1f}", flush=True)
        window.hide()
        session.close()
        window.deleteLater()
        application.processEvents()


def _settle(process_events: Callable[[], None]) -> None:
    for _ in range(3):
        process_events()


def _middle(seconds: list[float]) -> float:
    return statistics.median(seconds) * 1000


if __name__ == "__main__":
    main(*([tuple(map(int, sys.argv[1:]))] if sys.argv[1:] else []))
