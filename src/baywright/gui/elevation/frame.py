"""Where the fixed pieces of the run stand in the elevation: stand, base, uprights, tops, bays, shelf bay, hole rows.

Law: every place comes from the layout of the workings and every dimension from their values; nothing is laid side by
side here.
"""

from collections.abc import Iterable
from dataclasses import dataclass

from baywright.gui.elevation.area import Area
from baywright.model.construction import Stand
from baywright.model.project import Project
from baywright.workings import Workings

FOOT_WIDTH_MM = 40.0
"""How wide a foot is drawn; a sign for a foot, not a dimension of one."""

Ends = tuple[float, float]
"""Left and right end, mm."""


@dataclass(frozen=True)
class TrayWidths:
    """How wide the drawers of a bay are, mm."""

    outside: float
    bottom: float


@dataclass(frozen=True)
class Frame:
    """The run without its drawers, and the space that it must fit into. All mm; heights over the floor."""

    bays: tuple[Area, ...]
    """Clear areas between uprights, from the base's upper side to the top's underside."""
    bay_rows: tuple[int, ...]
    """Hole rows of each bay."""
    trays: tuple[TrayWidths, ...]
    """The drawers of each bay."""
    shelf_bay: Area | None
    shelves: tuple[Area, ...]
    uprights: tuple[Area, ...]
    bases: tuple[Area, ...]
    """One under each section of the run, or with own uprights one under each bay."""
    tops: tuple[Area, ...]
    """One over each stretch of bays of one height."""
    stand: tuple[Area, ...]
    rows: tuple[float, ...]
    """Height over the floor of each hole row of the highest upright."""
    pitch: float
    line_offset: float
    """From a drawer's lower edge up to its row."""
    wall: Area
    """The space: its length, and its height up to the limit."""
    left_over: Area | None
    """The rest of the wall beside the run; None where there is none or a shelf bay takes it."""
    end_panels: tuple[Area, ...] = ()
    """The panels over the outer uprights, floor to underside of the top, seen on their front edges."""

    @property
    def top(self) -> Area:
        """From the leftmost to the rightmost end of the tops, at the height of the highest."""
        highest = max(self.tops, key=lambda top: top.top)
        left = min(top.left for top in self.tops)
        return Area(left, highest.bottom, max(top.right for top in self.tops) - left, highest.height)

    @property
    def boards(self) -> tuple[Area, ...]:
        """Everything that is drawn as a board on its edge."""
        return (*self.stand, *self.bases, *self.shelves, *self.uprights, *self.end_panels, *self.tops)

    @property
    def extent(self) -> Area:
        """The smallest area that holds the run and its space."""
        top = self.top
        left, right = min(self.wall.left, top.left), max(self.wall.right, top.right)
        return Area(left, 0.0, right - left, max(self.wall.height, top.top))

    def bay_at(self, x_mm: float) -> int | None:
        """The drawer bay at that place along the wall, uprights beside it included; None beside the bays."""
        half = self.uprights[0].width / 2
        for number, bay in enumerate(self.bays):
            if bay.left - half <= x_mm < bay.right + half:
                return number
        return None

    def row_for_lower_edge(self, lower_edge_mm: float) -> int:
        """The hole row that brings a drawer's lower edge nearest to that height over the floor."""
        nearest = round((lower_edge_mm + self.line_offset - self.rows[0]) / self.pitch)
        return max(0, min(len(self.rows) - 1, nearest))

    def row_height(self, row: int) -> float:
        """Height of a hole row over the floor; rows beyond the uprights are counted on."""
        return self.rows[0] + self.pitch * row


def build_frame(project: Project, workings: Workings) -> Frame | None:
    """The frame of the run, or None where not one bay has a row."""
    value, layout = workings.value, workings.layout
    if max((bay.rows for bay in layout.bays), default=0) <= 0:
        return None
    lower = value("base_upper_height")
    heights = {rows: workings.upright_height(rows) for rows in {upright.rows for upright in layout.uprights}}
    heights |= {bay.rows: workings.upright_height(bay.rows) for bay in layout.bays if bay.rows not in heights}
    shelf = layout.shelf
    shelf_bay = Area(shelf.left_mm, lower, shelf.clear_mm, workings.upright_height(shelf.rows)) if shelf else None
    bases = tuple(
        Area(left, lower - value("base_thickness"), right - left, value("base_thickness"))
        for left, right in layout.carcasses_mm
    )
    uprights = tuple(
        Area(upright.left_mm, lower, value("upright_thickness"), heights[upright.rows]) for upright in layout.uprights
    )
    kinds = [workings.kind_of(bay) for bay in layout.bays]
    first, most = lower + value("first_row"), max(upright.rows for upright in layout.uprights)
    wall = Area(layout.wall_left_mm, 0.0, project.space.length_mm, project.space.height_limit_mm)
    return Frame(
        bays=tuple(Area(bay.left_mm, lower, bay.clear_mm, heights[bay.rows]) for bay in layout.bays),
        bay_rows=tuple(bay.rows for bay in layout.bays),
        trays=tuple(
            TrayWidths(workings.at_kind("drawer_outside_width", kind), workings.at_kind("bottom_width", kind))
            for kind in kinds
        ),
        shelf_bay=shelf_bay,
        shelves=_shelves(project, workings, shelf_bay, shelf.rows if shelf else 0),
        uprights=uprights,
        bases=bases,
        tops=_tops(workings),
        stand=_stand(project, bases, uprights),
        rows=tuple(first + value("pitch") * row for row in range(most)),
        pitch=value("pitch"),
        line_offset=value("line_offset"),
        wall=wall,
        left_over=_left_over(workings, wall) if shelf_bay is None else None,
        end_panels=tuple(
            Area(panel.left_mm, 0.0, panel.right_mm - panel.left_mm, lower + workings.upright_height(panel.rows))
            for panel in layout.end_panels
        ),
    )


def _left_over(workings: Workings, wall: Area) -> Area | None:
    width = workings.value("wall_left")
    if width <= 0:
        return None
    return Area(workings.layout.length_mm, 0.0, width, wall.height)


def _shelves(project: Project, workings: Workings, shelf_bay: Area | None, rows: int) -> tuple[Area, ...]:
    """Shelves lie on hole rows, spread as evenly as the rows allow; their place is free, so this is only a sign."""
    if shelf_bay is None:
        return ()
    count = project.limits.shelf_count
    thickness = project.boards.shelf_mm
    first = shelf_bay.bottom + workings.value("first_row")
    places = sorted({round((rows - 1) * (i + 1) / (count + 1)) for i in range(count)})
    return tuple(
        Area(shelf_bay.left, first + workings.value("pitch") * row, shelf_bay.width, thickness) for row in places
    )


def sections_of(carcasses: Iterable[Ends]) -> list[Ends]:
    """The parts of the run that stand in one piece: carcasses that touch, as one."""
    found: list[Ends] = []
    for left, right in carcasses:
        if found and left - found[-1][1] < 1e-6:
            found[-1] = (found[-1][0], right)
        else:
            found.append((left, right))
    return found


def _tops(workings: Workings) -> tuple[Area, ...]:
    """The tops stand out at the ends of each section, not at steps between bays of different heights."""
    left_end, right_end = workings.value("left_end"), workings.value("right_end")
    thickness = workings.value("top_thickness")
    sections = sections_of(workings.layout.carcasses_mm)
    lefts, rights = {left for left, _ in sections}, {right for _, right in sections}
    tops = []
    for stretch in workings.layout.stretches:
        left = stretch.left_mm - (left_end if stretch.left_mm in lefts else 0.0)
        right = stretch.right_mm + (right_end if stretch.right_mm in rights else 0.0)
        lower = workings.value("base_upper_height") + workings.upright_height(stretch.rows)
        tops.append(Area(left, lower, right - left, thickness))
    return tuple(tops)


def _stand(project: Project, bases: tuple[Area, ...], uprights: tuple[Area, ...]) -> tuple[Area, ...]:
    height = bases[0].bottom
    if height <= 0:
        return ()
    sections = sections_of((base.left, base.right) for base in bases)
    if project.construction.standing.kind is Stand.PLINTH:
        return tuple(Area(left, 0.0, right - left, height) for left, right in sections)
    feet = []
    for least, most in sections:
        for centre in (upright.centre.x() for upright in uprights):
            if least < centre < most:
                left = max(least, min(most - FOOT_WIDTH_MM, centre - FOOT_WIDTH_MM / 2))
                feet.append(Area(left, 0.0, FOOT_WIDTH_MM, height))
    return tuple(feet)
