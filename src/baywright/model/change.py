"""Making changes that are given as fields: a document with new values at dotted paths.

Laws: the paths are those of `baywright.model.repair.FieldChange`; every value is checked as if a person had entered
it; what is not there cannot be set, but for wishes for bays that have none yet and one more width of bay, which are
added.
"""

import re
from collections.abc import Iterable
from functools import reduce

from baywright.model.base import Frozen
from baywright.model.limits import BayWish
from baywright.model.project import Project
from baywright.model.repair import FieldChange, FieldValue

_STEP = re.compile(r"(?P<name>[a-z][a-z0-9_]*)(?:\[(?P<member>[a-z0-9_-]+)\])?")
_ID_FIELDS = ("id", "box_id")


class NoSuchFieldError(ValueError):
    """A path that leads to no field of the document; the message names it."""


def changed(project: Project, changes: Iterable[FieldChange]) -> Project:
    """The document with all changes made, one after the other.

    Raises `NoSuchFieldError` where a path leads nowhere, `pydantic.ValidationError` where a value is not allowed.
    """
    return reduce(lambda so_far, change: _with_change(so_far, change), changes, project)


def _with_change(project: Project, change: FieldChange) -> Project:
    made = _set(project, change.path.split("."), change.value, change.path)
    assert isinstance(made, Project)
    return made


def _set(value: object, steps: list[str], new: FieldValue, path: str) -> Frozen:
    match = _STEP.fullmatch(steps[0])
    if match is None or not isinstance(value, Frozen) or match["name"] not in type(value).model_fields:
        raise NoSuchFieldError(f"There is no field “{path}”.")
    name, member = match["name"], match["member"]
    inner = getattr(value, name)
    if member is None:
        return value.replace(**{name: new if len(steps) == 1 else _set(inner, steps[1:], new, path)})
    if not isinstance(inner, tuple):
        raise NoSuchFieldError(f"There is no field “{path}”.")
    members = _long_enough(inner, name, member)
    number = _number(members, member, path)
    mine = new if len(steps) == 1 else _set(members[number], steps[1:], new, path)
    return value.replace(**{name: (*members[:number], mine, *members[number + 1 :])})


def _long_enough(members: tuple[object, ...], name: str, member: str) -> tuple[object, ...]:
    """Empty wishes for the bays before the one named; a place for one more width at the end."""
    if not member.isdecimal():
        return members
    if name == "bays":
        return (*members, *(BayWish() for _ in range(len(members), int(member) + 1)))
    if name == "other_box_widths_mm" and int(member) == len(members):
        return (*members, 0.0)
    return members


def _number(members: tuple[object, ...], member: str, path: str) -> int:
    for number, one in enumerate(members):
        if any(getattr(one, field, None) == member for field in _ID_FIELDS):
            return number
    if member.isdecimal() and int(member) < len(members):
        return int(member)
    raise NoSuchFieldError(f"There is no field “{path}”: nothing is called “{member}” there.")
