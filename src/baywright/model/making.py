"""What the making package answers: parts to cut and hardware to buy."""

from enum import StrEnum

from baywright.model.base import Frozen


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
    edged_length_mm: float = 0.0
    """Length of edge, in mm a piece, that is covered with edging."""
    edging_strips: int = 0
    """How many edges of a piece that is: strips of edging to cut."""
    note: str = ""


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


class Manufacture(Frozen):
    """Everything to cut, buy and fit for one arrangement, with what could not be worked out."""

    parts: tuple[Part, ...]
    hardware: tuple[HardwareItem, ...]
    schedule: tuple[ScheduleLine, ...]
    remarks: tuple[str, ...] = ()
