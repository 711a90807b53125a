"""The hardware order: runners by length and load class, fasteners, pins, feet, wall fixings, edging.

Laws: every count follows from the parts and the schedule, so order and cutting list cannot disagree; what is counted,
what is added for loss and what is sold in a pack stand apart. Pack sizes are common practice and no offer of a shop.
"""

from collections import Counter

from baywright.making.boards import joints_in, pieces_of
from baywright.making.drawers import Kinds, drawer_count
from baywright.making.frame import Frame
from baywright.making.hardware.edging import edging_order
from baywright.making.hardware.fasteners import (
    SYSTEM_SCREW_LENGTHS_MM,
    face_screw,
    in_joint,
    in_runner,
    tenon_size,
    wall_fixings,
)  # fmt: skip
from baywright.making.hardware.packing import pieces
from baywright.making.hardware.screws import screw_order
from baywright.making.loads import Loads
from baywright.making.material import mass_kg
from baywright.making.shelves import PINS_PER_SHELF, shelf_count
from baywright.model.construction import Back, Stand, Uprights
from baywright.model.making import HardwareItem, Part
from baywright.model.project import Project
from baywright.workings import Workings

CONNECTORS_PER_MEETING = 4
"""Two near the front edge and two near the rear: common practice."""

_DATA_SHEET = "rated load, closing gap and fixing holes by the maker's data sheet"


def hardware_order(
    project: Project, workings: Workings, frame: Frame, parts: list[Part], loads: Loads, kinds: Kinds
) -> list[HardwareItem]:
    """Every line of the order; lines of which nothing is needed are left out."""
    lines = [
        *_runners(project, workings, loads, kinds),
        *_system_screws(project, workings, parts),
        *screw_order(project, workings, frame, parts),
        *_tenons(project, workings, frame, parts),
        *_connectors(frame),
        *_shelf_pins(project, workings),
        *_feet(project, frame, parts),
        *_wall(project, parts),
        *edging_order(parts),
    ]
    return [line for line in lines if line.needed > 0]


def _runners(project: Project, workings: Workings, loads: Loads, kinds: Kinds) -> list[HardwareItem]:
    room = project.construction.runners.thickness_mm
    lengths = {place: workings.at_kind("runner_length", kind) for place, kind in kinds.items()}
    counts = Counter((lengths[place], load.class_kg) for place, load in loads.items() if lengths[place] > 0)
    highest = max(project.construction.runners.load_classes_kg)
    lines = []
    for length, rated in sorted(counts, key=lambda item: (-item[0], item[1] or float("inf"))):
        code = f"{rated:g}" if rated else f"over{highest:g}"
        words = f"load class {rated:g} kg a pair" if rated else f"load class over {highest:g} kg a pair: to be found"
        lines.append(
            pieces(
                f"RP{length:g}-{code}", "Drawer runner, full extension",
                f"length {length:g} mm, {words}, side-mounted, {room:g} mm a side",
                counts[length, rated], 1, unit="pairs", loss_share=0.0, note=_DATA_SHEET,
            )
        )  # fmt: skip
    return lines


def _system_screws(project: Project, workings: Workings, parts: list[Part]) -> list[HardwareItem]:
    upright = project.boards.upright_mm
    length = face_screw(upright, SYSTEM_SCREW_LENGTHS_MM)
    note = "runners to uprights"
    if length > upright - 1.0:
        note += f"; comes through a {upright:g} mm upright: take shorter screws or through-bolts"
    elif project.construction.uprights is Uprights.SHARED and 2 * length > upright:
        note += "; where two runners face each other at one row of a shared upright use different holes on both sides"
    count = 2 * in_runner(workings.value("runner_length")) * drawer_count(parts)
    return [pieces(f"SS{length}", "System screw", f"6.3 × {length} mm, for 5 mm holes", count, 200, note=note)]


def _tenons(project: Project, workings: Workings, frame: Frame, parts: list[Part]) -> list[HardwareItem]:
    boards = project.boards
    in_end = in_joint(workings.value("upright_depth"))
    uses = [(tenon_size(boards.upright_mm), 2 * in_end * len(frame.uprights), f"{in_end} in each end of an upright")]
    for number, thickness in (("B1", boards.base_mm), ("T1", boards.top_mm)):
        if joints := joints_in(number, parts):
            board = pieces_of(number, parts)[0]
            count = joints * in_joint(board.width_mm)
            uses.append((tenon_size(thickness), count, f"{count} where the {board.name.lower()} is joined"))
    lines = []
    for thick, long in sorted({size for size, _, _ in uses}):
        same = [use for use in uses if use[0] == (thick, long)]
        note = "; ".join([purpose for _, _, purpose in same] + ["glued; or as many screws, the simpler way"])
        count = sum(count for _, count, _ in same)
        lines.append(
            pieces(f"LT{thick}x{long}", "Loose tenon", f"{thick} mm thick, {long} mm long", count, 100, note=note)
        )
    return lines


def _connectors(frame: Frame) -> list[HardwareItem]:
    """Bolts that hold neighbouring carcasses together where each bay has its own uprights."""
    meetings = len(frame.carcasses_mm) - len(frame.sections_mm)
    note = f"{CONNECTORS_PER_MEETING} through each of {meetings} pairs of uprights that stand side by side"
    specification = f"sleeve bolt through {2 * frame.upright_mm:g} mm"
    return [pieces("CB", "Connecting bolt", specification, CONNECTORS_PER_MEETING * meetings, 20, note=note)]


def _shelf_pins(project: Project, workings: Workings) -> list[HardwareItem]:
    count = shelf_count(project, workings)
    note = f"{PINS_PER_SHELF} for each of {count} shelves; load by the maker's data sheet"
    return [pieces("SP5", "Shelf pin", "for 5 mm holes", PINS_PER_SHELF * count, 20, note=note)]


def _feet(project: Project, frame: Frame, parts: list[Part]) -> list[HardwareItem]:
    standing = project.construction.standing
    if standing.kind is not Stand.FEET or standing.height_mm <= 0:
        return []
    count = 2 * len(frame.uprights)
    masses = {box.id: box.loaded_mass_kg or 0.0 for box in project.boxes}
    boards, boxes = mass_kg(parts), sum(masses[placement.box_id] for placement in project.arrangement.placements)
    note = "front and rear under each upright"
    if boards is not None:
        note += (
            f"; boards and weighed boxes are about {(boards + boxes) / count:.0f} kg a foot if evenly spread, so take "
            "feet rated for at least twice that"
        )
    specification = f"adjustable, {standing.height_mm:g} mm high"
    return [pieces("FT", "Foot", specification, count, 4, loss_share=0.0, note=note)]


def _wall(project: Project, parts: list[Part]) -> list[HardwareItem]:
    """What holds the run to the wall: screws through the rail or upper brace, or angles where there is a full back."""
    if not project.space.existing_wall:
        return []
    number = {Back.EXISTING_WALL: "R4", Back.TWO_BRACES: "R2", Back.FULL_BACK: "R1"}[project.construction.rear.kind]
    count = sum(part.quantity * wall_fixings(part.length_mm) for part in pieces_of(number, parts))
    note = "against tipping; kind and length by the wall, which must be looked at first, and by its maker's data sheet"
    lines = [pieces("WF", "Wall fixing", "screw and anchor to suit the wall", count, 10, loss_share=0.0, note=note)]
    if number == "R1":
        angle_note = "on the upper side of the top or inside under it, each with one wall fixing"
        lines.append(pieces("WA", "Wall angle", "steel, about 40 × 40 mm", count, 10, loss_share=0.0, note=angle_note))
    return lines
