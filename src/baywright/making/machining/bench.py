"""Pieces on the bench: the work on each is gathered here and then put to the parts.

Laws: pieces of a part with equal work stay one line, whatever their holes are used for now; a hole that not all of them
use for a runner counts as waiting. Where their work differs, the line is divided into variants with numbers of their
own (`U2/1`, `U2/2`); a piece whose work is equal but of the other hand is counted as mirrored, and comes after the
others in the lists of places and bays.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from functools import cached_property

from baywright.model.machining import Groove, Hole, HolePurpose, Joint, Machining, ShapedEdge, Side
from baywright.model.making import Part


@dataclass(frozen=True)
class Rows:
    """The holes of the rows of an upright, made once for all uprights that are alike; `key` tells apart those that are
    drilled differently, whatever the holes are used for.
    """

    key: object
    holes: tuple[Hole, ...]

    @cached_property
    def heights(self) -> tuple[tuple[float, float], ...]:
        """What they take of the upright's length."""
        radii = {hole.x_mm: hole.diameter_mm / 2 for hole in self.holes}
        return tuple((x - radius, x + radius) for x, radius in sorted(radii.items()))


@dataclass
class Work:
    """The work on one piece, or on all pieces of a part where they are alike."""

    part: Part
    is_front_far: bool = False
    place: str = ""
    """Where the piece stands, for people."""
    bays: tuple[int, ...] = ()
    quantity: int | None = None
    """How many pieces are worked so; None: all of the part."""
    left_mm: float | None = None
    """Where the piece's left end lies along the run."""
    rows: Rows | None = None
    holes: list[Hole] = field(default_factory=list)
    grooves: list[Groove] = field(default_factory=list)
    joints: list[Joint] = field(default_factory=list)
    shaped_edges: list[ShapedEdge] = field(default_factory=list)
    lacks: list[tuple[Side, int, int]] = field(default_factory=list)
    """Joints with fewer fasteners than they should have: side, how many are wanted, how many have room."""

    @property
    def key(self) -> object:
        """What two pieces that are worked alike have in common; what they meet does not count, nor do last digits."""
        holes = frozenset(
            (h.side, _near(h.x_mm), _near(h.y_mm), h.diameter_mm, None if h.depth_mm is None else _near(h.depth_mm),
             h.purpose)
            for h in self.holes
        )  # fmt: skip
        joints = frozenset(
            (j.side, _near(j.x_mm), _near(j.y_mm), j.is_along, j.long_mm, j.thick_mm, _near(j.depth_mm))
            for j in self.joints
        )  # fmt: skip
        grooves = frozenset(
            (g.side, g.is_along, _near(g.offset_mm), g.width_mm, _near(g.depth_mm), _near(g.from_mm), _near(g.to_mm))
            for g in self.grooves
        )  # fmt: skip
        return self.rows.key if self.rows else None, holes, joints, grooves, frozenset(self.shaped_edges)

    def machining(self, *, is_front_far: bool, rows: tuple[Hole, ...] | None = None) -> Machining:
        """The work as a part has it, with the holes of its rows as given or as this piece has them."""
        if rows is None:
            rows = self.rows.holes if self.rows else ()
        return Machining(
            holes=(*rows, *self.holes),
            grooves=tuple(self.grooves),
            joints=tuple(self.joints),
            shaped_edges=tuple(self.shaped_edges),
            is_front_far=is_front_far,
        )


def finished(part: Part, works: Sequence[Work]) -> Iterator[tuple[Part, list[Work]]]:
    """The part with its work, and whose work it is: `works` are one a piece, or each tells for how many it is."""
    if len(works) == 1 and works[0].quantity is None and works[0].left_mm is None:
        yield part.replace(machining=works[0].machining(is_front_far=works[0].is_front_far)), list(works)
        return
    alike: dict[object, list[Work]] = {}
    for work in works:
        alike.setdefault(work.key, []).append(work)
    for number, found in enumerate(alike.values(), 1):
        same = sorted(found, key=lambda work: work.is_front_far)
        changes = _of_one(same)
        if len(alike) > 1:
            changes["number"] = f"{part.number}/{number}"
        if len(alike) > 1 or changes["mirrored"]:
            changes.update(_of_variant(part, same, has_both_hands=bool(changes["mirrored"])))
        yield part.replace(**changes), same


def _of_one(same: Sequence[Work]) -> dict[str, object]:
    """What pieces of equal work change of their part."""
    quantity = sum(work.quantity or 1 for work in same)
    far = sum(work.quantity or 1 for work in same if work.is_front_far)
    is_mixed = 0 < far < quantity
    machining = same[0].machining(is_front_far=far == quantity, rows=_rows_of_all(same))
    changes: dict[str, object] = {
        "quantity": quantity, "mirrored": far if is_mixed else 0, "machining": machining,
    }  # fmt: skip
    lefts = tuple(work.left_mm for work in same if work.left_mm is not None)
    return {**changes, "lefts_mm": lefts} if lefts else changes


def _rows_of_all(same: Sequence[Work]) -> tuple[Hole, ...]:
    """The holes of the rows of pieces that are drilled alike: what they are used for only where all agree."""
    uses = list({id(work.rows): work.rows.holes for work in same if work.rows}.values())
    if len(uses) < 2:
        return uses[0] if uses else ()
    return tuple(
        found[0] if len({hole.purpose for hole in found}) == 1 else found[0].replace(purpose=HolePurpose.ROW)
        for found in zip(*uses, strict=True)
    )


def _of_variant(part: Part, same: Sequence[Work], *, has_both_hands: bool) -> dict[str, object]:
    """What tells pieces of one line from others of their part: where they stand, and which are mirrored."""
    changes: dict[str, object] = {}
    places = list(dict.fromkeys(work.place for work in same if work.place))
    mirrored = list(dict.fromkeys(work.place for work in same if work.place and work.is_front_far))
    if places:
        words = f"{_listed(mirrored)} mirrored" if has_both_hands else ""
        changes["note"] = "; ".join(filter(None, (_listed(places), words, part.note)))
    if part.bays:
        changes["bays"] = tuple(bay for work in same for bay in work.bays)
    return changes


def _near(length_mm: float) -> float:
    """A place without the noise of the sums that led to it."""
    return round(length_mm, 4)


def _listed(places: Sequence[str]) -> str:
    return places[0] if len(places) == 1 else f"{', '.join(places[:-1])} and {places[-1]}"
