"""Numbers as people write them, read exactly; the one place that decides what a comma means.

Laws: a point is always the decimal mark where it stands alone. A comma alone is the decimal mark too (`12,5`), except
where it could also separate thousands (`2,940`): such a number is refused, never guessed. Where both marks occur, or
one of them twice, only one reading is left and that one is taken (`2,940.5`, `2.940,5`, `1,234,567`). A blank separates
thousands (`2 940`). No exponents, no signs, no digits other than 0 to 9.
"""

import re
from fractions import Fraction

LONGEST_TEXT = 80
"""So many characters are more than any number or length needs; longer text is refused unread."""

_BLANKS = dict.fromkeys(map(ord, "\t\n\r\u00a0\u2002\u2003\u2007\u2009\u200a\u202f"), " ")
_PLAIN = re.compile(r"[0-9]+")
_POINT = re.compile(r"[0-9]+\.[0-9]+|\.[0-9]+")
_COMMA = re.compile(r"[0-9]+,[0-9]+|,[0-9]+")
_AMBIGUOUS = re.compile(r"[1-9][0-9]{0,2},[0-9]{3}")
_GROUPED = re.compile(r"[1-9][0-9]{0,2}(?:([., ])[0-9]{3})(?:\1[0-9]{3})*(?:(?!\1)[.,][0-9]+)?")


class NumberError(ValueError):
    """Text that is no number; the message says what is wrong."""


class AmbiguousNumberError(NumberError):
    """A number that can be read in two ways; the message says how to write each."""


def even_blanks(text: str) -> str:
    """The text with every kind of blank made a plain one, single, and none at the ends."""
    return re.sub(" +", " ", text.translate(_BLANKS)).strip()


def parse_number(text: str) -> Fraction:
    """The exact value of an unsigned decimal number such as `396`, `39.6`, `12,5` or `2 940`.

    Raises `NumberError` where the text is no number, `AmbiguousNumberError` where it can be read in two ways.
    """
    if _PLAIN.fullmatch(text) or _POINT.fullmatch(text):
        return Fraction(text)
    if _AMBIGUOUS.fullmatch(text):
        whole, part = text.split(",")
        grouped, decimal = whole + part, f"{whole}.{part.rstrip('0') or '0'}"
        raise AmbiguousNumberError(f"“{text}” can be read as {grouped} or as {decimal}; write {grouped} or {decimal}.")
    if _COMMA.fullmatch(text):
        return Fraction(text.replace(",", "."))
    grouped_number = _GROUPED.fullmatch(text)
    if grouped_number:
        return Fraction(text.replace(grouped_number[1], "").replace(",", "."))
    raise NumberError(f"“{text}” is not a number.")
