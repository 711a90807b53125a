"""What a column of a table is: its title, what a record shows in it, and by what it is sorted."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, Generic, TypeVar

Record = TypeVar("Record")


@dataclass(frozen=True)
class Column(Generic[Record]):
    """`text` is what people read, `raw` the value behind it: sorted and filtered on, None last.

    `field` names the field that an edit in this column changes; empty where it cannot be edited. `write` is the text
    in the editor where it differs from the one shown.
    """

    title: str
    text: Callable[[Record], str]
    raw: Callable[[Record], object]
    hint: str = ""
    field: str = ""
    is_number: bool = False
    write: Callable[[Record], object] | None = None
    tip: Callable[[Record], str] | None = None
    sample: str = ""
    """A text that the column should be wide enough for even while no record has one like it."""


def sortable(value: object) -> Any:
    """What a raw value is sorted by: text without regard to case; None, which goes to the end, where there is none."""
    if value is None or value == "":
        return None
    return value.casefold() if isinstance(value, str) else value
