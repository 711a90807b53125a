"""Dividing a board that is longer than any to be had into sections joined over uprights.

Laws: the sections put end to end are exactly the board; joints lie only at allowed places; no division at those
places has fewer sections within the longest length, and of those with as few, none has a shorter longest section.
"""

from collections.abc import Sequence
from itertools import pairwise


def divide(left_mm: float, right_mm: float, joints_mm: Sequence[float], longest_mm: float) -> tuple[float, ...]:
    """The ends of the sections of a board from `left_mm` to `right_mm`: left end, joints used, right end.

    Where two neighbouring allowed places lie farther apart than `longest_mm`, the section between them stays longer
    than that; the caller compares and says so.
    """
    places = [left_mm, *sorted(x for x in joints_mm if left_mm < x < right_mm), right_mm]
    widest_gap = max(b - a for a, b in pairwise(places))
    limit = max(longest_mm, widest_gap)
    fewest = len(_greedy(places, limit))
    lengths = _lengths_between(places, widest_gap, limit + 1e-9)
    low, high = 0, len(lengths) - 1
    while low < high:
        middle = (low + high) // 2
        if len(_greedy(places, lengths[middle])) <= fewest:
            high = middle
        else:
            low = middle + 1
    return tuple(_greedy(places, lengths[low]))


def _lengths_between(places: Sequence[float], least_mm: float, longest_mm: float) -> list[float]:
    """Every length from one place to a later one that lies within the bounds, shortest first."""
    found: set[float] = set()
    for index, start in enumerate(places):
        for end in places[index + 1 :]:
            if end - start > longest_mm:
                break
            if end - start >= least_mm:
                found.add(end - start)
    return sorted(found)


def _greedy(places: Sequence[float], longest_mm: float) -> list[float]:
    """Each section as long as may be: as few sections as can be."""
    ends = [places[0]]
    for place, following in zip(places[1:], [*places[2:], None], strict=True):
        if following is None or following - ends[-1] > longest_mm + 1e-9:
            ends.append(place)
    return ends
