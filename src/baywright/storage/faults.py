"""What is wrong with a project file, and at which place of it, in words instead of a validator's report.

Law: one sentence about the first fault, with its place named as it stands in the file, and the count of further faults.
"""

import re
from collections.abc import Mapping, Sequence
from decimal import Decimal
from typing import Any

from pydantic import ValidationError
from pydantic_core import ErrorDetails

from baywright.model.refusal import reason
from baywright.storage.trouble import printable

_LISTS = {
    "boxes": ("boxes", "label"),
    "box_sizes": ("box sizes", "name"),
    "placements": ("placements", "box_id"),
}
"""Lists of the file: what they are called, and the field by which a person knows an entry."""

_PLACE_OF_SYNTAX = re.compile(r"(?P<what>.*) at line (?P<line>\d+) column (?P<column>\d+)", re.DOTALL)
_SYNTAX = (
    ("EOF", "the file ends too early (it seems to be cut off)"),
    ("recursion limit", "it is nested too deeply"),
    ("trailing characters", "something follows after the end of the project"),
    ("number out of range", "a number is too large"),
    ("control character", "a text holds a control character"),
    ("expected", "a comma, bracket, colon or quotation mark is missing or too many"),
    ("trailing comma", "there is a comma too many"),
)
_LONGEST_QUOTE = 60


def syntax_fault(message: str) -> str:
    """“line 12, column 5: …” from the JSON reader's message."""
    match = _PLACE_OF_SYNTAX.fullmatch(message)
    what = match["what"] if match else message
    plain = next((words for sign, words in _SYNTAX if sign in what), printable(what))
    return f"line {match['line']}, column {match['column']}: {plain}" if match else plain


def value_fault(error: ValidationError, document: object) -> str:
    """“ at boxes, no. 3: -1 must be …”: where in `document` the first error lies; “: …” where it is about the whole."""
    details = error.errors(include_url=False)
    first = details[0]
    place = place_of(first["loc"], document)
    further = len(details) - 1
    sentence = f" at {place}: {_what(first)}" if place else f": {_what(first)}"
    if not further:
        return sentence
    return f"{sentence} (and {further} more {'faults' if further > 1 else 'fault'})"


def first_fault(error: ValidationError) -> tuple[str, str]:
    """The field of a value in which the first error lies, and what is wrong there."""
    first = error.errors(include_url=False)[0]
    return str(first["loc"][0]) if first["loc"] else "", _what(first)


def place_of(location: Sequence[int | str], document: object) -> str:
    """The path to a value as a person would say it: “boxes, no. 12 (“Spokes”), “height_mm””."""
    words: list[str] = []
    inside: Any = document
    above = ""
    for step in location:
        inside = _step_into(inside, step)
        if isinstance(step, int):
            words.append(f"no. {step + 1}{_known_as(above, inside)}")
        else:
            words.append(_LISTS[step][0] if step in _LISTS else f"“{printable(step)}”")
            above = step
    return ", ".join(words)


def _step_into(inside: Any, step: int | str) -> Any:
    if isinstance(step, int):
        return inside[step] if isinstance(inside, Sequence) and step < len(inside) else None
    return inside.get(step) if isinstance(inside, Mapping) else None


def _known_as(above: str, entry: object) -> str:
    field = _LISTS.get(above, ("", ""))[1]
    name = entry.get(field) if field and isinstance(entry, Mapping) else None
    return f" ({_quoted(name)})" if isinstance(name, str) and name else ""


def _quoted(value: object) -> str:
    text = printable(str(value))
    return f"“{text if len(text) <= _LONGEST_QUOTE else text[:_LONGEST_QUOTE] + '…'}”"


def _what(detail: ErrorDetails) -> str:
    """The fault itself, without place and full stop."""
    match detail["type"]:
        case "missing":
            return "it is missing"
        case "extra_forbidden":
            return "this field is not known here"
        case "value_error":
            return reason(detail).rstrip(".")
        case "model_type" | "dict_type" | "model_attributes_type":
            return "an object in { } is expected here"
        case "tuple_type" | "list_type":
            return "a list in [ ] is expected here"
        case _:
            return f"{_shown(detail.get('input'))} {reason(detail)}"


def _shown(value: object) -> str:
    match value:
        case None:
            return "null"
        case bool():
            return "true" if value else "false"
        case int() | float():
            return f"{value:g}" if isinstance(value, float) else _quoted(value).strip("“”")
        case Decimal():
            return f"{value:f}"
        case str():
            return _quoted(value)
        case _:
            return "what stands here"
