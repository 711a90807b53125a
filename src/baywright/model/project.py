"""The project document: everything a person entered, and the present arrangement. Plain frozen data."""

from collections import Counter
from collections.abc import Mapping
from functools import cached_property
from typing import Annotated, Literal, Self

from pydantic import Field, model_validator

from baywright.model.arrangement import Arrangement
from baywright.model.base import Frozen, Label, Text
from baywright.model.catalogue import HardwareStock
from baywright.model.construction import Boards, Construction
from baywright.model.goals import USUAL_ORDER, Goal
from baywright.model.inventory import Box, BoxSize, BoxStatus
from baywright.model.length import LengthUnit
from baywright.model.limits import MOST_BAYS, Limits
from baywright.model.money import Pricing
from baywright.model.safety import Safety
from baywright.model.space import Space
from baywright.model.stock import Stock

FORMAT_VERSION = 3
MOST_BOXES = 10_000
MOST_BOX_SIZES = 1_000


class Built(Frozen):
    """What has been cut, drilled and put up already: some bays of an earlier state of the document.

    Re-planning keeps their place, width, rows and hole grid; only what stands in their drawers may change.
    """

    bays: Annotated[tuple[Annotated[int, Field(ge=0, lt=MOST_BAYS)], ...], Field(min_length=1)]
    """Numbers of the bays that stand, from 0, rising."""
    project: "Project"
    """The document as they were built from; its own `built` is None."""

    @model_validator(mode="after")
    def _bays_were_planned(self) -> Self:
        if self.project.built is not None:
            raise ValueError("The document that bays were built from cannot itself hold one that bays were built from.")
        if list(self.bays) != sorted(set(self.bays)) or self.bays[-1] >= self.project.arrangement.bay_count:
            raise ValueError("The bays that stand must be bays of the arrangement they were built from, each once.")
        return self


class Project(Frozen):
    """One project document. Ids are unique; every box has a size that exists; every placement a box that exists."""

    format_version: Literal[3] = 3
    name: Label = "New project"
    note: Text = ""
    unit: LengthUnit = LengthUnit.MILLIMETRE
    space: Space = Space()
    construction: Construction = Construction()
    limits: Limits = Limits()
    box_sizes: Annotated[tuple[BoxSize, ...], Field(max_length=MOST_BOX_SIZES)] = ()
    boxes: Annotated[tuple[Box, ...], Field(max_length=MOST_BOXES)] = ()
    arrangement: Arrangement = Arrangement()
    goals: tuple[Goal, ...] = USUAL_ORDER
    """The order of the goals after fewest bays and lowest run."""
    built: Built | None = None
    safety: Safety = Safety()
    stock: Stock = Stock()
    hardware: HardwareStock = HardwareStock()
    pricing: Pricing = Pricing()

    @model_validator(mode="after")
    def _every_goal_once(self) -> Self:
        if sorted(self.goals) != sorted(USUAL_ORDER):
            raise ValueError("The goals must be moves, re-screwed runners, handling, groups and free piece, each once.")
        return self

    @model_validator(mode="after")
    def _references_hold(self) -> Self:
        for what, ids in (("box size", [s.id for s in self.box_sizes]), ("box", [b.id for b in self.boxes])):
            doubled = [identifier for identifier, count in Counter(ids).items() if count > 1]
            if doubled:
                raise ValueError(f"The {what} id “{doubled[0]}” is used twice; ids must differ.")
        sizes = {size.id for size in self.box_sizes}
        for box in self.boxes:
            if box.size_id not in sizes:
                raise ValueError(
                    f"Box “{box.label}” has the size “{box.size_id}”, which is not in the list of box sizes."
                )
        boxes = {box.id for box in self.boxes}
        for placement in self.arrangement.placements:
            if placement.box_id not in boxes:
                raise ValueError(f"The arrangement places a box “{placement.box_id}” that is not in the inventory.")
        return self

    @cached_property
    def boards(self) -> Boards:
        """The board thicknesses in force: of the batches in use where there are any, else those of the construction."""
        measured = {
            f"{role.value}_mm": material.batch.measured_mm
            for material in self.stock.materials
            if material.batch is not None
            for role in material.roles
        }
        return self.construction.boards.replace(**measured) if measured else self.construction.boards

    @cached_property
    def boxes_to_place(self) -> tuple[Box, ...]:
        """The boxes that get a drawer, or room for one: all but those that are kept elsewhere."""
        return tuple(box for box in self.boxes if box.status is not BoxStatus.ELSEWHERE)

    @cached_property
    def sizes_by_id(self) -> Mapping[str, BoxSize]:
        """Every box size by its id."""
        return {size.id: size for size in self.box_sizes}

    @cached_property
    def boxes_by_id(self) -> Mapping[str, Box]:
        """Every box by its id."""
        return {box.id: box for box in self.boxes}

    def size_of(self, box: Box) -> BoxSize:
        """The size of a box of this project."""
        return self.sizes_by_id[box.size_id]

    def size(self, size_id: str) -> BoxSize:
        """The box size with that id; KeyError where there is none."""
        return self.sizes_by_id[size_id]

    def box(self, box_id: str) -> Box:
        """The box with that id; KeyError where there is none."""
        return self.boxes_by_id[box_id]
