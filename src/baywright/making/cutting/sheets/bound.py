"""How many boards of the largest size are needed at least: dual feasible functions on enlarged pieces.

A dual feasible function f of a length L keeps Σ f(lengths) ≤ f(L) for all lengths that fit behind one another in L.
Then Σ f(length) · g(width) over the pieces of one board is at most f(L) · g(W), cut from edge to edge or not.
Functions: the identity, f₀ and u⁽ᵏ⁾ (S. Fekete, J. Schepers, "New classes of fast lower bounds for bin packing
problems", Mathematical Programming 91, 2001) and the one of J. Carlier, F. Clautiaux, A. Moukrim ("New reduction
procedures and lower bounds for the two-dimensional bin packing problem with fixed orientation", Computers &
Operations Research 34, 2007), from memory. Enlarging: a piece takes the length that no others can fill beside it
(M. Boschetti, A. Mingozzi, "The two-dimensional finite bin packing problem", 4OR 1, 2003), from memory.

Pieces that may turn: on a square board any packing is one as well when mirrored at the diagonal, so that the mean of
both ways round is valid; on others the lesser of the ways that fit is.
"""

from collections.abc import Sequence

import numpy
from numpy.typing import NDArray

from baywright.making.cutting.packing import Piece

MOST_LIMITS = 60
"""f₀ and the third function are used with at most so many limits, u⁽ᵏ⁾ for k up to half as many …"""
FEW_LIMITS = 16
"""… and with so many where each pair of functions is looked at piece by piece."""
MOST_ENLARGED = 300
"""Pieces are enlarged where there are no more than this: it takes the square of their number …"""
MOST_REACHED = 500_000_000
"""… times the board's measure, and where that is no more than this: on a very fine grid it would take seconds."""
MOST_ROWS = 40
"""So many pairs of functions are kept, those that need most boards."""
Shares = NDArray[numpy.float64]
"""A row a function, a column a piece: what the piece takes of the board's length (or width), 0 to 1."""


def shares(pieces: Sequence[Piece], length: int, width: int) -> Shares:
    """What share of a board (length, width) each piece takes, by the pairs of functions that need most boards.

    Over the pieces on any board of this size, or of a smaller one, each row adds up to at most 1. The first row is
    the plain share of the area.
    """
    ways = [(piece.length, piece.width) for piece in pieces]
    area = numpy.array([[way[0] * way[1] / (length * width) for way in ways]])
    if any(piece.may_turn for piece in pieces):
        sides = [way[0] for way in ways] + [way[1] for way in ways]
        if length == width:
            return numpy.vstack([area, _mirrored(_functions(length, sides, MOST_LIMITS), len(pieces))])
        by_length, by_width = _functions(length, sides, FEW_LIMITS), _functions(width, sides, FEW_LIMITS)
        return numpy.vstack([area, _least(pieces, by_length, by_width, length, width)])
    lengths, widths = [way[0] for way in ways], [way[1] for way in ways]
    if len(ways) <= MOST_ENLARGED and len(ways) ** 2 * max(length, width) <= MOST_REACHED:
        lengths, widths = enlarged(ways, length, width)
    by_length, by_width = _functions(length, lengths, MOST_LIMITS), _functions(width, widths, MOST_LIMITS)
    first, second = _most(by_length @ by_width.T)
    return numpy.vstack([area, by_length[first] * by_width[second]])


def _most(totals: Shares) -> tuple[NDArray[numpy.intp], NDArray[numpy.intp]]:
    """The rows and columns of the largest totals."""
    flat = numpy.argsort(-totals, axis=None, kind="stable")[:MOST_ROWS]
    rows, columns = numpy.unravel_index(flat, totals.shape)
    return rows, columns


def _mirrored(values: Shares, count: int) -> Shares:
    lying, turned = values[:, :count], values[:, count:]
    totals = lying @ turned.T
    first, second = _most((totals + totals.T) / 2)
    return (lying[first] * turned[second] + turned[first] * lying[second]) / 2


def _least(pieces: Sequence[Piece], by_length: Shares, by_width: Shares, length: int, width: int) -> Shares:
    """The lesser share of the ways a piece fits, for every pair of functions."""
    count = len(pieces)
    lying = by_length[:, None, :count] * by_width[None, :, count:]
    turned = by_length[:, None, count:] * by_width[None, :, :count]
    may_lie = numpy.array([piece.length <= length and piece.width <= width for piece in pieces])
    may_turn = numpy.array([piece.may_turn and piece.width <= length and piece.length <= width for piece in pieces])
    least = numpy.where(may_turn & may_lie, numpy.minimum(lying, turned), numpy.where(may_turn, turned, lying))
    first, second = _most(least.sum(axis=2))
    chosen: Shares = least[first, second]
    return chosen


def enlarged(ways: Sequence[tuple[int, int]], length: int, width: int) -> tuple[list[int], list[int]]:
    """Lengths and widths with what no other piece can use beside a piece added to it (none of them turns)."""
    lengths, widths = [way[0] for way in ways], [way[1] for way in ways]
    for measures, most in ((lengths, length), (widths, width)):
        for index, measure in enumerate(measures):
            reached, within = 1, (1 << (most - measure + 1)) - 1
            for other, taken in enumerate(measures):
                if other != index and taken <= most - measure:
                    reached |= reached << taken & within
            measures[index] = most - (reached.bit_length() - 1)
    return lengths, widths


def _functions(most: int, measures: Sequence[int], limits: int) -> Shares:
    """The functions of a length `most` at the measures, each as a share of its value at `most`; equal ones once."""
    values = numpy.array(measures, dtype=numpy.int64)
    rows = [values / most]
    for limit in _limits(most, measures, limits):
        rows.append(numpy.where(values > most - limit, most, numpy.where(values >= limit, values, 0)) / most)
        whole = most // limit
        over = 2 * (whole - (most - values) // limit)
        rows.append(
            numpy.where(2 * values > most, over, numpy.where(2 * values == most, whole, 2 * (values // limit)))
            / (2 * whole)
        )
    for k in range(1, limits // 2 + 1):
        times = (k + 1) * values
        rows.append(numpy.where(times % most == 0, values * k, times // most * most) / (most * k))
    return numpy.unique(numpy.array(rows), axis=0)


def _limits(most: int, measures: Sequence[int], count: int) -> list[int]:
    halves = {measure if 2 * measure <= most else most - measure for measure in measures} | {1}
    useful = sorted(limit for limit in halves if limit >= 1 and 2 * limit <= most)
    if len(useful) <= count:
        return useful
    step = len(useful) / count
    return [useful[int(index * step)] for index in range(count)]
