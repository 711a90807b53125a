"""Why a value is refused, in words for the person who typed it; made from what pydantic found."""

from collections.abc import Mapping
from typing import Any

from pydantic import ValidationError

from baywright.model.length import LengthUnit, format_length
from baywright.model.money import CURRENCY_PATTERN

_BOUNDS = {
    "greater_than": ("gt", "must be over {}"),
    "greater_than_equal": ("ge", "must be at least {}"),
    "less_than": ("lt", "must be under {}"),
    "less_than_equal": ("le", "must be at most {}"),
}
_COUNTS = {
    "string_too_long": ("max_length", "is too long: at most {} characters"),
    "too_long": ("max_length", "has too many entries: at most {}"),
    "too_short": ("min_length", "has too few entries: at least {}"),
    "decimal_max_digits": ("max_digits", "must have at most {} digits"),
    "decimal_max_places": ("decimal_places", "must have at most {} decimals"),
    "decimal_whole_digits": ("whole_digits", "must have at most {} digits before the decimal point"),
}
_PLAIN = {
    "missing": "is missing",
    "extra_forbidden": "is not a field that this program knows",
    "float_type": "must be a number",
    "float_parsing": "must be a number",
    "decimal_type": "must be a number",
    "decimal_parsing": "must be a number, such as 12.50",
    "int_type": "must be a whole number",
    "int_parsing": "must be a whole number",
    "int_from_float": "must be a whole number",
    "bool_type": "must be true or false",
    "bool_parsing": "must be true or false",
    "string_type": "must be text",
    "string_too_short": "must not be empty",
    "finite_number": "must be a finite number",
    "string_pattern_mismatch": "must begin with a lower-case letter and hold only lower-case letters, digits, - and _",
}
_PATTERNS = {CURRENCY_PATTERN: "must be three letters, such as EUR, GBP or CHF"}
"""What texts must be that are no ids."""


def reason(error: Mapping[str, Any], unit: LengthUnit = LengthUnit.MILLIMETRE) -> str:
    """What is wrong with one value, as the end of a sentence that begins with its name, e.g. “must be over 0”.

    `error` is one entry of `ValidationError.errors()`; bounds of lengths are told in `unit`. A rule of the model gives
    its own whole sentence.
    """
    kind, context = str(error["type"]), error.get("ctx", {})
    if kind == "value_error":
        return str(context.get("error", error["msg"]))
    if kind in _BOUNDS:
        key, words = _BOUNDS[kind]
        return words.format(_bound(error, float(context[key]), unit))
    if kind in _COUNTS:
        key, words = _COUNTS[kind]
        return words.format(f"{context[key]:,}")
    if kind in ("enum", "literal_error"):
        return f"must be one of {context['expected']}"
    if (pattern := context.get("pattern")) in _PATTERNS:
        return _PATTERNS[pattern]
    return _PLAIN.get(kind, str(error["msg"]).lower())


def _bound(error: Mapping[str, Any], bound: float, unit: LengthUnit) -> str:
    """A bound with the unit that the name of the refused field ends with; lengths in another one where wanted."""
    names = [step for step in error.get("loc", ()) if isinstance(step, str)]
    ending = names[-1].rpartition("_")[2] if names else ""
    if ending == "mm" and unit is not LengthUnit.MILLIMETRE:
        return format_length(bound, unit)
    return f"{bound:,.12g}" + {"mm": " mm", "kg": " kg", "m3": " kg/m³", "percent": " %"}.get(ending, "")


def first_error(error: ValidationError, unit: LengthUnit = LengthUnit.MILLIMETRE) -> tuple[tuple[str | int, ...], str]:
    """The place of the first thing wrong (a path of names and indexes) and the reason in words, lengths in `unit`."""
    first = error.errors(include_url=False)[0]
    return tuple(first["loc"]), reason(first, unit)
