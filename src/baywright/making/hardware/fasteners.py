"""How many fasteners a joint takes, and how long a screw is: simple rules of common practice, each in one place.

Laws: counts never fall when a joint grows longer; a screw is never longer than what it must not come out of. The
rules are common practice unless a source stands beside them; the fastener maker's data sheet comes first.
"""

import math

FIRST_FROM_EDGE_MM = 50.0
SPACING_MM = 150.0
"""One about every 150 mm and one more: common practice (a 450 mm joint takes 4)."""

WOOD_SCREW_LENGTHS_MM = (10, 13, 16, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 120)
SYSTEM_SCREW_LENGTHS_MM = (10, 13, 16)
"""Short thick screws for the 5 mm holes of the rows; lengths common practice, from memory."""

PENETRATION_DIAMETERS = 6
"""Least depth of a wood screw in the second piece, in screw diameters (NDS 2018, chapter 12, as cited elsewhere)."""

_TENONS = ((4, 20), (5, 30), (6, 40), (8, 40), (10, 50))
"""Thickness and length of loose tenons to be had, in mm; common practice, from memory."""

_DOWELS = ((6, 30), (8, 40), (10, 50))
"""Diameter and length of fluted dowels to be had, in mm; common practice, from memory."""

_POCKET_SCREWS = ((14.0, 25), (17.0, 30), (23.0, 32), (30.0, 40), (40.0, 63))
"""Boards up to a thickness, and the length of pocket screw for them, in mm; common practice, from memory: the data
sheet of the drilling guide comes first."""

POCKET_SCREW_DIAMETER_MM = 4.0

PANEL_SCREWS_MM = 4.0
"""Diameter of the screws that hold front and end panels from within."""
SLENDER_SCREW_MM = 3.0
"""Diameter of the screws for thin edges: 1.5 diameters from the middle to an edge (NDS 2018, 12.5.1, from memory)."""
RUNNER_SCREW_MM = 4.0
"""Diameter of the screws that hold the runners' inner members to the drawer sides; common practice."""

RUNNER_SHEET_MM = 1.0
"""What a screw passes of a runner's steel before it is in the wood, at least; common practice, from memory."""
OVER_HOLE_MM = 2.0
"""By so much a system screw may be longer than its hole: the runner's steel, and what the drill's tip goes deeper."""

_LEFT_BEHIND_SCREW_MM = 2.0


def in_joint(joint_mm: float) -> int:
    """Loose tenons, dowels or screws in a joint of that length.

    The first and last at least 50 mm from the edges, the others at most 150 mm apart; two in a narrow joint, and only
    one under 60 mm.
    """
    between = joint_mm - 2 * FIRST_FROM_EDGE_MM
    if between > 0:
        return math.ceil(between / SPACING_MM - 1e-9) + 1
    return 2 if joint_mm >= 60.0 else 1


def in_drawer_corner(side_height_mm: float) -> int:
    """Screws or dowels in one corner of a drawer: two, one more for every 50 mm begun over 90 mm of height."""
    return 2 + max(0, math.ceil((side_height_mm - 90.0) / 50.0 - 1e-9))


def tenon_size(board_mm: float) -> tuple[int, int]:
    """Thickness and length in mm of the loose tenon for a board: nearest to a third of it, the thinner one at a tie."""
    return min(_TENONS, key=lambda tenon: (abs(tenon[0] - board_mm / 3), tenon[0]))


def dowel_size(board_mm: float) -> tuple[int, int]:
    """Diameter and length in mm of the dowel for a board: nearest to two fifths of it, the thinner one at a tie."""
    return min(_DOWELS, key=lambda dowel: (abs(dowel[0] - 0.4 * board_mm), dowel[0]))


def dowel_length(diameter_mm: float) -> int:
    """Length in mm of the dowel of that diameter, or of the one next to it."""
    return min(_DOWELS, key=lambda dowel: abs(dowel[0] - diameter_mm))[1]


def pocket_screw(board_mm: float) -> int:
    """Length in mm of the pocket screw for a board that is drilled slantwise; the longest there is for thick ones."""
    return next((length for most, length in _POCKET_SCREWS if board_mm <= most), _POCKET_SCREWS[-1][1])


def from_behind(board_mm: float, panel_mm: float) -> tuple[float, int]:
    """Diameter and length in mm of a screw through a board into the back of a panel, ending 2 mm short of its face."""
    return PANEL_SCREWS_MM, face_screw(board_mm + panel_mm, WOOD_SCREW_LENGTHS_MM)


def through_screw(thickness_mm: float) -> tuple[float, int]:
    """Diameter and length in mm of a wood screw through a board into the edge of the next one."""
    diameter = 4.0 if thickness_mm <= 25.0 else 5.0
    least = thickness_mm + PENETRATION_DIAMETERS * diameter
    return diameter, next((length for length in WOOD_SCREW_LENGTHS_MM if length >= least), WOOD_SCREW_LENGTHS_MM[-1])


def slender_screw(thickness_mm: float) -> tuple[float, int]:
    """Diameter and length in mm of the screw through a board into half of the next one's edge, as where two boards meet
    over one upright: in 9 mm of wood it keeps 1.5 diameters to either side.
    """
    least = thickness_mm + PENETRATION_DIAMETERS * SLENDER_SCREW_MM
    return SLENDER_SCREW_MM, next((n for n in WOOD_SCREW_LENGTHS_MM if n >= least), WOOD_SCREW_LENGTHS_MM[-1])


def face_screw(thickness_mm: float, lengths_mm: tuple[int, ...]) -> int:
    """The longest screw that stays 2 mm short of a board's other face; the shortest there is for very thin boards."""
    return max((n for n in lengths_mm if n <= thickness_mm - _LEFT_BEHIND_SCREW_MM), default=lengths_mm[0])


def runner_screw(side_mm: float) -> int:
    """Length in mm of the wood screws that hold a runner's inner member to a drawer side."""
    return face_screw(side_mm + RUNNER_SHEET_MM, WOOD_SCREW_LENGTHS_MM)


def system_screw(hole_depth_mm: float) -> int:
    """Length in mm of the system screw for a row hole, which it must not meet the ground of; the shortest at worst."""
    fitting = [length for length in SYSTEM_SCREW_LENGTHS_MM if length <= hole_depth_mm + OVER_HOLE_MM]
    return max(fitting, default=SYSTEM_SCREW_LENGTHS_MM[0])


def in_runner(length_mm: float) -> int:
    """Screws in each of the two members of one runner: three to 400 mm, one more for every 200 mm begun.

    Common practice, from memory; the runner maker's data sheet says which holes must be used.
    """
    return max(3, 1 + math.ceil(length_mm / 200.0 - 1e-9))


def wall_fixings(length_mm: float) -> int:
    """Wall fixings along a rail: the first within 100 mm of each end, at most 600 mm apart, at least two."""
    return max(2, math.ceil((length_mm - 200.0) / 600.0 - 1e-9) + 1)
