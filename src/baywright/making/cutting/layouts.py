"""From a packing in whole numbers back to sheets in mm: pieces with the parts they are of, rests, the order of cuts.

Laws: pieces of one part are numbered from 1 in the order of the sheets and, on each, of the cuts; a rest is told as it
comes off the saw, without what the blade took.
"""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass

from baywright.making.cutting.grid import refined, stretched
from baywright.making.cutting.packing import Layout, Node, Packing, Rules
from baywright.making.cutting.pieces import Wanted
from baywright.making.cutting.retracing import retraced
from baywright.making.cutting.sequence import Ground, gathered, leaves, saw_cuts
from baywright.making.cutting.sheets.trees import stages
from baywright.making.cutting.stock import Kind, Offer
from baywright.making.cutting.units import millimetres, units
from baywright.model.cutting import CutPiece, RestPiece, SheetLayout
from baywright.model.stock import CuttingRules


def saw_rules(rules: CuttingRules, step: int) -> Rules:
    """The owner's rules as the packing reads them: measures with the kerf, in steps of its grid."""
    kerf = units(rules.kerf_mm)
    rest = [-(-(units(side) + kerf) // step) for side in (rules.rest_length_mm, rules.rest_width_mm)]
    return Rules(stages=rules.stages, rest_least=(max(rest), min(rest)), full_width_first=rules.full_width_first)


def is_reusable(length_mm: float, width_mm: float, rules: CuttingRules) -> bool:
    """Whether a rest of that size is worth keeping, whichever way it lies."""
    least = sorted((rules.rest_length_mm, rules.rest_width_mm))
    sides = sorted((length_mm, width_mm))
    return sides[0] >= least[0] and sides[1] >= least[1]


@dataclass(frozen=True)
class Drawing:
    """What is needed to tell a packing of one material in the owner's words."""

    pieces: Sequence[Wanted]
    """By the id that they have in the packing."""
    offer: Offer
    rules: CuttingRules
    step: int
    """Of the packing's grid."""

    def layouts(self, packing: Packing, first: int) -> tuple[SheetLayout, ...]:
        """The sheets, numbered from `first`: owned ones first, then kind by kind, the fullest first."""
        numbers = Counter[str]()
        ordered = sorted(packing.layouts, key=self._rank)
        return tuple(self._sheet(layout, f"C{number}", numbers) for number, layout in enumerate(ordered, first))

    def _rank(self, layout: Layout) -> tuple[bool, int, int, tuple[int, ...]]:
        filled = sum(placed.length * placed.width for placed in layout.placed)
        ids = tuple(placed.piece for placed in layout.placed)
        return not self.offer.kinds[layout.board].sheet.is_owned, layout.board, -filled, ids

    def _sheet(self, layout: Layout, number: str, numbers: "Counter[str]") -> SheetLayout:
        kind, kerf = self.offer.kinds[layout.board], units(self.rules.kerf_mm)
        sheet, tree = kind.sheet, self._tree(layout, kind)
        pieces, rests = [], []
        for leaf in leaves(tree):
            if leaf.piece is not None:
                part = self.pieces[leaf.piece].part
                numbers[part.number] += 1
                pieces.append(self._piece(leaf, kind, numbers[part.number]))
            elif leaf.length > kerf and leaf.width > kerf:
                rests.append(self._rest(leaf, kind))
        ground = Ground(units(sheet.length_mm), units(sheet.width_mm), kind.trim, kerf)
        names = {placed.piece: self.pieces[placed.piece].part.number for placed in layout.placed}
        return SheetLayout(
            number=number,
            sheet_id="" if kind.is_assumed else sheet.id,
            sheet_name=sheet.name,
            material_id=sheet.material_id,
            length_mm=sheet.length_mm,
            width_mm=sheet.width_mm,
            trim_mm=millimetres(kind.trim),
            is_owned=sheet.is_owned,
            pieces=tuple(pieces),
            rests=tuple(rests),
            cuts=saw_cuts(tree, ground, names, lambda node: self._rest(node, kind).is_reusable),
            stages=stages(tree),
        )

    def _tree(self, layout: Layout, kind: Kind) -> Node:
        """The cutting tree of the whole usable sheet, in hundredths of a mm."""
        kerf, tree = units(self.rules.kerf_mm), refined(gathered(layout.tree), self.step)
        whole = stretched(tree, kind.length + kerf - tree.length, kind.width + kerf - tree.width)
        anew = gathered(retraced(whole, lambda rest: self._merit(rest, kind)))
        limit = self.rules.stages
        return whole if limit is not None and stages(anew) > max(limit, stages(whole)) else anew

    def _merit(self, rest: Node, kind: Kind) -> tuple[bool, int]:
        """How much a rest is worth keeping."""
        kerf = units(self.rules.kerf_mm)
        if not is_reusable(millimetres(rest.length - kerf), millimetres(rest.width - kerf), self.rules):
            return False, 0
        return self.rules.full_width_first and rest.width == kind.width + kerf, rest.length * rest.width

    def _place(self, leaf: Node, kind: Kind) -> tuple[float, float, float, float]:
        kerf = units(self.rules.kerf_mm)
        x, y = kind.trim + leaf.x, kind.trim + leaf.y
        return millimetres(x), millimetres(y), millimetres(leaf.length - kerf), millimetres(leaf.width - kerf)

    def _piece(self, leaf: Node, kind: Kind, number: int) -> CutPiece:
        x, y, length, width = self._place(leaf, kind)
        wanted = self.pieces[leaf.piece or 0]
        is_turned = units(length) != wanted.length or units(width) != wanted.width
        return CutPiece(
            part_number=wanted.part.number, piece=number, x_mm=x, y_mm=y, length_mm=length, width_mm=width,
            is_turned=is_turned is not wanted.is_crossed,
        )  # fmt: skip

    def _rest(self, leaf: Node, kind: Kind) -> RestPiece:
        x, y, length, width = self._place(leaf, kind)
        return RestPiece(
            x_mm=x, y_mm=y, length_mm=length, width_mm=width,
            is_reusable=is_reusable(length, width, self.rules),
        )  # fmt: skip
