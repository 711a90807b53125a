"""Masses as people type and read them; inside the program a mass is always kilograms as float.

Laws: one pound is exactly 0.45359237 kg; parsing is exact and rounds once; a bare number is in kilograms unless the
caller says otherwise; what cannot be read in one way only is refused.
"""

import re
from fractions import Fraction

from baywright.model.number import LONGEST_TEXT, AmbiguousNumberError, NumberError, even_blanks, parse_number


class MassError(ValueError):
    """Text that is no mass; the message says what is wrong and what is accepted."""


POUND_KG = Fraction(45359237, 10**8)
"""One avoirdupois pound in kg, exactly (NIST SP 811, appendix B)."""

_ACCEPTED = "Write for example 4.5, 4.5 kg, 450 g or 10 lb."
_GRAM_KG = Fraction(1, 1000)
_UNITS_KG = {
    "kg": Fraction(1),
    "g": _GRAM_KG,
    "lb": POUND_KG,
    "lbs": POUND_KG,
    "pound": POUND_KG,
    "pounds": POUND_KG,
}
_QUANTITY = re.compile(r"(?P<amount>[0-9., ]+?) ?(?P<unit>[a-z]+)?")


def parse_mass(text: str, bare_unit: str = "kg") -> float:
    """The mass in kg that `text` says; a bare number is in `bare_unit` (`kg`, `g` or `lb`).

    Raises `MassError` where the text is no mass or can be read in two ways.
    """
    if len(text) > LONGEST_TEXT:
        raise MassError(f"A text of {len(text)} characters is not a mass. {_ACCEPTED}")
    plain = even_blanks(text).lower()
    if not plain:
        raise MassError(f"A mass is missing. {_ACCEPTED}")
    quantity = _QUANTITY.fullmatch(plain)
    if not quantity:
        raise MassError(f"“{text.strip()}” is not a mass. {_ACCEPTED}")
    unit = quantity["unit"] or bare_unit
    if unit not in _UNITS_KG:
        raise MassError(f"“{text.strip()}” is not a mass: the unit “{unit}” is not known. {_ACCEPTED}")
    try:
        return float(parse_number(quantity["amount"]) * _UNITS_KG[unit])
    except AmbiguousNumberError as trouble:
        raise MassError(str(trouble)) from None
    except NumberError as trouble:
        raise MassError(f"{trouble} {_ACCEPTED}") from None
