"""What an edit is called in the undo menu once the document is known that it is made in: it says of what.

Law: a command that is not known here, or is about something that is not there, keeps its own plain title.
"""

from baywright.app.commands import Command, SetField
from baywright.app.edits.arrangement import PlaceBox, SetLock, UnplaceBoxes
from baywright.app.edits.hardware import ChangeCatalogueItem, ChangeExtra, hardware_field
from baywright.app.edits.inventory import AddBoxes, DuplicateBoxes, EditBox, EditBoxSize, RemoveBoxes, RemoveBoxSize
from baywright.app.edits.materials import ChangeMaterial, RemoveMaterial
from baywright.app.edits.stock import ChangeBar, ChangeSheet, plain_field
from baywright.model.arrangement import Lock
from baywright.model.project import Project

LONGEST_NAME = 28
_FIELDS = {
    "loaded_mass_kg": "mass",
    "size_id": "size",
    "may_turn": "turning",
    "most_abreast": "boxes abreast",
    "most_behind": "boxes behind one another",
}
_GROUPS = {
    "space": "the space",
    "boards": "the boards",
    "drawers": "the drawers",
    "runners": "the runners",
    "hole_rows": "the hole rows",
    "top": "the top",
    "standing": "the stand",
    "back": "the back",
    "rules": "the saw",
}


def title_of(command: Command, project: Project) -> str:
    """The title of a command that is about to be made in `project`, e.g. “Change mass of “Pumps””."""
    match command:
        case EditBox(box_id, field) if box_id in project.boxes_by_id:
            return f"Change {_field(field)} of {_quoted(project.box(box_id).label)}"
        case EditBoxSize(size_id, field) if size_id in project.sizes_by_id:
            return f"Change {_field(field)} of size {_quoted(project.size(size_id).name)}"
        case RemoveBoxSize(size_id) if size_id in project.sizes_by_id:
            return f"Delete size {_quoted(project.size(size_id).name)}"
        case AddBoxes(added) if len(added) == 1:
            return f"Add {_quoted(added[0].label)}"
        case PlaceBox(box_id) if box_id in project.boxes_by_id:
            return f"Move {_quoted(project.box(box_id).label)}"
        case RemoveBoxes(box_ids):
            return f"Delete {_boxes(box_ids, project)}"
        case DuplicateBoxes(box_ids):
            return f"Duplicate {_boxes(box_ids, project)}"
        case UnplaceBoxes(box_ids):
            return f"Take {_boxes(box_ids, project)} out of {'its drawer' if len(box_ids) == 1 else 'their drawers'}"
        case SetLock(box_ids, lock):
            boxes = _boxes(box_ids, project)
            return f"Unlock {boxes}" if lock is Lock.NONE else f"Lock {boxes} in {lock.value}"
        case ChangeMaterial() | RemoveMaterial() | ChangeSheet() | ChangeBar():
            return _of_stock(command, project)
        case ChangeCatalogueItem(item_id, field) if item := project.hardware.item(item_id):
            return f"Change {hardware_field(field)} of {_quoted(item.name)}"
        case ChangeExtra(extra_id, field) if extra := project.hardware.extra(extra_id):
            return f"Change {hardware_field(field)} of {_quoted(extra.name)}"
        case SetField(path) if "." in path:
            *_, group, field = path.split(".")
            return f"Change {_field(field)}" + (f" of {_GROUPS[group]}" if group in _GROUPS else "")
        case _:
            return command.title


def _of_stock(command: ChangeMaterial | RemoveMaterial | ChangeSheet | ChangeBar, project: Project) -> str:
    """Of materials, sheets and bars that have a name."""
    stock = project.stock
    match command:
        case ChangeMaterial(identifier) | RemoveMaterial(identifier):
            named = [material.name for material in stock.materials if material.id == identifier]
        case ChangeSheet(identifier):
            named = [sheet.name for sheet in stock.sheets if sheet.id == identifier]
        case ChangeBar(identifier):
            named = [bar.name for bar in stock.bars if bar.id == identifier]
    if not named or not named[0]:
        return command.title
    name = _quoted(named[0])
    return f"Remove {name}" if isinstance(command, RemoveMaterial) else f"Change {plain_field(command.field)} of {name}"


def _boxes(box_ids: tuple[str, ...], project: Project) -> str:
    if len(box_ids) == 1 and box_ids[0] in project.boxes_by_id:
        return _quoted(project.box(box_ids[0]).label)
    return f"{len(box_ids):,} boxes"


def _field(field: str) -> str:
    return _FIELDS.get(field) or field.removesuffix("_mm").removesuffix("_kg").replace("_", " ")


def _quoted(name: str) -> str:
    return f"“{name if len(name) <= LONGEST_NAME else name[: LONGEST_NAME - 1].rstrip() + '…'}”"
