"""From a packing in whole numbers back to sheets in mm: pieces with the parts they are of, rests, the order of cuts.

Laws: pieces of one part are numbered from 1 in the order of the sheets and, on each, of the cuts; a rest is told as it
comes off the saw, without what the blade took.
"""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import TypeAlias

from baywright.making.cutting.grid import refined, stretched
from baywright.making.cutting.packing import Layout, Node, Packing, Rules
from baywright.making.cutting.pieces import Wanted
from baywright.making.cutting.retracing import Merit, retraced
from baywright.making.cutting.sequence import Ground, gathered, leaves, saw_cuts
from baywright.making.cutting.sheets.trees import stages
from baywright.making.cutting.stock import Kind, Offer
from baywright.making.cutting.units import millimetres, units
from baywright.model.cutting import CutPiece, RestPiece, SawCut, SheetLayout
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


_Key: TypeAlias = tuple[int, tuple[tuple[int, int, int, int, bool], ...]]
"""A kind of sheet with the places of pieces and rests on it."""


@dataclass(frozen=True)
class _Division:
    """How a sheet with certain places is cut, whichever pieces lie there."""

    tree: Node
    pieces: tuple[int, ...]
    """Those that lay there when it was worked out, in the order of the search's tree: the tree names these."""
    rests: tuple[RestPiece, ...]
    stages: int
    cuts: dict[tuple[str, ...], tuple[SawCut, ...]] = field(default_factory=dict)
    """By the numbers of the parts that lie there, in the same order."""


@dataclass(frozen=True)
class Drawing:
    """What is needed to tell a packing of one material in the owner's words."""

    pieces: Sequence[Wanted]
    """By the id that they have in the packing."""
    offer: Offer
    rules: CuttingRules
    step: int
    """Of the packing's grid."""
    _known: dict[_Key, _Division] = field(default_factory=dict, repr=False, compare=False)
    """Most sheets of a better packing are those of the one before, and many are cut alike."""

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
        kind = self.offer.kinds[layout.board]
        sheet, found = kind.sheet, list(leaves(layout.tree))
        division = self._division(layout, kind, found)
        present = [self.pieces[leaf.piece] for leaf in found if leaf.piece is not None]
        lying = dict(zip(division.pieces, present, strict=True))
        pieces = []
        for leaf in leaves(division.tree):
            if leaf.piece is not None:
                wanted = lying[leaf.piece]
                numbers[wanted.part.number] += 1
                pieces.append(self._piece(leaf, wanted, kind, numbers[wanted.part.number]))
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
            rests=division.rests,
            cuts=self._cuts(division, kind, tuple(wanted.part.number for wanted in present)),
            stages=division.stages,
        )

    def _division(self, layout: Layout, kind: Kind, found: Sequence[Node]) -> _Division:
        places = tuple((leaf.x, leaf.y, leaf.length, leaf.width, leaf.piece is None) for leaf in found)
        known = self._known.get((layout.board, places))
        if known is not None:
            return known
        tree, kerf = self._tree(layout, kind), units(self.rules.kerf_mm)
        rests = tuple(
            self._rest(leaf, kind)
            for leaf in leaves(tree)
            if leaf.piece is None and leaf.length > kerf and leaf.width > kerf
        )
        pieces = tuple(leaf.piece for leaf in found if leaf.piece is not None)
        division = _Division(tree, pieces, rests, stages(tree))
        self._known[layout.board, places] = division
        return division

    def _cuts(self, division: _Division, kind: Kind, numbers: tuple[str, ...]) -> tuple[SawCut, ...]:
        if numbers not in division.cuts:
            length, width = units(kind.sheet.length_mm), units(kind.sheet.width_mm)
            ground = Ground(length, width, kind.trim, units(self.rules.kerf_mm))
            names = dict(zip(division.pieces, numbers, strict=True))
            division.cuts[numbers] = saw_cuts(
                division.tree, ground, names, lambda node: self._rest(node, kind).is_reusable
            )
        return division.cuts[numbers]

    def _tree(self, layout: Layout, kind: Kind) -> Node:
        """The cutting tree of the whole usable sheet, in hundredths of a mm."""
        kerf, tree = units(self.rules.kerf_mm), refined(gathered(layout.tree), self.step)
        whole = stretched(tree, kind.length + kerf - tree.length, kind.width + kerf - tree.width)
        merits: dict[tuple[int, int], Merit] = {}

        def merit(rest: Node) -> Merit:
            size = rest.length, rest.width
            if size not in merits:
                merits[size] = self._merit(rest, kind)
            return merits[size]

        anew = gathered(retraced(whole, merit))
        limit = self.rules.stages
        return whole if limit is not None and stages(anew) > max(limit, stages(whole)) else anew

    def _merit(self, rest: Node, kind: Kind) -> Merit:
        """How much a rest is worth keeping."""
        kerf = units(self.rules.kerf_mm)
        if not is_reusable(millimetres(rest.length - kerf), millimetres(rest.width - kerf), self.rules):
            return False, 0
        return self.rules.full_width_first and rest.width == kind.width + kerf, rest.length * rest.width

    def _place(self, leaf: Node, kind: Kind) -> tuple[float, float, float, float]:
        kerf = units(self.rules.kerf_mm)
        x, y = kind.trim + leaf.x, kind.trim + leaf.y
        return millimetres(x), millimetres(y), millimetres(leaf.length - kerf), millimetres(leaf.width - kerf)

    def _piece(self, leaf: Node, wanted: Wanted, kind: Kind, number: int) -> CutPiece:
        x, y, length, width = self._place(leaf, kind)
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
