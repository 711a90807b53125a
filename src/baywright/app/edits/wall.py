"""Edits of the wall: its zones and the points of a sloping ceiling."""

from collections.abc import Callable
from dataclasses import dataclass
from itertools import pairwise

from baywright.app.commands import EditRefused, checked
from baywright.model.identity import free_ids
from baywright.model.project import Project
from baywright.model.space import MOST_ZONES, CeilingPoint, Space, Zone

_PLAIN = {"label": "name", "left_mm": "place", "effect": "effect"}
"""What fields are called in the undo menu where their name is no plain word."""


@dataclass(frozen=True)
class AddZone:
    """Adds a zone after the others."""

    zone: Zone

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return f"Add zone “{self.zone.label}”"

    def apply(self, project: Project) -> Project:
        """The project with the zone; EditRefused where its id is taken or there are too many."""
        return _with_zones(project, (*project.space.zones, self.zone))


@dataclass(frozen=True)
class EditZone:
    """Sets one field of a zone."""

    zone_id: str
    field: str
    value: object

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return f"Change {_PLAIN.get(self.field, self.field.removesuffix('_mm'))} of zone"

    def apply(self, project: Project) -> Project:
        """The project with the field changed; EditRefused where the value is not allowed or the zone is gone."""
        if self.zone_id not in {zone.id for zone in project.space.zones}:
            raise EditRefused("That zone is no longer there.")
        zones = tuple(
            checked(lambda zone=zone: zone.replace(**{self.field: self.value}), self.field)  # type: ignore[misc]
            if zone.id == self.zone_id
            else zone
            for zone in project.space.zones
        )
        return _with_zones(project, zones)


@dataclass(frozen=True)
class DuplicateZones:
    """Makes a copy of each zone right behind it, at the same place."""

    zone_ids: tuple[str, ...]

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return "Duplicate zone" if len(self.zone_ids) == 1 else f"Duplicate {len(self.zone_ids)} zones"

    def apply(self, project: Project) -> Project:
        """The project with the copies; EditRefused where there would be too many."""
        ids = free_ids("zone", [zone.id for zone in project.space.zones])
        zones: list[Zone] = []
        for zone in project.space.zones:
            zones.append(zone)
            if zone.id in self.zone_ids:
                zones.append(zone.replace(id=next(ids)))
        return _with_zones(project, tuple(zones))


@dataclass(frozen=True)
class RemoveZones:
    """Removes zones; the run may stand there again."""

    zone_ids: tuple[str, ...]

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return "Remove zone" if len(self.zone_ids) == 1 else f"Remove {len(self.zone_ids)} zones"

    def apply(self, project: Project) -> Project:
        """The project without the zones."""
        return _with_zones(project, tuple(z for z in project.space.zones if z.id not in self.zone_ids))


@dataclass(frozen=True)
class AddCeilingPoint:
    """Adds a point in the widest gap between points, on the line there; where there is none yet, one at each end of
    the wall at the height limit. So adding changes no limit.
    """

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return "Add point of the ceiling"

    def apply(self, project: Project) -> Project:
        """The project with the point; EditRefused where there are too many."""
        space = project.space
        points = space.ceiling
        if not points:
            ends = (0.0, space.length_mm)
            return _with_ceiling(
                project, tuple(CeilingPoint(along_mm=along, height_mm=space.height_limit_mm) for along in ends)
            )
        if len(points) == 1:
            along = space.length_mm if points[0].along_mm < space.length_mm else 0.0
            return _with_ceiling(project, (*points, points[0].replace(along_mm=along)))
        left, right = max(pairwise(points), key=lambda pair: pair[1].along_mm - pair[0].along_mm)
        middle = CeilingPoint(
            along_mm=(left.along_mm + right.along_mm) / 2, height_mm=(left.height_mm + right.height_mm) / 2
        )
        return _with_ceiling(project, (*points, middle))


@dataclass(frozen=True)
class EditCeilingPoint:
    """Sets one field of a point, which is named by its number from the left, from 0."""

    number: int
    field: str
    value: object

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return "Change place of the ceiling's point" if self.field == "along_mm" else "Change height of the ceiling"

    def apply(self, project: Project) -> Project:
        """The project with the field changed and the points in order; EditRefused where the value is not allowed."""
        points = list(project.space.ceiling)
        if not 0 <= self.number < len(points):
            raise EditRefused("That point of the ceiling is no longer there.")
        points[self.number] = checked(lambda: points[self.number].replace(**{self.field: self.value}), self.field)
        return _with_ceiling(project, tuple(points))


@dataclass(frozen=True)
class RemoveCeilingPoints:
    """Removes points by their numbers; without any the ceiling limits nothing."""

    numbers: tuple[int, ...]

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return "Remove point of the ceiling" if len(self.numbers) == 1 else "Remove points of the ceiling"

    def apply(self, project: Project) -> Project:
        """The project without the points."""
        kept = tuple(point for number, point in enumerate(project.space.ceiling) if number not in self.numbers)
        return _with_ceiling(project, kept)


def _with_zones(project: Project, zones: tuple[Zone, ...]) -> Project:
    if len(zones) > MOST_ZONES:
        raise EditRefused(f"A wall can have at most {MOST_ZONES} zones; remove one first.")
    return _with_space(project, lambda: project.space.replace(zones=zones))


def _with_ceiling(project: Project, points: tuple[CeilingPoint, ...]) -> Project:
    if len(points) > MOST_ZONES:
        raise EditRefused(f"A ceiling can have at most {MOST_ZONES} points; remove one first.")
    in_order = tuple(sorted(points, key=lambda point: point.along_mm))
    if any(left.along_mm == right.along_mm for left, right in pairwise(in_order)):
        raise EditRefused("There is a point of the ceiling at that place already; each needs a place of its own.")
    return _with_space(project, lambda: project.space.replace(ceiling=in_order))


def _with_space(project: Project, change: Callable[[], Space]) -> Project:
    return project.replace(space=checked(change))
