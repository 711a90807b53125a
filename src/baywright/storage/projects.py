"""Project files: one readable JSON document a file, checked on the way in and on the way out.

Laws: save → load → save gives the same bytes; a file is replaced only by one that reads back equal; reading never
changes the file; whatever is wrong with it is one `ProjectFileError`.
"""

from pathlib import Path
from typing import Annotated

import pydantic_core
from pydantic import BaseModel, ConfigDict, Field, ValidationError

from baywright.model.project import FORMAT_VERSION, Project
from baywright.storage.atomic import write_atomically
from baywright.storage.faults import syntax_fault, value_fault
from baywright.storage.migrations import OLDEST_VERSION, migrate
from baywright.storage.source import read_source
from baywright.storage.trouble import ProjectFileError, named, why_not_written

PROJECT_SUFFIX = ".baywright"
"""What the names of project files end with."""

MOST_BYTES = 64_000_000
"""Project files larger than this are neither read nor written."""

_BYTE_ORDER_MARK = b"\xef\xbb\xbf"


class _Version(BaseModel):
    """The one field that every format has, whatever else it holds."""

    model_config = ConfigDict(extra="ignore", strict=True)

    format_version: Annotated[int, Field(ge=OLDEST_VERSION)]


def read_project(path: Path) -> Project:
    """The project in the file at `path`; raises `ProjectFileError`, whose message names the place of a fault."""
    data = read_source(path, MOST_BYTES, ProjectFileError)
    try:
        return decode_project(data)
    except ProjectFileError as trouble:
        raise ProjectFileError(f"{named(path)} {trouble} The file was left as it is.") from None


def write_project(path: Path, project: Project) -> None:
    """Save a project at `path`; raises `ProjectFileError` and leaves what was there where that cannot be done."""
    data = encode_project(project)
    try:
        write_atomically(path, data)
    except OSError as trouble:
        raise ProjectFileError(f"{named(path)} cannot be saved: {why_not_written(path, trouble)}.") from None
    except ValueError:
        raise ProjectFileError(f"{named(path)} cannot be saved: this is not a file name.") from None


def encode_project(project: Project) -> bytes:
    """The bytes of a project file: indented JSON in UTF-8, the format version first, fields in the model's order.

    Raises `ProjectFileError` where these bytes would not read back as the same project.
    """
    data = project.model_dump_json(indent=2, warnings=False).encode() + b"\n"
    if len(data) > MOST_BYTES:
        raise ProjectFileError(f"The project is too large to be saved (over {MOST_BYTES // 1_000_000} MB).")
    try:
        is_same = decode_project(data) == project
    except ProjectFileError as trouble:
        raise ProjectFileError(f"The project cannot be saved, for its file {trouble}") from None
    if not is_same:
        raise ProjectFileError("The project cannot be saved: its file would not read back as the same project.")
    return data


def decode_project(data: bytes) -> Project:
    """The project in the bytes of a project file.

    Raises `ProjectFileError`, whose message begins as if the file's name stood before it (“is empty.”).
    """
    data = data.removeprefix(_BYTE_ORDER_MARK)
    version = _version(data)
    if version > FORMAT_VERSION:
        raise ProjectFileError(
            f"was made by a newer Baywright (format {version}); this one reads formats up to {FORMAT_VERSION}. "
            "Install the newer version to open it."
        )
    if version < FORMAT_VERSION:
        data = _migrated(data, version)
    try:
        return Project.model_validate_json(data, strict=True)
    except ValidationError as error:
        raise ProjectFileError(f"has a fault{value_fault(error, pydantic_core.from_json(data))}.") from None


def _version(data: bytes) -> int:
    """The format version, read before anything else is judged by the present model."""
    if not data.strip():
        raise ProjectFileError("is empty.")
    try:
        data.decode()
    except UnicodeDecodeError:
        raise ProjectFileError("is not a Baywright project (it is not a text in UTF-8).") from None
    try:
        return _Version.model_validate_json(data).format_version
    except ValidationError as error:
        first = error.errors(include_url=False)[0]
        match first["type"]:
            case "json_invalid" if not data.lstrip().startswith(b"{"):
                raise ProjectFileError("is not a Baywright project (it is no JSON document).") from None
            case "json_invalid":
                raise ProjectFileError(f"is damaged at {syntax_fault(first['ctx']['error'])}.") from None
            case "missing" | "model_type":
                raise ProjectFileError("is not a Baywright project (it has no “format_version”).") from None
            case _:
                raise ProjectFileError(
                    f"has a fault at “format_version”: it must be a whole number, {OLDEST_VERSION} or more."
                ) from None


def _migrated(data: bytes, version: int) -> bytes:
    try:
        document = migrate(pydantic_core.from_json(data, allow_inf_nan=False), version, FORMAT_VERSION)
    except Exception:
        # A step meets damaged data as whatever it is; the person needs to know only which file and format.
        raise ProjectFileError(
            f"is of format {version} and damaged, so that it cannot be brought up to date."
        ) from None
    return pydantic_core.to_json(document)
