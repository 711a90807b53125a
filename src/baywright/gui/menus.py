"""The menu bar and the toolbar: which action stands where."""

from collections.abc import Callable, Iterable
from pathlib import Path

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QAction, QActionGroup
from PySide6.QtWidgets import QMainWindow, QMenu, QToolBar

from baywright.gui.actions import Actions
from baywright.gui.live import LiveSwitch
from baywright.gui.theme import Theme

_THEMES = ((Theme.SYSTEM, "As the &system"), (Theme.LIGHT, "&Light"), (Theme.DARK, "&Dark"))


class Menus:
    """Builds menus and toolbar of one window, and keeps the recent files up to date."""

    def __init__(
        self,
        window: QMainWindow,
        actions: Actions,
        picture_actions: Iterable[QAction],
        recent_files: Callable[[], Iterable[Path]],
        open_file: Callable[[Path], None],
        choose_theme: Callable[[Theme], None],
        live: LiveSwitch,
    ) -> None:
        self._window, self._actions, self.live = window, actions, live
        self._recent_files, self._open_file = recent_files, open_file
        self.themes: dict[Theme, QAction] = {}
        self._make_file_menu()
        self._make_edit_menu()
        self._make_plan_menu()
        self._make_view_menu(picture_actions, choose_theme)
        self._make_help_menu()
        self._make_toolbar()

    def _menu(self, title: str, *actions: QAction | None) -> QMenu:
        menu = self._window.menuBar().addMenu(title)
        menu.setToolTipsVisible(True)
        _fill(menu, actions)
        return menu

    def _make_file_menu(self) -> None:
        a = self._actions
        menu = self._menu("&File", a.new, a.open)
        self.recent = menu.addMenu("Open &recent")
        self.recent.setToolTipsVisible(True)
        self.recent.aboutToShow.connect(self._fill_recent)
        _fill(menu, (a.save, a.save_as, None, a.import_inventory, a.import_catalogue, a.export_workbook))
        papers = menu.addMenu("&Papers for the workshop")
        papers.setToolTipsVisible(True)
        _fill(papers, (a.write_cuts, a.write_labels, a.write_drawings))
        _fill(menu, (None, a.quit))
        self._fill_recent()

    def _fill_recent(self) -> None:
        self.recent.clear()
        paths = list(self._recent_files())
        for number, path in enumerate(paths, 1):
            # A doubled & is a plain one; a single one would make the letter after it a key.
            words = f"&{number % 10}  {_elided(path).replace('&', '&&')}"
            action = self.recent.addAction(words)
            action.setToolTip(str(path))
            action.triggered.connect(lambda _checked=False, path=path: self._open_file(path))
        self.recent.setEnabled(bool(paths))

    def refresh_recent(self) -> None:
        """Grey the list of recent files where it is empty."""
        self._fill_recent()

    def _make_edit_menu(self) -> None:
        a = self._actions
        self._menu(
            "&Edit",
            *(a.undo, a.redo, None, a.add_box, a.duplicate, a.delete, a.paste, None),
            *(a.lock_drawer, a.lock_bay, a.unlock, a.unplace),
        )

    def _make_plan_menu(self) -> None:
        a = self._actions
        menu = self._menu("&Plan", a.plan, a.replan, a.stop, a.options)
        live = menu.addMenu("&When something is changed")
        live.setToolTipsVisible(True)
        live.addActions(list(self.live.actions.values()))
        _fill(menu, (None, a.mark_built, a.work_done, a.forget_built, None, a.clear))

    def _make_view_menu(self, picture_actions: Iterable[QAction], choose_theme: Callable[[Theme], None]) -> None:
        a = self._actions
        menu = self._menu("&View", a.show_entries, a.show_lists, None)
        picture = menu.addMenu("&Picture of the run")
        picture.addActions(list(picture_actions))
        menu.addSeparator()
        colours = menu.addMenu("&Colours")
        group = QActionGroup(self._window)
        for theme, words in _THEMES:
            action = colours.addAction(words)
            action.setCheckable(True)
            group.addAction(action)
            action.triggered.connect(lambda _checked=False, theme=theme: choose_theme(theme))
            self.themes[theme] = action
        size = menu.addMenu("&Text size")
        _fill(size, (a.larger, a.smaller, a.normal))

    def _make_help_menu(self) -> None:
        self._menu("&Help", self._actions.keys, None, self._actions.about)

    def _make_toolbar(self) -> None:
        a = self._actions
        bar = QToolBar("Main tools", self._window)
        bar.setObjectName("main-tools")
        bar.setMovable(False)
        bar.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextBesideIcon)
        bar.setIconSize(QSize(18, 18))
        for action in (
            a.open,
            a.save,
            None,
            a.undo,
            a.redo,
            None,
            a.import_inventory,
            None,
            a.plan,
            a.replan,
            None,
            a.export_workbook,
        ):
            if action is None:
                bar.addSeparator()
            else:
                bar.addAction(action)
        bar.insertWidget(bar.actions()[bar.actions().index(a.replan) + 1], self.live.button)
        self._window.addToolBar(bar)
        self.toolbar = bar


def _fill(menu: QMenu, actions: Iterable[QAction | None]) -> None:
    for action in actions:
        if action is None:
            menu.addSeparator()
        else:
            menu.addAction(action)


def _elided(path: Path) -> str:
    """A path short enough for a menu: the file and the end of its folder."""
    text = str(path)
    return text if len(text) <= 60 else f"…{text[-59:]}"
