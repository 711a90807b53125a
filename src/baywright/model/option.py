"""The choice that a builder faces: shapes of the run that no other shape beats in everything."""

from baywright.model.arrangement import Arrangement
from baywright.model.base import Frozen
from baywright.model.construction import Uprights
from baywright.model.repair import FieldChange


class Option(Frozen):
    """One shape of the run that holds every box. Lengths in mm."""

    id: str
    bays: int
    rows: int
    uprights: Uprights
    overhang_front_mm: float
    overhang_side_mm: float
    unit_height_mm: float
    """The worktop's height over the floor."""
    run_length_mm: float
    left_over_mm: float
    """Clear width left over beside the drawer bays."""
    runner_length_mm: float
    free_rows: int
    arrangement: Arrangement
    """A plan for it, so that it can be drawn and taken over."""
    handling: float
    """Handling cost of that plan (see `baywright.planner.handling`); a longer search may find an easier one."""
    is_lowest: bool = True
    """Whether it is proved that no lower run of so many bays holds every box."""
    sheets: int | None = None
    """Sheets to buy; None while that is not known."""
    cost: float | None = None
    """None while prices are missing."""
    changes: tuple[FieldChange, ...] = ()
    """What to set in the document so that planning keeps this shape."""
    is_present: bool = False
    """Whether the run stands in this shape now."""
    is_beaten: bool = False
    """Whether another option is better; only the present shape is told all the same."""
