"""A place for a box as a line of a table: where, beside whom, and the exact change of every goal.

Law: better and worse are told by sign and word, never by colour.
"""

from collections.abc import Callable
from dataclasses import dataclass

from baywright.gui.tables.column import Column
from baywright.gui.wording import GOALS, count_words, words_for
from baywright.model.destination import Destination, GoalChange
from baywright.model.goals import MORE_IS_BETTER, USUAL_ORDER, Goal
from baywright.model.length import LengthUnit, format_length
from baywright.model.project import Project
from baywright.workings import Workings

TITLES: dict[Goal, str] = {
    Goal.BAYS: "Bays",
    Goal.ROWS: "Rows",
    Goal.MOVES: "Moved",
    Goal.RESCREWS: "Re-screw",
    Goal.HANDLING: "Handling",
    Goal.GROUPS: "Groups",
    Goal.FREE_PIECE: "Free rows",
}
SHOWN = USUAL_ORDER
"""Goals that a box's place can change; bays and rows stay as they are."""
BETTER, WORSE = "✓", "✗"


@dataclass(frozen=True)
class PlaceLine:
    """A place where the box could stand."""

    destination: Destination
    rank: int
    """1 is the best by the goals in their order."""
    height_mm: float
    """The drawer's lower edge over the floor."""
    company: str
    """Who else is in that drawer."""
    is_here: bool
    """Whether the box stands there now."""

    @property
    def words(self) -> str:
        """The place as people count."""
        place = self.destination.place
        return f"bay {place.bay + 1}, row {place.row + 1}" + (" (now)" if self.is_here else "")

    def change(self, goal: Goal) -> GoalChange | None:
        """What the place changes of a goal; None where that goal does not count."""
        return next((change for change in self.destination.changes if change.goal is goal), None)


def gain(change: GoalChange) -> float:
    """By how much a goal gets better; under 0 where it gets worse."""
    difference = change.before - change.after
    return -difference if change.goal in MORE_IS_BETTER else difference


def best_first(destination: Destination) -> tuple[float, ...]:
    """By this legal places are put in order: the goals in their order, then the lowest and leftmost place."""
    place = destination.place
    return (*(round(-gain(change), 9) for change in destination.changes), place.bay, place.row)


def place_lines(project: Project, workings: Workings, box_id: str, found: tuple[Destination, ...]) -> list[PlaceLine]:
    """The legal places, best first."""
    legal = sorted((each for each in found if not each.conflicts), key=best_first)
    present = project.arrangement.placement_of(box_id)
    lowest = workings.value("base_upper_height") + workings.value("first_row") - workings.value("line_offset")
    lines = []
    for rank, destination in enumerate(legal, 1):
        spot = (destination.place.bay, destination.place.row)
        others = [p.box_id for p in project.arrangement.drawers.get(spot, ()) if p.box_id != box_id]
        labels = ", ".join(f"“{project.box(other).label}”" for other in others)
        lines.append(
            PlaceLine(
                destination,
                rank,
                lowest + workings.value("pitch") * destination.place.row,
                f"with {labels}" if labels else "",
                present is not None and (present.bay, present.row) == spot,
            )
        )
    return lines


def change_words(change: GoalChange | None) -> str:
    """A change with its sign: “−12.4 ✓” is better, “+1 ✗” worse; “=” where it stays."""
    if change is None:
        return ""
    difference = change.after - change.before
    if abs(difference) < 1e-9:
        return "="
    number = f"{abs(difference):,.6g}"
    return f"{'+' if difference > 0 else '−'}{number} {BETTER if gain(change) > 0 else WORSE}"


def change_sentence(change: GoalChange | None) -> str:
    """The same in full, for tool tips."""
    if change is None:
        return "Does not count now."
    name, unit = words_for(change.goal, GOALS), f" {change.unit}".rstrip()
    if abs(change.after - change.before) < 1e-9:
        return f"{name[:1].upper()}{name[1:]}: stays {change.after:,.6g}{unit}."
    verdict = "better" if gain(change) > 0 else "worse"
    return f"{name[:1].upper()}{name[1:]}: {change.before:,.6g} → {change.after:,.6g}{unit}, {verdict}."


def line_words(line: PlaceLine) -> str:
    """A place with every goal that it changes, in one sentence."""
    changed = [change for change in line.destination.changes if abs(change.after - change.before) >= 1e-9]
    told = ", ".join(f"{TITLES[change.goal].lower()} {change_words(change)}" for change in changed)
    company = f", {line.company}" if line.company else ""
    return f"No. {line.rank}, {line.words}{company}: {told or 'changes no goal'}."


def place_columns(unit: Callable[[], LengthUnit]) -> tuple[Column[PlaceLine], ...]:
    """The columns of the table of places."""

    def of(goal: Goal) -> Column[PlaceLine]:
        def raw(line: PlaceLine) -> float | None:
            change = line.change(goal)
            return None if change is None else -gain(change)

        return Column(
            TITLES[goal],
            lambda x: change_words(x.change(goal)),
            raw,
            f"Change of the goal “{words_for(goal, GOALS)}”: {BETTER} better, {WORSE} worse, = stays",
            is_number=True,
            tip=lambda x: change_sentence(x.change(goal)),
        )

    return (
        Column("No.", lambda x: str(x.rank), lambda x: x.rank, "1 is the best by your goals", is_number=True),
        Column(
            "Place",
            lambda x: x.words,
            lambda x: (x.destination.place.bay, x.destination.place.row),
            "Bay from the left, hole row from below",
        ),
        *(of(goal) for goal in SHOWN),
        Column(
            "Over floor",
            lambda x: format_length(x.height_mm, unit()),
            lambda x: x.height_mm,
            "The drawer's lower edge over the floor",
            is_number=True,
        ),
        Column("Shared", lambda x: x.company, lambda x: x.company, "Who else is in that drawer"),
    )


def places_words(label: str, lines: list[PlaceLine], tried: int) -> str:
    """What was found, in a sentence or two."""
    if not lines:
        return f"“{label}” can stand nowhere with the other boxes as they are. “Why not there?” tells of a place."
    best = lines[0]
    if len(lines) == 1 and best.is_here:
        return (
            f"“{label}” could stand nowhere else with the other boxes as they are; {tried:,} places were tried. "
            "“Why not there?” tells of a place."
        )
    count = count_words(len(lines), "place", "places")
    here = next((line for line in lines if line.is_here), None)
    told = f"“{label}” could stand at {count} of {tried:,}, best first. The others stay as they are."
    if here is not None and here.rank == 1:
        return f"{told} It stands at the best place now."
    return f"{told} The best is {best.words}." + (f" Where it stands now is no. {here.rank}." if here else "")
