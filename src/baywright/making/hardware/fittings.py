"""Shelf pins, feet, and what holds the run to the wall.

Laws: the wall must be looked at first; which fixing holds in it is the maker's data sheet's to say.
"""

from collections.abc import Sequence

from baywright.making.boards import pieces_of
from baywright.making.frame import SHELF_BAY, Frame
from baywright.making.hardware.fasteners import wall_fixings
from baywright.making.hardware.need import Measure, Need, thick
from baywright.making.listing import can_exist
from baywright.making.machining.counting import fixing_counts
from baywright.making.machining.rear import wall_places_mm
from baywright.making.material import mass_kg
from baywright.making.rear import rear_parts
from baywright.making.shelves import PINS_PER_SHELF, shelf_count
from baywright.model.catalogue import HardwareKind
from baywright.model.construction import Back, Stand
from baywright.model.machining import HolePurpose
from baywright.model.making import Part
from baywright.model.project import Project
from baywright.workings import Workings

_ADJUSTS_MM = 10.0
"""By so much a foot can be screwed up or down at least; common practice, from memory."""
_SPREAD_UNEVENLY = 2.0
"""A foot should bear so many times its even share of the mass: the floor is never even."""


def pin_needs(project: Project, workings: Workings) -> list[Need]:
    """The pins that the shelves lie on."""
    count = shelf_count(project, workings)
    diameter = project.construction.hole_rows.hole_diameter_mm
    note = f"{PINS_PER_SHELF} for each of {count} shelves; load by the maker's data sheet"
    needed = PINS_PER_SHELF * count
    return [Need(
        number=f"SP{diameter:g}", kind=HardwareKind.PIN, name="Shelf pin", specification=f"for {diameter:g} mm holes",
        needed=needed, pack_size=20, note=note, measures=(thick(diameter),), bays=((SHELF_BAY, needed),),
    )]  # fmt: skip


def foot_needs(project: Project, frame: Frame, parts: Sequence[Part]) -> list[Need]:
    """Two feet under every upright, where the run stands on feet."""
    standing = project.construction.standing
    if standing.kind is not Stand.FEET or standing.height_mm <= 0:
        return []
    count, height = 2 * len(frame.uprights), standing.height_mm
    masses = {box.id: box.loaded_mass_kg or 0.0 for box in project.boxes}
    boards_kg = mass_kg(parts)
    note = "front and rear under each upright; "
    measures = [
        Measure("length_mm", height - _ADJUSTS_MM, height + _ADJUSTS_MM, f"{height:g} mm high", is_needed=False)
    ]
    if boards_kg is None:
        note += "how heavy the boards are, is not known: take feet rated for at least twice their share of the mass"
    else:
        each = (boards_kg + sum(masses[placement.box_id] for placement in project.arrangement.placements)) / count
        rated = _SPREAD_UNEVENLY * each
        note += f"boards and weighed boxes are about {each:.0f} kg a foot if evenly spread, so take feet rated for at "
        note += "least twice that"
        words = f"that carries {rated:.0f} kg"
        measures.append(Measure("load_class_kg", rated, float("inf"), words, "kg", is_needed=False))
    return [Need(
        number="FT", kind=HardwareKind.FOOT, name="Foot", specification=f"adjustable, {height:g} mm high",
        needed=count, spare=0.0, pack_size=4, note=note, measures=tuple(measures),
    )]  # fmt: skip


def wall_needs(project: Project, parts: Sequence[Part], worked: Sequence[Part]) -> list[Need]:
    """What holds the run to the wall: screws through the rail or upper brace, or angles where there is a full back."""
    if not project.space.existing_wall:
        return []
    has_back = project.construction.rear.kind is Back.FULL_BACK
    count = _along_back(parts) if has_back else fixing_counts(worked, HolePurpose.WALL)
    note = "against tipping; kind and length by the wall, which must be looked at first, and by its maker's data sheet"
    needs = [Need(
        number="WF", kind=HardwareKind.WALL_FIXING, name="Wall fixing",
        specification="screw and anchor to suit the wall", needed=count, spare=0.0, pack_size=10, note=note,
    )]  # fmt: skip
    if has_back:
        needs.append(Need(
            number="WA", kind=HardwareKind.WALL_ANGLE, name="Wall angle", specification="steel, about 40 × 40 mm",
            needed=count, spare=0.0, pack_size=10,
            note="on the upper side of the top or inside under it, each with one wall fixing",
        ))  # fmt: skip
    return needs


def wall_fixing_count(project: Project, workings: Workings, frame: Frame) -> int:
    """How many wall fixings are needed, without the rest of the order: as many as `wall_needs` counts."""
    if not project.space.existing_wall:
        return 0
    rails = [part for part in rear_parts(project, workings, frame) if can_exist(part)]
    if project.construction.rear.kind is Back.FULL_BACK:
        return _along_back(rails)
    uprights = [(upright.left_mm, upright.left_mm + frame.upright_mm) for upright in frame.uprights]
    return sum(
        len(wall_places_mm(left, rail.length_mm, _crossed(left, left + rail.length_mm, uprights)))
        for rail in rails
        if not rail.number.startswith("R3")
        for left in rail.lefts_mm
    )


def _along_back(parts: Sequence[Part]) -> int:
    return sum(part.quantity * wall_fixings(part.length_mm) for part in pieces_of("R1", parts))


def _crossed(left_mm: float, right_mm: float, uprights: Sequence[tuple[float, float]]) -> list[tuple[float, float]]:
    return [(low, high) for low, high in uprights if min(right_mm, high) - max(left_mm, low) > 1e-6]
