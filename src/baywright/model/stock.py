"""What parts are cut from: board materials with their measured batches, sheets, bars and offcuts, and the saw's rules.

Laws: a board's thickness in force is the mean of the batch in use of its material, else what the construction says; a
sheet belongs to one material; what is owned is bought no more.
"""

from enum import StrEnum
from typing import Annotated, Literal, Self

from pydantic import Field, model_validator

from baywright.model.base import (
    BoardThicknessMillimetres,
    Frozen,
    Identifier,
    Label,
    PositiveMillimetres,
    Text,
)
from baywright.model.money import Price
from baywright.model.safety import BoardMaterial

MOST_MATERIALS = 100
MOST_SHEETS = 1_000
MOST_SPREAD_MM = 1.0
"""Readings of one delivery differ less: a usual sheet may be some tenths over or under (EN 315), our judgement."""
MOST_AWAY_MM = 2.0
"""A board is nearer to its nominal thickness: EN 315 allows 1.3 mm at 30 mm, our judgement."""
_SAME_MM = 0.05
"""Widths that differ by no more are one: bars are sold to the tenth of a mm at best."""


class BoardRole(StrEnum):
    """What a board is in the run. The value is the name of its thickness in the construction, less `_mm`."""

    UPRIGHT = "upright"
    BASE = "base"
    TOP = "top"
    DRAWER_SIDE = "drawer_side"
    """Drawer sides, rails and box stops."""
    DRAWER_BOTTOM = "drawer_bottom"
    BACK = "back"
    BRACE = "brace"
    """Braces, and the fixing rail on an existing wall."""
    SHELF = "shelf"
    PLINTH = "plinth"
    FRONT = "front"
    """Front panels of drawers."""
    END_PANEL = "end_panel"


class Batch(Frozen):
    """Boards of a material that were delivered together, and their thickness as measured."""

    id: Identifier
    name: Label
    readings_mm: Annotated[tuple[BoardThicknessMillimetres, ...], Field(min_length=1, max_length=100)]
    """Thickness at several places, in mm; EN 324-1 measures at eight."""

    @property
    def measured_mm(self) -> float:
        """Mean thickness in mm, to a hundredth."""
        return round(sum(self.readings_mm) / len(self.readings_mm), 2)

    @property
    def least_mm(self) -> float:
        """Thinnest place measured, in mm."""
        return min(self.readings_mm)

    @property
    def most_mm(self) -> float:
        """Thickest place measured, in mm."""
        return max(self.readings_mm)


class Material(Frozen):
    """A board material of one nominal thickness, and which boards of the run are cut from it."""

    id: Identifier
    name: Label
    """As ordered, e.g. “birch plywood 18 mm”."""
    kind: BoardMaterial = BoardMaterial.BIRCH_PLYWOOD
    nominal_mm: BoardThicknessMillimetres = 18.0
    has_grain: bool = True
    """Whether its face has a grain that parts must follow."""
    density_kg_m3: Annotated[float, Field(ge=50, le=3_000)] | None = None
    """None takes the usual density of its kind."""
    roles: tuple[BoardRole, ...] = ()
    batches: Annotated[tuple[Batch, ...], Field(max_length=100)] = ()
    batch_id: Identifier | None = None
    """The batch that is being cut; None reckons with the thickness that the construction says."""

    @model_validator(mode="after")
    def _batch_is_there(self) -> Self:
        ids = [batch.id for batch in self.batches]
        if len(set(ids)) < len(ids):
            raise ValueError(f"Two batches of “{self.name}” have the same id; ids must differ.")
        if self.batch_id is not None and self.batch_id not in ids:
            raise ValueError(f"“{self.name}” is to be cut from the batch “{self.batch_id}”, which it does not have.")
        return self

    def doubt(self, batch: Batch) -> str:
        """What makes a slip of the finger likely in a batch's readings, in mm; empty where nothing does."""
        spread, away = batch.most_mm - batch.least_mm, abs(batch.measured_mm - self.nominal_mm)
        if spread > MOST_SPREAD_MM:
            return f"The readings of “{batch.name}” differ by {spread:.3g} mm: is one of them mistyped?"
        if away > MOST_AWAY_MM:
            return f"“{batch.name}” is {away:.3g} mm from the nominal {self.nominal_mm:g} mm: is it of “{self.name}”?"
        return ""

    @property
    def batch(self) -> Batch | None:
        """The batch in use."""
        return next((batch for batch in self.batches if batch.id == self.batch_id), None)


class Sheet(Frozen):
    """Sheets of one size and price, to be bought or owned; an offcut is a sheet that is owned."""

    id: Identifier
    material_id: Identifier
    name: Text = ""
    length_mm: PositiveMillimetres = 2500.0
    """Along the grain."""
    width_mm: PositiveMillimetres = 1250.0
    price: Price | None = None
    """Of one sheet; None where it is not known. What is owned costs nothing."""
    quantity: Annotated[int, Field(ge=0, le=10_000)] | None = None
    """How many there are; None: as many as one wants to buy."""
    is_owned: bool = False
    """Lies in the rack already: used first where that saves. Trimmed only where `is_trimmed`."""
    is_trimmed: bool = True
    """Whether its edges must be trimmed before it is cut."""
    supplier: Text = ""
    note: Text = ""


class BarUse(StrEnum):
    """What is cut from a bar or roll."""

    EDGING = "edging"
    """Bands and solid lippings."""
    RAIL = "rail"
    """Braces and fixing rails, where they are not cut from sheets."""


class Bar(Frozen):
    """Bars, strips or rolls of one length, width and price, to be bought or owned."""

    id: Identifier
    use: BarUse = BarUse.EDGING
    name: Text = ""
    length_mm: PositiveMillimetres = 2500.0
    width_mm: PositiveMillimetres | None = None
    """Of a strip, what it covers with what is trimmed off; of a rail, its width. None serves boards of any thickness,
    and rails of any width.
    """
    price: Price | None = None
    quantity: Annotated[int, Field(ge=0, le=10_000)] | None = None
    is_owned: bool = False
    supplier: Text = ""
    note: Text = ""

    def serves(self, use: BarUse, width_mm: float) -> bool:
        """Whether pieces of that use and width (mm) come from it: a strip may be wider, a rail not."""
        if use is not self.use:
            return False
        over = 0.0 if self.width_mm is None else self.width_mm - width_mm
        return over >= -_SAME_MM and (use is BarUse.EDGING or over <= _SAME_MM)


class CuttingRules(Frozen):
    """How the saw cuts, and which rest pieces are worth keeping (mm)."""

    kerf_mm: Annotated[float, Field(ge=0, le=20.0)] = 3.2
    """What the blade takes; common practice, from memory: read it on the blade."""
    trim_mm: Annotated[float, Field(ge=0, le=100.0)] = 10.0
    """Cut off all round a sheet before it is divided; common practice."""
    stages: Literal[2, 3] | None = None
    """How often the direction of cutting may change, as some panel saws ask; None: as often as it serves."""
    rest_length_mm: PositiveMillimetres = 600.0
    """Least longer side of a rest piece worth keeping."""
    rest_width_mm: PositiveMillimetres = 200.0
    """Least shorter side of a rest piece worth keeping."""
    full_width_first: bool = True
    """Whether a rest over the whole width of its sheet is liked better than a larger one that is not."""
    bar_kerf_mm: Annotated[float, Field(ge=0, le=20.0)] = 3.2
    bar_rest_mm: PositiveMillimetres = 300.0
    """Least length of a rest of a bar worth keeping."""
    rails_from_bars: bool = False
    """Whether braces and fixing rails are cut from bars, not from sheets."""


class Stock(Frozen):
    """All that parts can be cut from."""

    materials: Annotated[tuple[Material, ...], Field(max_length=MOST_MATERIALS)] = ()
    sheets: Annotated[tuple[Sheet, ...], Field(max_length=MOST_SHEETS)] = ()
    bars: Annotated[tuple[Bar, ...], Field(max_length=MOST_SHEETS)] = ()
    rules: CuttingRules = CuttingRules()

    @model_validator(mode="after")
    def _references_hold(self) -> Self:
        for what, ids in (
            ("material", [m.id for m in self.materials]),
            ("sheet", [s.id for s in self.sheets]),
            ("bar", [b.id for b in self.bars]),
        ):
            if len(set(ids)) < len(ids):
                doubled = next(one for one in ids if ids.count(one) > 1)
                raise ValueError(f"The {what} id “{doubled}” is used twice; ids must differ.")
        known = {material.id for material in self.materials}
        for sheet in self.sheets:
            if sheet.material_id not in known:
                raise ValueError(
                    f"Sheet “{sheet.name or sheet.id}” is of a material “{sheet.material_id}” that is not there."
                )
        roles = [role for material in self.materials for role in material.roles]
        for role in BoardRole:
            if roles.count(role) > 1:
                raise ValueError(
                    f"Two materials are both meant for the {role.value.replace('_', ' ')}; leave it to one."
                )
        return self

    def material_of(self, role: BoardRole) -> Material | None:
        """The material that boards of a role are cut from; None where the owner named none."""
        return next((material for material in self.materials if role in material.roles), None)
