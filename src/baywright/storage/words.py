"""Words in the cells of tables: made alike for comparing, given the unit of their heading, refusals cut in two."""

import unicodedata

from baywright.model.number import even_blanks


def plain_word(text: str) -> str:
    """A word in small letters without accents, as lists of words hold it."""
    parts = unicodedata.normalize("NFKD", even_blanks(text.replace("ß", "ss")).lower())
    return "".join(sign for sign in parts if not unicodedata.combining(sign))


def with_unit(text: str, unit: str) -> str:
    """The text with the heading's unit behind it, where it names none itself."""
    has_own = any(sign.isalpha() or sign in "'\"′″’”" for sign in text)
    return text if has_own or not unit else f"{text} {unit}"


def why_and_mend(message: str) -> tuple[str, str]:
    """A refusal of the number grammar cut into what is wrong and what to do."""
    for mark in (" Write ", "; write ", "; type "):
        why, found, mend = message.partition(mark)
        if found:
            return why.rstrip(".;"), mark.strip("; ").capitalize() + " " + mend
    return message.rstrip("."), ""
