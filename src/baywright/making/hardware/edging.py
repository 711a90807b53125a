"""Edging by the metre, one line for each board thickness.

Laws: the need is the sum of the parts' edged lengths; the allowance is 50 mm for every strip, for trimming flush, and
10 % of the length (common practice).
"""

from collections.abc import Sequence

from baywright.making.hardware.packing import order
from baywright.model.making import HardwareItem, Part

TRIM_MM = 50.0
WASTE_SHARE = 0.10
ROLL_M = 25.0
_WIDER_MM = 2.0


def edging_order(parts: Sequence[Part]) -> list[HardwareItem]:
    """The edging for the parts, thin boards first."""
    lines = []
    for thickness in sorted({part.thickness_mm for part in parts if part.edging_strips}):
        edged = [part for part in parts if part.thickness_mm == thickness and part.edging_strips]
        needed = sum(part.quantity * part.edged_length_mm for part in edged) / 1000
        strips = sum(part.quantity * part.edging_strips for part in edged)
        lines.append(
            order(
                f"ED{thickness:g}", "Edging",
                f"for {thickness:g} mm boards, at least {thickness + _WIDER_MM:g} mm wide",
                needed, strips * TRIM_MM / 1000 + needed * WASTE_SHARE, "m", ROLL_M,
                f"{strips} strips on {', '.join(dict.fromkeys(p.number for p in edged))}; sizes are finished sizes, "
                "with the edging on",
            )
        )  # fmt: skip
    return lines
