"""What the owner fixes about the run before anything is planned."""

from typing import Annotated, Self

from pydantic import Field, model_validator

from baywright.model.base import Frozen, Millimetres

MOST_BAYS = 500
MOST_ROWS = 300
MOST_BAY_WIDTHS = 6

BoxWidthMillimetres = Annotated[float, Field(gt=0, le=3_000.0)]


class BayWish(Frozen):
    """What the owner fixes about one bay of the run; None leaves it as the other bays are."""

    box_width_mm: BoxWidthMillimetres | None = None
    """Width of box that this bay is made for."""
    rows: Annotated[int, Field(ge=1, le=MOST_ROWS)] | None = None
    """Hole rows of this bay, where it is to be lower (or higher) than the run."""
    drawers: Annotated[int, Field(ge=0, le=MOST_ROWS)] | None = None
    """At most so many drawers in this bay."""


class Limits(Frozen):
    """Fixed numbers; None leaves the choice to the planner."""

    drawers_per_bay: Annotated[int, Field(ge=1, le=MOST_ROWS)] | None = None
    """At most so many drawers in one bay."""
    bay_count: Annotated[int, Field(ge=1, le=MOST_BAYS)] | None = None
    """Exactly so many drawer bays; None takes the fewest that hold everything."""
    upright_rows: Annotated[int, Field(ge=1, le=MOST_ROWS)] | None = None
    """Exactly so many hole rows in each upright; None takes the lowest run that holds everything."""
    bay_box_width_mm: BoxWidthMillimetres | None = None
    """Width of box that the bays are made for; None makes them for the widest box in the inventory."""
    other_box_widths_mm: Annotated[tuple[BoxWidthMillimetres, ...], Field(max_length=MOST_BAY_WIDTHS)] = ()
    """Further widths of box that the planner may make bays for, as many of each as serve best."""
    bays: Annotated[tuple[BayWish, ...], Field(max_length=MOST_BAYS)] = ()
    """Wishes for the first bays from the left, one each; the run has at least so many bays."""
    worktop_least_mm: Millimetres | None = None
    """The top's upper side must be at least so high over the floor, in mm."""
    worktop_most_mm: Millimetres | None = None
    """The top's upper side must be at most so high over the floor, in mm."""
    spare_rows: Annotated[int, Field(ge=0, le=MOST_BAYS * MOST_ROWS)] = 0
    """So many usable hole rows of the run must stay free for what comes later, wherever they are."""
    shelf_bay: bool = True
    """Whether the rest of the wall becomes a bay with adjustable shelves."""
    shelf_count: Annotated[int, Field(ge=0, le=50)] = 3
    """Adjustable shelves in that bay."""
    shelf_bay_least_width_mm: Annotated[float, Field(ge=0, le=3_000.0)] = 150.0
    """A rest narrower than this becomes no shelf bay."""
    shelf_bay_clear_width_mm: BoxWidthMillimetres | None = None
    """Clear width that the shelf bay shall have; None gives it whatever the drawer bays leave."""
    shelf_play_mm: Annotated[float, Field(ge=0, le=20.0)] = 1.0
    """Air at each end of a shelf."""

    @model_validator(mode="after")
    def _numbers_agree(self) -> Self:
        least, most = self.worktop_least_mm, self.worktop_most_mm
        if least is not None and most is not None and least > most:
            raise ValueError(f"The worktop cannot be at least {least:g} mm and at most {most:g} mm high.")
        if self.bay_count is not None and len(self.bays) > self.bay_count:
            raise ValueError(
                f"There are wishes for {len(self.bays)} bays, but the number of bays is fixed at {self.bay_count}."
            )
        return self

    def wish(self, bay: int) -> BayWish:
        """What is wished for a bay (0 is leftmost); an empty wish where there is none."""
        return self.bays[bay] if bay < len(self.bays) else BayWish()

    def drawers_in(self, bay: int) -> int | None:
        """At most so many drawers in that bay; None without a limit."""
        own = self.wish(bay).drawers
        return self.drawers_per_bay if own is None else own
