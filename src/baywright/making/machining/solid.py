"""What a hole, groove or mortise takes out of a part, as a box in the part's own space, and how far two are apart.

Laws: x runs along the length, y from the front edge, z from FACE; a round hole's box is as wide as it is thick, but two
that are bored the same way are measured as circles; what begins at the ground of a notch begins there.
"""

import math
from collections.abc import Iterator
from dataclasses import dataclass

from baywright.model.machining import Groove, Hole, HolePurpose, Joint, Side
from baywright.model.making import Part

Corner = tuple[float, float, float]
_AXES = {Side.FACE: 2, Side.REVERSE: 2, Side.START: 0, Side.END: 0, Side.FRONT: 1, Side.REAR: 1}
SIDE_WORDS = {
    Side.FACE: "on the face", Side.REVERSE: "on the reverse", Side.START: "in the lower or left end",
    Side.END: "in the upper or right end", Side.FRONT: "in the front or lower edge",
    Side.REAR: "in the rear or upper edge",
}  # fmt: skip
"""Where a side is, for people."""
_SMALL_MM = 1e-6
_POCKET_RUN_MM = 18.0
"""How far a pocket, bored slantwise, reaches to either side of its middle on the face."""


@dataclass(frozen=True)
class Solid:
    """What is taken out: two opposite corners of its box, the way it was worked, and where people find it."""

    what: str
    side: Side
    place: tuple[float, float]
    """Where it lies on its side, as the part has it."""
    low: Corner
    high: Corner
    is_round: bool = False
    is_through: bool = False
    is_groove: bool = False

    @property
    def words(self) -> str:
        """What and where it is, for people."""
        if self.is_groove:
            return f"the {self.what} {self.place[1]:.1f} mm from the front or lower edge"
        return f"the {self.what} at {self.place[0]:.1f} and {self.place[1]:.1f} mm {SIDE_WORDS[self.side]}"

    @property
    def is_notch(self) -> bool:
        """Whether it is a piece cut out of the part's whole thickness."""
        return self.is_groove and self.is_through

    @property
    def axis(self) -> int:
        """Along which of x, y, z it was worked."""
        return _AXES[self.side]


def solids(part: Part) -> Iterator[Solid]:
    """Everything that is taken out of a part but the holes of its rows."""
    for hole in part.machining.holes:
        if hole.row is None:
            yield bored(part, hole)
    for joint in part.machining.joints:
        yield _mortise(part, joint)
    for groove in part.machining.grooves:
        yield _groove(part, groove)


def fits(part: Part, work: Hole | Joint, ground_mm: float = 0.0) -> bool:
    """Whether a hole or mortise lies wholly in a part; `ground_mm` is how deep the notch is that it is bored in."""
    solid = bored(part, work) if isinstance(work, Hole) else _mortise(part, work)
    (x, y, z), (right, rear, deep) = solid.low, solid.high
    if work.side is Side.REAR:
        y -= ground_mm
    length, width, thickness = _size(part)
    is_in = right <= length + _SMALL_MM and rear <= width + _SMALL_MM and deep <= thickness + _SMALL_MM
    return is_in and min(x, y, z) >= -_SMALL_MM


def _size(part: Part) -> Corner:
    return part.length_mm, part.width_mm, part.thickness_mm


def _bored(
    part: Part, side: Side, along: float, beside: float, half: Corner, depth: float | None, ground: float
) -> tuple[Corner, Corner]:
    """The box of something worked into a side at a place, half as large as `half` says, from `ground` on."""
    size, axis = _size(part), _AXES[side]
    x, y, z = ((0.0, along, beside), (along, 0.0, beside), (along, beside, 0.0))[axis]
    low, high = [x - half[0], y - half[1], z - half[2]], [x + half[0], y + half[1], z + half[2]]
    reach = size[axis] if depth is None else depth
    is_near = side in (Side.FACE, Side.START, Side.FRONT)
    low[axis] = ground if is_near else size[axis] - ground - reach
    high[axis] = ground + reach if is_near else size[axis] - ground
    return (low[0], low[1], low[2]), (high[0], high[1], high[2])


def bored(part: Part, hole: Hole) -> Solid:
    """What a hole takes out of a part."""
    radius = hole.diameter_mm / 2
    ground = 0.0
    if hole.side is Side.REAR:
        notches = [groove for groove in part.machining.grooves if groove.depth_mm >= part.thickness_mm - 1e-9]
        ground = max((n.width_mm for n in notches if n.from_mm <= hole.x_mm <= n.to_mm), default=0.0)
    is_pocket = hole.purpose is HolePurpose.POCKET
    half = (_POCKET_RUN_MM if is_pocket else radius, radius, radius)
    low, high = _bored(part, hole.side, hole.x_mm, hole.y_mm, half, hole.depth_mm, ground)
    what, place = f"{hole.purpose.value} hole", (hole.x_mm, hole.y_mm)
    return Solid(what, hole.side, place, low, high, not is_pocket, hole.depth_mm is None)


def _mortise(part: Part, joint: Joint) -> Solid:
    long, thick = joint.long_mm / 2, joint.thick_mm / 2
    across, beside = (long, thick) if joint.is_along else (thick, long)
    half = ((0.0, across, beside), (across, 0.0, beside), (across, beside, 0.0))[_AXES[joint.side]]
    low, high = _bored(part, joint.side, joint.x_mm, joint.y_mm, half, joint.depth_mm, 0.0)
    return Solid("mortise", joint.side, (joint.x_mm, joint.y_mm), low, high)


def _groove(part: Part, groove: Groove) -> Solid:
    flank = groove.offset_mm, groove.offset_mm + groove.width_mm
    run = groove.from_mm, groove.to_mm
    x, y = (run, flank) if groove.is_along else (flank, run)
    z = (0.0, groove.depth_mm)
    if groove.side is Side.REVERSE:
        z = (part.thickness_mm - groove.depth_mm, part.thickness_mm)
    is_notch = groove.depth_mm >= part.thickness_mm - 1e-9
    what, place = "notch" if is_notch else "groove", (groove.from_mm, groove.offset_mm)
    low, high = (x[0], y[0], z[0]), (x[1], y[1], z[1])
    return Solid(what, groove.side, place, low, high, is_through=is_notch, is_groove=True)


def apart_mm(one: Solid, other: Solid) -> float:
    """How much wood is between two, in mm; under 0 where they meet."""
    gaps = [
        max(a_low - b_high, b_low - a_high)
        for a_low, a_high, b_low, b_high in zip(one.low, one.high, other.low, other.high, strict=True)
    ]
    if one.is_round and other.is_round and one.axis == other.axis:
        across = [axis for axis in range(3) if axis != one.axis]
        middles = [(one.low[a] + one.high[a] - other.low[a] - other.high[a]) / 2 for a in across]
        radii = (one.high[across[0]] - one.low[across[0]] + other.high[across[0]] - other.low[across[0]]) / 2
        return max(math.hypot(*middles) - radii, gaps[one.axis])
    return max(gaps)


def wall_mm(part: Part, solid: Solid) -> float:
    """The least wood between it and the edges of the part, the side it begins at and what it goes through aside."""
    walls = []
    for axis, size in enumerate(_size(part)):
        near, far = solid.low[axis], size - solid.high[axis]
        if axis != solid.axis:
            walls += [near, far]
        elif not solid.is_through:
            walls.append(far if solid.side in (Side.FACE, Side.START, Side.FRONT) else near)
    return min(walls)
