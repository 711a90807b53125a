"""The drawer schedule: for each drawer its box, its hole row and its heights, in the order in which it is fitted."""

from openpyxl.worksheet.worksheet import Worksheet

from baywright.documents.sheets.column import Column, with_inches
from baywright.documents.sheets.page import Page
from baywright.documents.sheets.style import Style
from baywright.model.caution import Topic, cautions_about
from baywright.model.making import Manufacture, ScheduleLine
from baywright.model.project import Project

TITLE = "Drawer schedule"
LEAD = (
    "Bay by bay from the left, each from the bottom. Rows are counted from 1 at the bottom of the upright. “Drill at” "
    "is the runner's line over the upright's lower end; the other heights are over the floor. “Screwed at” says which "
    "holes of that row the runner uses, by their distance from the uprights' front edges, left and right alike."
)


def write_schedule(sheet: Worksheet, project: Project, manufacture: Manufacture) -> None:
    """Write the sheet."""
    page = Page(sheet)
    columns: list[Column[ScheduleLine]] = [
        Column("Bay", lambda line: line.bay, Style.COUNT),
        Column("Drawer from bottom", lambda line: line.drawer, Style.COUNT),
        Column("Box", lambda line: line.box_label, Style.NAME, 36.0),
        Column("Place in drawer", lambda line: line.place_in_drawer),
        Column("Size", lambda line: line.size_name),
        Column("Contents", lambda line: line.contents, Style.TEXT, 40.0),
        Column("Loaded mass, kg", lambda line: line.loaded_mass_kg, Style.MASS),
        Column("Runner row", lambda line: line.runner_row, Style.COUNT),
        Column("Rows taken", lambda line: line.rows_taken, Style.COUNT),
        Column("Drill at", lambda line: line.runner_line_mm, Style.LENGTH),
        Column("Drawer's lower edge", lambda line: line.lower_edge_mm, Style.LENGTH),
        Column("Box top", lambda line: line.box_top_mm, Style.LENGTH),
        Column("Opening", lambda line: line.opening_mm, Style.LENGTH),
        Column("Runner load class, kg", _load_class, Style.COUNT),
        Column("Locked", lambda line: "locked" if line.locked else ""),
        Column("Runner screwed at, mm", _screwed_at, Style.TEXT, 24.0),
    ]
    if any(line.box_stop_mm is not None for line in manufacture.schedule):
        columns.append(Column("Box stop behind the front rail", lambda line: line.box_stop_mm, Style.LENGTH))
    header = page.table(with_inches(columns, project.unit), manufacture.schedule)
    page.freeze(header, len(manufacture.schedule), first_columns=3)
    page.cautions(cautions_about(Topic.LIFTING, Topic.RUNNERS))
    page.heading(TITLE, LEAD, project.name)


def _screwed_at(line: ScheduleLine) -> str:
    return ", ".join(f"{round(place, 1):g}" for place in line.runner_holes_mm)


def _load_class(line: ScheduleLine) -> float | str:
    return "none is enough" if line.load_class_kg is None else line.load_class_kg
