"""Writing a file so that at every moment, power cut included, either the old or the new one is there, whole.

Laws: the bytes go to a temporary file in the same folder, are forced to the disk, and only then take the old file's
name; then the folder is forced to the disk too. On any failure before that the old file is untouched and the temporary
file is removed. Temporary files that a killed process left behind are swept at the next save into that folder.
"""

import contextlib
import errno
import os
import secrets
import stat
import time
from pathlib import Path

TEMPORARY_PREFIX = ".baywright-"
TEMPORARY_SUFFIX = ".part"
_LEFT_OVER_SECONDS = 600.0
"""A temporary file this old belongs to no save that is still going on."""

_FOLDER_CANNOT_BE_SYNCED = frozenset({errno.EINVAL, errno.ENOTSUP, errno.EBADF, errno.EACCES})


def write_atomically(path: Path, data: bytes) -> None:
    """Put `data` into the file at `path`, or raise OSError and leave what was there.

    A link is followed; the old file's permissions are kept; a file that is write-protected is not replaced.
    """
    target = Path(os.path.realpath(path))
    _sweep(target.parent)
    mode = _mode_of(target)
    temporary = target.parent / f"{TEMPORARY_PREFIX}{secrets.token_hex(8)}{TEMPORARY_SUFFIX}"
    try:
        _write(temporary, data, mode)
        os.replace(temporary, target)
    except BaseException:
        with contextlib.suppress(OSError):
            os.unlink(temporary)
        raise
    _sync_folder(target.parent)


def _mode_of(target: Path) -> int | None:
    """The permissions of the file to be replaced; None where there is none."""
    try:
        status = os.stat(target)
    except FileNotFoundError:
        return None
    if stat.S_ISDIR(status.st_mode):
        raise IsADirectoryError(errno.EISDIR, os.strerror(errno.EISDIR))
    if not stat.S_ISREG(status.st_mode):
        raise OSError(errno.EINVAL, "it is not an ordinary file")
    if not os.access(target, os.W_OK, effective_ids=True):
        raise PermissionError(errno.EACCES, os.strerror(errno.EACCES))
    return stat.S_IMODE(status.st_mode)


def _write(temporary: Path, data: bytes, mode: int | None) -> None:
    handle = os.open(temporary, os.O_WRONLY | os.O_CREAT | os.O_EXCL | os.O_CLOEXEC, 0o666)
    try:
        if mode is not None:
            os.fchmod(handle, mode)
        left = memoryview(data)
        while left:
            left = left[os.write(handle, left) :]
        os.fsync(handle)
    finally:
        os.close(handle)


def _sync_folder(folder: Path) -> None:
    """Force the new name to the disk; some network folders cannot, which is no failure."""
    try:
        handle = os.open(folder, os.O_RDONLY | os.O_DIRECTORY | os.O_CLOEXEC)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)
    except OSError as trouble:
        if trouble.errno not in _FOLDER_CANNOT_BE_SYNCED:
            raise


def _sweep(folder: Path) -> None:
    """Remove temporary files that a killed process left in the folder; what cannot be removed stays."""
    with contextlib.suppress(OSError):
        for name in os.listdir(folder):
            if name.startswith(TEMPORARY_PREFIX) and name.endswith(TEMPORARY_SUFFIX):
                left_over = folder / name
                with contextlib.suppress(OSError):
                    if time.time() - os.stat(left_over).st_mtime > _LEFT_OVER_SECONDS:
                        os.unlink(left_over)
