"""A witness of drillings: bores every hole into a block of wood of its own and looks what is left.

Shares no code with the engine. A hole is a cylinder with an axis, a mortise, groove or notch a box; how near two come
is found by walking over the surface of one with a rule to the other. Lengths in mm.
"""

import math
from collections.abc import Iterator
from dataclasses import dataclass

from baywright.model.machining import Groove, Hole, Joint, Side
from baywright.model.making import Part

SAME_SIDE_MM = 3.0
OTHER_SIDE_MM = 2.0
EDGE_MM = 2.0
TINY_MM = 1e-4

Point = tuple[float, float, float]


@dataclass(frozen=True)
class Body:
    """What is taken out: a box from `low` to `high`, round about `axis` where that is given."""

    low: Point
    high: Point
    side: Side
    axis: int | None
    kind: str

    def away(self, point: Point) -> float:
        """How far a point lies outside; 0 or less inside."""
        if self.axis is None:
            outside = [max(a - p, p - b, 0.0) for a, p, b in zip(self.low, point, self.high, strict=True)]
            return math.sqrt(sum(d * d for d in outside))
        others = [i for i in range(3) if i != self.axis]
        middle = [(self.low[i] + self.high[i]) / 2 for i in others]
        radius = (self.high[others[0]] - self.low[others[0]]) / 2
        across = math.hypot(*(point[i] - m for i, m in zip(others, middle, strict=True))) - radius
        along = max(self.low[self.axis] - point[self.axis], point[self.axis] - self.high[self.axis])
        return max(across, along) if min(across, along) <= 0 else math.hypot(across, along)

    def surface(self) -> Iterator[Point]:
        """Points all over it, close enough together that none comes nearer by more than a hair."""
        steps = [
            [a + (b - a) * n / max(1, round((b - a) / 1.5)) for n in range(max(1, round((b - a) / 1.5)) + 1)]
            for a, b in zip(self.low, self.high, strict=True)
        ]
        if self.axis is None:
            yield from ((x, y, z) for x in steps[0] for y in steps[1] for z in steps[2])
            return
        others = [i for i in range(3) if i != self.axis]
        middle = [(self.low[i] + self.high[i]) / 2 for i in others]
        radius = (self.high[others[0]] - self.low[others[0]]) / 2
        for along in steps[self.axis]:
            for turn in range(48):
                point = [0.0, 0.0, 0.0]
                point[self.axis] = along
                point[others[0]] = middle[0] + radius * math.cos(turn * math.tau / 48)
                point[others[1]] = middle[1] + radius * math.sin(turn * math.tau / 48)
                yield point[0], point[1], point[2]


def bodies(part: Part) -> list[Body]:
    """Everything that is taken out of a part."""
    work = part.machining
    notches = [g for g in work.grooves if g.depth_mm >= part.thickness_mm]
    return [
        *(_bored(part, hole, notches) for hole in work.holes),
        *(_chiselled(part, joint) for joint in work.joints),
        *(_ploughed(part, groove) for groove in work.grooves),
    ]


def _placed(part: Part, side: Side, x: float, y: float, depth: float) -> tuple[Point, int]:
    """Where the middle of something on a side begins in the block, and along which axis it goes (rising or falling)."""
    size = part.length_mm, part.width_mm, part.thickness_mm
    match side:
        case Side.FACE:
            return (x, y, 0.0), 2
        case Side.REVERSE:
            return (x, y, size[2] - depth), 2
        case Side.START:
            return (0.0, x, y), 0
        case Side.END:
            return (size[0] - depth, x, y), 0
        case Side.FRONT:
            return (x, 0.0, y), 1
        case Side.REAR:
            return (x, size[1] - depth, y), 1


def _box(start: Point, axis: int, depth: float, half: Point) -> tuple[Point, Point]:
    low = [s - h for s, h in zip(start, half, strict=True)]
    high = [s + h for s, h in zip(start, half, strict=True)]
    low[axis], high[axis] = start[axis], start[axis] + depth
    return (low[0], low[1], low[2]), (high[0], high[1], high[2])


def _bored(part: Part, hole: Hole, notches: list[Groove]) -> Body:
    through = (part.length_mm, part.width_mm, part.thickness_mm)
    axis = _placed(part, hole.side, 0.0, 0.0, 0.0)[1]
    depth = through[axis] if hole.depth_mm is None else hole.depth_mm
    start, axis = _placed(part, hole.side, hole.x_mm, hole.y_mm, depth)
    if hole.side is Side.REAR:
        for notch in notches:
            if notch.from_mm <= hole.x_mm <= notch.to_mm:
                start = start[0], start[1] - notch.width_mm, start[2]
    radius = hole.diameter_mm / 2
    low, high = _box(start, axis, depth, (radius, radius, radius))
    return Body(low, high, hole.side, axis, f"{hole.purpose.value} {'through' if hole.depth_mm is None else 'blind'}")


def _chiselled(part: Part, joint: Joint) -> Body:
    start, axis = _placed(part, joint.side, joint.x_mm, joint.y_mm, joint.depth_mm)
    first, second = [i for i in range(3) if i != axis]
    half = [0.0, 0.0, 0.0]
    half[first], half[second] = (
        (joint.long_mm / 2, joint.thick_mm / 2) if joint.is_along else (joint.thick_mm / 2, joint.long_mm / 2)
    )
    low, high = _box(start, axis, joint.depth_mm, (half[0], half[1], half[2]))
    return Body(low, high, joint.side, None, "mortise")


def _ploughed(part: Part, groove: Groove) -> Body:
    near, far = groove.offset_mm, groove.offset_mm + groove.width_mm
    x, y = ((groove.from_mm, groove.to_mm), (near, far))
    if not groove.is_along:
        x, y = y, x
    z = (0.0, groove.depth_mm)
    if groove.side is Side.REVERSE:
        z = (part.thickness_mm - groove.depth_mm, part.thickness_mm)
    kind = "notch" if groove.depth_mm >= part.thickness_mm else "groove"
    return Body((x[0], y[0], z[0]), (x[1], y[1], z[1]), groove.side, None, kind)


def faults(part: Part) -> list[str]:
    """What is wrong with the work on one part."""
    found = []
    size = part.length_mm, part.width_mm, part.thickness_mm
    every = bodies(part)
    for body in every:
        for axis in range(3):
            low, high = body.low[axis], size[axis] - body.high[axis]
            if min(low, high) < -TINY_MM:
                found.append(f"{body.kind} {body.side} reaches out of the part")
            if body.kind in ("notch", "groove"):
                continue
            begins = axis == {Side.START: 0, Side.END: 0, Side.FRONT: 1, Side.REAR: 1}.get(body.side, 2)
            is_first = body.side in (Side.FACE, Side.START, Side.FRONT)
            walls = [low, high] if not begins else [high if is_first else low]
            if begins and body.kind.endswith("through"):
                walls = []
            if any(wall < EDGE_MM - TINY_MM for wall in walls):
                found.append(f"{body.kind} {body.side}: no wood at an edge")
    return found + [fault for one, other in _neighbours(every) if (fault := _meet(one, other))]


def _neighbours(every: list[Body]) -> Iterator[tuple[Body, Body]]:
    """Pairs that lie so near that they might touch."""
    ordered = sorted(every, key=lambda body: body.low[0])
    for number, one in enumerate(ordered):
        for other in ordered[number + 1 :]:
            if other.low[0] > one.high[0] + SAME_SIDE_MM:
                break
            if all(max(a, c) <= min(b, d) + SAME_SIDE_MM for a, b, c, d in zip(
                one.low, one.high, other.low, other.high, strict=True)):  # fmt: skip
                yield one, other


def _meet(one: Body, other: Body) -> str:
    for first, second in ((one, other), (other, one)):
        if second.kind == "notch" and first.side is Side.REAR and abs(first.high[1] - second.low[1]) < TINY_MM:
            return ""  # bored from the ground of the notch
    least = SAME_SIDE_MM if one.side is other.side else OTHER_SIDE_MM
    small, large = sorted((one, other), key=lambda body: math.prod(
        b - a for a, b in zip(body.low, body.high, strict=True)))  # fmt: skip
    gap = min(large.away(point) for point in small.surface())
    return f"{one.kind} and {other.kind}: {gap:.2f} mm of wood" if gap < least - 0.02 else ""


def all_faults(parts: list[Part]) -> dict[str, list[str]]:
    """What is wrong with every part, by its number."""
    return {part.number: found for part in parts if (found := faults(part))}


def count(parts: list[Part], kind: str) -> int:
    """How many holes or mortises of a kind all pieces have together."""
    return sum(part.quantity * sum(body.kind.startswith(kind) for body in bodies(part)) for part in parts)


__all__ = ["Body", "all_faults", "bodies", "count", "faults"]
