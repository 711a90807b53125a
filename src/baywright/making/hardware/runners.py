"""Drawer runners and the short screws that hold them to the uprights.

Laws: a runner serves where its length is the drawer's, its rated load no less than asked for, and the room beside the
drawer what it is made for; the rated load is the maker's, and the data sheet decides.
"""

from collections import Counter
from collections.abc import Iterable, Sequence

from baywright.making.drawers import Kinds
from baywright.making.hardware.fasteners import OVER_HOLE_MM, RUNNER_SHEET_MM, runner_screw, system_screw
from baywright.making.hardware.need import Amounts, Measure, Need, long, thick
from baywright.making.loads import Loads
from baywright.making.machining.upright import Fixings
from baywright.model.catalogue import HardwareKind
from baywright.model.construction import Uprights
from baywright.model.making import Part
from baywright.model.project import Project
from baywright.workings import Workings

MOST_SLACK_MM = 1.0
"""By so much the room beside a drawer may be more than the runner's thickness; common practice, from memory."""
_LEAST_SLACK_MM = 0.1
SYSTEM_SCREW_DIAMETER_MM = 6.3
_DATA_SHEET = "rated load, closing gap and fixing holes by the maker's data sheet"


def by_bay(places: Iterable[int], each: float = 1.0) -> Amounts:
    """How much each bay takes where every place takes as much."""
    return tuple((bay, count * each) for bay, count in sorted(Counter(places).items()))


def hung(workings: Workings, kinds: Kinds) -> dict[tuple[int, int], float]:
    """The runner length in mm of every drawer that has runners, by its bay and row."""
    lengths = {place: workings.at_kind("runner_length", kind) for place, kind in kinds.items()}
    return {place: length for place, length in lengths.items() if length > 0}


def runner_needs(project: Project, workings: Workings, loads: Loads, kinds: Kinds) -> list[Need]:
    """The runner pairs, long ones first, then by load class."""
    lengths = hung(workings, kinds)
    groups: dict[tuple[float, float | None], list[tuple[int, int]]] = {}
    for place, length in lengths.items():
        groups.setdefault((length, loads[place].class_kg), []).append(place)
    ordered = sorted(groups, key=lambda item: (-item[0], item[1] or float("inf")))
    return [_pairs(project, length, rated, groups[length, rated], loads) for length, rated in ordered]


def _pairs(
    project: Project, length_mm: float, rated_kg: float | None, places: list[tuple[int, int]], loads: Loads
) -> Need:
    """The pairs of one length and load class."""
    room = project.construction.runners.thickness_mm
    highest = max(project.construction.runners.load_classes_kg)
    code = f"{rated_kg:g}" if rated_kg else f"over{highest:g}"
    carried = rated_kg or max(loads[place].carried_kg or 0.0 for place in places)
    words = f"load class {rated_kg:g} kg a pair" if rated_kg else f"load class over {highest:g} kg a pair: to be found"
    return Need(
        number=f"RP{length_mm:g}-{code}", kind=HardwareKind.RUNNER, name="Drawer runner, full extension",
        specification=f"length {length_mm:g} mm, {words}, side-mounted, {room:g} mm a side",
        needed=len(places), spare=0.0, unit="pairs", note=_on_sides(project),
        measures=(
            long(length_mm),
            Measure("load_class_kg", carried, float("inf"), f"that carries {carried:.4g} kg a pair", "kg"),
            Measure("thickness_mm", room - MOST_SLACK_MM, room + _LEAST_SLACK_MM, f"for {room:g} mm a side"),
        ),
        bays=by_bay(bay for bay, _ in places),
    )  # fmt: skip


def _on_sides(project: Project) -> str:
    """The note on runners, with a word where drawer sides are too thin for a screw."""
    side = project.boards.drawer_side_mm
    if runner_screw(side) < side:
        return _DATA_SHEET
    return f"{_DATA_SHEET}; screws would come through drawer sides only {side:g} mm thick: bolt the runners on instead"


def system_screw_needs(project: Project, fixings: Fixings, worked: Sequence[Part]) -> list[Need]:
    """The screws of the runners' outer members: one for every hole that a runner uses in an upright.

    Their length goes by the shallowest of these holes beside a bay, so that a bay takes screws of one length.
    """
    depths = _hole_depths(worked)
    used: dict[int, Counter[int]] = {}
    shallow: dict[int, float] = {}
    for (bay, _), faces in fixings.items():
        lines = {round(line, 3) for face in faces for line in face}
        here = [deep for line, deep in depths.get(bay, {}).items() if line in lines]
        deep = min(here, default=project.construction.hole_rows.hole_depth_mm)
        length = system_screw(deep)
        used.setdefault(length, Counter())[bay] += sum(map(len, faces))
        shallow[length] = min(deep, shallow.get(length, deep))
    return [_system_screws(project, length, used[length], shallow[length]) for length in sorted(used)]


def _hole_depths(worked: Sequence[Part]) -> dict[int, dict[float, float]]:
    """How deep the row holes of the uprights beside each bay are at least, by the line they are on."""
    found: dict[int, dict[float, float]] = {}
    for part in worked:
        if not part.number.startswith("U"):
            continue
        lines: dict[float, float] = {}
        for hole in part.machining.holes:
            if hole.row is not None:
                line, deep = round(hole.y_mm, 3), hole.depth_mm or part.thickness_mm
                lines[line] = min(deep, lines.get(line, deep))
        for bay in set(part.bays):
            known = found.setdefault(bay, {})
            known.update({line: min(deep, known.get(line, deep)) for line, deep in lines.items()})
    return found


def _system_screws(project: Project, length: int, used: "Counter[int]", least_deep: float) -> Need:
    upright, diameter = project.boards.upright_mm, SYSTEM_SCREW_DIAMETER_MM
    note = "runners to uprights"
    if length - RUNNER_SHEET_MM > upright - 1.0:
        note += f"; comes through a {upright:g} mm upright: take shorter screws or through-bolts"
    elif length > least_deep + OVER_HOLE_MM:
        note += f"; the holes are only {least_deep:g} mm deep: take shorter screws or through-bolts"
    elif project.construction.uprights is Uprights.SHARED and 2 * (length - RUNNER_SHEET_MM) > upright:
        note += "; where two runners face each other at one row of a shared upright use different holes on both sides"
    return Need(
        number=f"SS{length}", kind=HardwareKind.SYSTEM_SCREW, name="System screw",
        specification=f"{diameter:g} × {length} mm, for {project.construction.hole_rows.hole_diameter_mm:g} mm holes",
        needed=used.total(), pack_size=200, note=note, measures=(thick(diameter, 0.3), long(length)),
        bays=tuple(sorted(used.items())),
    )  # fmt: skip
