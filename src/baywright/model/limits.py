"""What the owner fixes about the run before anything is planned."""

from typing import Annotated

from pydantic import Field

from baywright.model.base import Frozen

MOST_BAYS = 500
MOST_ROWS = 300


class Limits(Frozen):
    """Fixed numbers; None leaves the choice to the planner."""

    drawers_per_bay: Annotated[int, Field(ge=1, le=MOST_ROWS)] | None = None
    """At most so many drawers in one bay."""
    bay_count: Annotated[int, Field(ge=1, le=MOST_BAYS)] | None = None
    """Exactly so many drawer bays; None takes the fewest that hold everything."""
    upright_rows: Annotated[int, Field(ge=1, le=MOST_ROWS)] | None = None
    """Exactly so many hole rows in each upright; None takes the lowest run that holds everything."""
    bay_box_width_mm: Annotated[float, Field(gt=0, le=3_000.0)] | None = None
    """Width of box that the bays are made for; None makes them for the widest box in the inventory."""
    shelf_bay: bool = True
    """Whether the rest of the wall becomes a bay with adjustable shelves."""
    shelf_count: Annotated[int, Field(ge=0, le=50)] = 3
    """Adjustable shelves in that bay."""
    shelf_bay_least_width_mm: Annotated[float, Field(ge=0, le=3_000.0)] = 150.0
    """A rest narrower than this becomes no shelf bay."""
    shelf_play_mm: Annotated[float, Field(ge=0, le=20.0)] = 1.0
    """Air at each end of a shelf."""
