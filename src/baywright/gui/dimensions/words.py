"""How an entry of the workings reads in the window: in the project's unit, choices in words instead of numbers."""

from typing import Protocol

from baywright.gui.dimensions.entries import ENTRIES, value_at
from baywright.gui.fields.kinds import ChoiceKind, FlagKind
from baywright.gui.wording import words_for
from baywright.model.length import format_length
from baywright.model.project import Project


class Entry(Protocol):
    """What is read of an entry of the workings."""

    @property
    def label(self) -> str:
        """Its name in words."""

    @property
    def group(self) -> str:
        """The heading it stands under."""

    @property
    def size_id(self) -> str | None:
        """The box size that it belongs to."""

    @property
    def unit(self) -> str:
        """Unit of the value."""

    @property
    def value(self) -> float:
        """The value."""

    @property
    def is_input(self) -> bool:
        """Whether it is given, not worked out."""

    @property
    def working(self) -> str:
        """“name = sum = value”."""

    @property
    def inputs(self) -> tuple[str, ...]:
        """Keys of the entries it is worked out from."""

    @property
    def field(self) -> str:
        """Path of an input that can be edited."""

    @property
    def note(self) -> str:
        """An explanation."""


def entry_label(entry: Entry, project: Project) -> str:
    """The name of an entry. A choice goes by its name in the form, which knows nothing of numbers for answers; an entry
    of a box size leaves out the size's name, which stands over it.
    """
    given = ENTRIES.get(entry.field)
    label = given.label if given is not None and isinstance(given.kind, ChoiceKind | FlagKind) else entry.label
    if entry.size_id is not None:
        name = next((size.name for size in project.box_sizes if size.id == entry.size_id), "")
        label = label.removesuffix(f", {name}")
    return label[:1].upper() + label[1:]


def entry_value(entry: Entry, project: Project) -> str:
    """The value of an entry for reading."""
    given = ENTRIES.get(entry.field)
    if given is not None and isinstance(given.kind, ChoiceKind):
        return words_for(value_at(project, entry.field), given.kind.choices)
    if given is not None and isinstance(given.kind, FlagKind):
        return "yes" if value_at(project, entry.field) else "no"
    if entry.unit == "mm":
        return format_length(entry.value, project.unit)
    number = f"{entry.value:.2f}".rstrip("0").rstrip(".")
    return f"{number} {entry.unit}".strip()


def entry_working(entry: Entry, project: Project) -> str:
    """What the value is worked out from, without name and result; of an input, where it comes from."""
    if entry.is_input:
        if entry.field:
            return "entered; change it here"
        return "comes from the inventory or the plan"
    _, _, rest = entry.working.partition(" = ")
    return rest.rpartition(" = ")[0] or rest
