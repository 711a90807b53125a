"""What it costs the back to have a box at a row: the goal of easy handling.

The cost of a box in a drawer is *lifts a month × what its lifting index there is over that at the easier edge of the
comfortable band*. The index is that of the revised lifting equation (`baywright.planner.lifting`), the same as the
checks show: mass over the recommended limit, at the drawer and where the box is set down, the greater of both, with the
grip, the turn and the frequency that the owner has set. Between knee and shoulder nothing is counted; that is common
practice, as are both heights and the lifts a month.

The whole equation is needed, not its vertical multiplier alone: with a bench at 900 mm a box 300 mm deep with its grips
at 200 mm has a higher index than at 1,700 mm, though there the hands are farther from the best height of 750 mm. It is
held farther from the body, travels farther and is gripped less well.

This orders places by strain; whether a load is safe to lift is for the checks to say.

Laws: costs are whole numbers (tenths of kg × lifts × 1/250 of an index a kg), so that a proof that none is cheaper
holds exactly; of 10 kg that is 0.04, finer than the one decimal to which the manual works out an index, and coarse
enough that places which differ by nothing to speak of leave the goals that follow a choice. Outside the band a place
costs more than another only where its index is higher. A place where nothing may be lifted at all counts `FORBIDDEN`
times what the formulas, carried on, would give: dear, but still in an order. The reach is that of a box that is not
turned; turning it changes the index, hardly which height is better.
"""

from collections import defaultdict
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache

from baywright.model.inventory import Use
from baywright.model.project import Project
from baywright.model.safety import Safety
from baywright.planner.lifting import (
    LOAD_CONSTANT_KG,
    Coupling,
    Duration,
    Lift,
    carried_on,
    reach_from_width_cm,
    recommended_kg,
)

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
FORBIDDEN = 2.0
"""How many times the carried-on formulas a lift counts that the equation does not allow; our choice."""
UNIT = "index points a month"
"""Hundredths of lifting index over that at the easier edge of the band × lifts a month."""
PER_INDEX = 250.0
"""Whole numbers in one lifting index of a load of 1 kg."""
PER_UNIT = 10.0 * PER_INDEX / 100.0
"""Whole cost numbers in one index point a month; masses are counted in tenths of kg."""


@dataclass(frozen=True, slots=True)
class Habits:
    """How boxes are lifted in this workshop, as far as it decides on what is hard."""

    set_down_mm: float
    twist_degrees: float
    lifts_a_minute: float
    coupling: Coupling


def habits(safety: Safety) -> Habits:
    """What of the owner's assumptions the handling goal rests on."""
    return Habits(
        safety.set_down_height_mm, safety.twist_degrees, safety.lifts_a_minute, Coupling(safety.grip.value)
    )  # fmt: skip


def grip_height_in_box(height_mm: float) -> float:
    """Height in mm of the grips over the underside of a box `height_mm` high."""
    return max(height_mm / 2, height_mm - GRIP_UNDER_RIM_MM)


def ends_of_lift(away_mm: float, height_mm: float, grip_mm: float, how: Habits) -> tuple[Lift, Lift]:
    """Lifting a box out and setting it down. `away_mm` is how far the box reaches away from the body, `height_mm` how
    high it is, `grip_mm` how high its grips are over the floor in its drawer.
    """
    drawer_cm, bench_cm = grip_mm / 10.0, (how.set_down_mm + grip_height_in_box(height_mm)) / 10.0
    origin, destination = (
        Lift(
            reach_from_width_cm(away_mm / 10.0, height_cm), height_cm, abs(bench_cm - drawer_cm), how.twist_degrees,
            how.lifts_a_minute, Duration.SHORT, how.coupling, drawer_cm,
        )
        for height_cm in (drawer_cm, bench_cm)
    )  # fmt: skip
    return origin, destination


@lru_cache(maxsize=8192)
def over_comfort(away_mm: float, height_mm: float, grip_mm: float, how: Habits) -> int:
    """By how much the lifting index of 1 kg with its grips at that height over the floor is over the index at knee or
    shoulder height, whichever is lower, in 1/250; 0 in between, and where it is no higher. Lengths as for
    `ends_of_lift`.
    """
    if KNEE_HEIGHT_MM <= grip_mm <= SHOULDER_HEIGHT_MM:
        return 0
    return max(0, round(PER_INDEX * (_index_a_kg(away_mm, height_mm, grip_mm, how) - _edge(away_mm, height_mm, how))))


@lru_cache(maxsize=1024)
def _edge(away_mm: float, height_mm: float, how: Habits) -> float:
    edges = (KNEE_HEIGHT_MM, SHOULDER_HEIGHT_MM)
    return min(_index_a_kg(away_mm, height_mm, edge, how) for edge in edges)


def _index_a_kg(away_mm: float, height_mm: float, grip_mm: float, how: Habits) -> float:
    return max(_end_index(lift) for lift in ends_of_lift(away_mm, height_mm, grip_mm, how))


def _end_index(lift: Lift) -> float:
    limit = recommended_kg(lift)
    return 1.0 / limit if limit > 0 else FORBIDDEN / (LOAD_CONSTANT_KG * carried_on(lift))


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
