"""Where a box could go, as plain text: the best places first, with what each would change."""

from collections.abc import Sequence

from baywright.cli.change import place_text
from baywright.cli.text import GOAL_NAMES
from baywright.model.arrangement import Placement
from baywright.model.destination import Destination, GoalChange
from baywright.model.goals import MORE_IS_BETTER
from baywright.model.inventory import Box
from baywright.model.project import Project


class BoxTrouble(Exception):
    """No box, or more than one, is meant by what was typed."""


def box_meant(project: Project, typed: str) -> Box:
    """The box with that id or label, in whatever case; raises BoxTrouble where it is not exactly one."""
    if typed in project.boxes_by_id:
        return project.box(typed)
    named = [box for box in project.boxes if box.label.casefold() == typed.strip().casefold()]
    if len(named) == 1:
        return named[0]
    if named:
        ids = ", ".join(box.id for box in named[:5])
        raise BoxTrouble(f"{len(named)} boxes are called “{typed}”: name one by its id ({ids}).")
    near = [box.label for box in project.boxes if typed.strip().casefold() in box.label.casefold()]
    hint = f" There are {', '.join(f'“{label}”' for label in near[:5])}." if near else ""
    raise BoxTrouble(f"There is no box “{typed}”.{hint}")


def best_first(places: Sequence[Destination]) -> list[Destination]:
    """The places that can be, best by the goals in their order, then leftmost and lowest."""
    legal = [place for place in places if not place.conflicts]
    return sorted(legal, key=lambda d: (*map(_rank, d.changes), d.place.bay, d.place.row))


def _rank(change: GoalChange) -> float:
    return -change.after if change.goal in MORE_IS_BETTER else change.after


def places_text(box: Box, present: Placement | None, places: Sequence[Destination], most: int) -> str:
    """The best places for a box, with what each changes."""
    legal = best_first(places)
    if not legal:
        return f"“{box.label}” can go nowhere in the run as it stands."
    if len(legal) == 1 and present is not None and _is_here(legal[0], present):
        return (
            f"“{box.label}” can go nowhere else: {place_text(legal[0].place)} is the only place, where it stands now."
        )
    shown = legal[:most]
    lines = [f"“{box.label}” can go to {len(legal)} {'place' if len(legal) == 1 else 'places'}, best first:"]
    lines += [f"  {_line(place, present)}" for place in shown]
    if len(legal) > most:
        lines.append(f"  … and {len(legal) - most} more (--most {len(legal)} shows all)")
    return "\n".join(lines)


def _is_here(found: Destination, present: Placement) -> bool:
    return (present.bay, present.row) == (found.place.bay, found.place.row)


def _line(found: Destination, present: Placement | None) -> str:
    text = place_text(found.place)
    if found.abreast or found.behind:
        text += f", {'beside' if found.abreast else 'behind'} what stands there"
    if found.turned:
        text += ", turned"
    if present is not None and _is_here(found, present):
        return f"{text}: where it stands now"
    changes = [_change(change) for change in found.changes if change.after != change.before]
    return f"{text}: {', '.join(changes) if changes else 'changes no goal'}"


def _change(change: GoalChange) -> str:
    difference = round(change.after - change.before, 4)
    return f"{GOAL_NAMES[change.goal]} {difference:+g}"


def refusals_text(places: Sequence[Destination]) -> str:
    """Why the box cannot go to the other places, place by place."""
    return "\n".join(
        f"  {place_text(place.place)}: {' '.join(conflict.message for conflict in place.conflicts)}"
        for place in places
        if place.conflicts
    )
