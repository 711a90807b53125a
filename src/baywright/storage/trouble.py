"""What can go wrong with a file, in words for the person who wants it read or written.

Law: every message says which file, what is wrong and, where there is one, the way out; it never holds a traceback.
"""

import errno
from pathlib import Path


class StorageError(Exception):
    """A file could not be read or written; the message is ready to be shown."""


class ProjectFileError(StorageError):
    """A project file is missing, damaged, of another kind, or cannot be written."""


class TableError(StorageError):
    """A table (CSV, workbook or pasted text) cannot be read."""


class OutputError(StorageError):
    """A document made for others (workbook, list) cannot be written."""


_REASONS = {
    errno.ENOENT: "it does not exist",
    errno.EACCES: "there is no permission to do so",
    errno.EPERM: "there is no permission to do so",
    errno.EROFS: "the disk or folder is read-only",
    errno.ENOSPC: "the disk is full",
    errno.EDQUOT: "the disk quota is used up",
    errno.EISDIR: "it is a folder",
    errno.ENOTDIR: "a part of its path is not a folder",
    errno.ENAMETOOLONG: "its name is too long",
    errno.ELOOP: "its links lead round in a circle",
    errno.EIO: "the disk reports a fault",
    errno.ESTALE: "the network folder is no longer there",
    errno.ETXTBSY: "it is in use",
    errno.EBUSY: "it is in use",
}


def reason(trouble: OSError) -> str:
    """Why the operating system refused, as the end of a sentence without its full stop."""
    return _REASONS.get(trouble.errno or 0) or (trouble.strerror or "the system gives no reason").lower()


def why_not_written(path: Path, trouble: OSError) -> str:
    """Why `path` cannot be written; where nothing is found at its place, it is the folder that is missing."""
    if trouble.errno == errno.ENOENT and not path.parent.is_dir():
        return f"there is no folder “{printable(str(path.parent))}”"
    return reason(trouble)


def named(path: Path) -> str:
    """The file's name in quotation marks, in letters that can be shown anywhere."""
    return f"“{printable(path.name or str(path))}”"


def printable(text: str) -> str:
    """The text with what no screen can show (control signs, broken file names) replaced by “�”."""
    return "".join(sign if sign.isprintable() else "\ufffd" for sign in text)
