"""Front panels of the drawers: where each lies, and the panels to cut.

Laws: a front closes its drawer's opening from the drawer's lower edge up to the next drawer or to under the top, less
the reveal all round; where one more drawer could hang in what is free above, it closes only what its own boxes need, so
that it stays when that drawer comes. The lowest reaches down to the base where no drawer could hang under it. Across,
an inset front lies between the uprights; an overlay front reaches to the middle of a shared upright and to the outer
face of any other. Equal panels are one line of the cutting list, the highest first.
"""

from itertools import groupby, pairwise
from operator import itemgetter

from baywright.making.drawers import Drawers, Kinds, drawer_kinds, drawers_to_make
from baywright.making.piece import ALL_ROUND, piece
from baywright.making.schedule import lower_edge_mm, under_top_mm
from baywright.model.construction import Fronts, Uprights
from baywright.model.length import format_length
from baywright.model.making import FrontPanel, Part
from baywright.model.project import Project
from baywright.model.stock import BoardRole
from baywright.workings import BayPlace, Workings
from baywright.workings.inputs import sizes_in_use

_SAME_MM = 1e-6


def front_panels(project: Project, workings: Workings) -> tuple[FrontPanel, ...]:
    """Every front panel of the present arrangement, bay by bay, each bay from the bottom; none where there are none."""
    drawers = drawers_to_make(project)
    return panels_of(project, workings, drawers, drawer_kinds(project, workings, drawers))


def panels_of(project: Project, workings: Workings, drawers: Drawers, kinds: Kinds) -> tuple[FrontPanel, ...]:
    """The front panels of those drawers."""
    if project.construction.drawers.fronts is Fronts.NONE:
        return ()
    least = min((workings.value("opening_height", size.id) for size in sizes_in_use(project)), default=0.0)
    reveal = workings.value("reveal")
    found: list[FrontPanel] = []
    for bay, places in groupby(sorted(drawers), key=itemgetter(0)):
        if bay >= len(workings.layout.bays):
            break
        rows = [row for _, row in places if _hangs(workings, kinds, bay, row)]
        left, right = _across(project, workings, bay)
        for row, (bottom, top) in zip(rows, _openings(project, workings, drawers, bay, rows, least), strict=True):
            found.append(FrontPanel(
                number="", bay=bay, row=row, left_mm=left + reveal, right_mm=right - reveal,
                bottom_mm=bottom + reveal, top_mm=top - reveal, thickness_mm=project.boards.front_mm,
            ))  # fmt: skip
    return _numbered(found)


def _hangs(workings: Workings, kinds: Kinds, bay: int, row: int) -> bool:
    return workings.at_kind("runner_length", kinds[bay, row]) > 0


def _openings(
    project: Project, workings: Workings, drawers: Drawers, bay: int, rows: list[int], least_mm: float
) -> list[tuple[float, float]]:  # fmt: skip
    """The heights over the floor between which each drawer's front lies, reveals and all; no drawer goes into less than
    `least_mm`.
    """
    edges = [lower_edge_mm(workings, row) for row in rows]
    found = []
    for row, (lower, upper) in zip(rows, pairwise([*edges, under_top_mm(workings, bay)]), strict=True):
        sizes = [project.size_of(project.box(p.box_id)).id for p in drawers[bay, row]]
        needed = lower + max(workings.value("opening_height", size) for size in sizes)
        bottom = workings.value("base_upper_height") if row <= workings.value("lowest_start_row") else lower
        found.append((min(bottom, lower), needed if upper - needed >= least_mm - _SAME_MM else upper))
    return found


def _across(project: Project, workings: Workings, bay: int) -> tuple[float, float]:
    """The ends of the fronts of a bay, reveals and all."""
    place = workings.layout.bays[bay]
    if project.construction.drawers.fronts is Fronts.INSET:
        return place.left_mm, place.right_mm
    whole = workings.value("upright_thickness")
    at_left, at_right = _beside(workings, place)
    shared = project.construction.uprights is Uprights.SHARED
    return (
        place.left_mm - (whole / 2 if shared and at_left else whole),
        place.right_mm + (whole / 2 if shared and at_right else whole),
    )


def _beside(workings: Workings, place: BayPlace) -> tuple[bool, bool]:
    """Whether another bay, or the shelf bay, stands on the other side of the bay's left and right upright."""
    layout, upright = workings.layout, workings.value("upright_thickness")
    others = [*layout.bays, *([layout.shelf] if layout.shelf else [])]
    return (
        any(abs(other.right_mm + upright - place.left_mm) < _SAME_MM for other in others),
        any(abs(other.left_mm - upright - place.right_mm) < _SAME_MM for other in others),
    )


def _numbered(panels: list[FrontPanel]) -> tuple[FrontPanel, ...]:
    sizes = sorted({_size(panel) for panel in panels}, key=lambda size: (-size[1], -size[0]))
    numbers = {size: "F1" if index == 0 else f"F1-{index + 1}" for index, size in enumerate(sizes)}
    return tuple(panel.replace(number=numbers[_size(panel)]) for panel in panels)


def _size(panel: FrontPanel) -> tuple[float, float]:
    return round(panel.width_mm, 6), round(panel.height_mm, 6)


def front_parts(project: Project, panels: tuple[FrontPanel, ...]) -> list[Part]:
    """The panels to cut."""
    drawers = project.construction.drawers
    lies = "between the uprights, flush" if drawers.fronts is Fronts.INSET else "before the uprights"
    alike: dict[str, list[FrontPanel]] = {}
    for panel in sorted(panels, key=lambda panel: (-panel.height_mm, -panel.width_mm)):
        alike.setdefault(panel.number, []).append(panel)
    return [
        piece(
            project, BoardRole.FRONT, number, "Front panel", len(same), *_size(same[0]), banded=ALL_ROUND,
            bays=tuple(sorted(panel.bay for panel in same)),
            note=f"{lies}; length across, width upright; {format_length(drawers.reveal_mm, project.unit)} of air round",
        )
        for number, same in alike.items()
    ]  # fmt: skip
