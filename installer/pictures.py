"""Takes the pictures of the window that the README shows: the real program on the demo, drawn without a screen.

Laws: the window is opened as the program opens it, and its planner plans the demo; nothing of the user's settings is
read or written; the same program gives the same pictures (one font, no clock, no cursor).
"""

import sys
import tempfile
import time
from collections import Counter
from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QSize
from PySide6.QtGui import QImage, QPixmap
from PySide6.QtWidgets import QApplication, QWidget

from baywright.app.commands import SetField
from baywright.app.edits.inventory import AddBoxes, EditBox
from baywright.app.live import LiveMode
from baywright.bootstrap import demo_file, resources_folder
from baywright.gui.application import make_application, open_window
from baywright.gui.dialogs import Dialogs, Unsaved
from baywright.gui.elevation.changes import Side
from baywright.gui.theme import Theme
from baywright.gui.window import MainWindow
from baywright.model.finding import CheckKind
from baywright.model.inventory import Box

WIDE = QSize(1440, 900)
SMALL = QSize(1000, 640)
MOST_SECONDS = 60.0
"""How long planning the demo may take before the pictures are given up."""
BAD_RUN: dict[str, object] = {
    "space.length_mm": 2_800.0,
    "space.height_limit_mm": 2_400.0,
    "space.existing_wall": False,
    "construction.rear.kind": "full_back",
    "limits.bay_count": 3,
    "limits.drawers_per_bay": None,
    "limits.upright_rows": None,
}
"""What makes of the demo a tall run that stands free beside a shelf bay that is far too wide."""
MOST_COLOURS = 256
"""So many colours a picture has: enough for a window, and a third of the size of one in full colour."""


class Leaving(Dialogs):
    """Nobody is there to be asked: what was done for a picture is not kept."""

    def unsaved_changes(self, title: str) -> Unsaved:
        """Leave without saving."""
        return Unsaved.DISCARD


def main(arguments: list[str]) -> int:
    """Take all pictures into the folder named, or into that of the README; print their paths."""
    folder = Path(arguments[0]) if arguments else resources_folder() / "pictures"
    folder.mkdir(parents=True, exist_ok=True)
    with tempfile.TemporaryDirectory() as settings:
        application = make_application()
        window = open_window(None, Path(settings), demo_file(), begin_with_demo=True)
        window.use_dialogs(Leaving(window))
        plan(application, window)
        for name, take in PICTURES.items():
            picture = take(application, window)
            path = folder / f"{name}.png"
            if not with_few_colours(picture.toImage()).save(str(path), "PNG", 0):  # type: ignore[call-overload]
                print(f"{path} could not be written; is there such a folder, and may it be written?", file=sys.stderr)
                return 1
            print(f"{path}  {picture.width()} × {picture.height()}, {path.stat().st_size / 1000:.0f} kB")
        window.close()
    return 0


def plan(application: QApplication, window: MainWindow) -> None:
    """Plan the document as the button does, wait for the answer, and close the message about it."""
    window.actions_.plan.trigger()
    wait(application, lambda: window.session.is_planning, "The demo was not planned in time.")
    window.tell("")


def wait(application: QApplication, is_busy: Callable[[], bool], too_late: str) -> None:
    """Let the window work until something ends; raises TimeoutError where it takes too long."""
    give_up = time.monotonic() + MOST_SECONDS
    while is_busy():
        if time.monotonic() > give_up:
            raise TimeoutError(too_late)
        application.processEvents()
        time.sleep(0.005)


def settle(application: QApplication) -> None:
    """Let everything that was asked to be laid out and drawn be so."""
    for _ in range(3):
        application.sendPostedEvents()
        application.processEvents()


def whole(theme: Theme, size: QSize, entries: int = 0, lists: int = 1) -> Callable[[QApplication, MainWindow], QPixmap]:
    """How to take the whole window, with these tabs in front."""

    def take(application: QApplication, window: MainWindow) -> QPixmap:
        show(application, window, theme, size)
        window.panels.entries.setCurrentIndex(entries)
        window.panels.lists.setCurrentIndex(lists)
        return grab(application, window)

    return take


def inventory(application: QApplication, window: MainWindow) -> QPixmap:
    """The inventory, pulled wide enough for all its columns."""
    return panel(application, window, window.panels.boxes)


def dimensions(application: QApplication, window: MainWindow) -> QPixmap:
    """The dimensions, one of them opened down to what it comes from."""
    window.panels.workings.show_entry("bay_clear_width")
    return panel(application, window, window.panels.workings)


def list_tab(theme: Theme, scene: Callable[[QApplication, MainWindow], None]) -> Callable[..., QPixmap]:
    """How to take a list under the picture after a scene was played; all that it changed is undone."""

    def take(application: QApplication, window: MainWindow) -> QPixmap:
        show(application, window, theme, WIDE)
        window.panels.entries.setCurrentIndex(0)
        before, document = window.panels.lists.currentWidget(), window.session.project
        scene(application, window)
        settle(application)
        window.panels.elevation.zoom_to_fit()
        picture = grab(application, window)
        window.session.reject_proposal()
        while window.session.project != document and window.session.can_undo:
            window.session.undo()
        window.panels.lists.setCurrentWidget(before)
        window.panels.part_selection.select(())
        select(window, ())
        window.tell("")
        return picture

    return take


def options(application: QApplication, window: MainWindow) -> None:
    """The shapes that the run could have."""
    window.actions_.options.trigger()
    wait(application, lambda: window.session.options.is_looking, "The options were not found in time.")


def whats_wrong(application: QApplication, window: MainWindow) -> None:
    """Limits that clash, and changes that help."""
    window.session.do(SetField("limits.upright_rows", 22))
    plan(application, window)


def replan(side: Side) -> Callable[[QApplication, MainWindow], None]:
    """A box is bought after the bays were built, and a re-plan is on offer."""

    def scene(application: QApplication, window: MainWindow) -> None:
        window.actions_.mark_built.trigger()
        window.session.live.mode = LiveMode.CHECK
        project = window.session.project
        size = next(size for size in project.box_sizes if size.height_mm == 170.0)
        bought = Box(id="box-lights", label="Lights and dynamos", size_id=size.id, loaded_mass_kg=4.0)
        window.session.do(AddBoxes((bought,)))
        window.actions_.replan.trigger()
        wait(application, lambda: window.session.is_planning, "The demo was not planned anew in time.")
        window.panels.elevation.review.show_side(side)

    return scene


def where_to(application: QApplication, window: MainWindow) -> None:
    """Every place for one box."""
    box = next(box for box in window.session.project.boxes if box.label == "Pedals")
    select(window, (box.id,))
    window.panels.show_destinations()
    table = window.panels.destination.view.model()
    wait(application, lambda: not table.rowCount(), "The places were not found in time.")
    window.panels.destination.view.selectRow(1)


def select(window: MainWindow, ids: tuple[str, ...]) -> None:
    """Select these boxes as the person does in the inventory."""
    window.panels.boxes.select_ids(ids)
    window.panels.boxes.boxes_selected.emit(ids)


def checks(application: QApplication, window: MainWindow) -> None:
    """What was computed about strength and safety, one finding with its working."""
    panel = window.panels.checks
    window.panels.lists.setCurrentWidget(panel)
    wait(application, lambda: not panel.table.total, "The checks were not done in time.")
    records = {identifier: panel.table.record(identifier) for identifier in panel.table.ids}
    tipping = next(key for key, finding in records.items() if finding and finding.kind is CheckKind.TIPPING)
    panel.view.selectRow(panel.table.row_of(tipping))
    select(window, ())


def bad_checks(application: QApplication, window: MainWindow) -> None:
    """A run that is wrong in every way: a shelf that is too long, 60 kg in one drawer, tall and standing free."""
    window.session.live.mode = LiveMode.CHECK
    for field, value in BAD_RUN.items():
        window.session.do(SetField(field, value))
    plan(application, window)
    box = next(box for box in window.session.project.boxes if box.label == "Chains")
    window.session.do(EditBox(box.id, "loaded_mass_kg", 60.0))
    window.session.do(SetField("construction.runners.load_classes_kg", (35.0, 45.0)))
    checks(application, window)


def parts(application: QApplication, window: MainWindow) -> None:
    """The parts, the one with the most holes drawn and lit up wherever it is."""
    window.panels.lists.setCurrentWidget(window.panels.parts)
    made = window.session.manufacture
    assert made is not None
    most = max(made.parts, key=lambda part: len(part.machining.holes))
    window.panels.part_selection.select((most.number,))


def cutting(application: QApplication, window: MainWindow) -> None:
    """A sheet cut by cut, with one part lit up."""
    panel = window.panels.cutting
    window.panels.lists.setCurrentWidget(panel)
    settle(application)
    wait(application, lambda: window.session.cutting.is_searching, "The parts were not cut in time.")
    panel.tabs.setCurrentWidget(panel.cut_view)
    for _ in range(8):
        panel.step(1)


def hardware(application: QApplication, window: MainWindow) -> None:
    """The order by the pack, with articles of the demo's catalogue."""
    window.panels.lists.setCurrentWidget(window.panels.hardware)


def stock(application: QApplication, window: MainWindow) -> QPixmap:
    """Materials, measured batches, sheets and offcuts, pulled wide."""
    return panel(application, window, window.panels.stock)


def panel(application: QApplication, window: MainWindow, widget: QWidget) -> QPixmap:
    """One tab of the left side, pulled wide."""
    show(application, window, Theme.LIGHT, WIDE)
    before = window.panels.whole.saveState()
    window.panels.entries.setCurrentWidget(widget)
    window.panels.whole.setSizes([1000, 440])
    picture = grab(application, widget)
    window.panels.whole.restoreState(before)
    return picture


def show(application: QApplication, window: MainWindow, theme: Theme, size: QSize) -> None:
    """Give the window its colours and size."""
    window.choose_theme(theme)
    window.resize(size)
    settle(application)
    window.panels.elevation.zoom_to_fit()


def with_few_colours(image: QImage) -> QImage:
    """The picture in its most frequent colours; the others, all of them edges of letters, in the nearest of these."""
    plain = image.convertToFormat(QImage.Format.Format_RGB32)
    counted = Counter(memoryview(plain.constBits()).cast("I"))
    table = [colour for colour, _ in counted.most_common(MOST_COLOURS)]
    return plain.convertToFormat(QImage.Format.Format_Indexed8, table)


def grab(application: QApplication, widget: QWidget) -> QPixmap:
    """What a widget looks like with nothing focused, so that no cursor blinks in it."""
    focused = application.focusWidget()
    if focused is not None:
        focused.clearFocus()
    settle(application)
    return widget.grab()


PICTURES = {
    "window-light": whole(Theme.LIGHT, WIDE),
    "window-dark": whole(Theme.DARK, WIDE),
    "window-small": whole(Theme.LIGHT, SMALL),
    "inventory": inventory,
    "dimensions": dimensions,
    "options-light": list_tab(Theme.LIGHT, options),
    "options-dark": list_tab(Theme.DARK, options),
    "whats-wrong-light": list_tab(Theme.LIGHT, whats_wrong),
    "replan-before-light": list_tab(Theme.LIGHT, replan(Side.BEFORE)),
    "replan-after-light": list_tab(Theme.LIGHT, replan(Side.AFTER)),
    "where-to-light": list_tab(Theme.LIGHT, where_to),
    "checks-light": list_tab(Theme.LIGHT, checks),
    "checks-dark": list_tab(Theme.DARK, checks),
    "parts-light": list_tab(Theme.LIGHT, parts),
    "parts-dark": list_tab(Theme.DARK, parts),
    "cutting-light": list_tab(Theme.LIGHT, cutting),
    "cutting-dark": list_tab(Theme.DARK, cutting),
    "hardware-light": list_tab(Theme.LIGHT, hardware),
    "stock": stock,
    "checks-bad-light": list_tab(Theme.LIGHT, bad_checks),
    "checks-bad-dark": list_tab(Theme.DARK, bad_checks),
}


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
