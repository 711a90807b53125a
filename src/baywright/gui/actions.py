"""Every command of the window as one action: title, key, explanation. Menus, toolbar and buttons share them.

Law: an action carries no deed of its own; the window connects it. What cannot be done now is greyed, never hidden.
"""

from PySide6.QtCore import QObject
from PySide6.QtGui import QAction, QIcon, QKeySequence, QPalette
from PySide6.QtWidgets import QWidget

from baywright.gui.icons import make_icon

_Key = QKeySequence.StandardKey


class Actions(QObject):
    """All actions, made once for one window."""

    def __init__(self, window: QWidget) -> None:
        super().__init__(window)
        self._window = window
        self._icons: dict[QAction, str] = {}
        self._all: list[QAction] = []
        self._make_file_actions()
        self._make_edit_actions()
        self._make_plan_actions()
        self._make_view_actions()
        self.refresh_icons()

    def _make_file_actions(self) -> None:
        self.new = self._make("&New project", _Key.New, "Begin an empty project", "new")
        self.open = self._make("&Open…", _Key.Open, "Open a project file", "open")
        self.save = self._make("&Save", _Key.Save, "Write the project to its file", "save")
        self.save_as = self._make("Save &as…", "Ctrl+Shift+S", "Write the project to another file")
        self.import_inventory = self._make(
            "&Import inventory…", "Ctrl+I", "Take boxes over from a table (CSV or XLSX), after a preview", "import"
        )
        self.import_catalogue = self._make(
            "Import &hardware catalogue…", "", "Take articles and prices over from a table, after a preview"
        )
        self.export_workbook = self._make(
            "&Export workbook…",
            "Ctrl+E",
            "Write inventory, drawer schedule, parts, hardware order and dimensions into a workbook",
            "export",
        )
        self.write_cuts = self._make(
            "&Book of cuts…", "", "Every sheet drawn with its cuts in order, to take to the saw (PDF)"
        )
        self.write_labels = self._make("&Labels…", "", "A label for every piece, 3 × 8 on an A4 sheet (PDF)")
        self.write_drawings = self._make(
            "&Drawings of the parts…", "", "Every part to scale with holes, grooves and joints, a page each (PDF)"
        )
        self.quit = self._make("&Quit", _Key.Quit, "Close the window")

    def _make_edit_actions(self) -> None:
        self.undo = self._make("&Undo", _Key.Undo, "Take back the last change", "undo")
        self.redo = self._make("&Redo", _Key.Redo, "Make the change taken back last again", "redo")
        self.add_box = self._make("&Add box", "Ctrl+B", "Add a box to the inventory and name it", "add")
        self.duplicate = self._make("Dup&licate…", "Ctrl+D", "Make copies of the selected boxes", "duplicate")
        self.delete = self._make("&Delete", "", "Delete the selected boxes (Del)", "delete")
        self.paste = self._make(
            "&Paste boxes…", "Ctrl+Shift+V", "Take boxes over from cells copied in a spreadsheet, after a preview"
        )
        self.unplace = self._make("Take &out of drawer", "", "Take the selected boxes out of their drawers")
        self.lock_drawer = self._make("Lock in its dra&wer", "Ctrl+L", "Planning leaves the box in its drawer")
        self.lock_bay = self._make("Lock in its &bay", "Ctrl+Shift+L", "Planning leaves the box in its bay")
        self.unlock = self._make("U&nlock", "Ctrl+Alt+L", "Planning may move the box again")

    def _make_plan_actions(self) -> None:
        self.plan = self._make("&Plan now", "F5", "Find the best place for every box", "plan")
        self.replan = self._make(
            "&Re-plan",
            "Ctrl+F5",
            "Find the best plan that moves the fewest boxes; it is shown first",
            "replan",
        )
        self.stop = self._make("&Stop planning", "Shift+F5", "Stop and keep the best plan so far", "stop")
        self.options = self._make("&Options", "F8", "Compare the shapes that the run could have, and choose one")
        self.clear = self._make("&Clear arrangement", "", "Take every box that is not locked out of its drawer")

        self.mark_built = self._make(
            "Mark as &built", "", "Bays of the selected boxes, or all bays, are cut and drilled: re-planning keeps them"
        )
        self.work_done = self._make(
            "Work is &done", "", "The built bays are now as drawn: boxes moved, runners screwed on"
        )
        self.forget_built = self._make("&Forget what is built", "", "Let planning change every bay again")

    def _make_view_actions(self) -> None:
        self.show_entries = self._make("&Inventory and measures", "F6", "Show or hide the tables and forms at the left")
        self.show_lists = self._make("&Lists", "F7", "Show or hide the lists under the picture")
        for panel in (self.show_entries, self.show_lists):
            panel.setCheckable(True)
            panel.setChecked(True)
        self.larger = self._make("&Larger text", "Ctrl+Alt++", "Larger letters everywhere")
        self.smaller = self._make("&Smaller text", "Ctrl+Alt+-", "Smaller letters everywhere")
        self.normal = self._make("&Normal text", "Ctrl+Alt+0", "Letters in their ordinary size")
        self.keys = self._make("&Keys", "F1", "All keys of the window")
        self.about = self._make("&About Baywright", "", "What it is, and what it does not take off your hands")

    def _make(self, title: str, key: QKeySequence.StandardKey | str, tip: str, icon: str = "") -> QAction:
        action = QAction(title, self._window)
        action.setShortcut(QKeySequence(key))
        keys = action.shortcut().toString(QKeySequence.SequenceFormat.NativeText)
        action.setToolTip(f"{tip} ({keys})" if keys else tip)
        action.setStatusTip(tip)
        action.setIconText(title.replace("&", "").removesuffix("…"))
        if icon:
            self._icons[action] = icon
        self._all.append(action)
        return action

    @property
    def everything(self) -> list[QAction]:
        """Every action, in the order of the menus."""
        return list(self._all)

    def refresh_icons(self) -> None:
        """Draw the icons anew in the colours of the present theme."""
        palette = self._window.palette()
        ink = palette.color(QPalette.ColorRole.ButtonText)
        faint = palette.color(QPalette.ColorGroup.Disabled, QPalette.ColorRole.ButtonText)
        made: dict[str, QIcon] = {}
        for action, name in self._icons.items():
            if name not in made:
                made[name] = make_icon(name, ink, faint)
            action.setIcon(made[name])
