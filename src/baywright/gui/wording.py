"""The words by which the window shows values of the model: uses, locks, places, masses, choices of construction."""

from baywright.model.arrangement import Lock, Placement
from baywright.model.construction import (
    Back,
    DrawerForm,
    Drilling,
    EdgingKind,
    FirstRowRule,
    FrontEdge,
    Fronts,
    Jointing,
    Stand,
    Uprights,
)
from baywright.model.count import count_words as count_words
from baywright.model.goals import Goal
from baywright.model.inventory import BoxSize, BoxStatus, Use
from baywright.model.length import LengthUnit, format_length
from baywright.model.safety import BoardMaterial, Climate, Grip
from baywright.model.space import ZoneEffect
from baywright.model.stock import BarUse, BoardRole

USES: tuple[tuple[Use, str], ...] = ((Use.DAILY, "daily"), (Use.WEEKLY, "weekly"), (Use.SELDOM, "seldom"))
STATUSES: tuple[tuple[BoxStatus, str], ...] = (
    (BoxStatus.OWNED, "owned"),
    (BoxStatus.WISHED, "wished"),
    (BoxStatus.ELSEWHERE, "kept elsewhere"),
)
ZONE_EFFECTS: tuple[tuple[ZoneEffect, str], ...] = (
    (ZoneEffect.KEEP_CLEAR, "keep clear"),
    (ZoneEffect.END_BELOW, "end below it"),
    (ZoneEffect.STAY_IN_FRONT, "stay in front"),
)
GOALS: tuple[tuple[Goal, str], ...] = (
    (Goal.BAYS, "fewest bays"),
    (Goal.ROWS, "lowest run"),
    (Goal.MOVES, "fewest boxes moved"),
    (Goal.RESCREWS, "fewest runners re-screwed"),
    (Goal.HANDLING, "easy handling"),
    (Goal.GROUPS, "groups together"),
    (Goal.FREE_PIECE, "largest free piece"),
)
GOAL_SENTENCES: dict[Goal, str] = {
    Goal.BAYS: "As few bays as hold every box.",
    Goal.ROWS: "As few hole rows in the uprights as hold every box, which makes the run low.",
    Goal.MOVES: "When re-planning, as few boxes as possible change their drawer.",
    Goal.RESCREWS: "When re-planning, as few runner pairs as possible are taken off and screwed on elsewhere.",
    Goal.HANDLING: "Heavy boxes and those taken out often stand at an easy height.",
    Goal.GROUPS: "Boxes of one group stand in as few bays as possible.",
    Goal.FREE_PIECE: "Rows that stay free lie together in one bay, as many as possible.",
}
LOCKS: tuple[tuple[Lock, str], ...] = ((Lock.NONE, "free"), (Lock.BAY, "in its bay"), (Lock.DRAWER, "in its drawer"))
BOARD_MATERIALS: tuple[tuple[BoardMaterial, str], ...] = tuple((board, board.value) for board in BoardMaterial)
CLIMATES: tuple[tuple[Climate, str], ...] = (
    (Climate.HEATED, "heated room"),
    (Climate.ROOFED, "unheated, under a roof"),
    (Climate.OUTDOORS, "in the open air"),
)
BOARD_ROLES: tuple[tuple[BoardRole, str], ...] = (
    (BoardRole.UPRIGHT, "uprights"),
    (BoardRole.BASE, "base"),
    (BoardRole.TOP, "top"),
    (BoardRole.DRAWER_SIDE, "drawer sides and rails"),
    (BoardRole.DRAWER_BOTTOM, "drawer bottoms"),
    (BoardRole.BACK, "back"),
    (BoardRole.BRACE, "braces and fixing rail"),
    (BoardRole.SHELF, "shelves"),
    (BoardRole.PLINTH, "plinth"),
    (BoardRole.FRONT, "front panels"),
    (BoardRole.END_PANEL, "end panels"),
)
BAR_USES: tuple[tuple[BarUse, str], ...] = (
    (BarUse.EDGING, "edging and lipping"),
    (BarUse.RAIL, "braces and fixing rails"),
)
OWNERSHIP: tuple[tuple[bool, str], ...] = ((False, "to buy"), (True, "owned"))
NEAR_LIFTING = 0.8
"""From this lifting index on a box counts as nearly too hard to lift."""
GRIPS: tuple[tuple[Grip, str], ...] = ((Grip.GOOD, "good"), (Grip.FAIR, "fair"), (Grip.POOR, "poor"))
UPRIGHTS: tuple[tuple[Uprights, str], ...] = (
    (Uprights.SHARED, "shared: one between two bays"),
    (Uprights.OWN, "own: two for each bay"),
)
FIRST_ROWS: tuple[tuple[FirstRowRule, str], ...] = (
    (FirstRowRule.HALF_PITCH, "half a pitch over the end"),
    (FirstRowRule.HALF_BASE_THICKNESS, "half the base's thickness"),
    (FirstRowRule.SET, "at the height set below"),
)
STANDS: tuple[tuple[Stand, str], ...] = ((Stand.PLINTH, "a plinth"), (Stand.FEET, "feet"))
BACKS: tuple[tuple[Back, str], ...] = (
    (Back.EXISTING_WALL, "the wall that is there"),
    (Back.FULL_BACK, "a full back"),
    (Back.TWO_BRACES, "two braces"),
)
DRAWER_FORMS: tuple[tuple[DrawerForm, str], ...] = (
    (DrawerForm.TRAY, "a tray with low rails"),
    (DrawerForm.FULL_BOX, "a box, front and rear as high as the sides"),
)
FRONTS: tuple[tuple[Fronts, str], ...] = (
    (Fronts.NONE, "none"),
    (Fronts.INSET, "inset, between the uprights"),
    (Fronts.OVERLAY, "overlay, before the uprights"),
)
FRONT_EDGES: tuple[tuple[FrontEdge, str], ...] = (
    (FrontEdge.SQUARE, "square"),
    (FrontEdge.ROUNDED, "rounded"),
    (FrontEdge.CHAMFERED, "chamfered"),
)
EDGINGS: tuple[tuple[EdgingKind, str], ...] = (
    (EdgingKind.NONE, "left bare"),
    (EdgingKind.BAND, "a thin band"),
    (EdgingKind.LIPPING, "a solid lipping"),
)
DRILLINGS: tuple[tuple[Drilling, str], ...] = (
    (Drilling.WHOLE_ROWS, "whole rows"),
    (Drilling.USED_ONLY, "only those that are used"),
)
JOINTINGS: tuple[tuple[Jointing, str], ...] = (
    (Jointing.LOOSE_TENON, "loose tenons"),
    (Jointing.DOWEL, "dowels"),
    (Jointing.POCKET_SCREW, "pocket screws"),
    (Jointing.SCREW, "screws through the face"),
)
UNITS: tuple[tuple[LengthUnit, str], ...] = ((LengthUnit.MILLIMETRE, "millimetres"), (LengthUnit.INCH, "inches"))


def words_for(value: object, choices: tuple[tuple[object, str], ...]) -> str:
    """The words of `choices` that stand for `value`."""
    return next((words for choice, words in choices if choice == value), str(value))


def place_words(placement: Placement | None) -> str:
    """A place as people count, from 1: “bay 2, row 5”."""
    return "no place" if placement is None else f"bay {placement.bay + 1}, row {placement.row + 1}"


def size_words(size: BoxSize, unit: LengthUnit) -> str:
    """Width × depth × height of a size, with the unit once."""
    lengths = [format_length(length, unit) for length in (size.width_mm, size.depth_mm, size.height_mm)]
    return " × ".join(lengths)


def mass_words(mass_kg: float | None) -> str:
    """A mass in kg with at most two decimals, the unit left out; empty where it is not known."""
    return "" if mass_kg is None else f"{mass_kg:.2f}".rstrip("0").rstrip(".")


def exact_mass_words(mass_kg: float | None) -> str:
    """A mass in kg as text that reads back exactly."""
    return "" if mass_kg is None else repr(mass_kg).removesuffix(".0")


def lifting_words(index: float | None) -> str:
    """A lifting index with a sign where it is over its limit or near it; empty where there is none."""
    if index is None:
        return ""
    if index == float("inf"):
        return "✗ never"
    sign = "✗ " if index > 1 else "! " if index > NEAR_LIFTING else ""
    return f"{sign}{index:.2f}"
