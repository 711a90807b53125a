"""Where a box could go, with the other boxes as they stand: every place of the run, what it would change, or why not.

Laws: every bay and hole row is answered, the present place of the box included; a place that can be has the exact
figure of every goal before and after, the same as `figures` gives for the arrangement with the box there; a place that
cannot be has the conflicts that `place_conflicts` finds. A drawer that may be shared is a place, too, and the box comes
last in it. Nothing is searched, so all answers come at once.
"""

from collections.abc import Iterator

from baywright.model.destination import Destination, GoalChange
from baywright.model.difference import Place
from baywright.model.goals import Goal
from baywright.model.project import Project
from baywright.planner.figures import Scale, Tally, goal_value, usable_rows
from baywright.planner.framing.fitting import Stand
from baywright.planner.legality.board import Board, Drawer
from baywright.planner.legality.report import place_conflicts
from baywright.planner.replanning.standing import standing_of


def destinations(project: Project, box_id: str) -> tuple[Destination, ...]:
    """Every place of the present run for a box, bay by bay from the left, lowest row first; none for a box that is
    kept elsewhere, or before anything is arranged. KeyError for an unknown box.
    """
    box = project.box(box_id)
    if box not in project.boxes_to_place or not project.arrangement.bay_count:
        return ()
    return tuple(_Survey(project, box_id).places())


class _Survey:
    """One look at all places for one box."""

    def __init__(self, project: Project, box_id: str) -> None:
        self._project = project
        self._box_id = box_id
        self._board = Board(project)
        scale = Scale(project, standing_of(project), self._board.grid)
        arrangement = project.arrangement
        spots = {p.box_id: (p.bay, p.row) for p in arrangement.placements if p.box_id in scale.boxes}
        self._tally = Tally(scale, arrangement.upright_rows, usable_rows(project, scale.grid, arrangement), spots)
        self._before = self._tally.whole_numbers()
        self._known: dict[tuple[Goal, int], GoalChange] = {}

    def places(self) -> Iterator[Destination]:
        """Every place in order."""
        for bay, face in enumerate(self._board.faces):
            for row in range(face.rows):
                yield self._place(bay, row)

    def _place(self, bay: int, row: int) -> Destination:
        place = Place(bay=bay, row=row)
        conflicts = place_conflicts(self._project, self._box_id, bay, row)
        if conflicts:
            return Destination(place=place, conflicts=conflicts)
        stand = self._stand(bay, row)
        return Destination(
            place=place, changes=self._changes(bay, row),
            abreast=stand.abreast, behind=stand.behind, turned=stand.turned,
        )  # fmt: skip

    def _stand(self, bay: int, row: int) -> Stand:
        """How the box would stand in the drawer there, after those that stand in it now."""
        board = self._board
        there = next((drawer for drawer in board.by_bay.get(bay, ()) if drawer.row == row), None)
        others = () if there is None else there.without(self._box_id).boxes
        mine = Drawer(bay, row, (*others, board.boxes[self._box_id]))
        spot = board.contents.spot(board.faces[bay], bay, row, board.rows_of(mine))
        stands = board.fitting.stands([self._project.size_of(box) for box in mine.boxes], spot.room)
        return stands[-1] if stands else Stand()

    def _changes(self, bay: int, row: int) -> tuple[GoalChange, ...]:
        tally = self._tally
        home = tally.places.get(self._box_id)
        tally.put(self._box_id, (bay, row))
        after = tally.whole_numbers()
        tally.put(self._box_id, home)
        return tuple(self._change(goal, number) for goal, number in after.items())

    def _change(self, goal: Goal, number: int) -> GoalChange:
        """What a goal comes to; there are few different ones, so each is made once."""
        if (goal, number) not in self._known:
            before, after = (goal_value(goal, figure, 0) for figure in (self._before[goal], number))
            self._known[goal, number] = GoalChange(
                goal=goal, before=before.value, after=after.value, unit=after.unit
            )  # fmt: skip
        return self._known[goal, number]
