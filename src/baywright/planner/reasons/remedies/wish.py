"""Wishes given up in part: free rows, the worktop's range, a bay's own rows or width, the shelf bay, a zone moved."""

from collections.abc import Iterator

from baywright.model.project import Project
from baywright.model.repair import Repair
from baywright.model.space import HIGHEST_LIMIT_MM, ZoneEffect
from baywright.planner.reasons import limits as paths
from baywright.planner.reasons.limits import count
from baywright.planner.reasons.question import Reading
from baywright.planner.reasons.remedies.ladder import Kind, Ladder, Lengths, choices, single
from baywright.planner.reasons.remedies.weight import Weight


def wishes(reading: Reading, lengths: Lengths) -> Iterator[Kind]:
    """All wishes of a document that can be given up in part."""
    project = reading.project
    yield from _spare_rows(project)
    yield from _worktop(project, lengths)
    yield from _own_bays(reading, lengths)
    yield from _shelf(project, lengths)
    yield from _zones(project, lengths)
    if project.built is not None:
        text = "Give up what is built: plan as if no bay stood yet."
        yield choices("built", paths.BUILT, [single(text, paths.BUILT, None, Weight.BUILT.of(0))])


def _spare_rows(project: Project) -> Iterator[Kind]:
    now = project.limits.spare_rows

    def fewer(step: int) -> Repair:
        left = now - step
        text = f"Keep {count(left, 'row')} free instead of {now}." if left else "Keep no rows free."
        return single(text, paths.SPARE, left, Weight.SPARE_ROW.of(step))

    if now:
        yield Ladder("spare rows", paths.SPARE, now, fewer)


def _worktop(project: Project, lengths: Lengths) -> Iterator[Kind]:
    least, most = project.limits.worktop_least_mm, project.limits.worktop_most_mm
    if least is not None:
        yield lengths.downwards(
            "lower worktop", paths.WORKTOP_LEAST, least, 0.0, Weight.WORKTOP_MM,
            lambda mm: f"Allow a worktop from {lengths.shown(mm)} high.", paths.WORKTOP_LEAST,
        )  # fmt: skip
    if most is not None:
        yield lengths.upwards(
            "higher worktop", paths.WORKTOP_MOST, most, HIGHEST_LIMIT_MM, Weight.WORKTOP_MM,
            lambda mm: f"Allow a worktop up to {lengths.shown(mm)} high.", paths.WORKTOP_MOST,
        )  # fmt: skip


def _own_bays(reading: Reading, lengths: Lengths) -> Iterator[Kind]:
    project = reading.project
    used = sorted({project.size_of(box).width_mm for box in project.boxes_to_place})
    for bay, wish in enumerate(project.limits.bays):
        if wish.rows is not None:
            yield _own_rows(bay, wish.rows, reading.grid.rows_that_fit)
            path, less = paths.bay_path(bay, "rows"), abs(wish.rows - reading.rows)
            text = f"Make bay {bay + 1} as high as the run."
            yield choices("rows of a bay", path, [single(text, path, None, Weight.ROW_OF_A_BAY.of(less))])
        if (now := wish.box_width_mm) is not None:
            path = paths.bay_path(bay, "box_width_mm")
            offers = [
                single(
                    f"Make bay {bay + 1} for boxes {lengths.shown(width)} wide.", path, width,
                    Weight.WIDTH_MM.of(width - now),
                )
                for width in used
                if width != now
            ]  # fmt: skip
            yield choices("width of a bay", path, offers)


def _own_rows(bay: int, now: int, most: int) -> Ladder:
    path = paths.bay_path(bay, "rows")

    def more(step: int) -> Repair:
        text = f"Give bay {bay + 1} {count(now + step, 'row')} instead of {now}."
        return single(text, path, now + step, Weight.ROW_OF_A_BAY.of(step))

    return Ladder("rows of a bay", path, max(0, most - now), more)


def _shelf(project: Project, lengths: Lengths) -> Iterator[Kind]:
    limits = project.limits
    if limits.shelf_bay and (now := limits.shelf_bay_clear_width_mm) is not None:
        yield lengths.downwards(
            "shelf bay", paths.SHELF, now, 1.0, Weight.SHELF_MM,
            lambda mm: f"Make the shelf bay {lengths.shown(mm)} wide.", paths.SHELF,
        )  # fmt: skip
        text = "Do without a shelf bay."
        offer = single(text, "limits.shelf_bay", value=False, weight=Weight.SHELF_MM.of(now))
        yield choices("no shelf bay", paths.SHELF, [offer])


def _zones(project: Project, lengths: Lengths) -> Iterator[Kind]:
    for zone in project.space.zones:
        path = paths.zone_path(zone.id)
        if zone.effect is ZoneEffect.STAY_IN_FRONT:
            yield lengths.downwards(
                "zone", f"{path}.depth_mm", zone.depth_mm, 0.0, Weight.ZONE_MM,
                lambda mm, label=zone.label: f"Let “{label}” stand out only {lengths.shown(mm)}.",  # type: ignore[misc]
                path,
            )  # fmt: skip
        elif zone.effect is ZoneEffect.END_BELOW:
            yield lengths.upwards(
                "zone", f"{path}.bottom_mm", zone.bottom_mm, project.space.height_limit_mm, Weight.ZONE_MM,
                lambda mm, label=zone.label: f"Let “{label}” begin {lengths.shown(mm)} over the floor.",  # type: ignore[misc]
                path,
            )  # fmt: skip
