"""Which runner pair goes where: places that are given up matched with places that are wanted.

Laws: as many as can be are matched, each old and each new place once, and only drawers of one make; within a bay
first, there with the least rows to go in sum and never crossing, so that drawers of a bay can always be shifted one
after another; what is left goes to the nearest bay.
"""

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence

from baywright.planner.replanning.wall import Make, Spot


def pair_up(given_up: Mapping[Spot, Make], wanted: Mapping[Spot, Make]) -> dict[Spot, Spot]:
    """New place by old place of every runner pair that is screwed on elsewhere."""
    pairs: dict[Spot, Spot] = {}
    for make in sorted(set(given_up.values()) & set(wanted.values())):
        old = [spot for spot, its in given_up.items() if its == make]
        new = [spot for spot, its in wanted.items() if its == make]
        within = _within_bays(old, new)
        rest_old = [spot for spot in old if spot not in within]
        taken = set(within.values())
        pairs |= within | _between_bays(rest_old, [spot for spot in new if spot not in taken])
    return pairs


def _within_bays(old: Iterable[Spot], new: Iterable[Spot]) -> dict[Spot, Spot]:
    old_rows, new_rows = _rows_by_bay(old), _rows_by_bay(new)
    return {
        (bay, row): (bay, there)
        for bay in sorted(old_rows.keys() & new_rows.keys())
        for row, there in nearest_rows(old_rows[bay], new_rows[bay])
    }


def _rows_by_bay(spots: Iterable[Spot]) -> dict[int, list[int]]:
    found: dict[int, list[int]] = defaultdict(list)
    for bay, row in sorted(spots):
        found[bay].append(row)
    return found


def nearest_rows(old: Sequence[int], new: Sequence[int]) -> list[tuple[int, int]]:
    """Pairs of rising old and rising new rows, as many as can be, with the least sum of distances; none cross."""
    if len(old) > len(new):
        return [(row, there) for there, row in nearest_rows(new, old)]
    # costs[j]: the least sum for the rows of `old` so far with the first j of `new`
    costs = [0.0] * (len(new) + 1)
    taken: list[list[bool]] = []
    for row in old:
        best = [float("inf")]
        takes = []
        for j, there in enumerate(new):
            with_this = costs[j] + abs(there - row)
            takes.append(with_this < best[j])
            best.append(min(best[j], with_this))
        costs = best
        taken.append(takes)
    pairs, j = [], len(new)
    for i in reversed(range(len(old))):
        while not taken[i][j - 1]:
            j -= 1
        j -= 1
        pairs.append((old[i], new[j]))
    return pairs[::-1]


def _between_bays(old: list[Spot], new: Iterable[Spot]) -> dict[Spot, Spot]:
    """Each new place, from the left, takes the nearest pair that is left: fewest bays, then fewest rows away."""
    left = sorted(old)
    pairs = {}
    for bay, row in sorted(new):
        if not left:
            break
        nearest = min(left, key=lambda spot: (abs(spot[0] - bay), abs(spot[1] - row), spot))
        left.remove(nearest)
        pairs[nearest] = (bay, row)
    return pairs
