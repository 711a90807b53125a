"""A document without some of its limits.

Laws: a limit that is left out is left out wholly, and leaving out more never takes a plan away. So nothing takes the
place of a limit that could bind in its stead: a wall, a height, a depth that is left out becomes as large as the boxes
could ever use; a bay whose own number of drawers is left out may have any number, not the run's; a bay whose own rows
are left out has as many as it or the run may have; a width that is left out is the planner's to choose among those
that the document names.
"""

from collections.abc import Iterable
from math import ceil, floor

from baywright.model.arrangement import Lock
from baywright.model.inventory import BoxStatus
from baywright.model.limits import MOST_BAY_WIDTHS, MOST_BAYS, MOST_ROWS, BayWish, Limits
from baywright.model.project import Project
from baywright.model.space import HIGHEST_LIMIT_MM, LONGEST_WALL_MM, Space, ZoneEffect
from baywright.planner.reasons import limits as paths
from baywright.planner.reasons.question import Reading

DEEPEST_MM = 5_000.0
_PLAIN: dict[str, tuple[str, object]] = {
    paths.ROWS: ("upright_rows", None),
    paths.BAYS: ("bay_count", None),
    paths.DRAWERS: ("drawers_per_bay", None),
    paths.WORKTOP_LEAST: ("worktop_least_mm", None),
    paths.WORKTOP_MOST: ("worktop_most_mm", None),
    paths.SPARE: ("spare_rows", 0),
    paths.SHELF: ("shelf_bay_clear_width_mm", None),
}


class Relaxer:
    """Makes relaxed documents of one document; reads it once."""

    def __init__(self, reading: Reading) -> None:
        self._reading = reading
        self._project = reading.project

    def without(self, left_out: Iterable[str]) -> Project:
        """The document without the limits at those paths."""
        out = frozenset(left_out)
        if not out:
            return self._project
        project = self._without_wishes(out)
        changes: dict[str, object] = {"space": self._space(out), "limits": project}
        if any(path.startswith("arrangement.") for path in out):
            changes["arrangement"] = self._unlocked(out)
        if paths.RUNNER in out:
            construction = self._project.construction
            changes["construction"] = construction.replace(runners=construction.runners.replace(length_mm=None))
        if any(path.startswith("boxes[") for path in out):
            changes["boxes"] = tuple(
                box.replace(status=BoxStatus.ELSEWHERE) if paths.status_path(box.id) in out else box
                for box in self._project.boxes
            )
        built = self._project.built
        if paths.BUILT in out:
            changes["built"] = None
        elif built is not None:
            relaxed = self._project.replace(**changes)
            changes["built"] = built.replace(project=_as_relaxed(built.project, relaxed, out))
        return self._project.replace(**changes)

    def _unlocked(self, out: frozenset[str]) -> object:
        arrangement = self._project.arrangement
        return arrangement.replace(
            placements=tuple(
                p.replace(lock=Lock.NONE) if paths.lock_path(p.box_id) in out else p for p in arrangement.placements
            )
        )

    def _without_wishes(self, out: frozenset[str]) -> Limits:
        limits = self._project.limits
        changes: dict[str, object] = {field: value for path, (field, value) in _PLAIN.items() if path in out}
        changes["bays"] = tuple(self._wish(bay, wish, out) for bay, wish in enumerate(limits.bays))
        widths = dict.fromkeys(limits.other_box_widths_mm)
        if paths.WIDTH in out:
            changes["bay_box_width_mm"] = None
            is_mixed = bool(limits.other_box_widths_mm)  # then narrow bays beside wide ones hold more than wide alone
            if limits.bay_box_width_mm is not None and (self._may_share or is_mixed):
                widths |= {limits.bay_box_width_mm: None}
        for bay, wish in enumerate(limits.bays):
            own = wish.box_width_mm
            if own is not None and paths.bay_path(bay, "box_width_mm") in out and self._is_of_use(own):
                widths |= {own: None}
        changes["other_box_widths_mm"] = tuple(widths)[:MOST_BAY_WIDTHS]
        return limits.replace(**changes)

    def _is_of_use(self, width_mm: float) -> bool:
        """Whether bays of that width could serve where those of the ordinary width do not: narrower ones take less
        wall, wider ones may hold wider boxes, or more of them.
        """
        ordinary = self._reading.workings.value("bay_box_width")
        sizes = self._project.box_sizes
        is_too_wide = any(max(size.width_mm, size.depth_mm * size.may_turn) > ordinary for size in sizes)
        return width_mm < ordinary or self._may_share or is_too_wide

    @property
    def _may_share(self) -> bool:
        return any(size.most_abreast > 1 for size in self._project.box_sizes)

    def _wish(self, bay: int, wish: BayWish, out: frozenset[str]) -> BayWish:
        limits = self._project.limits
        changes: dict[str, object] = {}
        if paths.bay_path(bay, "box_width_mm") in out:
            changes["box_width_mm"] = None
        if paths.bay_path(bay, "drawers") in out:
            is_limited = limits.drawers_per_bay is not None and paths.DRAWERS not in out
            changes["drawers"] = MOST_ROWS if is_limited else None
        if wish.rows is not None and paths.bay_path(bay, "rows") in out:
            fixed = limits.upright_rows if paths.ROWS not in out else None
            higher = max(wish.rows, fixed or 0)
            fits = higher <= self._reading.grid.rows_that_fit or paths.HEIGHT in out
            changes["rows"] = higher if fixed is not None and fits else None
        return wish.replace(**changes) if changes else wish

    def _space(self, out: frozenset[str]) -> Space:
        space = self._project.space
        changes: dict[str, object] = {}
        if paths.CEILING in out:
            changes["ceiling"] = ()
        changes["zones"] = tuple(zone for zone in space.zones if paths.zone_path(zone.id) not in out)
        if paths.WALL in out:
            changes["length_mm"] = max(space.length_mm, min(LONGEST_WALL_MM, self._ample_length()))
        if paths.HEIGHT in out:
            changes["height_limit_mm"] = max(space.height_limit_mm, min(HIGHEST_LIMIT_MM, self._ample_height()))
        if paths.DEPTH in out:
            changes["depth_mm"] = max(space.depth_mm, min(DEEPEST_MM, self._ample_depth()))
        return space.replace(**changes)

    def _ample_length(self) -> float:
        """Wall for a bay of its own, of the widest kind, for every box, every row to stay free and every lock, beyond
        all zones and wherever the ceiling slopes.
        """
        project, w = self._project, self._reading.workings
        limits = project.limits
        placed = len(project.boxes_to_place)
        locked = max((p.bay + 1 for p in project.arrangement.placements if p.lock is not Lock.NONE), default=0)
        asked = placed + locked + len(limits.bays) + (limits.bay_count or 0) + self._bays_to_stay_free()
        bays = min(MOST_BAYS, asked)
        widest = max(
            [w.value("bay_box_width"), *(s.width_mm for s in project.box_sizes), *limits.other_box_widths_mm]
            + [wish.box_width_mm for wish in limits.bays if wish.box_width_mm is not None]
        )
        pitch = w.value("bay_pitch") + widest - w.value("bay_box_width")
        space = project.space
        ends = max(
            [0.0, *(zone.right_mm for zone in space.zones if zone.right_mm < LONGEST_WALL_MM)]
            + [point.along_mm for point in space.ceiling]
        )
        around = project.space.length_mm - w.value("room_for_run") + 4 * w.value("upright_thickness")
        return around + ends + (bays + 1) * pitch + (limits.shelf_bay_clear_width_mm or 0.0)

    def _bays_to_stay_free(self) -> int:
        """Bays that have the rows to stay free even where the room is lowest."""
        space, grid = self._project.space, self._reading.grid
        lows = [zone.bottom_mm for zone in space.zones if zone.effect is ZoneEffect.END_BELOW]
        lowest = min([space.height_limit_mm, *lows, *(point.height_mm for point in space.ceiling)])
        inside = lowest - grid.floor_mm - self._reading.workings.value("top_thickness")
        rows = floor(inside / grid.pitch_mm) - grid.lowest - 1  # one less than there may be
        return ceil(self._project.limits.spare_rows / max(1, rows))

    def _ample_height(self) -> float:
        """Height for all boxes over one another, and for every lock, every number of rows that is fixed."""
        project, grid = self._project, self._reading.grid
        limits = project.limits
        rows = grid.lowest + 2 + sum(grid.sizes[box.size_id].rows for box in project.boxes_to_place)
        rows += max((p.row + 1 for p in project.arrangement.placements if p.lock is Lock.DRAWER), default=0)
        rows = max([rows + limits.spare_rows, limits.upright_rows or 0, *(wish.rows or 0 for wish in limits.bays)])
        height = grid.floor_mm + grid.upright_mm(min(MOST_ROWS, rows)) + self._reading.workings.value("top_thickness")
        return max(height, (limits.worktop_least_mm or 0.0) + grid.pitch_mm)  # in whole rows it may be a little higher

    def _ample_depth(self) -> float:
        """Depth for the runner that the deepest box or file of boxes needs, or the one that is set, before the deepest
        zone; no more, for a longer drawer is heavier.
        """
        project, w = self._project, self._reading.workings
        runners = project.construction.runners
        rails = 2 * w.value("drawer_side_thickness")
        sizes = [project.size_of(box) for box in project.boxes_to_place]
        stop = w.value("stop")
        needed = max((size.most_behind * (size.depth_mm + stop) for size in sizes), default=0.0) + rails
        zones = max((zone.depth_mm for zone in project.space.zones), default=0.0)
        enough = [length for length in sorted(runners.lengths_mm) if length >= needed]
        length = max(enough[0] if enough else max(runners.lengths_mm), runners.length_mm or 0.0)
        return project.space.depth_mm - w.value("runner_room") + zones + length


def _as_relaxed(stood: Project, relaxed: Project, out: frozenset[str]) -> Project:
    """What stands, as it would stand without the limits left out, so that it still stands where those bays would: a
    door that is left out moves both, or neither could be compared.
    """
    space, zones = stood.space, {zone.id for zone in relaxed.space.zones}
    changes: dict[str, object] = {
        "zones": tuple(zone for zone in space.zones if zone.id in zones or paths.zone_path(zone.id) not in out)
    }
    if paths.CEILING in out:
        changes["ceiling"] = ()
    for path, field in ((paths.WALL, "length_mm"), (paths.HEIGHT, "height_limit_mm"), (paths.DEPTH, "depth_mm")):
        if path in out:
            changes[field] = max(getattr(space, field), getattr(relaxed.space, field))
    bays = tuple(
        wish.replace(rows=relaxed.limits.wish(bay).rows) if paths.bay_path(bay, "rows") in out else wish
        for bay, wish in enumerate(stood.limits.bays)
    )
    return stood.replace(space=space.replace(**changes), limits=stood.limits.replace(bays=bays))
