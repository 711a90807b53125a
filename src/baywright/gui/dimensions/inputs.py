"""The inputs of the workings as things to edit: of what kind, with what value, by which command."""

import re

from baywright.app.commands import Command, SetField
from baywright.app.edits.inventory import EditBoxSize
from baywright.app.session import Session
from baywright.gui.dimensions.entries import ENTRIES, value_at
from baywright.gui.fields.kinds import Kind, LengthKind
from baywright.model.project import Project

_OF_A_SIZE = re.compile(r"box_sizes\[([a-z0-9_-]+)\]\.(\w+)")


def input_kind(field: str) -> Kind | None:
    """The kind of the value at an input's field; None where it cannot be edited."""
    if _OF_A_SIZE.fullmatch(field):
        return LengthKind()
    return ENTRIES[field].kind if field in ENTRIES else None


def input_value(project: Project, field: str) -> object:
    """The value at an input's field; None where there is none."""
    of_a_size = _OF_A_SIZE.fullmatch(field)
    if of_a_size:
        return getattr(project.size(of_a_size[1]), of_a_size[2])
    return value_at(project, field) if field else None


def edit_input(session: Session, field: str, value: object) -> None:
    """Set an input; EditRefused where it is not allowed."""
    of_a_size = _OF_A_SIZE.fullmatch(field)
    command: Command = EditBoxSize(of_a_size[1], of_a_size[2], value) if of_a_size else SetField(field, value)
    session.do(command)
