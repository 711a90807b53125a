"""Edits of the board materials: what each is, which boards are cut from it, and its batches as measured.

Laws: a board of the run is cut from one material at most, so giving it to one takes it from another; a material goes
only when no sheet is of it; the batch in use goes with its use.
"""

from dataclasses import dataclass

from baywright.app.commands import EditRefused, checked
from baywright.app.edits.stock import plain_field, with_stock
from baywright.model.project import Project
from baywright.model.stock import Batch, BoardRole, Material, Stock
from baywright.workings.material import material_of


def words_of_role(role: BoardRole) -> str:
    """A board of the run in words, e.g. “drawer side”."""
    return role.value.replace("_", " ")


@dataclass(frozen=True)
class AddMaterial:
    """Adds a material after the others."""

    material: Material

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return f"Add material “{self.material.name}”"

    def apply(self, project: Project) -> Project:
        """The project with the material, which takes over its boards from others; EditRefused where its id is taken."""
        return with_stock(project, lambda stock: _with_material(stock, self.material))


@dataclass(frozen=True)
class AdoptMaterial:
    """Puts a material that was taken for granted into the stock, for the boards that it was taken for."""

    material_id: str

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return "Put material into stock"

    def apply(self, project: Project) -> Project:
        """The project with the material; EditRefused where no board is of it."""
        return adopted(project, self.material_id)


def adopted(project: Project, material_id: str) -> Project:
    """The project with a material in its stock that parts are of: as it is where it is there already.

    Raises EditRefused where no board of the run is of it.
    """
    if any(material.id == material_id for material in project.stock.materials):
        return project
    granted = {role: material_of(project, role) for role in BoardRole}
    roles = tuple(role for role, material in granted.items() if material.id == material_id)
    if not roles:
        raise EditRefused("No board of the run is of that material any more.")
    return AddMaterial(granted[roles[0]].replace(roles=roles)).apply(project)


@dataclass(frozen=True)
class ChangeMaterial:
    """Sets one field of a material."""

    material_id: str
    field: str
    value: object

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return f"Change {plain_field(self.field)} of material"

    def apply(self, project: Project) -> Project:
        """The project with the field changed; EditRefused where the value is not allowed or the material is gone."""
        material = _material(project, self.material_id)
        changed = checked(lambda: material.replace(**{self.field: self.value}), self.field)
        return with_stock(project, lambda stock: _replaced(stock, changed), self.field)


@dataclass(frozen=True)
class RemoveMaterial:
    """Removes a material that no sheet is of; the boards cut from it are of a usual material again."""

    material_id: str

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return "Remove material"

    def apply(self, project: Project) -> Project:
        """The project without the material; EditRefused while sheets are of it."""
        material = _material(project, self.material_id)
        count = sum(sheet.material_id == self.material_id for sheet in project.stock.sheets)
        if count:
            what = "One line of sheets is" if count == 1 else f"{count} lines of sheets are"
            raise EditRefused(f"{what} of “{material.name}”. Remove them or give them another material first.")
        kept = tuple(each for each in project.stock.materials if each.id != self.material_id)
        return with_stock(project, lambda stock: stock.replace(materials=kept))


@dataclass(frozen=True)
class AssignRole:
    """Says which material a board of the run is cut from; None leaves it to a usual one."""

    role: BoardRole
    material_id: str | None

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return f"Choose material of {words_of_role(self.role)}"

    def apply(self, project: Project) -> Project:
        """The project with the board given to that material alone; EditRefused where the material is gone."""
        if self.material_id is not None:
            _material(project, self.material_id)

        def given(material: Material) -> Material:
            roles = [role for role in material.roles if role is not self.role]
            if material.id == self.material_id:
                roles.append(self.role)
            return material.replace(roles=tuple(role for role in BoardRole if role in roles))

        return with_stock(project, lambda stock: stock.replace(materials=tuple(map(given, stock.materials))))


@dataclass(frozen=True)
class AddBatch:
    """Adds a batch of a material; the first one is used at once, for it was measured to be."""

    material_id: str
    batch: Batch

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return f"Add batch “{self.batch.name}”"

    def apply(self, project: Project) -> Project:
        """The project with the batch; EditRefused where its id is taken or the material is gone."""
        material = _material(project, self.material_id)
        in_use = material.batch_id if material.batches else self.batch.id
        changed = checked(lambda: material.replace(batches=(*material.batches, self.batch), batch_id=in_use))
        return with_stock(project, lambda stock: _replaced(stock, changed))


@dataclass(frozen=True)
class ChangeBatch:
    """Sets one field of a batch."""

    material_id: str
    batch_id: str
    field: str
    value: object

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return f"Change {plain_field(self.field)} of batch"

    def apply(self, project: Project) -> Project:
        """The project with the field changed; EditRefused where the value is not allowed or the batch is gone."""
        material = _material(project, self.material_id)
        batch = _batch(material, self.batch_id)
        changed = checked(lambda: batch.replace(**{self.field: self.value}), self.field)
        batches = tuple(changed if each.id == self.batch_id else each for each in material.batches)
        with_batch = checked(lambda: material.replace(batches=batches), self.field)
        return with_stock(project, lambda stock: _replaced(stock, with_batch), self.field)


@dataclass(frozen=True)
class RemoveBatch:
    """Removes a batch; where it was in use, the thickness that the construction says is in force again."""

    material_id: str
    batch_id: str

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return "Remove batch"

    def apply(self, project: Project) -> Project:
        """The project without the batch."""
        material = _material(project, self.material_id)
        kept = tuple(batch for batch in material.batches if batch.id != self.batch_id)
        in_use = None if material.batch_id == self.batch_id else material.batch_id
        return with_stock(project, lambda stock: _replaced(stock, material.replace(batches=kept, batch_id=in_use)))


@dataclass(frozen=True)
class UseBatch:
    """Says which batch of a material is being cut, so that its thickness is in force; None for none."""

    material_id: str
    batch_id: str | None

    @property
    def title(self) -> str:
        """The undo menu's name of the edit."""
        return "Use no measured batch" if self.batch_id is None else "Use another batch"

    def apply(self, project: Project) -> Project:
        """The project with that batch in use; EditRefused where material or batch is gone."""
        material = _material(project, self.material_id)
        if self.batch_id is not None:
            _batch(material, self.batch_id)
        return with_stock(project, lambda stock: _replaced(stock, material.replace(batch_id=self.batch_id)))


def _with_material(stock: Stock, added: Material) -> Stock:
    others = (
        material.replace(roles=tuple(role for role in material.roles if role not in added.roles))
        for material in stock.materials
    )
    return stock.replace(materials=(*others, added))


def _replaced(stock: Stock, changed: Material) -> Stock:
    return stock.replace(materials=tuple(changed if each.id == changed.id else each for each in stock.materials))


def _material(project: Project, material_id: str) -> Material:
    for material in project.stock.materials:
        if material.id == material_id:
            return material
    raise EditRefused("That material is no longer in the stock.")


def _batch(material: Material, batch_id: str) -> Batch:
    for batch in material.batches:
        if batch.id == batch_id:
            return batch
    raise EditRefused(f"That batch of “{material.name}” is no longer there.")
