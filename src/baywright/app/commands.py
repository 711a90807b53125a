"""The one door for edits: a command turns a document into a new one, or refuses and says why.

Laws: commands are frozen plain data, point to things by id, and know nothing of undo (a session swaps documents).
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Protocol, TypeVar

from pydantic import ValidationError

from baywright.model.base import Frozen
from baywright.model.length import LengthUnit
from baywright.model.project import Project
from baywright.model.refusal import first_error

_Value = TypeVar("_Value", bound=Frozen)


class EditRefused(ValueError):
    """An edit that cannot be: `message` for the person, `field` the place it concerns (may be empty)."""

    def __init__(self, message: str, field: str = "") -> None:
        super().__init__(message)
        self.message = message
        self.field = field


class Command(Protocol):
    """An edit. `title` names it in the undo menu."""

    @property
    def title(self) -> str:
        """What the edit does, for the undo menu, e.g. “Move box”."""
        ...

    def apply(self, project: Project) -> Project:
        """The document with the edit made; raises EditRefused where it cannot be."""
        ...


def checked(change: Callable[[], _Value], field: str = "") -> _Value:
    """What `change` makes, with pydantic's refusal turned into an EditRefused."""
    try:
        return change()
    except ValidationError as error:
        raise _refused(error, field, LengthUnit.MILLIMETRE) from error


def made(command: Command, project: Project) -> Project:
    """The document with a command made; EditRefused, with lengths in the project's unit, where it cannot be."""
    try:
        return command.apply(project)
    except EditRefused as refused:
        cause = refused.__cause__
        if not isinstance(cause, ValidationError):
            raise
        raise _refused(cause, refused.field, project.unit) from cause


def _refused(error: ValidationError, field: str, unit: LengthUnit) -> EditRefused:
    place, words = first_error(error, unit)
    text = words if words[:1].isupper() else f"{_name(place)} {words}."
    return EditRefused(text, field or ".".join(map(str, place)))


_NAMES = {
    "left_mm": "place from the left",
    "along_mm": "place from the left",
    "bottom_mm": "height over the floor",
    "front_setback_mm": "front row set-back",
    "rear_setback_mm": "rear row set-back",
    "plinth_setback_mm": "set-back of the plinth",
    "set_down_height_mm": "height of the bench",
    "reach_height_mm": "highest reach",
    "raised_rear_mm": "lean of the floor",
    "walkway_mm": "floor before the run",
    "loaded_mass_kg": "mass",
    "density_kg_m3": "density",
    "vat_percent": "value added tax",
}
"""Fields whose names in the document would puzzle whoever typed into a form or a table."""


def _name(place: Sequence[str | int]) -> str:
    """A refused field as people call it, at the beginning of a sentence; of several values, each of them."""
    fields = [step for step in place if isinstance(step, str)]
    if not fields:
        return "The value"
    plain = fields[-1].removesuffix("_mm").removesuffix("_kg").replace("_", " ")
    name = _NAMES.get(fields[-1], plain)
    return f"Each of the {name}" if isinstance(place[-1], int) else name.capitalize()


@dataclass(frozen=True)
class SetField:
    """Sets one field of the project by its path, e.g. `construction.boards.upright_mm`."""

    path: str
    value: object

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return f"Change {self.path.rsplit('.', 1)[-1].removesuffix('_mm').replace('_', ' ')}"

    def apply(self, project: Project) -> Project:
        """The project with the field set; EditRefused where the value is not allowed or no such field exists."""
        return checked(lambda: _with_field(project, self.path.split("."), self.value), self.path)


def _with_field(value: _Value, path: list[str], new: object) -> _Value:
    if path[0] not in type(value).model_fields:
        raise EditRefused(f"There is no field “{path[0]}”.")
    if len(path) == 1:
        return value.replace(**{path[0]: new})
    inner = getattr(value, path[0])
    if not isinstance(inner, Frozen):
        raise EditRefused(f"The field “{path[0]}” has no fields of its own.")
    return value.replace(**{path[0]: _with_field(inner, path[1:], new)})
