"""Writing documents made for others (workbooks, lists), which may be open in another program just then.

Law: a document that another program holds open is not replaced under it; the message names the program's lock file, so
that a stale one can be removed. A project is never replaced by a document made from it. Written atomically, like
everything.
"""

import re
from pathlib import Path

from baywright.storage.atomic import write_atomically
from baywright.storage.projects import PROJECT_SUFFIX
from baywright.storage.trouble import OutputError, named, why_not_written

_BEGINNING_OF_A_PROJECT = re.compile(rb"\s*\{\s*\"format_version\"")


def write_output(path: Path, data: bytes) -> None:
    """Put a document's bytes at `path`; raises `OutputError` where that cannot be done, leaving what was there."""
    holder = _lock_file(path)
    if holder is not None:
        raise OutputError(
            f"{named(path)} is open in another program (its lock file {named(holder)} lies beside it). Close it "
            "there, or write under another name; if no program has it open, delete the lock file."
        )
    if _is_project(path):
        raise OutputError(
            f"{named(path)} is the name of a project, which would be lost; write the document under another name."
        )
    try:
        write_atomically(path, data)
    except OSError as trouble:
        raise OutputError(f"{named(path)} cannot be written: {why_not_written(path, trouble)}.") from None
    except ValueError:
        raise OutputError(f"{named(path)} cannot be written: this is not a file name.") from None


def _is_project(path: Path) -> bool:
    """Whether there is a project file at `path`, by its name or by how it begins."""
    try:
        if not path.is_file():
            return False
        with path.open("rb") as file:
            begins_like_one = _BEGINNING_OF_A_PROJECT.match(file.read(256)) is not None
        return begins_like_one or path.suffix.casefold() == PROJECT_SUFFIX
    except (OSError, ValueError):
        return False


def _lock_file(path: Path) -> Path | None:
    """The file by which office programs mark that they have `path` open, where there is one."""
    names = (f".~lock.{path.name}#", f"~${path.name}", f"~${path.name[2:]}")
    try:
        return next((path.with_name(name) for name in names if path.with_name(name).exists()), None)
    except (OSError, ValueError):
        return None
