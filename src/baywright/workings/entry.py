"""What the workings answer: one entry for every input and every derived dimension."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Entry:
    """One named value with its working. `key` is unique: the name, for a box size or a kind of bay followed by its id
    in brackets.
    """

    key: str
    name: str
    size_id: str | None
    kind_id: str | None
    """The kind of bay; None for the ordinary one."""
    label: str
    unit: str
    value: float
    group: str
    is_input: bool
    working: str
    """“bay clear width = drawer outside width 432 + 2 × runner thickness 14 = 460 mm”; of an input, its value."""
    inputs: tuple[str, ...]
    """Keys of the entries that the working reads directly; empty for an input."""
    field: str
    """Path of the field in the project where an input stands; empty where it cannot be edited."""
    cell: str
    """Name of the spreadsheet cell that holds the value."""
    excel: str
    """Spreadsheet formula over named cells, without the leading `=`; empty for an input."""
    note: str


def key_of(name: str, of: str | None) -> str:
    """The key of an entry: `bay_pitch`; of a box size `need_height[euro-120]`; of a kind of bay `bay_pitch[bay-a]`."""
    return name if of is None else f"{name}[{of}]"
