"""Where a box could go: the legal rows of a bay, and the next legal place in a direction.

Law: what is legal is the session's to say (`Session.place_conflicts`); here places are only gone through in order.
"""

from collections.abc import Iterable
from enum import Enum

from baywright.app.session import Session
from baywright.model.arrangement import Placement

Place = tuple[int, int]
"""Bay and row, both from 0."""


class Direction(Enum):
    """Where to look from a box's present place; the value is the word for it."""

    UP = "higher"
    DOWN = "lower"
    LEFT = "further left"
    RIGHT = "further right"


def legal_rows(session: Session, box_id: str, bay: int) -> list[int]:
    """The rows of a bay, lowest first, at which the box could stand."""
    return [row for row in range(row_count(session)) if not session.place_conflicts(box_id, bay, row)]


def bay_count(session: Session) -> int:
    """How many drawer bays the run has."""
    return round(session.workings.value("bay_count"))


def row_count(session: Session) -> int:
    """How many hole rows an upright has."""
    return round(session.workings.value("upright_rows"))


def next_place(session: Session, box_id: str, direction: Direction) -> Place | None:
    """The nearest legal place in that direction; for a box without a place the first one of all. None: there is none.

    Up and down stay in the bay. Left and right take the nearest bay with a legal row, there the row nearest to the
    present one.
    """
    at = session.project.arrangement.placement_of(box_id)
    places = _from_nowhere(session) if at is None else _beyond(session, at, direction)
    return next((place for place in places if not session.place_conflicts(box_id, *place)), None)


def _from_nowhere(session: Session) -> Iterable[Place]:
    return ((bay, row) for bay in range(bay_count(session)) for row in range(row_count(session)))


def _beyond(session: Session, at: Placement, direction: Direction) -> Iterable[Place]:
    rows, bays = row_count(session), bay_count(session)
    if direction is Direction.UP:
        return ((at.bay, row) for row in range(at.row + 1, rows))
    if direction is Direction.DOWN:
        return ((at.bay, row) for row in range(at.row - 1, -1, -1))
    sideways = range(at.bay - 1, -1, -1) if direction is Direction.LEFT else range(at.bay + 1, bays)
    nearest = sorted(range(rows), key=lambda row: abs(row - at.row))
    return ((bay, row) for bay in sideways for row in nearest)
