"""What the making package answers: parts to cut and hardware to buy."""

from decimal import Decimal
from enum import StrEnum

from baywright.model.base import Frozen
from baywright.model.catalogue import HardwareKind
from baywright.model.machining import Machining, Side
from baywright.model.stock import BoardRole


class Grain(StrEnum):
    """Which way the grain of the face must run."""

    LENGTH = "along the length"
    WIDTH = "along the width"
    ANY = "any"


class Part(Frozen):
    """Identical pieces to cut. Length runs with the grain where there is one; all finished sizes in mm."""

    number: str
    """Part number that stands on every list, e.g. `U1`."""
    name: str
    quantity: int
    length_mm: float
    width_mm: float
    thickness_mm: float
    material: str
    grain: Grain
    note: str = ""
    role: BoardRole | None = None
    material_id: str = ""
    """Of the stock's material, or of one that is taken for granted where the owner named none for the role."""
    cut_length_mm: float = 0.0
    cut_width_mm: float = 0.0
    """Size to cut: the finished size less the edging."""
    banded: tuple[Side, ...] = ()
    """Which edges are covered with edging."""
    mirrored: int = 0
    """How many of the quantity are mirror images of the rest."""
    mass_kg: float | None = None
    """Of one piece; None where the material's density is not known."""
    machining: Machining = Machining()
    bays: tuple[int, ...] = ()
    """The bays that the pieces stand in or beside, from 0, one entry a piece and bay; the shelf bay is -1."""
    lefts_mm: tuple[float, ...] = ()
    """Of uprights and boards that run along the wall: where the left end of each piece lies, from the leftmost
    upright's outer face; of mirrored pieces after the others.
    """
    nominal_mm: float = 0.0
    """What the material's thickness is called; `thickness_mm` is what was measured, where it was."""

    @property
    def edged_length_mm(self) -> float:
        """Length of edge, in mm a piece, that is covered with edging."""
        return sum(self.edge_mm(side) for side in self.banded)

    @property
    def edging_strips(self) -> int:
        """How many edges of a piece are covered: strips of edging to cut."""
        return len(self.banded)

    def edge_mm(self, side: Side) -> float:
        """Finished length in mm of one of the four edges."""
        return self.width_mm if side in (Side.START, Side.END) else self.length_mm


class HardwareItem(Frozen):
    """One line of the hardware order: `needed` pieces (or metres), packs of `pack_size`, `packs` to buy."""

    number: str
    name: str
    specification: str
    needed: float
    allowance: float
    """Extra for loss and waste, in the same unit."""
    unit: str
    pack_size: float
    packs: int
    note: str = ""
    kind: HardwareKind = HardwareKind.OTHER
    item_id: str = ""
    """The catalogue item that was taken, or the owner's extra item; empty where there is none."""
    item_name: str = ""
    """What the catalogue calls the item that was taken."""
    price: Decimal | None = None
    """Of one pack."""
    supplier: str = ""
    order_number: str = ""
    is_extra: bool = False
    """A line that the owner added."""
    is_left_out: bool = False
    """At hand already: no pack is bought, whatever is needed."""
    mass_kg: float | None = None
    """Of what is needed, without the spare; None where it is not known."""
    bays: tuple[tuple[int, float], ...] = ()
    """How much of the need is used in which bay, from 0; the shelf bay is -1. Empty: all along the run."""

    @property
    def cost(self) -> Decimal | None:
        """Of the packs to buy; None where the price is missing."""
        if self.packs == 0:
            return Decimal(0)
        return None if self.price is None else self.price * self.packs


class ScheduleLine(Frozen):
    """One box in its drawer, in the drawer schedule; heights in mm over the floor, rows from 1 at the bottom."""

    bay: int
    drawer: int
    box_id: str
    box_label: str
    size_name: str
    contents: str
    loaded_mass_kg: float | None
    runner_row: int
    rows_taken: int
    lower_edge_mm: float
    """Height of the drawer's lower edge over the floor."""
    runner_line_mm: float
    """Height of the runner's line over the upright's lower end: where to drill."""
    box_top_mm: float
    """Height of the box's upper side over the floor."""
    opening_mm: float
    """Clear height from this drawer's lower edge to the next one's, or to the underside of the top."""
    load_class_kg: float | None
    locked: bool
    place_in_drawer: str = ""
    """Where in a shared drawer the box stands, or that it stands turned; empty for a drawer of its own."""
    box_stop_mm: float | None = None
    """How far the box stop's front face lies behind the front rail; None where the drawer has none."""
    runner_holes_mm: tuple[float, ...] = ()
    """Which holes of its row the runner is screwed on at: how far behind the uprights' front edges they lie, the same
    on the left and on the right.
    """


class FrontPanel(Frozen):
    """One drawer's front panel where it hangs; x in mm from the leftmost upright's outer face as in the layout, heights
    over the floor; bay and row from 0.
    """

    number: str
    """Its part number."""
    bay: int
    row: int
    left_mm: float
    right_mm: float
    bottom_mm: float
    top_mm: float
    thickness_mm: float

    @property
    def width_mm(self) -> float:
        """Finished size across."""
        return self.right_mm - self.left_mm

    @property
    def height_mm(self) -> float:
        """Finished size upright."""
        return self.top_mm - self.bottom_mm


class Manufacture(Frozen):
    """Everything to cut, buy and fit for one arrangement, with what could not be worked out."""

    parts: tuple[Part, ...]
    hardware: tuple[HardwareItem, ...]
    schedule: tuple[ScheduleLine, ...]
    remarks: tuple[str, ...] = ()
    fronts: tuple[FrontPanel, ...] = ()
    """The drawers' front panels where they hang."""
