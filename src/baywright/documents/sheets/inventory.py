"""The inventory sheet: every box with its size, mass, contents and place."""

from openpyxl.worksheet.worksheet import Worksheet

from baywright.documents.sheets.column import Column, with_inches
from baywright.documents.sheets.page import Page
from baywright.documents.sheets.style import Style
from baywright.model.arrangement import Lock
from baywright.model.caution import Topic, cautions_about
from baywright.model.inventory import Box, BoxStatus
from baywright.model.project import Project

TITLE = "Inventory"
_STATUS = {BoxStatus.OWNED: "", BoxStatus.WISHED: "wished: room is kept", BoxStatus.ELSEWHERE: "kept elsewhere"}
LOCK_WORDS = {Lock.NONE: "", Lock.BAY: "in its bay", Lock.DRAWER: "in its drawer"}


def write_inventory(sheet: Worksheet, project: Project) -> None:
    """Write the sheet."""
    page = Page(sheet)
    places = {placement.box_id: placement for placement in project.arrangement.placements}
    sizes = {size.id: size for size in project.box_sizes}

    def lock_words(box: Box) -> str:
        return LOCK_WORDS[places[box.id].lock] if box.id in places else "no drawer"

    columns: list[Column[Box]] = [
        Column("Box", lambda box: box.label, Style.NAME, 36.0),
        Column("Size", lambda box: sizes[box.size_id].name),
        Column("Width", lambda box: sizes[box.size_id].width_mm, Style.LENGTH),
        Column("Depth", lambda box: sizes[box.size_id].depth_mm, Style.LENGTH),
        Column("Height", lambda box: sizes[box.size_id].height_mm, Style.LENGTH),
        Column("Loaded mass, kg", lambda box: box.loaded_mass_kg, Style.MASS),
        Column("Contents", lambda box: box.contents, Style.TEXT, 44.0),
        Column("Group", lambda box: box.group),
        Column("Use", lambda box: box.use.value),
        Column("Bay", lambda box: places[box.id].bay + 1 if box.id in places else None, Style.COUNT),
        Column("Runner row", lambda box: places[box.id].row + 1 if box.id in places else None, Style.COUNT),
        Column("Locked", lock_words),
        Column("Status", lambda box: _STATUS[box.status]),
        Column("Note", lambda box: box.note, Style.TEXT, 36.0),
    ]
    header = page.table(with_inches(columns, project.unit), project.boxes)
    page.freeze(header, len(project.boxes), first_columns=1)
    page.cautions(cautions_about(Topic.LIFTING))
    page.heading(TITLE, "Every box of the project, with the place that the plan gives it.", project.name)
