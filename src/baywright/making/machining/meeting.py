"""How a board's end is fastened to the face or edge of another: tenons, dowels, pocket screws or screws in both.

Laws: what is drilled or mortised in one part faces its counterpart in the other exactly; the fasteners' places keep
clear of hole rows, grooves and each other; a mortise or dowel hole in a face stops `LEFT_IN_FACE_MM` short of the other
side. Sizes are common practice; the data sheets of tenons, dowels and screws come first.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from baywright.making.hardware.fasteners import SLENDER_SCREW_MM, dowel_size, slender_screw, tenon_size, through_screw
from baywright.making.machining.bench import Work
from baywright.making.machining.places import Interval, places_along
from baywright.making.machining.solid import fits
from baywright.model.construction import Jointing
from baywright.model.machining import Hole, HolePurpose, Joint, Side
from baywright.model.making import Part

LEFT_IN_FACE_MM = 4.0
TENON_WIDTHS_MM = {4: 17.0, 5: 19.0, 6: 20.0, 8: 22.0, 10: 24.0}
"""Width of loose tenons by their thickness: from memory, the maker's data sheet decides."""
POCKET_DIAMETER_MM, POCKET_FROM_END_MM = 9.5, 38.0
"""Pocket drilled at about 15 degrees, and where its middle lies before the end of a board of 18 mm: from memory; the
guide's data sheet decides."""
SMALL_TENON = (4, 20)
"""For the two halves of an upright's end over a joint of the board under it: about a third of each, with 2.5 mm of wood
on both sides in 18 mm."""


def clearance_mm(screw_mm: float) -> float:
    """Hole in which a wood screw turns freely: half a millimetre more than its diameter, common practice."""
    return screw_mm + 0.5


def pilot_mm(screw_mm: float) -> float:
    """Hole in which a wood screw bites: 2 mm for 3 mm, 2.5 mm for 4 mm, 3 mm for 5 mm, common practice (about the
    screw's core).
    """
    if screw_mm <= SLENDER_SCREW_MM:
        return 2.0
    return 2.5 if screw_mm <= 4.0 else 3.0


@dataclass(frozen=True)
class Meeting:
    """An end that meets a face: the end's edge runs across the face at `at_mm` along the face's length.

    Places along the joint are measured from the front or lower edge of the part with the end; `shift_mm` is how much
    farther the same place lies from the front edge of the part with the face.
    """

    end: Work
    end_side: Side
    face: Work
    face_side: Side
    at_mm: float
    from_mm: float
    to_mm: float
    shift_mm: float = 0.0
    under_face_mm: float | None = None
    """Depth of the joint's middle under FACE of the end's part; None: the middle of its thickness."""

    @property
    def depth_mm(self) -> float:
        """Where the joint's middle lies under FACE of the end's part."""
        return self.end.part.thickness_mm / 2 if self.under_face_mm is None else self.under_face_mm


def fasten(
    meeting: Meeting, jointing: Jointing, count: int, blocked: Sequence[Interval] = (), *, in_half: bool = False,
) -> list[Interval]:  # fmt: skip
    """Works both parts of a meeting; returns what is taken along the joint, in its own measure.

    In half of an end, over which two boards meet, tenons are thin and screws slender.
    """
    thickness = meeting.end.part.thickness_mm
    screw = (slender_screw if in_half else through_screw)(meeting.face.part.thickness_mm)
    match jointing:
        case Jointing.LOOSE_TENON:
            thick, long = SMALL_TENON if in_half else tenon_size(thickness)
            size = TENON_WIDTHS_MM[thick]
        case Jointing.DOWEL:
            thick, long = dowel_size(thickness)
            size = float(thick)
        case Jointing.POCKET_SCREW:
            thick, long, size = 0, 0, POCKET_DIAMETER_MM
        case Jointing.SCREW:
            thick, long, size = 0, 0, clearance_mm(screw[0])
    done = []
    for place in places_along(meeting.from_mm, meeting.to_mm, count, size, blocked):
        pair: tuple[_Work, _Work | None]
        match jointing:
            case Jointing.LOOSE_TENON:
                pair = _tenon(meeting, place, thick, long)
            case Jointing.DOWEL:
                pair = _dowel(meeting, place, thick, long)
            case Jointing.POCKET_SCREW:
                pair = pocket(meeting.end.part, meeting.end_side, place), None
            case Jointing.SCREW:
                pair = _screw(meeting, place, *screw)
        if _worked(meeting, *pair):
            done.append((place - size / 2, place + size / 2))
    if len(done) < count:
        meeting.end.lacks.append((meeting.end_side, count, len(done)))
    return done


_Work = Hole | Joint


def _worked(meeting: Meeting, in_end: _Work, in_face: _Work | None) -> bool:
    """Puts a fastener's two halves to their parts; not where either would come out of its part."""
    end, face = meeting.end, meeting.face
    if not fits(end.part, in_end) or (in_face is not None and not fits(face.part, in_face)):
        return False
    for work, half in ((end, in_end), (face, in_face)):
        if isinstance(half, Hole):
            work.holes.append(half)
        elif half is not None:
            work.joints.append(half)
    return True


def _depths(meeting: Meeting, long: float) -> tuple[float, float]:
    """How deep a tenon or dowel goes into the end and into the face."""
    in_face = min(long / 2, meeting.face.part.thickness_mm - LEFT_IN_FACE_MM)
    return long - in_face, in_face


def _tenon(meeting: Meeting, place: float, thick: int, long: int) -> tuple[Joint, Joint]:
    in_end, in_face = _depths(meeting, long)
    wide = TENON_WIDTHS_MM[thick]
    return (
        Joint(side=meeting.end_side, x_mm=place, y_mm=meeting.depth_mm, is_along=True, long_mm=wide, thick_mm=thick,
              depth_mm=in_end, meets=meeting.face.part.number),
        Joint(side=meeting.face_side, x_mm=meeting.at_mm, y_mm=place + meeting.shift_mm, is_along=False, long_mm=wide,
              thick_mm=thick, depth_mm=in_face, meets=meeting.end.part.number),
    )  # fmt: skip


def _dowel(meeting: Meeting, place: float, thick: int, long: int) -> tuple[Hole, Hole]:
    in_end, in_face = _depths(meeting, long)
    return _both(meeting, place, HolePurpose.DOWEL, (thick, in_end), (thick, in_face))


def _screw(meeting: Meeting, place: float, diameter: float, length: int) -> tuple[Hole, Hole]:
    pilot = pilot_mm(diameter), length - meeting.face.part.thickness_mm
    return _both(meeting, place, HolePurpose.SCREW, pilot, (clearance_mm(diameter), None))


def _both(
    meeting: Meeting, place: float, purpose: HolePurpose, in_end: tuple[float, float],
    in_face: tuple[float, float | None],
) -> tuple[Hole, Hole]:  # fmt: skip
    return (
        Hole(side=meeting.end_side, x_mm=place, y_mm=meeting.depth_mm, diameter_mm=in_end[0], depth_mm=in_end[1],
             purpose=purpose),
        Hole(side=meeting.face_side, x_mm=meeting.at_mm, y_mm=place + meeting.shift_mm, diameter_mm=in_face[0],
             depth_mm=in_face[1], purpose=purpose),
    )  # fmt: skip


def pocket(part: Part, end: Side, place: float, side: Side = Side.FACE) -> Hole:
    """The pocket lies in the board with the end; the screw finds its own way into what the end meets."""
    x = POCKET_FROM_END_MM if end is Side.START else part.length_mm - POCKET_FROM_END_MM
    depth = part.thickness_mm * 0.6
    return Hole(
        side=side, x_mm=x, y_mm=place, diameter_mm=POCKET_DIAMETER_MM, depth_mm=depth, purpose=HolePurpose.POCKET
    )
