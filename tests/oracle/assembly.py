"""A witness that puts the run together: every worked part at its place in the room, holes and mortises as openings.

Shares no code with the engine but reads where boards lie along the run. X grows along the wall from the leftmost
upright's outer face, Y from the uprights' front edges to the wall, Z from the floor; all in mm.
"""

from collections import Counter, defaultdict
from collections.abc import Callable, Iterator
from dataclasses import dataclass

from baywright.model.construction import FirstRowRule
from baywright.model.inventory import BoxStatus
from baywright.model.machining import Hole, HolePurpose, Joint, Side
from baywright.model.making import Manufacture, Part
from baywright.model.project import Project

Point = tuple[float, float, float]
Place = Callable[[float, float, float], Point]
"""From x, y and depth under FACE in a part to the room."""


@dataclass(frozen=True)
class Standing:
    """One piece at its place."""

    part: Part
    left: float
    put: Place
    face_is_right: bool = False


def base_upper(project: Project) -> float:
    """Height of the base's upper side."""
    return project.construction.standing.height_mm + project.boards.base_mm


def first_row(project: Project) -> float:
    """Height of the first row over an upright's lower end."""
    rows = project.construction.hole_rows
    return {
        FirstRowRule.HALF_PITCH: rows.pitch_mm / 2,
        FirstRowRule.HALF_BASE_THICKNESS: project.boards.base_mm / 2,
        FirstRowRule.SET: rows.first_row_mm,
    }[rows.first_row_rule]


def uprights(project: Project, made: Manufacture) -> list[Standing]:
    """Every upright from left to right; of a part with both hands the mirrored pieces come last."""
    found, floor = [], base_upper(project)
    for part in made.parts:
        if not part.number.startswith("U"):
            continue
        assert len(part.lefts_mm) == part.quantity, part.number
        for index, left in enumerate(part.lefts_mm):
            is_far = part.machining.is_front_far or index >= part.quantity - part.mirrored
            thick = part.thickness_mm

            def put(x: float, y: float, d: float, left: float = left, far: bool = is_far, t: float = thick) -> Point:
                return (left + t - d if far else left + d), y, floor + x

            found.append(Standing(part, left, put, is_far))
    return sorted(found, key=lambda piece: piece.left)


def boards(project: Project, made: Manufacture) -> list[Standing]:
    """Bases, tops, rails and backs at their places."""
    standing = uprights(project, made)
    depth = standing[0].part.width_mm if standing else 0.0
    overhang, floor = project.construction.top.overhang_front_mm, base_upper(project)
    found = []
    for part in made.parts:
        for left in part.lefts_mm if part.number[0] in "BTR" else ():
            right = left + part.length_mm
            middles = {u.left + u.part.thickness_mm / 2: u for u in standing}
            over = [u.part.length_mm for middle, u in middles.items() if left - 1e-6 <= middle <= right + 1e-6]
            under = floor + min(over, default=0.0)
            found.append(Standing(part, left, _lay(part, left, depth, overhang, floor, under, project)))
    return found


def _lay(
    part: Part, left: float, depth: float, overhang: float, floor: float, under: float, project: Project
) -> Place:  # fmt: skip
    match part.number[:2]:
        case "B1":
            return lambda x, y, d: (left + x, y, floor - d)
        case "T1":
            return lambda x, y, d: (left + x, y - overhang, under + d)
        case "R1":
            return lambda x, y, d: (left + x, depth + d, project.construction.standing.height_mm + y)
        case "R3":
            return lambda x, y, d: (left + x, depth - part.thickness_mm + d, floor + y)
        case _:
            return lambda x, y, d: (left + x, depth - part.thickness_mm + d, under - part.width_mm + y)


def _local(part: Part, side: Side, x: float, y: float, inside: float = 0.0) -> Point:
    """A place on a side in the part's own space, `inside` deep."""
    length, width, thick = part.length_mm, part.width_mm, part.thickness_mm
    match side:
        case Side.FACE:
            return x, y, inside
        case Side.REVERSE:
            return x, y, thick - inside
        case Side.START:
            return inside, x, y
        case Side.END:
            return length - inside, x, y
        case Side.FRONT:
            return x, inside, y
        case Side.REAR:
            return x, width - inside, y


def opening(piece: Standing, work: Hole | Joint) -> Point:
    """Where a hole or mortise opens in the room; at the ground of a notch where it is bored from there."""
    ground = 0.0
    if work.side is Side.REAR:
        for groove in piece.part.machining.grooves:
            if groove.depth_mm >= piece.part.thickness_mm and groove.from_mm <= work.x_mm <= groove.to_mm:
                ground = groove.width_mm
    return rounded(piece.put(*_local(piece.part, work.side, work.x_mm, work.y_mm, ground)))


def rounded(point: Point) -> Point:
    """A point without the noise of sums."""
    return round(point[0], 3) + 0.0, round(point[1], 3) + 0.0, round(point[2], 3) + 0.0


def unmet_joints(pieces: list[Standing]) -> list[tuple[Point, list[str]]]:
    """Mortises and dowel holes that do not open exactly into one of another part."""
    met: dict[Point, list[str]] = defaultdict(list)
    for piece in pieces:
        for joint in piece.part.machining.joints:
            met[opening(piece, joint)].append(f"{piece.part.number} {joint.thick_mm:g}x{joint.long_mm:g}")
        for hole in piece.part.machining.holes:
            if hole.purpose is HolePurpose.DOWEL:
                met[opening(piece, hole)].append(f"{piece.part.number} {hole.diameter_mm:g}")
    return [
        (point, names)
        for point, names in met.items()
        if len(names) != 2 or names[0].partition(" ")[2] != names[1].partition(" ")[2]
    ]


def unmet_screws(pieces: list[Standing]) -> list[tuple[Point, str]]:
    """Pilot holes into which no hole of another part leads."""
    ends: set[Point] = set()
    for piece in pieces:
        for hole in piece.part.machining.holes:
            if hole.purpose is HolePurpose.SCREW and hole.depth_mm is None:
                for depth in (0.0, piece.part.thickness_mm):
                    ends.add(rounded(piece.put(hole.x_mm, hole.y_mm, depth)))
    return [
        (point, piece.part.number)
        for piece in pieces
        for hole in piece.part.machining.holes
        if hole.purpose is HolePurpose.SCREW and hole.depth_mm is not None
        for point in [opening(piece, hole)]
        if point not in ends
    ]


def face_holes(piece: Standing, purpose: HolePurpose, *, is_right: bool) -> Counter[tuple[float, float]]:
    """Height over the floor and distance from the front of the holes of a purpose on the right or left face."""
    side = Side.FACE if is_right == piece.face_is_right else Side.REVERSE
    found: Counter[tuple[float, float]] = Counter()
    for hole in piece.part.machining.holes:
        if hole.purpose is purpose and hole.side is side:
            _, y, z = rounded(piece.put(*_local(piece.part, side, hole.x_mm, hole.y_mm)))
            found[z, y] += 1
    return found


def row_holes(piece: Standing, *, is_right: bool) -> Counter[tuple[float, float]]:
    """The same of all holes of the rows, whatever they are used for."""
    found: Counter[tuple[float, float]] = Counter()
    for purpose in (HolePurpose.ROW, HolePurpose.RUNNER, HolePurpose.PIN):
        found += face_holes(piece, purpose, is_right=is_right)
    return found


def clear_rooms(standing: list[Standing], edges: list[tuple[float, float]]) -> Iterator[tuple[Standing, Standing]]:
    """The two uprights beside every bay, whose clear room goes from one edge to the other."""
    for left, right in edges:
        before = next(u for u in standing if abs(u.left + u.part.thickness_mm - left) < 1e-6)
        after = next(u for u in standing if abs(u.left - right) < 1e-6)
        yield before, after


def runner_heights(project: Project, bay: int, rows: int) -> set[float]:
    """How high over the floor runners are screwed on in a bay, by the arrangement alone."""
    owned = {box.id for box in project.boxes if box.status is BoxStatus.OWNED}
    at = {p.row for p in project.arrangement.placements if p.bay == bay and p.box_id in owned and p.row < rows}
    start = base_upper(project) + first_row(project)
    return {round(start + row * project.construction.hole_rows.pitch_mm, 3) for row in at}


__all__ = [
    "Standing", "boards", "clear_rooms", "face_holes", "opening", "row_holes", "runner_heights", "unmet_joints",
    "unmet_screws", "uprights",
]  # fmt: skip
