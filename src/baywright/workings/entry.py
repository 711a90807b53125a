"""What the workings answer: one entry for every input and every derived dimension."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Entry:
    """One named value with its working. `key` is unique: the name, for a box size followed by its id in brackets."""

    key: str
    name: str
    size_id: str | None
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


def key_of(name: str, size_id: str | None) -> str:
    """The key of an entry: `bay_pitch`, or `need_height[euro-120]`."""
    return name if size_id is None else f"{name}[{size_id}]"
