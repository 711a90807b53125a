"""One value of the form and a heading with its values; short ways to write them down."""

from dataclasses import dataclass

from baywright.gui.fields.kinds import ChoiceKind, CountKind, FlagKind, Kind, LengthKind, NumberKind, TextKind


@dataclass(frozen=True)
class FormEntry:
    """One value of the form: where it stands in the project, what it is called, what it is, and of what kind."""

    path: str
    label: str
    hint: str
    kind: Kind


@dataclass(frozen=True)
class FormSection:
    """A heading with its values."""

    title: str
    entries: tuple[FormEntry, ...]
    is_open: bool = False


def length(path: str, label: str, hint: str, empty_means: str = "") -> FormEntry:
    """A length; `empty_means` where it may be left empty."""
    return FormEntry(path, label, hint, LengthKind(empty_means))


def count(path: str, label: str, hint: str, least: int, most: int, empty_means: str = "") -> FormEntry:
    """A whole number."""
    return FormEntry(path, label, hint, CountKind(least, most, empty_means))


def choice(path: str, label: str, hint: str, choices: tuple[tuple[object, str], ...]) -> FormEntry:
    """One of several words."""
    return FormEntry(path, label, hint, ChoiceKind(choices))


def flag(path: str, label: str, hint: str) -> FormEntry:
    """Yes or no."""
    return FormEntry(path, label, hint, FlagKind())


def text(path: str, label: str, hint: str, *, may_be_empty: bool = True) -> FormEntry:
    """A line of text."""
    return FormEntry(path, label, hint, TextKind(may_be_empty))


def number(path: str, label: str, hint: str, unit: str) -> FormEntry:
    """A plain number in a unit."""
    return FormEntry(path, label, hint, NumberKind(unit))
