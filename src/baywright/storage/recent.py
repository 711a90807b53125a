"""The project files opened last, most recent first, in a small file of the person's settings folder.

Law: the list is a convenience; a broken, missing or unwritable one is an empty list or is rewritten, never an error.
"""

import contextlib
import os
from pathlib import Path

from pydantic import BaseModel, ConfigDict, ValidationError

from baywright.storage.atomic import write_atomically
from baywright.storage.source import read_source
from baywright.storage.trouble import StorageError

FILE_NAME = "recent.json"
MOST_RECENT = 10
_MOST_BYTES = 200_000


class _Recent(BaseModel):
    model_config = ConfigDict(extra="ignore", strict=True)

    recent: list[str]


def read_recent(folder: Path) -> tuple[Path, ...]:
    """The files remembered in the settings folder, most recent first; files that are gone by now included."""
    try:
        listed = _Recent.model_validate_json(read_source(folder / FILE_NAME, _MOST_BYTES, StorageError)).recent
    except (StorageError, ValidationError):
        return ()
    paths = dict.fromkeys(Path(entry) for entry in listed if entry and "\0" not in entry)
    return tuple(path for path in paths if path.is_absolute())[:MOST_RECENT]


def remember(folder: Path, path: Path) -> tuple[Path, ...]:
    """Put a file at the head of the list; the new list. The folder is made where it is missing."""
    first = Path(os.path.abspath(path))
    return _keep(folder, (first, *(other for other in read_recent(folder) if other != first)))


def forget(folder: Path, path: Path) -> tuple[Path, ...]:
    """Take a file off the list; the new list."""
    gone = Path(os.path.abspath(path))
    return _keep(folder, tuple(other for other in read_recent(folder) if other != gone))


def _keep(folder: Path, paths: tuple[Path, ...]) -> tuple[Path, ...]:
    writable = tuple(path for path in paths if _is_text(path))[:MOST_RECENT]
    with contextlib.suppress(OSError):
        folder.mkdir(parents=True, exist_ok=True)
        listed = _Recent(recent=[str(path) for path in writable])
        write_atomically(folder / FILE_NAME, listed.model_dump_json(indent=2).encode() + b"\n")
    return writable


def _is_text(path: Path) -> bool:
    """Whether the name can be written down in UTF-8 (a file system may hold other bytes)."""
    try:
        str(path).encode()
    except UnicodeEncodeError:
        return False
    return True
