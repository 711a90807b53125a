"""What headings of tables say: the meaning and the unit in a heading, and which row holds the headings.

Laws: a heading is recognised as a whole phrase or by one telling word, else not at all; a heading whose words tell two
meanings is not recognised; the guess is only ever a proposal.
"""

import re
import unicodedata
from collections.abc import Collection, Mapping, Sequence
from enum import StrEnum
from typing import Generic, TypeVar

from baywright.storage.table import Row

Meaning = TypeVar("Meaning", bound=StrEnum)

LENGTH_UNITS = frozenset({"mm", "cm", "m", "in", "inch", "inches", '"', "ft"})
MASS_UNITS = frozenset({"kg", "g", "lb", "lbs"})
_UNIT = re.compile(r"^(?P<what>.*?)\s*(?:[(\[]\s*(?P<bracket>[a-z\"]+)\s*[)\]]|[\s_,/]+(?:in\s+)?(?P<bare>[a-z]+))$")
_HEADINGS_WITHIN_ROWS = 10


class Headings(Generic[Meaning]):
    """The headings that tell each meaning: phrases in several languages, without accents, small, divided by commas.

    `weak` words tell a meaning only as a heading of their own; a heading with one of the words `other` tells none.
    """

    def __init__(
        self,
        phrases: Mapping[Meaning, str],
        weak: Collection[str] = frozenset(),
        other: Collection[str] = frozenset(),
    ) -> None:
        self._meaning = {phrase.strip(): column for column, words in phrases.items() for phrase in words.split(",")}
        self._weak, self._other = frozenset(weak), frozenset(other)

    @property
    def phrases(self) -> frozenset[str]:
        """All phrases that tell a meaning."""
        return frozenset(self._meaning)

    def meant(self, heading: str) -> Meaning | None:
        """What a heading most likely means; None where that is not clear."""
        phrase, _ = phrase_and_unit(heading)
        if phrase in self._meaning:
            return self._meaning[phrase]
        words = set(phrase.split())
        if self._other & words:
            return None
        telling = {word for word in words if len(word) > 1 and word in self._meaning} - self._weak
        meanings = {self._meaning[word] for word in telling}
        return meanings.pop() if len(meanings) == 1 else None


def headings_place(rows: Sequence[Row], known: Collection[str]) -> int | None:
    """The place of the row of headings among the first rows, or None where there seems to be none."""
    for place, row in enumerate(rows[:_HEADINGS_WITHIN_ROWS]):
        phrases = [phrase_and_unit(cell)[0] for cell in row.cells if cell]
        told = [phrase for phrase in phrases if phrase in known]
        if len(told) >= 2 or (place == 0 and told and len(phrases) == 1):
            return place
    return 0 if len(rows) > 1 and _stands_over_numbers(rows[0], rows[1:]) else None


def _stands_over_numbers(first: Row, others: Sequence[Row]) -> bool:
    """Whether the first row holds only words while numbers stand below one of them."""
    if any(any(sign.isdigit() for sign in cell) for cell in first.cells):
        return False
    return any(
        first.cell(column) and all(row.cell(column)[:1].isdigit() for row in others if row.cell(column))
        and any(row.cell(column) for row in others)
        for column in range(len(first.cells))
    )  # fmt: skip


def phrase_and_unit(heading: str) -> tuple[str, str]:
    """The heading in small letters without accents and signs, and its unit if it ends in one."""
    plain = unicodedata.normalize("NFKD", heading.replace("ß", "ss")).lower()
    plain = "".join(sign for sign in plain if not unicodedata.combining(sign)).strip(" :*.")
    unit = ""
    match = _UNIT.match(plain)
    if plain in MASS_UNITS:
        unit = plain
    elif match:
        candidate = match["bracket"] or match["bare"]
        if candidate in LENGTH_UNITS | MASS_UNITS:
            plain, unit = match["what"], candidate
    return " ".join(re.findall(r"[a-z0-9]+", plain)), unit
