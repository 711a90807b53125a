"""The fitting field for each kind of value."""

from baywright.gui.fields.choice import ChoiceField, FlagField
from baywright.gui.fields.field import Field
from baywright.gui.fields.kinds import ChoiceKind, FlagKind, Kind, NoteKind
from baywright.gui.fields.note import NoteField
from baywright.gui.fields.typed import TypedField


def make_field(label: str, kind: Kind, hint: str = "") -> Field:
    """A field that shows and edits a value of that kind."""
    if isinstance(kind, ChoiceKind):
        return ChoiceField(label, kind, hint)
    if isinstance(kind, FlagKind):
        return FlagField(label, hint)
    if isinstance(kind, NoteKind):
        return NoteField(label, hint)
    return TypedField(label, kind, hint)
