"""Where the work on a part lies in its drawing: its face as it lies on the bench, its edges as strips beside it.

Laws: pure; all in mm; x to the right along the length, y upwards; the reverse is seen through the board, as if it were
glass; a mirrored piece, and one whose front edge is far, has y turned over.
"""

from dataclasses import dataclass

from baywright.gui.elevation.area import Area
from baywright.model.machining import Groove, Hole, Joint, Side
from baywright.model.making import Part


@dataclass(frozen=True)
class Bench:
    """One part as it lies on the bench, its front edge near or far."""

    part: Part
    is_mirrored: bool = False

    @property
    def is_front_far(self) -> bool:
        """Whether the front edge lies at the upper side of the drawing."""
        return self.part.machining.is_front_far != self.is_mirrored

    @property
    def face(self) -> Area:
        """The outline."""
        return Area(0.0, 0.0, self.part.length_mm, self.part.width_mm)

    def y(self, from_front_mm: float) -> float:
        """The height in the drawing of a distance from the front edge."""
        return self.part.width_mm - from_front_mm if self.is_front_far else from_front_mm

    def strip(self, side: Side, gap_mm: float) -> Area:
        """Where an end or edge is drawn beside the face, `gap_mm` off; its inner side is the face's."""
        part, thick = self.part, self.part.thickness_mm
        match side:
            case Side.START:
                return Area(-gap_mm - thick, 0.0, thick, part.width_mm)
            case Side.END:
                return Area(part.length_mm + gap_mm, 0.0, thick, part.width_mm)
            case Side.FRONT | Side.REAR if (side is Side.FRONT) == self.is_front_far:
                return Area(0.0, part.width_mm + gap_mm, part.length_mm, thick)
            case _:
                return Area(0.0, -gap_mm - thick, part.length_mm, thick)

    def place(self, side: Side, x_mm: float, y_mm: float, gap_mm: float) -> tuple[float, float]:
        """Where a place on a side lies in the drawing."""
        strip = self.strip(side, gap_mm) if side not in (Side.FACE, Side.REVERSE) else None
        match side:
            case Side.START if strip is not None:
                return strip.right - y_mm, self.y(x_mm)
            case Side.END if strip is not None:
                return strip.left + y_mm, self.y(x_mm)
            case Side.FRONT | Side.REAR if strip is not None:
                is_over = strip.bottom > 0
                return x_mm, strip.bottom + y_mm if is_over else strip.top - y_mm
            case _:
                return x_mm, self.y(y_mm)

    def joint_area(self, joint: Joint, gap_mm: float) -> Area:
        """The mouth of a mortise."""
        x, y = self.place(joint.side, joint.x_mm, joint.y_mm, gap_mm)
        is_level = joint.is_along != (joint.side in (Side.START, Side.END))
        wide, high = (joint.long_mm, joint.thick_mm) if is_level else (joint.thick_mm, joint.long_mm)
        return Area(x - wide / 2, y - high / 2, wide, high)

    def groove_area(self, groove: Groove) -> Area:
        """A groove as it is seen from the face."""
        if not groove.is_along:
            low, high = sorted((self.y(groove.from_mm), self.y(groove.to_mm)))
            return Area(groove.offset_mm, low, groove.width_mm, high - low)
        low, high = sorted((self.y(groove.offset_mm), self.y(groove.offset_mm + groove.width_mm)))
        return Area(groove.from_mm, low, groove.to_mm - groove.from_mm, high - low)

    def sides_worked(self) -> tuple[Side, ...]:
        """The ends and edges that have work, which need strips."""
        machining = self.part.machining
        worked: set[Side] = {hole.side for hole in machining.holes} | {joint.side for joint in machining.joints}
        return tuple(side for side in (Side.START, Side.END, Side.FRONT, Side.REAR) if side in worked)


def is_behind(feature: Hole | Groove) -> bool:
    """Whether a hole or groove is on the reverse alone, so that it is drawn in broken lines."""
    return feature.side is Side.REVERSE
