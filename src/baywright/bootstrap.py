"""Where the program is put together: which folders it uses, and which session a window or a command begins with."""

import os
from pathlib import Path


def resources_folder() -> Path:
    """The folder with the demo, icons and tables: beside `src` in a checkout, else beside the package."""
    package = Path(__file__).resolve().parent
    for candidate in (package.parents[1] / "resources", package / "resources"):
        if candidate.is_dir():
            return candidate
    raise FileNotFoundError("The folder “resources” is missing; install the program again.")


def demo_file() -> Path:
    """The demo project: a community bicycle workshop."""
    return resources_folder() / "demo.baywright"


def state_folder() -> Path:
    """Where recent files, window geometry and rescue copies are kept: the user's state folder by the XDG rules."""
    base = os.environ.get("XDG_STATE_HOME") or Path.home() / ".local" / "state"
    return Path(base) / "baywright"


def open_window(path: Path | None, begin_with_demo: bool) -> int:
    """Opens the window on a project file, a copy of the demo, or a new project; returns the exit code."""
    # The command line must work where Qt's system libraries are missing.
    from baywright.gui.application import run

    return run(path, state_folder(), demo_file(), begin_with_demo=begin_with_demo)
