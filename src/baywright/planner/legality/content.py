"""What is wrong with what stands in one drawer: too wide, too deep, too heavy, or not to be together.

Laws: a drawer is judged as it is, at its bay and row; each finding is an inequality needed > available in the owner's
words, or says which permission is missing. What would be well if the boxes stood in another way is told as that.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from baywright.model.inventory import Box, BoxSize
from baywright.model.length import format_length, shown_up
from baywright.model.plan import Conflict, LimitKind
from baywright.planner.framing.bay import Face, zone_depth
from baywright.planner.framing.fitting import Fitting, Room, Stand, is_orderly, may_abreast, may_behind
from baywright.workings import Workings


@dataclass(frozen=True)
class Spot:
    """A drawer of a bay: `zone_mm` is what zones of the wall take from its depth."""

    bay: int
    row: int
    room: Room
    zone_mm: float = 0.0

    def words(self) -> str:
        """Where it is, for people."""
        return f"at row {self.row + 1} of bay {self.bay + 1}"


class Contents:
    """Judges what stands in the drawers of one project."""

    def __init__(self, fitting: Fitting, workings: Workings) -> None:
        self._fitting = fitting
        self._workings = workings
        self._project = fitting.project

    def spot(self, face: Face, bay: int, row: int, rows: int) -> Spot:
        """A drawer of so many rows at a row of a bay."""
        zone = zone_depth(self._workings, face, row, rows)
        return Spot(bay, row, self._fitting.room(face.box_width_mm, zone), zone)

    def as_could_be(self, boxes: Sequence[Box], spot: Spot) -> tuple[Conflict, ...]:
        """Why these boxes cannot be in that drawer however they stand; empty where they can."""
        sizes = [self._project.size_of(box) for box in boxes]
        if (stands := self._fitting.stands(sizes, spot.room)) is not None:
            return self._loads(boxes, spot)
        alone = [c for box in boxes if (c := self._alone(box, spot)) is not None]
        stands = tuple(Stand(place) for place in range(len(boxes)))
        return (*(alone or self._together(boxes, sizes, spot, stands)), *self._loads(boxes, spot))

    def as_they_stand(self, boxes: Sequence[Box], stands: Sequence[Stand], spot: Spot) -> tuple[Conflict, ...]:
        """What is wrong with boxes in a drawer the way they stand there."""
        sizes = [self._project.size_of(box) for box in boxes]
        is_well = is_orderly(sizes, stands) and self._fitting.goes_in(self._fitting.extent(sizes, stands), spot.room)
        if is_well:
            return self._loads(boxes, spot)
        if self._fitting.stands(sizes, spot.room) is None:
            return self.as_could_be(boxes, spot)
        return (self._otherwise(boxes, spot), *self._loads(boxes, spot))

    def _otherwise(self, boxes: Sequence[Box], spot: Spot) -> Conflict:
        """They could be in the drawer, but not as they stand."""
        if len(boxes) == 1:
            box = boxes[0]
            return Conflict(
                kind=LimitKind.PLACE, box_ids=(box.id,),
                message=f"“{box.label}” does not fit {spot.words()} the way it stands there, but turned it does.",
                mend="Turn it by a quarter.",
            )  # fmt: skip
        return Conflict(
            kind=LimitKind.PLACE, box_ids=tuple(box.id for box in boxes),
            message=f"{names(boxes)} share the drawer {spot.words()}; they fit, but not the way they stand there.",
            mend="Put one of them into the drawer again, or plan again.",
        )  # fmt: skip

    def _alone(self, box: Box, spot: Spot) -> Conflict | None:
        """Why a box does not even go into the drawer alone."""
        size, room = self._project.size_of(box), spot.room
        if self._fitting.stands([size], room) is not None:
            return None
        if size.width_mm > room.box_width_mm and not (size.may_turn and size.depth_mm <= room.box_width_mm):
            return self._too_wide(box, size, spot)
        return self._too_deep(box, size, spot)

    def _too_wide(self, box: Box, size: BoxSize, spot: Spot) -> Conflict:
        across = min(size.width_mm, size.depth_mm) if size.may_turn else size.width_mm
        turned = ", however it is turned" if size.may_turn else ""
        return Conflict(
            kind=LimitKind.BOX_WIDTH, box_ids=(box.id,),
            message=f"“{box.label}” is {self._mm(across)} wide{turned}; bay {spot.bay + 1} is made for boxes "
            f"{self._mm(spot.room.box_width_mm)} wide.",
            mend="Choose a bay for wider boxes.",
            needed=across, available=spot.room.box_width_mm, unit="mm",
        )  # fmt: skip

    def _too_deep(self, box: Box, size: BoxSize, spot: Spot) -> Conflict:
        along = size.depth_mm
        if size.may_turn and size.depth_mm <= spot.room.box_width_mm:
            along = min(along, size.width_mm) if size.width_mm <= spot.room.box_width_mm else size.width_mm
        needed, inside = along + self._fitting.stop_mm, spot.room.inside_mm
        if spot.zone_mm:
            return Conflict(
                kind=LimitKind.ZONE, box_ids=(box.id,),
                message=f"“{box.label}” needs {self._mm(needed)} of depth in its drawer; {spot.words()}, in front of "
                f"what stands {self._mm(spot.zone_mm)} out from the wall, there are {self._mm(inside)}.",
                mend="Choose a place that is not in front of it.",
                needed=needed, available=inside, unit="mm",
            )  # fmt: skip
        return Conflict(
            kind=LimitKind.DEPTH, box_ids=(box.id,),
            message=f"“{box.label}” is {self._mm(along)} deep and needs {self._mm(needed)} in the drawer; with "
            f"{self._mm(spot.room.runner_mm)} runners there are {self._mm(inside)} inside.",
            mend=f"Take runners of {self._least(spot.room.runner_mm + needed - inside)} or more, and make the space "
            "deep enough for them.",
            needed=needed, available=inside, unit="mm",
        )  # fmt: skip

    # Several boxes

    def _together(
        self, boxes: Sequence[Box], sizes: Sequence[BoxSize], spot: Spot, stands: Sequence[Stand]
    ) -> tuple[Conflict, ...]:
        """Why boxes that go in one by one do not go in together."""
        ids, called = tuple(box.id for box in boxes), names(boxes)
        if not may_abreast(sizes) and not may_behind(sizes):
            return (self._not_allowed(boxes, sizes, spot),)
        if may_abreast(sizes):
            across = self._fitting.extent(sizes, stands).across_mm
            if across > spot.room.box_width_mm or not may_behind(sizes):
                return (Conflict(
                    kind=LimitKind.BOX_WIDTH, box_ids=ids,
                    message=f"{called} are {self._mm(across)} wide side by side, with the air between them; bay "
                    f"{spot.bay + 1} is made for boxes {self._mm(spot.room.box_width_mm)} wide.",
                    mend="Put one of them into another drawer.",
                    needed=across, available=spot.room.box_width_mm, unit="mm",
                ),)  # fmt: skip
        files = tuple(Stand(0, place) for place in range(len(boxes)))
        along = self._fitting.extent(sizes, files).along_mm
        return (Conflict(
            kind=LimitKind.ZONE if spot.zone_mm else LimitKind.DEPTH, box_ids=ids,
            message=f"{called} need {self._mm(along)} one behind another; the drawer {spot.words()} has "
            f"{self._mm(spot.room.inside_mm)} inside.",
            mend="Put one of them into another drawer.",
            needed=along, available=spot.room.inside_mm, unit="mm",
        ),)  # fmt: skip

    def _not_allowed(self, boxes: Sequence[Box], sizes: Sequence[BoxSize], spot: Spot) -> Conflict:
        count = len(boxes)
        strict = min(zip(sizes, boxes, strict=True), key=lambda s: max(s[0].most_abreast, s[0].most_behind))[0]
        most = max(strict.most_abreast, strict.most_behind)
        if most < count:
            allowed = "must have a drawer of its own" if most == 1 else f"may share a drawer with {most - 1} other"
            why = f"“{strict.name}” {allowed}"
        else:
            most = count - 1
            why = "some of them may only stand side by side, others only one behind another"
        return Conflict(
            kind=LimitKind.PLACE, box_ids=tuple(box.id for box in boxes),
            message=f"{names(boxes)} cannot share the drawer {spot.words()}: {why}.",
            mend="Choose another row, or allow more boxes in a drawer for that size.",
            needed=count, available=most, unit="boxes",
        )  # fmt: skip

    def _loads(self, boxes: Sequence[Box], spot: Spot) -> tuple[Conflict, ...]:
        left = spot.room.left_kg / len(boxes)
        own = self._fitting.strongest_kg - spot.room.left_kg
        heavy = [box for box in boxes if box.loaded_mass_kg is not None and box.loaded_mass_kg > left + 1e-9]
        part = "" if len(boxes) == 1 else f", {left:.1f} kg for each of {len(boxes)} boxes"
        return tuple(
            Conflict(
                kind=LimitKind.LOAD, box_ids=(box.id,),
                message=f"“{box.label}” has a loaded mass of {box.loaded_mass_kg:g} kg; the strongest runners in the "
                f"list carry {self._fitting.strongest_kg:g} kg a pair, with a drawer of {own:.1f} kg that leaves "
                f"{spot.room.left_kg:.1f} kg{part}.",
                mend="Make the box lighter, or add a stronger load class that the runners' maker states."
                if len(boxes) == 1 else "Put one of the boxes into another drawer.",
                needed=box.loaded_mass_kg, available=left, unit="kg",
            )
            for box in heavy
        )  # fmt: skip

    def _mm(self, length_mm: float) -> str:
        return format_length(length_mm, self._project.unit)

    def _least(self, length_mm: float) -> str:
        return format_length(shown_up(length_mm, self._project.unit), self._project.unit)


def names(boxes: Sequence[Box]) -> str:
    """“A”, “B” and “C”."""
    quoted = [f"“{box.label}”" for box in boxes]
    return quoted[0] if len(quoted) == 1 else f"{', '.join(quoted[:-1])} and {quoted[-1]}"
