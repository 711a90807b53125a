"""A single change of the document that makes an impossible request possible."""

from baywright.model.base import Frozen

FieldValue = bool | int | float | str | None


class FieldChange(Frozen):
    """One field and its new value. The path is dotted; a member of a list is named by its id in brackets, or by its
    number from 0: `limits.drawers_per_bay`, `boxes[pumps].status`, `arrangement.placements[pumps].lock`,
    `limits.bays[1].drawers`, `space.zones[pipe].depth_mm`. Made by `baywright.model.change.changed`.
    """

    path: str
    value: FieldValue


class Repair(Frozen):
    """What to change, in words and as fields. Offered only after a solve of the changed document found a plan."""

    text: str
    changes: tuple[FieldChange, ...]
    weight: float = 0.0
    """How much it asks of the owner; repairs are offered in this order (see `baywright.planner.reasons.repair`)."""
