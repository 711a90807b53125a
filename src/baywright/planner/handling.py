"""What it costs the back to have a box at a row: the goal of easy handling.

The cost of a box in a drawer is *loaded mass × lifts a month × how far its grips lie outside the comfortable band*,
in kg·m a month. Between knee and shoulder nothing is counted. Outside, the cost grows with the distance, after the
vertical multiplier of the revised lifting equation, VM = 1 − 0.003·|V − 75 cm|, which takes the same share of the
recommended load off for every centimetre up or down (Waters, Putz-Anderson, Garg, *Applications Manual for the
Revised NIOSH Lifting Equation*, DHHS (NIOSH) 94-110; read second-hand). That multiplier falls from 75 cm on;
not to count anything between knee and shoulder is common practice, and so are the heights and the lifts below.

This orders places by strain; it says nothing about whether a load is safe to lift.

Law: costs are whole numbers (0.1 kg × lifts × mm), so that a proof that none is cheaper holds exactly.
"""

from collections import defaultdict
from collections.abc import Mapping

from baywright.model.inventory import Use
from baywright.model.project import Project

KNEE_HEIGHT_MM = 500.0
"""Lower edge of the comfortable band over the floor; common practice."""
SHOULDER_HEIGHT_MM = 1400.0
"""Upper edge of the comfortable band over the floor; common practice."""
GRIP_UNDER_RIM_MM = 40.0
"""How far the grips of a box lie under its upper edge (never under half its height); common practice."""
LIFTS_A_MONTH: Mapping[Use, int] = {Use.DAILY: 20, Use.WEEKLY: 4, Use.SELDOM: 1}
"""How often a box is taken out in a month of about twenty working days; common practice."""
DENSITY_KG_PER_LITRE = 0.35
"""Loaded mass per litre of a box's outside volume where no box was weighed; common practice, a box of mixed tools."""
UNIT = "kg·m a month"
PER_UNIT = 10_000.0
"""Whole cost numbers in one kg·m a month."""


def grip_height_in_box(height_mm: float) -> float:
    """Height in mm of the grips over the underside of a box `height_mm` high."""
    return max(height_mm / 2, height_mm - GRIP_UNDER_RIM_MM)


def outside_band(grip_height_mm: float) -> int:
    """How many whole mm grips at that height over the floor lie under the knee or over the shoulder."""
    return round(max(0.0, KNEE_HEIGHT_MM - grip_height_mm, grip_height_mm - SHOULDER_HEIGHT_MM))


def weight(mass_kg: float, use: Use) -> int:
    """Mass and use as one whole number: tenths of kg × lifts a month; at least 1, so that nothing counts as nothing."""
    return max(1, round(mass_kg * 10)) * LIFTS_A_MONTH[use]


def masses(project: Project) -> dict[str, float]:
    """The loaded mass in kg that each box counts with; where none was entered, an assumption.

    Assumed is the mean of the weighed boxes of that size, else the mean mass per litre of all weighed boxes times
    the box's volume, else `DENSITY_KG_PER_LITRE` times it. Never silently nothing.
    """
    litres = {size.id: size.width_mm * size.depth_mm * size.height_mm / 1e6 for size in project.box_sizes}
    weighed: dict[str, list[float]] = defaultdict(list)
    for box in project.boxes:
        if box.loaded_mass_kg is not None:
            weighed[box.size_id].append(box.loaded_mass_kg)
    volume = sum(litres[size_id] * len(known) for size_id, known in weighed.items())
    density = sum(map(sum, weighed.values())) / volume if volume else DENSITY_KG_PER_LITRE
    found: dict[str, float] = {}
    for box in project.boxes:
        if box.loaded_mass_kg is not None:
            found[box.id] = box.loaded_mass_kg
        elif known := weighed.get(box.size_id):
            found[box.id] = sum(known) / len(known)
        else:
            found[box.id] = density * litres[box.size_id]
    return found


def assumption(project: Project) -> str:
    """One sentence on boxes that were not weighed, with what they count as; empty where all were."""
    unweighed = [box for box in project.boxes if box.loaded_mass_kg is None]
    if not unweighed:
        return ""
    assumed = masses(project)
    shown = ", ".join(f"“{box.label}” {assumed[box.id]:.1f} kg" for box in unweighed[:3])
    more = f" and {len(unweighed) - 3} more" if len(unweighed) > 3 else ""
    noun = "1 box has no mass entered and counts" if len(unweighed) == 1 else (
        f"{len(unweighed)} boxes have no mass entered and count")  # fmt: skip
    return (
        f"{noun} for handling with an assumed one ({shown}{more}): the mean of the weighed boxes of its size, else by "
        f"volume. Weigh what matters."
    )
