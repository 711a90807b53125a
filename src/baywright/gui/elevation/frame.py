"""Where the fixed pieces of the run stand in the elevation: stand, base, uprights, top, bays, shelf bay, hole rows.

Every dimension comes from the workings; here they are only added up to places on the drawing.
"""

from dataclasses import dataclass

from baywright.gui.elevation.area import Area
from baywright.model.construction import Stand, Uprights
from baywright.model.project import Project
from baywright.workings import Workings

FOOT_WIDTH_MM = 40.0
"""How wide a foot is drawn; a sign for a foot, not a dimension of one."""


@dataclass(frozen=True)
class Frame:
    """The run without its drawers, and the space that it must fit into. All mm; heights over the floor."""

    bays: tuple[Area, ...]
    """Clear areas between uprights, from the base's upper side to the top's underside."""
    shelf_bay: Area | None
    shelves: tuple[Area, ...]
    uprights: tuple[Area, ...]
    bases: tuple[Area, ...]
    """One under the whole run, or with own uprights one under each bay."""
    top: Area
    stand: tuple[Area, ...]
    rows: tuple[float, ...]
    """Height of each hole row over the floor."""
    pitch: float
    line_offset: float
    """From a drawer's lower edge up to its row."""
    wall: Area
    """The space: its length, and its height up to the limit."""
    left_over: Area | None
    """The rest of the wall beside the run; None where there is none or a shelf bay takes it."""

    @property
    def extent(self) -> Area:
        """The smallest area that holds the run and its space."""
        left = min(self.wall.left, self.top.left)
        right = max(self.wall.right, self.top.right)
        return Area(left, 0.0, right - left, max(self.wall.height, self.top.top))

    def bay_at(self, x_mm: float) -> int | None:
        """The drawer bay at that place along the wall, uprights beside it included; None beside the bays."""
        for number, bay in enumerate(self.bays):
            half = self.uprights[0].width / 2
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
    """The frame of the run, or None where not one bay or row fits."""
    value = workings.value
    rows = round(value("upright_rows"))
    bay_count = round(value("bay_count"))
    if bay_count <= 0 or rows <= 0:
        return None
    floor_to_base = value("base_upper_height")
    height = value("upright_height")
    bays = tuple(
        Area(value("upright_thickness") + i * value("bay_pitch"), floor_to_base, value("bay_clear_width"), height)
        for i in range(bay_count)
    )
    shelf_bay = _shelf_bay(project, workings, floor_to_base, height)
    fields = (*bays, *([shelf_bay] if shelf_bay else []))
    bases = _bases(project, workings, fields)
    first = floor_to_base + value("first_row")
    overhang = project.construction.top.overhang_side_mm
    top = Area(-overhang, floor_to_base + height, value("top_length"), value("top_thickness"))
    wall = Area(-overhang, 0.0, project.space.length_mm, project.space.height_limit_mm)
    return Frame(
        bays=bays,
        shelf_bay=shelf_bay,
        shelves=_shelves(project, workings, shelf_bay, rows),
        uprights=_uprights(project, workings, fields),
        bases=bases,
        top=top,
        stand=_stand(project, workings, bases, fields),
        rows=tuple(first + value("pitch") * row for row in range(rows)),
        pitch=value("pitch"),
        line_offset=value("line_offset"),
        wall=wall,
        left_over=_left_over(workings, wall) if shelf_bay is None else None,
    )


def _left_over(workings: Workings, wall: Area) -> Area | None:
    width = workings.value("wall_left")
    if width <= 0:
        return None
    return Area(workings.value("run_length"), 0.0, width, wall.height)


def _shelf_bay(project: Project, workings: Workings, bottom: float, height: float) -> Area | None:
    width = workings.value("shelf_bay_clear_width")
    if width <= 0:
        return None
    left = workings.value("bays_run_length")
    if project.construction.uprights is Uprights.OWN:
        left += workings.value("upright_thickness")
    return Area(left, bottom, width, height)


def _shelves(project: Project, workings: Workings, shelf_bay: Area | None, rows: int) -> tuple[Area, ...]:
    """Shelves lie on hole rows, spread as evenly as the rows allow; their place is free, so this is only a sign."""
    if shelf_bay is None:
        return ()
    count = project.limits.shelf_count
    thickness = project.construction.boards.shelf_mm
    first = shelf_bay.bottom + workings.value("first_row")
    places = sorted({round((rows - 1) * (i + 1) / (count + 1)) for i in range(count)})
    return tuple(
        Area(shelf_bay.left, first + workings.value("pitch") * row, shelf_bay.width, thickness) for row in places
    )


def _uprights(project: Project, workings: Workings, fields: tuple[Area, ...]) -> tuple[Area, ...]:
    thickness = workings.value("upright_thickness")
    own = project.construction.uprights is Uprights.OWN
    uprights = [Area(fields[0].left - thickness, fields[0].bottom, thickness, fields[0].height)]
    for number, field in enumerate(fields):
        uprights.append(Area(field.right, field.bottom, thickness, field.height))
        if own and number + 1 < len(fields):
            uprights.append(Area(fields[number + 1].left - thickness, field.bottom, thickness, field.height))
    return tuple(uprights)


def _bases(project: Project, workings: Workings, fields: tuple[Area, ...]) -> tuple[Area, ...]:
    thickness = workings.value("base_thickness")
    bottom = workings.value("base_upper_height") - thickness
    if project.construction.uprights is Uprights.SHARED:
        return (Area(0.0, bottom, workings.value("run_length"), thickness),)
    side = workings.value("upright_thickness")
    return tuple(Area(field.left - side, bottom, field.width + 2 * side, thickness) for field in fields)


def _stand(project: Project, workings: Workings, bases: tuple[Area, ...], fields: tuple[Area, ...]) -> tuple[Area, ...]:
    height = bases[0].bottom
    if height <= 0:
        return ()
    least, most = bases[0].left, bases[-1].right
    if project.construction.standing.kind is Stand.PLINTH:
        return (Area(least, 0.0, most - least, height),)
    half = workings.value("upright_thickness") / 2
    centres = [fields[0].left - half, *(field.right + half for field in fields)]
    places = [max(least, min(most - FOOT_WIDTH_MM, centre - FOOT_WIDTH_MM / 2)) for centre in centres]
    return tuple(Area(left, 0.0, FOOT_WIDTH_MM, height) for left in places)
