"""What is drilled and mortised, counted: how many holes, joints and screws the drawings show.

Laws: every count is of all pieces of the parts; a screw counts where it goes through (its pilot hole does not count
again), a dowel and a tenon once for its two ends, a bolt once for its two boards.
"""

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass

from baywright.making.hardware.fasteners import from_behind, slender_screw, tenon_size, through_screw
from baywright.making.machining.meeting import clearance_mm
from baywright.model.machining import Hole, HolePurpose
from baywright.model.making import Part
from baywright.model.project import Project

_TENON_LENGTHS_MM = dict(tenon_size(3.0 * thick) for thick in (4, 5, 6, 8, 10))


def hole_counts(parts: Iterable[Part]) -> Counter[tuple[HolePurpose, float]]:
    """Holes by purpose and diameter in mm."""
    found: Counter[tuple[HolePurpose, float]] = Counter()
    for part in parts:
        for hole in part.machining.holes:
            found[hole.purpose, hole.diameter_mm] += part.quantity
    return found


def joint_counts(parts: Iterable[Part]) -> Counter[tuple[int, int]]:
    """Loose tenons by thickness and length in mm: two mortises each."""
    mortises: Counter[int] = Counter()
    for part in parts:
        for joint in part.machining.joints:
            mortises[round(joint.thick_mm)] += part.quantity
    return Counter({(thick, _TENON_LENGTHS_MM[thick]): count // 2 for thick, count in mortises.items()})


def fixing_counts(parts: Iterable[Part], purpose: HolePurpose) -> int:
    """How many fixings of a purpose the holes are for: dowels and connecting bolts have two holes each."""
    count = sum(n for (of, _), n in hole_counts(parts).items() if of is purpose)
    return count // 2 if purpose in (HolePurpose.DOWEL, HolePurpose.BOLT) else count


@dataclass(frozen=True)
class ScrewUse:
    """Wood screws that go through the boards of one part: how many in all, and their size in mm."""

    part: Part
    count: int
    diameter_mm: float
    length_mm: int


def screw_uses(project: Project, parts: Iterable[Part]) -> list[ScrewUse]:
    """The wood screws, part by part that they go through first; those of runners and pockets are not among them."""
    found = []
    for part in parts:
        holes = Counter(hole.diameter_mm for hole in part.machining.holes if is_clearance(hole))
        found += [ScrewUse(part, n * part.quantity, *_size(project, part, wide)) for wide, n in sorted(holes.items())]
    return found


def is_clearance(hole: Hole) -> bool:
    """Whether a wood screw goes through this hole freely."""
    return hole.purpose is HolePurpose.SCREW and hole.depth_mm is None


def _size(project: Project, part: Part, hole_mm: float) -> tuple[float, int]:
    """Diameter and length of the screws that start in a part, in holes of a diameter."""
    boards = project.boards
    within = {"D2": boards.front_mm, "D3": boards.drawer_side_mm}
    panel = boards.end_panel_mm if part.number.startswith("U") else within.get(part.number[:2])
    if panel is not None:
        return from_behind(part.thickness_mm, panel)
    slender = slender_screw(part.thickness_mm)
    return slender if hole_mm == clearance_mm(slender[0]) else through_screw(part.thickness_mm)


def runner_holes(parts: Iterable[Part]) -> int:
    """Fixing holes of the runners' inner members, in the drawer sides. Those in the uprights are told by the drawers:
    a row that goes through serves any of them.
    """
    return sum(
        part.quantity * sum(hole.purpose is HolePurpose.RUNNER for hole in part.machining.holes)
        for part in parts
        if not part.number.startswith("U")
    )
