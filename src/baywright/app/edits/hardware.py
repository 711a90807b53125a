"""Edits of the hardware order: the catalogue, what is set by hand for a line, and lines of the owner's own.

Laws: an adjustment that sets nothing any more goes; one whose item leaves the catalogue keeps the rest of what it sets.
"""

from collections.abc import Callable
from dataclasses import dataclass

from baywright.app.commands import EditRefused, checked
from baywright.model.catalogue import (
    OF_WHOLE_NEED,
    Adjustment,
    CatalogueItem,
    ExtraItem,
    HardwareStock,
    number_of_need,
)
from baywright.model.count import count_words
from baywright.model.project import Project

_PLAIN = {
    "item_id": "item",
    "pack_size": "pack size",
    "load_class_kg": "load class",
    "order_number": "order number",
    "is_left_out": "buying",
}
"""What fields are called in the undo menu where their name is no plain word."""


def hardware_field(name: str) -> str:
    """A field of an item or line as people call it."""
    return _PLAIN.get(name, name.removesuffix("_mm").removesuffix("_kg").replace("_", " "))


def _with_hardware(project: Project, change: Callable[[], HardwareStock], field: str = "") -> Project:
    stock = checked(change, field)
    return checked(lambda: project.replace(hardware=stock), field)


@dataclass(frozen=True)
class AddCatalogueItems:
    """Adds items at the end of the catalogue."""

    items: tuple[CatalogueItem, ...]

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return f"Add “{self.items[0].name}”" if len(self.items) == 1 else f"Add {len(self.items)} items"

    def apply(self, project: Project) -> Project:
        """The project with the items; EditRefused where an id is taken or there are too many."""
        stock = project.hardware
        return _with_hardware(project, lambda: stock.replace(catalogue=(*stock.catalogue, *self.items)))


@dataclass(frozen=True)
class ChangeCatalogueItem:
    """Sets one field of an item of the catalogue."""

    item_id: str
    field: str
    value: object

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return f"Change {hardware_field(self.field)} of item"

    def apply(self, project: Project) -> Project:
        """The project with the field changed; EditRefused where the value is not allowed or the item is gone."""
        stock = project.hardware
        item = stock.item(self.item_id)
        if item is None:
            raise EditRefused("That item is no longer in the catalogue.")
        changed = checked(lambda: item.replace(**{self.field: self.value}), self.field)
        catalogue = tuple(changed if each.id == self.item_id else each for each in stock.catalogue)
        return _with_hardware(project, lambda: stock.replace(catalogue=catalogue), self.field)


@dataclass(frozen=True)
class RemoveCatalogueItems:
    """Takes items out of the catalogue; lines for which one was chosen by hand choose anew."""

    item_ids: tuple[str, ...]

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return "Remove item" if len(self.item_ids) == 1 else f"Remove {len(self.item_ids)} items"

    def apply(self, project: Project) -> Project:
        """The project without the items."""
        stock = project.hardware
        kept = tuple(item for item in stock.catalogue if item.id not in self.item_ids)
        freed = [each.replace(item_id=None) if each.item_id in self.item_ids else each for each in stock.adjustments]
        adjustments = tuple(each for each in freed if _sets_something(each))
        return _with_hardware(project, lambda: stock.replace(catalogue=kept, adjustments=adjustments))


@dataclass(frozen=True)
class ImportCatalogue:
    """Takes over what a table brings: new items, and items that are there already with other prices or measures."""

    added: tuple[CatalogueItem, ...]
    changed: tuple[CatalogueItem, ...] = ()

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return f"Import {count_words(len(self.added) + len(self.changed), 'catalogue item')}"

    def apply(self, project: Project) -> Project:
        """The project with the items; EditRefused where one that is to change is gone, or an id is taken."""
        stock = project.hardware
        new = {item.id: item for item in self.changed}
        if not new.keys() <= {item.id for item in stock.catalogue}:
            raise EditRefused("The catalogue has changed since the table was read; read it again.")
        kept = tuple(new.get(item.id, item) for item in stock.catalogue)
        return _with_hardware(project, lambda: stock.replace(catalogue=(*kept, *self.added)))


@dataclass(frozen=True)
class AdjustItem:
    """Sets by hand one field for a line of the order; None (or False) leaves it to the program again.

    Item, spare and pack size are set for the whole need, where packs of two sizes make two lines of it.
    """

    number: str
    field: str
    value: object

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        if self.field == "is_left_out":
            return f"Leave {self.number} out of the order" if self.value else f"Put {self.number} back on the order"
        return f"Change {hardware_field(self.field)} of {self.number}"

    def apply(self, project: Project) -> Project:
        """The project with the adjustment; EditRefused where the value is not allowed or the item is not there."""
        stock = project.hardware
        if self.field == "number" or self.field not in Adjustment.model_fields:
            raise EditRefused(f"There is no field “{self.field}” of a line that can be set by hand.")
        if self.field == "item_id" and self.value is not None and stock.item(str(self.value)) is None:
            raise EditRefused("That item is not in the catalogue.", self.field)
        number = number_of_need(self.number) if self.field in OF_WHOLE_NEED else self.number
        before = stock.adjustment(number)
        changed = checked(lambda: (before or Adjustment(number=number)).replace(**{self.field: self.value}), self.field)
        others = tuple(each for each in stock.adjustments if each.number != number)
        kept = (*others, changed) if _sets_something(changed) else others
        return _with_hardware(project, lambda: stock.replace(adjustments=kept), self.field)


@dataclass(frozen=True)
class ClearAdjustments:
    """Forgets all that was set by hand for lines of the order."""

    numbers: tuple[str, ...]

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return f"Work {self.numbers[0]} out again" if len(self.numbers) == 1 else "Work lines out again"

    def apply(self, project: Project) -> Project:
        """The project without these adjustments."""
        stock = project.hardware
        kept = tuple(each for each in stock.adjustments if each.number not in self.numbers)
        return _with_hardware(project, lambda: stock.replace(adjustments=kept))


@dataclass(frozen=True)
class AddExtra:
    """Adds a line of the owner's own to the order."""

    extra: ExtraItem

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return f"Add “{self.extra.name}” to the order"

    def apply(self, project: Project) -> Project:
        """The project with the line; EditRefused where its id is taken or there are too many."""
        stock = project.hardware
        return _with_hardware(project, lambda: stock.replace(extras=(*stock.extras, self.extra)))


@dataclass(frozen=True)
class ChangeExtra:
    """Sets one field of a line of the owner's own."""

    extra_id: str
    field: str
    value: object

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return f"Change {hardware_field(self.field)} of added line"

    def apply(self, project: Project) -> Project:
        """The project with the field changed; EditRefused where the value is not allowed or the line is gone."""
        stock = project.hardware
        extra = stock.extra(self.extra_id)
        if extra is None:
            raise EditRefused("That line is no longer there.")
        changed = checked(lambda: extra.replace(**{self.field: self.value}), self.field)
        extras = tuple(changed if each.id == self.extra_id else each for each in stock.extras)
        return _with_hardware(project, lambda: stock.replace(extras=extras), self.field)


@dataclass(frozen=True)
class RemoveExtras:
    """Takes lines of the owner's own off the order."""

    extra_ids: tuple[str, ...]

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return "Remove added line" if len(self.extra_ids) == 1 else f"Remove {len(self.extra_ids)} added lines"

    def apply(self, project: Project) -> Project:
        """The project without the lines."""
        stock = project.hardware
        kept = tuple(each for each in stock.extras if each.id not in self.extra_ids)
        return _with_hardware(project, lambda: stock.replace(extras=kept))


def _sets_something(adjustment: Adjustment) -> bool:
    return adjustment != Adjustment(number=adjustment.number)
