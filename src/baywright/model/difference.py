"""What changes from how the run stands to how it is planned: boxes, runners, drawers, parts, and the steps to go."""

from enum import StrEnum

from baywright.model.base import Frozen


class Place(Frozen):
    """A drawer by its bay and row, both from 0."""

    bay: int
    row: int


class BoxMove(Frozen):
    """A box whose place changes. `before` is None for a box that had none, `after` for one that loses it."""

    box_id: str
    before: Place | None
    after: Place | None


class RunnerMove(Frozen):
    """A runner pair (with its drawer) that is taken off at one place and screwed on at another."""

    before: Place
    after: Place


class PartChange(Frozen):
    """Parts of one name, material and size: how many more are cut, or how many lie idle."""

    name: str
    material: str
    length_mm: float
    width_mm: float
    thickness_mm: float
    quantity: int
    note: str = ""


class StepKind(StrEnum):
    """What one step of the work is."""

    CUT = "cut"
    PUT_UP = "put_up"
    """Put up bays that do not stand yet."""
    SET_ASIDE = "set_aside"
    """Take a box out and put it on the bench for a while."""
    TAKE_OUT = "take_out"
    """Take out a box that leaves the run."""
    SCREW = "screw"
    """Screw a runner pair on, or off and on elsewhere."""
    HANG = "hang"
    """Hang a new drawer."""
    PUT = "put"
    """Put a box into its drawer."""
    REMOVE = "remove"
    """Take off a drawer that is no longer needed."""


class Step(Frozen):
    """One step, in words and as data."""

    kind: StepKind
    text: str
    box_id: str = ""
    before: Place | None = None
    after: Place | None = None


class Difference(Frozen):
    """Everything that re-planning asks for. Empty where nothing changes."""

    moves: tuple[BoxMove, ...] = ()
    """Boxes that stand in the run before and after and change their place."""
    new_boxes: tuple[BoxMove, ...] = ()
    gone_boxes: tuple[BoxMove, ...] = ()
    runners: tuple[RunnerMove, ...] = ()
    new_drawers: tuple[Place, ...] = ()
    idle_drawers: tuple[Place, ...] = ()
    parts_to_cut: tuple[PartChange, ...] = ()
    parts_idle: tuple[PartChange, ...] = ()
    steps: tuple[Step, ...] = ()
    remarks: tuple[str, ...] = ()

    @property
    def is_empty(self) -> bool:
        """Whether nothing has to be done."""
        return self == Difference(remarks=self.remarks)
