"""One edit that puts every material that the run needs into the stock; and several edits as one.

Law: what is in the stock already stays as it is; nothing is priced by it, for nobody has said a price.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import reduce

from baywright.app.commands import Command
from baywright.app.edits.materials import adopted
from baywright.app.edits.stock import with_stock
from baywright.model.construction import Back, Fronts, Stand
from baywright.model.identity import free_ids
from baywright.model.making import Part
from baywright.model.project import Project
from baywright.model.stock import BoardRole, Sheet
from baywright.workings.material import material_of


def roles_needed(project: Project, parts: Iterable[Part] = ()) -> tuple[BoardRole, ...]:
    """The boards that the run has: those of its parts, or before there are any those that its construction asks for."""
    of_parts = {part.role for part in parts}
    if of_parts:
        return tuple(role for role in BoardRole if role in of_parts)
    construction, ends = project.construction, project.construction.end_panels
    wanted = {
        BoardRole.PLINTH: construction.standing.kind is Stand.PLINTH and construction.standing.height_mm > 0,
        BoardRole.BACK: construction.rear.kind is Back.FULL_BACK,
        BoardRole.BRACE: construction.rear.kind is not Back.FULL_BACK,
        BoardRole.SHELF: project.limits.shelf_bay,
        BoardRole.FRONT: construction.drawers.fronts is not Fronts.NONE,
        BoardRole.END_PANEL: ends.left or ends.right,
    }
    return tuple(role for role in BoardRole if wanted.get(role, True))


def is_all_there(project: Project, roles: Iterable[BoardRole]) -> bool:
    """Whether every one of these boards has a material in the stock."""
    return all(project.stock.material_of(role) is not None for role in roles)


@dataclass(frozen=True)
class AddNeeded:
    """Puts the materials of these boards into the stock, each with a usual sheet to buy."""

    roles: tuple[BoardRole, ...]

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return "Add the materials that the run needs"

    def apply(self, project: Project) -> Project:
        """The project with these materials; those that are there already, and their sheets, stay as they are."""
        before = {material.id for material in project.stock.materials}
        for role in self.roles:
            project = adopted(project, material_of(project, role).id)
        ids = free_ids("sheet", [sheet.id for sheet in project.stock.sheets])
        sheets = tuple(
            Sheet(id=next(ids), material_id=material.id)
            for material in project.stock.materials
            if material.id not in before
        )
        return with_stock(project, lambda stock: stock.replace(sheets=(*stock.sheets, *sheets)))


@dataclass(frozen=True)
class Several:
    """Several edits one after the other, as one."""

    commands: tuple[Command, ...]
    title: str

    def apply(self, project: Project) -> Project:
        """The project with all edits made; EditRefused, and nothing changed, where one of them cannot be."""
        return reduce(lambda so_far, command: command.apply(so_far), self.commands, project)
