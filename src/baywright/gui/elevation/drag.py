"""A drag is an object: it knows what is carried, where it would land, whether that is legal, and why not.

Laws: it edits nothing; at the end it names at most one command; on an illegal place, on the old place and nowhere it
names none. It knows no widget, so that it can be tested without one.
"""

from dataclasses import dataclass, replace

from PySide6.QtCore import QPointF

from baywright.app.commands import Command
from baywright.app.edits.arrangement import PlaceBox, UnplaceBoxes
from baywright.app.session import Session
from baywright.gui.elevation.captions import place_caption
from baywright.gui.elevation.drawers import DrawerAreas, Span, drawer_areas, drawer_measures
from baywright.gui.elevation.layout import Layout
from baywright.gui.elevation.places import Place
from baywright.gui.elevation.team import Team, spans_of
from baywright.gui.wording import count_words
from baywright.model.plan import Conflict


@dataclass(frozen=True)
class Ghost:
    """What is shown of the box while it is carried."""

    areas: DrawerAreas
    is_legal: bool
    label: str
    message: str
    """In few words: where it would land, or why it cannot."""


class BoxDrag:
    """One drag of a box over the elevation, from taking hold of it to letting go."""

    def __init__(
        self, session: Session, layout: Layout, box_id: str, carried: tuple[str, ...], grip: QPointF | None = None
    ) -> None:
        """`grip`: the pointer's place over the drawer's lower edge and right of its middle, mm; None holds the
        drawer by its middle. `carried` are the boxes that go along onto the tray.
        """
        self._session = session
        self.box_id = box_id
        self.carried = carried if box_id in carried else (box_id,)
        self._layout = layout
        self._frame = layout.frame
        self._box = layout.project.box(box_id)
        self._measures = drawer_measures(layout.project, session.workings, layout.project.size_of(self._box))
        self._grip = grip or QPointF(0.0, self._measures.seat + self._measures.box_height / 2)
        drawer = layout.drawer(box_id)
        self._from: Place | None = (drawer.bay, drawer.row) if drawer else None
        self._known: dict[Place, tuple[Conflict, ...]] = {}
        self._teams: dict[Place, Team] = {}
        self.place: Place | None = None
        self.is_over_tray = False
        self.ghost: Ghost | None = None
        self.message = ""

    @property
    def is_legal(self) -> bool:
        """Whether letting go here would do something, or leave the box where it was on purpose."""
        return self.is_over_tray or (self.place is not None and not self._conflicts(self.place))

    def move_over_bays(self, pointer_mm: QPointF) -> None:
        """The pointer is over the elevation, at that place along the wall and over the floor."""
        self.is_over_tray = False
        frame = self._frame
        bay = frame.bay_at(pointer_mm.x()) if frame else None
        if frame is None or bay is None:
            self._float(pointer_mm)
            return
        row = frame.row_for_lower_edge(pointer_mm.y() - self._grip.y())
        self.hold_at(self._shared((bay, row), pointer_mm))

    def hold_at(self, place: Place) -> None:
        """The box is held at that bay and row."""
        frame = self._frame
        if frame is None or place[0] >= len(frame.bays):
            return
        self.place = bay, row = place
        conflicts = self._conflicts(self.place)
        place_words = place_caption(bay, row)
        team = self._team(self.place) if not conflicts else ()
        shown = self.message = f"Fits at {place_words}{self._company(team)}."
        if conflicts:
            shown = " ".join(conflict.message for conflict in conflicts)
            reasons = " ".join(f"{conflict.message} {conflict.mend}".strip() for conflict in conflicts)
            self.message = f"Cannot stand at {place_words}: {reasons}"
        elif self.place == self._from:
            shown = self.message = f"{place_words.capitalize()}: where it stands now."
        areas = drawer_areas(frame, self._measures, bay, row, span=self._span(team))
        self.ghost = Ghost(areas, not conflicts, self._box.label, shown)

    def _shared(self, place: Place, pointer_mm: QPointF) -> Place:
        """That place, or where it is no legal one the drawer under the pointer, if the box may go into it, too."""
        if not self._conflicts(place):
            return place
        for drawer in self._layout.drawers:
            if drawer.bay == place[0] and drawer.box.id != self.box_id:
                there = (drawer.bay, drawer.row)
                under = drawer.areas.box.bottom <= pointer_mm.y() <= drawer.areas.box.top
                if under and there != self._from and not self._conflicts(there):
                    return there
        return place

    def _team(self, place: Place) -> Team:
        """The boxes that would be in the drawer there, this one included."""
        if place not in self._teams:
            after = PlaceBox(self.box_id, *place).apply(self._session.project)
            self._teams[place] = after.arrangement.drawers[place]
        return self._teams[place]

    def _company(self, team: Team) -> str:
        """Beside or behind whom it would stand; empty where it has a drawer of its own."""
        if len(team) < 2:
            return ""
        index = next(number for number, placement in enumerate(team) if placement.box_id == self.box_id)
        other = self._layout.project.box(team[index - 1 if index else 1].box_id).label
        where = "behind" if team[index].behind else "before" if any(p.behind for p in team) else "beside"
        return f", {where} “{other}”"

    def _span(self, team: Team) -> Span | None:
        if len(team) < 2 and not any(placement.turned for placement in team):
            return None
        project = self._layout.project
        measures = [
            drawer_measures(project, self._session.workings, project.size_of(project.box(p.box_id))) for p in team
        ]
        index = next(number for number, placement in enumerate(team) if placement.box_id == self.box_id)
        return spans_of(team, measures)[index]

    def move_over_tray(self) -> None:
        """The pointer is over the tray of boxes without a drawer."""
        self.place, self.ghost, self.is_over_tray = None, None, True
        if self._placed():
            boxes = count_words(len(self._placed()), "box", "boxes")
            drawer = "its drawer" if len(self._placed()) == 1 else "their drawers"
            self.message = f"Takes {boxes} out of {drawer}."
        else:
            self.message = f"“{self._box.label}” stays without a drawer."

    def move_over_nothing(self) -> None:
        """The pointer is where no box can be put."""
        self.place, self.ghost, self.is_over_tray = None, None, False
        self.message = "No drawer here; the box would go back."

    def command(self) -> Command | None:
        """The one edit that letting go here makes, or None where the box goes back."""
        if self.is_over_tray:
            return UnplaceBoxes(self._placed()) if self._placed() else None
        if self.place is None or self.place == self._from or self._conflicts(self.place):
            return None
        return PlaceBox(self.box_id, *self.place)

    def _placed(self) -> tuple[str, ...]:
        arrangement = self._session.project.arrangement
        return tuple(box_id for box_id in self.carried if arrangement.placement_of(box_id))

    def _conflicts(self, place: Place) -> tuple[Conflict, ...]:
        """Why not there; empty where it can. Asked of the session once a place; staying is always allowed."""
        if place not in self._known:
            self._known[place] = self._session.place_conflicts(self.box_id, *place) if place != self._from else ()
        return self._known[place]

    def _float(self, pointer_mm: QPointF) -> None:
        """Beside the bays the ghost hangs at the pointer."""
        self.place = None
        frame = self._frame
        self.message = "No bay here; drop the box on a bay or on the tray."
        if frame is None:
            self.ghost = None
            return
        if frame.shelf_bay and frame.shelf_bay.left <= pointer_mm.x() <= frame.shelf_bay.right:
            self.message = "The shelf bay has no drawers; drop the box on a bay or on the tray."
        at = drawer_areas(frame, self._measures, 0, 0)
        right = pointer_mm.x() - self._grip.x() - at.outside.centre.x()
        up = pointer_mm.y() - self._grip.y() - at.outside.bottom
        self.ghost = Ghost(_moved(at, right, up), False, self._box.label, self.message)


def _moved(areas: DrawerAreas, right: float, up: float) -> DrawerAreas:
    return replace(
        areas,
        opening=areas.opening.moved(right, up),
        sides=(areas.sides[0].moved(right, up), areas.sides[1].moved(right, up)),
        bottom=areas.bottom.moved(right, up),
        box=areas.box.moved(right, up),
        clearance=areas.clearance.moved(right, up),
        runners=(areas.runners[0].moved(right, up), areas.runners[1].moved(right, up)),
        outside=areas.outside.moved(right, up),
    )
