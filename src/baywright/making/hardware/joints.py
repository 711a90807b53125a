"""What joins boards: loose tenons, dowels, pocket screws and connecting bolts, counted from what is drilled for them.

Laws: nothing is counted here but mortises and holes of the parts, so order and drawings cannot disagree; a tenon or
dowel has two, a bolt goes through two boards.
"""

from collections import Counter
from collections.abc import Iterator, Sequence

from baywright.making.frame import Frame
from baywright.making.hardware.fasteners import (
    POCKET_SCREW_DIAMETER_MM,
    dowel_length,
    pocket_screw,
)  # fmt: skip
from baywright.making.hardware.need import Measure, Need, long, thick
from baywright.making.machining.counting import fixing_counts, hole_counts, joint_counts
from baywright.model.catalogue import HardwareKind
from baywright.model.machining import HolePurpose, Joint, Side
from baywright.model.making import Part

_CLAMPS_MM = 5.0
"""By so much a sleeve bolt can be set longer or shorter; common practice, from memory."""
_ENDS = frozenset({Side.START, Side.END})


def joint_needs(frame: Frame, worked: Sequence[Part]) -> list[Need]:
    """What the joints of the parts take besides wood screws, which are ordered together (`screws`)."""
    return [*_tenons(worked), *_dowels(worked), *_pocket_screws(worked), *_connectors(frame, worked)]


def _tenons(worked: Sequence[Part]) -> list[Need]:
    needs = []
    for (thick_mm, long_mm), count in sorted(joint_counts(worked).items()):
        of_size = _mortises(worked, thick_mm)
        in_ends = sum(part.quantity for part, joint in of_size if part.number[0] == "U" and joint.side in _ENDS)
        where = [(in_ends, "in the ends of uprights"), (count - in_ends, "where other boards are joined")]
        note = "; ".join(
            [*(f"{n} {words}" for n, words in where if n > 0), "glued; or as many screws, the simpler way"]
        )
        needs.append(Need(
            number=f"LT{thick_mm}x{long_mm}", kind=HardwareKind.TENON, name="Loose tenon",
            specification=f"{thick_mm} mm thick, {long_mm} mm long", needed=count, pack_size=100, note=note,
            measures=(
                Measure("thickness_mm", thick_mm - 0.1, thick_mm + 0.1, f"of {thick_mm} mm thickness"), long(long_mm),
            ),
        ))  # fmt: skip
    return needs


def _mortises(worked: Sequence[Part], thick_mm: int) -> Iterator[tuple[Part, Joint]]:
    """Every mortise for tenons of that thickness, with its part."""
    return (
        (part, joint) for part in worked for joint in part.machining.joints if round(joint.thick_mm) == thick_mm
    )  # fmt: skip


def _dowels(worked: Sequence[Part]) -> list[Need]:
    needs = []
    counts = hole_counts(worked)
    for diameter in sorted(size for purpose, size in counts if purpose is HolePurpose.DOWEL):
        length = dowel_length(diameter)
        needs.append(Need(
            number=f"DW{diameter:g}x{length}", kind=HardwareKind.DOWEL, name="Dowel, fluted",
            specification=f"{diameter:g} × {length} mm", needed=counts[HolePurpose.DOWEL, diameter] // 2,
            pack_size=100, note="glued", measures=(thick(diameter), long(length)),
        ))  # fmt: skip
    return needs


def _pocket_screws(worked: Sequence[Part]) -> list[Need]:
    counts: Counter[int] = Counter()
    for part in worked:
        pockets = sum(hole.purpose is HolePurpose.POCKET for hole in part.machining.holes)
        counts[pocket_screw(part.thickness_mm)] += part.quantity * pockets
    return [
        Need(
            number=f"PS{length}", kind=HardwareKind.POCKET_SCREW, name="Pocket screw",
            specification=f"{POCKET_SCREW_DIAMETER_MM:g} × {length} mm, flat head", needed=count, pack_size=100,
            measures=(long(length),),
        )
        for length, count in sorted(counts.items())
    ]  # fmt: skip


def _connectors(frame: Frame, worked: Sequence[Part]) -> list[Need]:
    """Bolts that hold neighbouring carcasses together where each bay has its own uprights."""
    through = 2 * frame.upright_mm
    return [Need(
        number="CB", kind=HardwareKind.CONNECTOR, name="Connecting bolt",
        specification=f"sleeve bolt through {through:g} mm", needed=fixing_counts(worked, HolePurpose.BOLT),
        pack_size=20, note="through pairs of uprights that stand side by side",
        measures=(
            Measure("length_mm", through - _CLAMPS_MM, through + _CLAMPS_MM, f"for {through:g} mm", is_needed=False),
        ),
    )]  # fmt: skip
