"""The order of the cuts of a sheet, as whoever stands at a panel saw makes them.

Laws: first the edges are trimmed, then every panel is cut before the panels that it gives; each cut runs from edge to
edge of the panel in hand, and the fence is set to the width of what comes off; followed to the end, the cuts give
exactly the pieces and rests of the layout. Panels are numbered within the one they come from: 1, 2 … of the sheet, 2.1,
2.2 … of the second; no part has such a number.
"""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace

from baywright.making.cutting.packing import Node
from baywright.making.cutting.units import millimetres
from baywright.model.cutting import SawCut

SHEET, REST, WASTE = "sheet", "rest", "waste"


@dataclass(frozen=True)
class Ground:
    """The sheet that is cut and what the saw takes, in hundredths of a mm."""

    length: int
    width: int
    trim: int
    kerf: int


def gathered(node: Node) -> Node:
    """The same layout with the rests between the children of every cut put together at the end.

    Children are as long as their parent one way, so they may change places: rests together are larger, and fewer cuts
    free them.
    """
    if not node.children:
        return node
    whole = [gathered(child) for child in node.children]
    kept = [child for child in whole if child.piece is not None or child.children]
    at = node.x if node.across else node.y
    placed = []
    for child in kept:
        placed.append(_moved(child, at - child.x, 0) if node.across else _moved(child, 0, at - child.y))
        at += child.length if node.across else child.width
    end = node.x + node.length if node.across else node.y + node.width
    if at < end:
        along = Node(at, node.y, end - at, node.width)
        placed.append(along if node.across else Node(node.x, at, node.length, end - at))
    return placed[0] if len(placed) == 1 else replace(node, children=tuple(placed))


def _moved(node: Node, along: int, across: int) -> Node:
    if not along and not across:
        return node
    children = tuple(_moved(child, along, across) for child in node.children)
    return replace(node, x=node.x + along, y=node.y + across, children=children)


def leaves(node: Node) -> Iterator[Node]:
    """The pieces and rests, in the order they are cut."""
    if not node.children:
        yield node
    for child in node.children:
        yield from leaves(child)


def saw_cuts(
    tree: Node, ground: Ground, names: Mapping[int, str], is_rest: Callable[[Node], bool]
) -> tuple[SawCut, ...]:
    """The cuts of a sheet in their order.

    `tree` is gathered, with the kerf in its measures as in `packing`; `names` are the part numbers of its pieces;
    `is_rest` says what is worth keeping. Of what a cut gives, that before the blade is named first.
    """
    saw = _Saw(ground, names, is_rest)
    root = SHEET if tree.children else saw.named(tree, SHEET, 1)
    saw.trim(root)
    saw.divide(tree, SHEET)
    return tuple(saw.cuts)


class _Saw:
    """One run down the list."""

    def __init__(self, ground: Ground, names: Mapping[int, str], is_rest: Callable[[Node], bool]) -> None:
        self._ground = ground
        self._names = names
        self._is_rest = is_rest
        self.cuts: list[SawCut] = []

    def trim(self, last: str) -> None:
        """The four edges, where there is anything to trim; `last` is what the sheet is then."""
        ground = self._ground
        length, width, trim, kerf = ground.length, ground.width, ground.trim, ground.kerf
        if not trim:
            return
        inner_length, inner_width = length - 2 * trim, width - 2 * trim
        near = (WASTE, SHEET)
        self._add(SHEET, (0, 0, length, width), True, trim - kerf, length - trim, near)
        self._add(SHEET, (trim, 0, length - trim, width), True, length - trim, inner_length, (SHEET, WASTE))
        self._add(SHEET, (trim, 0, inner_length, width), False, trim - kerf, width - trim, near)
        gives = (last, WASTE)
        self._add(SHEET, (trim, trim, inner_length, width - trim), False, width - trim, inner_width, gives)

    def divide(self, node: Node, panel: str) -> None:
        """The cuts that divide a panel, then those of the panels that it gives."""
        children, kerf, trim = node.children, self._ground.kerf, self._ground.trim
        named = [self.named(child, panel, number) for number, child in enumerate(children, 1)]
        for number, child in enumerate(children[:-1]):
            stays = panel if number < len(children) - 2 else named[-1]
            start, size = (child.x, child.length) if node.across else (child.y, child.width)
            left = (
                (trim + start, trim + node.y, node.x + node.length - start - kerf, node.width - kerf)
                if node.across
                else (trim + node.x, trim + start, node.length - kerf, node.y + node.width - start - kerf)
            )
            self._add(panel, left, node.across, trim + start + size - kerf, size - kerf, (named[number], stays))
        for child, name in zip(children, named, strict=True):
            self.divide(child, name)

    def named(self, node: Node, panel: str, number: int) -> str:
        """What a panel is called: by the part, as rest, or after the panel it comes from."""
        if node.piece is not None:
            return self._names[node.piece]
        if not node.children:
            return REST if self._is_rest(node) else WASTE
        return str(number) if panel == SHEET else f"{panel}.{number}"

    def _add(
        self, panel: str, place: tuple[int, int, int, int], across: bool, at: int, measure: int, gives: tuple[str, str]
    ) -> None:
        x, y, length, width = map(millimetres, place)
        self.cuts.append(SawCut(
            number=len(self.cuts) + 1, panel=panel, x_mm=x, y_mm=y, length_mm=length, width_mm=width,
            is_across=across, at_mm=millimetres(at), measure_mm=millimetres(measure), gives=gives,
        ))  # fmt: skip
