"""What the boards cost at least: whole numbers of boards of each kind whose shares add up to what the pieces take.

Each row of `bound.shares` weighs the pieces; a kind of board holds at most the weight that its area can (a knapsack
in parts) of the pieces that fit on it, and never more than 1. The fewest costs under all these rows are found exactly.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil, floor

import numpy

from baywright.making.cutting.packing import Board, Piece
from baywright.making.cutting.sheets.bound import Shares, shares

SCALE = 1_000_000
"""Shares are rounded to so many parts, what is needed down and what a board holds up."""
SLACK = 1e-7
"""What a sum of floating point shares may be off."""
EFFORT = 0.05
"""The solver's deterministic units; without proof by then its bound counts."""


@dataclass(frozen=True, eq=False)
class Needs:
    """Rows of (what is needed, what one board of each kind holds of it), in parts of `SCALE`."""

    rows: tuple[tuple[int, tuple[int, ...]], ...]
    shares: Shares
    """What share of the largest board each piece takes, plain in the first row, by pairs of functions in the others."""

    def met_by(self, counts: Sequence[int]) -> bool:
        """Whether so many boards of each kind could hold everything, as far as these rows tell."""
        return all(
            sum(hold * count for hold, count in zip(holds, counts, strict=True)) >= need for need, holds in self.rows
        )


def fits(piece: Piece, board: Board) -> bool:
    """Whether the piece can be cut from the board at all."""
    lies = piece.length <= board.length and piece.width <= board.width
    return lies or (piece.may_turn and piece.width <= board.length and piece.length <= board.width)


def needs_of(pieces: Sequence[Piece], boards: Sequence[Board]) -> Needs:
    """The rows for these pieces, each of which fits on one of the boards."""
    length, width = max(board.length for board in boards), max(board.width for board in boards)
    table = shares(pieces, length, width)
    areas = numpy.array([piece.length * piece.width / (length * width) for piece in pieces])
    fitting = [numpy.array([fits(piece, board) for piece in pieces]) for board in boards]
    rows: list[tuple[int, tuple[int, ...]]] = []
    if len(boards) == 1:
        return Needs(((_down(table.sum(axis=1).max()), (SCALE,)),), table)
    restricted = [table[:2] * ~mask for mask in fitting if not mask.all()]
    for row in numpy.vstack([table, *restricted]):
        holds = tuple(
            _held(row, areas, mask, board, length, width) for mask, board in zip(fitting, boards, strict=True)
        )
        rows.append((_down(float(row.sum())), holds))
    return Needs(tuple(dict.fromkeys(rows)), table)


def _down(share: float) -> int:
    return floor((share - SLACK) * SCALE)


def _held(row: Shares, areas: Shares, fitting: "numpy.typing.NDArray[numpy.bool_]", board: Board, length: int,
          width: int) -> int:  # fmt: skip
    """The most of a row's weight that fits on a board: pieces by weight for their area, the last one in part."""
    weights, sizes = row[fitting], areas[fitting]
    if not len(weights):
        return 0
    order = numpy.argsort(-weights / sizes, kind="stable")
    weights, sizes = weights[order], sizes[order]
    room = board.length * board.width / (length * width)
    before = numpy.cumsum(sizes) - sizes
    parts = numpy.clip((room - before) / sizes, 0, 1)
    return ceil(min(1.0, float((weights * parts).sum()) + SLACK) * SCALE)


def least_cost(needs: Needs, boards: Sequence[Board], most: int) -> int:
    """The least cost of boards that meet the needs, at most `most` of a kind; or a bound on it."""
    if len(boards) == 1:
        need, holds = needs.rows[0]
        return boards[0].cost * max(1, -(-need // holds[0]))
    from ortools.sat.python import cp_model  # late: it takes longer to import than a first layout to find

    model = cp_model.CpModel()
    counts = [
        model.new_int_var(0, most if board.available is None else min(most, board.available), "") for board in boards
    ]
    for need, holds in needs.rows:
        model.add(sum(hold * count for hold, count in zip(holds, counts, strict=True)) >= need)
    model.minimize(sum(board.cost * count for board, count in zip(boards, counts, strict=True)))
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.catch_sigint_signal = False  # its own handler of Ctrl-C would abort the whole process
    solver.parameters.max_deterministic_time = EFFORT
    status = solver.solve(model)
    if status == cp_model.INFEASIBLE:
        return 0
    return ceil(solver.best_objective_bound - 1e-6)
