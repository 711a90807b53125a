"""What cutting rectangles out of boards is asked and answers: whole numbers only, nothing of a project.

Laws: a layout's tree divides the board by cuts from edge to edge into the placed pieces and rests, and nothing
overlaps; the same pieces, boards, rules, effort and seed give the same packing; `bound` is never above what any
packing of the placeable pieces costs. Kerf and trim stay outside: with kerf k and trim t, pieces are handed in as
(l + k, w + k) and boards as (L − 2t + k, W − 2t + k).
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Piece:
    """One rectangle to be cut; a quantity is so many pieces."""

    id: int
    length: int
    width: int
    may_turn: bool = False


@dataclass(frozen=True, slots=True)
class Board:
    """A kind of board to cut from, with its usable measures, what one costs and how many there are (None: no limit)."""

    id: int
    length: int
    width: int
    cost: int = 1
    available: int | None = None


@dataclass(frozen=True, slots=True)
class Placed:
    """Where a piece lies on its board: corner, length along x and width along y as it lies."""

    piece: int
    x: int
    y: int
    length: int
    width: int
    turned: bool


@dataclass(frozen=True, slots=True)
class Node:
    """A rectangle of the cutting tree: a piece, a rest (neither piece nor children), or cut edge to edge into children.

    `across`: the cuts run along y and divide the length, the children lie one behind the other along x; otherwise
    the cuts run along x and the children lie one above the other along y. Children fill their parent without gaps.
    """

    x: int
    y: int
    length: int
    width: int
    piece: int | None = None
    across: bool = False
    children: tuple["Node", ...] = ()


@dataclass(frozen=True, slots=True)
class Layout:
    """One board cut: its kind, the pieces on it, the cutting tree and its stages.

    Stages are counted as in the trade: the number of directions cut one after the other, where cuts that only trim
    one piece out of its cell (a node whose children are one piece and rests) are not counted. In the tree no node has
    a child with children that is cut in its own direction.
    """

    board: int
    placed: tuple[Placed, ...]
    tree: Node
    stages: int


@dataclass(frozen=True, slots=True)
class Packing:
    """The boards cut, the ids of pieces left over, what the boards cost, and a bound no packing goes below."""

    layouts: tuple[Layout, ...]
    unplaced: tuple[int, ...]
    cost: int
    bound: int
    unplaceable: tuple[int, ...] = ()
    """Those of `unplaced` that fit on no board that there is, so that no packing could hold them."""

    @property
    def proved(self) -> bool:
        """Whether every placeable piece is placed and no packing costs less."""
        return self.cost == self.bound and len(self.unplaced) == len(self.unplaceable)


@dataclass(frozen=True, slots=True)
class Rules:
    """Rules of the saw and of the owner's shelf, in the pieces' units.

    `stages`: most stages of a layout, counted as `Layout` says, 2 or more (None: as many as one likes).
    `rest_least`: least length and least width of a rest worth keeping; (0, 0): none counts.
    """

    stages: int | None = None
    rest_least: tuple[int, int] = (0, 0)
    full_width_first: bool = True


def never() -> bool:
    """Do not stop before the effort is spent."""
    return False


def pack(
    pieces: Sequence[Piece],
    boards: Sequence[Board],
    rules: Rules,
    *,
    effort: int | None,
    seed: int = 0,
    stop: Callable[[], bool] = never,
    found: Callable[[Packing], None] | None = None,
) -> Packing:
    """Cut the pieces from boards: all placeable ones, then at least cost, then the best rest, then with few cuts.

    `effort` is the most steps of search (None: until proved or stopped); `stop` is asked often and ends the search
    with the best so far; `found` is told of each better packing, of the first one at once. Raises ValueError where
    two pieces or two boards have one id, or a measure is not positive, or a cost or count is negative.
    """
    from baywright.making.cutting.sheets.job import solve  # the search speaks these values, so it comes after them

    return solve(pieces, boards, rules, effort=effort, seed=seed, stop=stop, found=found)
