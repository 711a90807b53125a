"""A document with none but the limits named, by the paths of their fields; shares no code with the planner.

Everything else that an owner may have set is dropped by plain means: wall for a bay for every box and more, height for
all boxes over one another, depth for the deepest, no wishes, no locks, no zones.
"""

from collections.abc import Collection

from baywright.model.arrangement import Lock
from baywright.model.inventory import BoxStatus
from baywright.model.limits import BayWish
from baywright.model.project import Project

_NUMBERS = (
    *("bay_count", "upright_rows", "drawers_per_bay", "bay_box_width_mm"),
    *("worktop_least_mm", "worktop_most_mm", "spare_rows", "shelf_bay_clear_width_mm"),
)


def only(project: Project, kept: Collection[str], every_box: Collection[str] = ()) -> Project:
    """The document with those limits alone. Boxes of `every_box` have to have a drawer only where their status is
    among `kept`; all others have to.
    """
    limits, space = project.limits, project.space
    plain = type(limits)()
    reset = {name: getattr(plain, name) for name in _NUMBERS if f"limits.{name}" not in kept}
    widths = tuple(
        {
            **dict.fromkeys(limits.other_box_widths_mm),
            **{
                wish.box_width_mm: None
                for bay, wish in enumerate(limits.bays)
                if wish.box_width_mm is not None
                and f"limits.bays[{bay}].box_width_mm" not in kept
                and _serves(project, wish.box_width_mm, kept)
            },
        }
    )
    bays = tuple(_wish(project, bay, wish, kept) for bay, wish in enumerate(limits.bays))
    return project.replace(
        limits=limits.replace(**reset, bays=bays, other_box_widths_mm=widths[:6]),
        space=space.replace(
            length_mm=space.length_mm if "space.length_mm" in kept else _length(project),
            height_limit_mm=space.height_limit_mm if "space.height_limit_mm" in kept else _height(project),
            depth_mm=space.depth_mm if "space.depth_mm" in kept else _depth(project),
            ceiling=space.ceiling if "space.ceiling" in kept else (),
            zones=tuple(zone for zone in space.zones if f"space.zones[{zone.id}]" in kept),
        ),
        construction=_runners(project, kept),
        arrangement=project.arrangement.replace(
            placements=tuple(
                p if f"arrangement.placements[{p.box_id}].lock" in kept else p.replace(lock=Lock.NONE)
                for p in project.arrangement.placements
            )
        ),
        boxes=tuple(
            box.replace(status=BoxStatus.ELSEWHERE)
            if box.id in every_box and f"boxes[{box.id}].status" not in kept
            else box
            for box in project.boxes
        ),
        built=project.built if "built" in kept else None,
    )


def _serves(project: Project, width_mm: float, kept: Collection[str]) -> bool:
    """Whether a bay of that width is of any use: a wider one than all others serves only wider boxes, or several."""
    boxes = [project.size_of(box) for box in project.boxes]
    widest = max(max(size.width_mm, size.depth_mm if size.may_turn else 0.0) for size in boxes)
    fixed = project.limits.bay_box_width_mm
    usual = fixed if fixed is not None and "limits.bay_box_width_mm" in kept else max(s.width_mm for s in boxes)
    return width_mm < usual or widest > usual or any(size.most_abreast > 1 for size in boxes)


def _runners(project: Project, kept: Collection[str]) -> object:
    if "construction.runners.length_mm" in kept:
        return project.construction
    return project.construction.replace(runners=project.construction.runners.replace(length_mm=None))


def _wish(project: Project, bay: int, wish: BayWish, kept: Collection[str]) -> BayWish:
    limits = project.limits
    is_kept = {name: f"limits.bays[{bay}].{name}" in kept for name in ("box_width_mm", "rows", "drawers")}
    rows = wish.rows
    if not is_kept["rows"]:
        rows = max(rows or 0, limits.upright_rows or 0) if "limits.upright_rows" in kept and rows else None
    drawers = wish.drawers
    if not is_kept["drawers"] and drawers is not None:
        drawers = 300
    return BayWish(box_width_mm=wish.box_width_mm if is_kept["box_width_mm"] else None, rows=rows, drawers=drawers)


def _length(project: Project) -> float:
    """A bay of its own, of the widest kind, for every box and every row to stay free, beside what is there."""
    widths = [size.width_mm for size in project.box_sizes] + [w.box_width_mm or 0.0 for w in project.limits.bays]
    zones = max((zone.right_mm for zone in project.space.zones), default=0.0)
    zones += max((point.along_mm for point in project.space.ceiling), default=0.0)
    bays = len(project.boxes) + len(project.limits.bays) + project.limits.spare_rows + 3
    return min(100_000.0, project.space.length_mm + zones + bays * (max(widths) + 150))


def _height(project: Project) -> float:
    """All boxes over one another, over what is there."""
    heights = sum(project.size_of(box).height_mm + 100 for box in project.boxes)
    return min(10_000.0, project.space.height_limit_mm + heights + (project.limits.worktop_least_mm or 0.0))


def _depth(project: Project) -> float:
    """Deep enough for the deepest box, or file of boxes; a longer runner than needed would only be heavier."""
    deepest = max((size.most_behind * (size.depth_mm + 20) for size in project.box_sizes), default=0.0)
    zones = max((zone.depth_mm for zone in project.space.zones), default=0.0)
    return max(project.space.depth_mm, deepest + 250.0) + zones
