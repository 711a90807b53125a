"""Reading a whole file into memory, with every way in which that can fail told in words.

Laws: never waits (a pipe or a device is refused), never reads more than the cap, never changes anything.
"""

import os
import stat
from pathlib import Path

from baywright.storage.trouble import StorageError, named, reason


def read_source(path: Path, most_bytes: int, error: type[StorageError]) -> bytes:
    """All bytes of the file at `path`; raises `error` where it cannot be read or is larger than `most_bytes`."""
    try:
        handle = os.open(path, os.O_RDONLY | os.O_NONBLOCK | os.O_CLOEXEC)
    except OSError as trouble:
        raise error(f"{named(path)} cannot be opened: {reason(trouble)}.") from None
    except ValueError:
        raise error(f"{named(path)} cannot be opened: this is not a file name.") from None
    try:
        with open(handle, "rb", closefd=True) as file:
            _refuse_what_is_no_file(path, os.fstat(handle), most_bytes, error)
            data = file.read(most_bytes + 1)
    except OSError as trouble:
        raise error(f"{named(path)} cannot be read: {reason(trouble)}.") from None
    if len(data) > most_bytes:
        raise error(_too_large(path, len(data), most_bytes))
    return data


def _refuse_what_is_no_file(path: Path, status: os.stat_result, most_bytes: int, error: type[StorageError]) -> None:
    if stat.S_ISDIR(status.st_mode):
        raise error(f"{named(path)} is a folder; choose a file in it.")
    if not stat.S_ISREG(status.st_mode):
        raise error(f"{named(path)} is not an ordinary file (but a pipe, socket or device).")
    if status.st_size > most_bytes:
        raise error(_too_large(path, status.st_size, most_bytes))


def _too_large(path: Path, size: int, most_bytes: int) -> str:
    limit = _megabytes(most_bytes)
    return f"{named(path)} is too large to be read: {_megabytes(size)} MB, and at most {limit} MB are read."


def _megabytes(size: int) -> str:
    return f"{size / 1_000_000:.3g}" if size < 100_000_000 else f"{size / 1_000_000:.0f}"
