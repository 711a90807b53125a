"""The work that a re-plan asks for, in words: steps, runners, drawers, parts.

Law: what people typed is shown as typed; numbers of bays and rows count from 1.
"""

from collections.abc import Iterable
from dataclasses import dataclass

from baywright.gui.wording import count_words
from baywright.model.difference import BoxMove, Difference, PartChange, Place, RunnerMove
from baywright.model.goals import Goal
from baywright.model.length import LengthUnit, format_length
from baywright.model.plan import PlanResult


@dataclass(frozen=True)
class Chapter:
    """A heading with its lines; `is_numbered` where their order counts."""

    title: str
    lines: tuple[str, ...]
    is_numbered: bool = False


def spot_words(place: Place | None) -> str:
    """A place as people count, from 1: “bay 2, row 5”."""
    return "no drawer" if place is None else f"bay {place.bay + 1}, row {place.row + 1}"


def runner_words(move: RunnerMove) -> str:
    """A runner pair from where it is to where it goes."""
    if move.before.bay == move.after.bay:
        return f"bay {move.after.bay + 1}: row {move.before.row + 1} → row {move.after.row + 1}"
    return f"{spot_words(move.before)} → {spot_words(move.after)}"


def part_words(part: PartChange, unit: LengthUnit) -> str:
    """A part with its measures."""
    lengths = " × ".join(format_length(mm, unit) for mm in (part.length_mm, part.width_mm, part.thickness_mm))
    note = f" ({part.note})" if part.note else ""
    return f"{part.quantity} × {part.name}, {lengths}, {part.material}{note}"


def chapters(work: Difference, unit: LengthUnit, told: tuple[str, ...] = ()) -> tuple[Chapter, ...]:
    """All that the work asks for, and what is `told` with the plan; chapters without a line are left out."""
    found = (
        Chapter("Steps, in this order", tuple(step.text for step in work.steps), is_numbered=True),
        Chapter("Runner pairs to screw on elsewhere", tuple(map(runner_words, work.runners))),
        Chapter("New drawers to make", tuple(map(spot_words, work.new_drawers))),
        Chapter("Drawers no longer needed", tuple(map(spot_words, work.idle_drawers))),
        Chapter("Parts to cut", tuple(part_words(part, unit) for part in work.parts_to_cut)),
        Chapter("Parts that lie idle", tuple(part_words(part, unit) for part in work.parts_idle)),
        Chapter("Please note", (*work.remarks, *told)),
    )
    return tuple(chapter for chapter in found if chapter.lines)


@dataclass(frozen=True)
class Movers:
    """So many boxes that go from one place to another, that get their first drawer, and that leave theirs."""

    moved: int
    new: int = 0
    gone: int = 0


def movers(moves: Iterable[BoxMove]) -> Movers:
    """The moves by kind."""
    all_moves = tuple(moves)
    new = sum(move.before is None for move in all_moves)
    gone = sum(move.after is None for move in all_moves)
    return Movers(len(all_moves) - new - gone, new, gone)


def summary(boxes: Movers, work: Difference, result: PlanResult | None) -> str:
    """The whole in one or two sentences."""
    counted = [
        (boxes.moved, "box goes to another place", "boxes go to another place"),
        (boxes.new, "box gets its first place", "boxes get their first place"),
        (boxes.gone, "box leaves its drawer", "boxes leave their drawers"),
        (len(work.runners), "runner pair to re-screw", "runner pairs to re-screw"),
        (len(work.new_drawers), "new drawer", "new drawers"),
        (sum(part.quantity for part in work.parts_to_cut), "part to cut", "parts to cut"),
    ]
    words = _listed(count_words(number, one, many) for number, one, many in counted if number)
    proved = {goal.goal for goal in result.goals if goal.is_proved} if result else set()
    proof = " No plan moves fewer boxes: that is proved." if Goal.MOVES in proved else ""
    return f"{words[:1].upper()}{words[1:]}.{proof}" if words else "Nothing has to be done."


def _listed(parts: Iterable[str]) -> str:
    return ", ".join(parts)
