"""What is done to a part after it is cut: holes, grooves, joints, shaped edges.

Laws: a part lies with its length along x and its width along y; x = 0 is its lower or left end, y = 0 its front or
lower edge, and its FACE is the side that most of the work is on. Places on FACE and REVERSE are measured from the
same corner, as if the board were glass. On START and END x is the distance from the front edge and y the depth under
FACE; on FRONT and REAR x runs along the length and y is the depth under FACE. A mirrored piece has the same numbers
with the front edge on the other hand. Lying on the bench with FACE up and x = 0 at the left hand, a piece that is not
mirrored has its front edge near, or far where `is_front_far`.
"""

from enum import StrEnum

from baywright.model.base import Frozen


class Side(StrEnum):
    """A side of a part."""

    FACE = "face"
    REVERSE = "reverse"
    START = "start"
    END = "end"
    FRONT = "front edge"
    REAR = "rear edge"


class HolePurpose(StrEnum):
    """What a hole is for."""

    ROW = "hole row"
    RUNNER = "runner"
    PIN = "shelf pin"
    SCREW = "screw"
    POCKET = "pocket screw"
    DOWEL = "dowel"
    BOLT = "connecting bolt"
    WALL = "wall fixing"


class Hole(Frozen):
    """A drilled hole; all in mm."""

    side: Side
    x_mm: float
    y_mm: float
    diameter_mm: float
    depth_mm: float | None
    """None goes through."""
    purpose: HolePurpose
    row: int | None = None
    """The hole row it is of, from 1 at the bottom."""


class Groove(Frozen):
    """A groove or dado in FACE or REVERSE; all in mm."""

    side: Side
    is_along: bool
    """Runs along the length; else across it."""
    offset_mm: float
    """From the front edge (or the start, where it runs across) to its nearer flank."""
    width_mm: float
    depth_mm: float
    from_mm: float
    to_mm: float
    """Where it begins and ends along its run."""


class Joint(Frozen):
    """The place of a loose tenon's mortise; centre and measures in mm. Dowels and screws are holes."""

    side: Side
    x_mm: float
    y_mm: float
    is_along: bool
    """Whether its long side runs along x of that side."""
    long_mm: float
    thick_mm: float
    depth_mm: float
    meets: str
    """Number of the part on the other side of it."""


class EdgeForm(StrEnum):
    """The shape of a worked edge."""

    ROUNDED = "rounded"
    CHAMFERED = "chamfered"


class ShapedEdge(Frozen):
    """An edge with its corners rounded or chamfered; `size_mm` is the radius or the chamfer's leg."""

    side: Side
    form: EdgeForm
    size_mm: float
    is_both: bool = True
    """Both corners of the edge, else only that at FACE."""


class Machining(Frozen):
    """All the work on one part."""

    holes: tuple[Hole, ...] = ()
    grooves: tuple[Groove, ...] = ()
    joints: tuple[Joint, ...] = ()
    shaped_edges: tuple[ShapedEdge, ...] = ()
    is_front_far: bool = False
    """Its hand: with FACE up and x = 0 at the left, the front edge lies far from whoever stands before it."""
