"""Places for fasteners along a joint: evenly spread, moved aside where something is in the way.

Laws: no place is nearer than `LEAST_APART_MM`, edge to edge, to another or to what is in the way; none leaves the
joint; where there is no room, there are fewer places, never closer ones.
"""

from collections.abc import Sequence
from functools import lru_cache

from baywright.making.hardware.fasteners import FIRST_FROM_EDGE_MM

LEAST_APART_MM = 3.0
"""Wood between the edges of two holes, mortises or grooves. Our judgement: twice the wall that a 5 mm hole needs by the
rule for dowels, whose wall is at least the radius (common practice)."""

_LEAST_FROM_END_MM = 4.0

Interval = tuple[float, float]


def places_along(
    from_mm: float, to_mm: float, count: int, size_mm: float, blocked: Sequence[Interval] = ()
) -> list[float]:
    """Up to `count` places between two ends for things that take `size_mm` of the length, clear of what is blocked."""
    return list(_places(from_mm, to_mm, count, size_mm, tuple(blocked)))


@lru_cache(maxsize=1024)  # most joints of a run are like the ones beside them
def _places(
    from_mm: float, to_mm: float, count: int, size_mm: float, blocked: tuple[Interval, ...]
) -> tuple[float, ...]:
    half = size_mm / 2
    least, most = from_mm + half + _LEAST_FROM_END_MM, to_mm - half - _LEAST_FROM_END_MM
    taken = [(low - LEAST_APART_MM - half, high + LEAST_APART_MM + half) for low, high in blocked]
    found: list[float] = []
    for wanted in _even(from_mm, to_mm, count):
        place = _nearest_free(min(max(wanted, least), most), least, most, taken)
        if place is not None:
            found.append(place)
            taken.append((place - LEAST_APART_MM - size_mm, place + LEAST_APART_MM + size_mm))
    return tuple(sorted(found))


def _even(from_mm: float, to_mm: float, count: int) -> list[float]:
    length = to_mm - from_mm
    if count <= 1:
        return [from_mm + length / 2] * count
    edge = FIRST_FROM_EDGE_MM if length > 2 * FIRST_FROM_EDGE_MM else length / 4
    return [from_mm + edge + (length - 2 * edge) * index / (count - 1) for index in range(count)]


def _nearest_free(wanted: float, least: float, most: float, taken: Sequence[Interval]) -> float | None:
    """The place nearest to the wanted one that nothing takes, the lower of two: itself, or where something ends."""
    choices = (wanted, *(end for interval in taken for end in interval))
    within = [place for place in choices if least - 1e-9 <= place <= most + 1e-9]
    within.sort(key=lambda place: (abs(place - wanted), place))
    return next((place for place in within if _is_free(place, taken)), None)


def _is_free(place: float, taken: Sequence[Interval]) -> bool:
    return not any(low + 1e-9 < place < high - 1e-9 for low, high in taken)
