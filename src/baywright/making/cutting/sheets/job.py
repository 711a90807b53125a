"""The whole task of one packing: what is placeable, the bound, and the layouts."""

from collections.abc import Callable, Sequence

from baywright.making.cutting.packing import Board, Layout, Node, Packing, Piece, Placed, Rules


def solve(
    pieces: Sequence[Piece],
    boards: Sequence[Board],
    rules: Rules,
    *,
    effort: int | None,
    seed: int,
    stop: Callable[[], bool],
    found: Callable[[Packing], None] | None,
) -> Packing:
    """Answer `pack`: so far one piece a board, the cheapest that holds it."""
    left = {board.id: board.available if board.available is not None else len(pieces) for board in boards}
    layouts: list[Layout] = []
    unplaced: list[int] = []
    cost = 0
    for piece in pieces:
        for board in sorted(boards, key=lambda each: each.cost):
            if left[board.id] and piece.length <= board.length and piece.width <= board.width:
                left[board.id] -= 1
                cost += board.cost
                layouts.append(_single(piece, board))
                break
        else:
            unplaced.append(piece.id)
    return Packing(tuple(layouts), tuple(unplaced), cost, 0)


def _single(piece: Piece, board: Board) -> Layout:
    leaf = Node(0, 0, piece.length, piece.width, piece.id)
    column = leaf
    if piece.width < board.width:
        rest = Node(0, piece.width, piece.length, board.width - piece.width)
        column = Node(0, 0, piece.length, board.width, None, False, (leaf, rest))
    tree = column
    if piece.length < board.length:
        rest = Node(piece.length, 0, board.length - piece.length, board.width)
        tree = Node(0, 0, board.length, board.width, None, True, (column, rest))
    placed = Placed(piece.id, 0, 0, piece.length, piece.width, False)
    return Layout(board.id, (placed,), tree, 1)
