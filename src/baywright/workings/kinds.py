"""Kinds of bays: bays that differ in width, in rows, or in how deep their drawers may be.

Laws: the first kind is the ordinary one, with an empty id; every other kind has an id (`bay-a`, `bay-b`, …) in the
order in which the kinds are met from the left; two bays with the same box width and rows are of one kind. A bay that a
zone of the wall stands behind has beside its own kind a shallow one for the drawers that cross the zone.
"""

from dataclasses import dataclass, field, replace
from string import ascii_lowercase

from baywright.model.length import LengthUnit, format_length


@dataclass(frozen=True)
class BayKind:
    """`rows` is 0 where the bay has as many as the run; `zone_depth_mm` is what a zone takes off the drawers' depth;
    `bays` of the run are of this kind (none of a shallow one, which is a kind of drawers in other bays).
    """

    box_width_mm: float
    rows: int = 0
    zone_depth_mm: float = 0.0
    id: str = field(default="", compare=False)
    bays: int = field(default=0, compare=False)

    def words(self, unit: LengthUnit) -> str:
        """What tells this kind from others, for people: “bays for 600 mm boxes, 24 rows, in front of 40 mm”."""
        parts = [f"bays for {format_length(self.box_width_mm, unit)} boxes"]
        if self.rows:
            parts.append(f"{self.rows} rows")
        if self.zone_depth_mm:
            parts.append(f"in front of {format_length(self.zone_depth_mm, unit)}")
        return ", ".join(parts)


class KindList:
    """The kinds met so far; gives each its id and counts its bays."""

    def __init__(self, ordinary: BayKind) -> None:
        self._kinds = [ordinary]

    def meet(self, kind: BayKind, bays: int = 0) -> None:
        """Lists the kind where it is new, and counts `bays` more of it."""
        for number, known in enumerate(self._kinds):
            if known == kind:
                self._kinds[number] = replace(known, bays=known.bays + bays)
                return
        self._kinds.append(replace(kind, id=f"bay-{_letters(len(self._kinds) - 1)}", bays=bays))

    @property
    def kinds(self) -> tuple[BayKind, ...]:
        """All kinds, the ordinary one first."""
        return tuple(self._kinds)


def _letters(number: int) -> str:
    """a, b, … z, aa, ab, …"""
    before = _letters(number // 26 - 1) if number >= 26 else ""
    return before + ascii_lowercase[number % 26]
