"""Edits of sheets and bars: what can be bought, and what lies in the rack already.

Law: what is owned is there a number of times; where none is given, once.
"""

from collections.abc import Callable
from dataclasses import dataclass

from baywright.app.commands import EditRefused, checked
from baywright.model.project import Project
from baywright.model.stock import Bar, Sheet, Stock

_PLAIN = {
    "material_id": "material",
    "is_owned": "ownership",
    "is_trimmed": "trimming",
    "has_grain": "grain",
    "density_kg_m3": "density",
    "nominal_mm": "thickness",
}
"""What fields are called in the undo menu where their name is no plain word."""


@dataclass(frozen=True)
class AddSheet:
    """Adds a line of sheets after the others."""

    sheet: Sheet

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return "Add offcut" if self.sheet.is_owned else "Add sheet"

    def apply(self, project: Project) -> Project:
        """The project with the sheet; EditRefused where its id is taken or its material is not there."""
        return with_stock(project, lambda stock: stock.replace(sheets=(*stock.sheets, self.sheet)))


@dataclass(frozen=True)
class ChangeSheet:
    """Sets one field of a line of sheets."""

    sheet_id: str
    field: str
    value: object

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return f"Change {plain_field(self.field)} of sheet"

    def apply(self, project: Project) -> Project:
        """The project with the field changed; EditRefused where the value is not allowed or the sheet is gone."""
        sheet = sheet_of(project, self.sheet_id)
        changed = checked(lambda: sheet.replace(**{self.field: self.value}), self.field)
        sheets = tuple(changed if each.id == self.sheet_id else each for each in project.stock.sheets)
        return with_stock(project, lambda stock: stock.replace(sheets=sheets), self.field)


@dataclass(frozen=True)
class RemoveSheet:
    """Removes lines of sheets."""

    sheet_ids: tuple[str, ...]

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return "Remove sheet" if len(self.sheet_ids) == 1 else f"Remove {len(self.sheet_ids)} sheets"

    def apply(self, project: Project) -> Project:
        """The project without the sheets."""
        kept = tuple(sheet for sheet in project.stock.sheets if sheet.id not in self.sheet_ids)
        return with_stock(project, lambda stock: stock.replace(sheets=kept))


@dataclass(frozen=True)
class AddBar:
    """Adds a line of bars after the others."""

    bar: Bar

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return "Add bar"

    def apply(self, project: Project) -> Project:
        """The project with the bar; EditRefused where its id is taken."""
        return with_stock(project, lambda stock: stock.replace(bars=(*stock.bars, self.bar)))


@dataclass(frozen=True)
class ChangeBar:
    """Sets one field of a line of bars."""

    bar_id: str
    field: str
    value: object

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return f"Change {plain_field(self.field)} of bar"

    def apply(self, project: Project) -> Project:
        """The project with the field changed; EditRefused where the value is not allowed or the bar is gone."""
        bar = bar_of(project, self.bar_id)
        changed = checked(lambda: bar.replace(**{self.field: self.value}), self.field)
        bars = tuple(changed if each.id == self.bar_id else each for each in project.stock.bars)
        return with_stock(project, lambda stock: stock.replace(bars=bars), self.field)


@dataclass(frozen=True)
class RemoveBar:
    """Removes lines of bars."""

    bar_ids: tuple[str, ...]

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return "Remove bar" if len(self.bar_ids) == 1 else f"Remove {len(self.bar_ids)} bars"

    def apply(self, project: Project) -> Project:
        """The project without the bars."""
        kept = tuple(bar for bar in project.stock.bars if bar.id not in self.bar_ids)
        return with_stock(project, lambda stock: stock.replace(bars=kept))


def with_stock(project: Project, change: Callable[[Stock], Stock], field: str = "") -> Project:
    """The project with its stock changed; EditRefused where that cannot be."""
    stock = checked(lambda: change(project.stock), field)
    return checked(lambda: project.replace(stock=stock), field)


def sheet_of(project: Project, sheet_id: str) -> Sheet:
    """The line of sheets with that id; EditRefused where it is gone."""
    for sheet in project.stock.sheets:
        if sheet.id == sheet_id:
            return sheet
    raise EditRefused("That sheet is no longer in the stock.")


def bar_of(project: Project, bar_id: str) -> Bar:
    """The line of bars with that id; EditRefused where it is gone."""
    for bar in project.stock.bars:
        if bar.id == bar_id:
            return bar
    raise EditRefused("That bar is no longer in the stock.")


def plain_field(field: str) -> str:
    """A field of the stock as the undo menu calls it."""
    return _PLAIN.get(field, field.removesuffix("_mm").replace("_", " "))
