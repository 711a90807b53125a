"""Every part of a run with its size, before anything is worked on it: what the saw needs to know.

Law: what cannot exist stays in `listed`, so that it can be told, and out of `parts`.
"""

from dataclasses import dataclass

from baywright.making.carcass import carcass_parts, end_panel_parts
from baywright.making.drawers import Drawers, Kinds, drawer_kinds, drawer_parts, drawers_to_make
from baywright.making.frame import Frame, frame_of
from baywright.making.fronts import front_parts, panels_of
from baywright.making.rear import rear_parts
from baywright.making.shelves import shelf_parts
from baywright.making.stand import stand_parts
from baywright.making.stops import Stops, box_stops, stop_parts
from baywright.model.making import FrontPanel, Part
from baywright.model.project import Project
from baywright.workings import Workings, derive


@dataclass(frozen=True)
class Listing:
    """The parts, and what they were made from."""

    frame: Frame
    drawers: Drawers
    kinds: Kinds
    stops: Stops
    fronts: tuple[FrontPanel, ...]
    listed: tuple[Part, ...]
    """All, also those that have no size left."""

    @property
    def parts(self) -> list[Part]:
        """Those that can be cut."""
        return [part for part in self.listed if can_exist(part)]


def listing_of(project: Project, workings: Workings) -> Listing:
    """The parts of the present arrangement."""
    frame = frame_of(project, workings)
    drawers = drawers_to_make(project)
    kinds = drawer_kinds(project, workings, drawers)
    stops = box_stops(project, workings, drawers, kinds)
    fronts = panels_of(project, workings, drawers, kinds)
    listed = (
        *carcass_parts(project, workings, frame),
        *end_panel_parts(project, workings),
        *stand_parts(project, workings, frame),
        *rear_parts(project, workings, frame),
        *drawer_parts(project, workings, kinds),
        *stop_parts(project, workings, kinds, stops),
        *front_parts(project, fronts),
        *shelf_parts(project, workings),
    )
    return Listing(frame, drawers, kinds, stops, fronts, listed)


def parts_to_cut(project: Project) -> tuple[Part, ...]:
    """The parts of the present arrangement without the work on them; none before anything is arranged."""
    return tuple(listing_of(project, derive(project)).parts) if project.arrangement.bay_count else ()


def can_exist(part: Part) -> bool:
    """Whether a part has a size to be cut to."""
    return min(part.cut_length_mm, part.cut_width_mm, part.thickness_mm) > 0
