"""How the boxes of a drawer stand in it when one of them comes or goes: in a row, in a file, turned or not.

Laws: the others keep their order and the new one comes last; as `Fitting.stands` has it, as few as can be are turned,
and boxes stand rather side by side than one behind another. Where they do not fit at all they are put side by side in
that order, so that what is wrong can be seen and told.
"""

from collections.abc import Iterable, Sequence

from baywright.model.arrangement import Placement
from baywright.model.inventory import BoxSize
from baywright.model.project import Project
from baywright.planner.framing.fitting import MOST_TOGETHER, Stand
from baywright.planner.legality.board import Board, Drawer


def seated(project: Project, placement: Placement) -> tuple[Placement, ...]:
    """All placements of the project, with that one's box in its new drawer in place of the old one: those in the drawer
    that it comes to and those in the drawer that it leaves stand as they can. KeyError for an unknown box.
    """
    arrangement, here = project.arrangement, (placement.bay, placement.row)
    before = arrangement.placement_of(placement.box_id)
    teams = [(*_others(arrangement.drawers.get(here, ()), placement.box_id), placement)]
    if before is not None and (before.bay, before.row) != here:
        teams.append(_others(arrangement.drawers[before.bay, before.row], placement.box_id))
    changed: dict[str, Placement] = {}
    board: Board | None = None
    for team in teams:
        sizes = [project.size_of(project.box(p.box_id)) for p in team]
        if len(team) == 1 and not sizes[0].may_turn:
            stands: Sequence[Stand] = (Stand(),)
        else:
            board = board or Board(project)
            stands = _stands(board, team, sizes)
        for p, stand in zip(team, stands, strict=True):
            changed[p.box_id] = p.replace(abreast=stand.abreast, behind=stand.behind, turned=stand.turned)
    others = (changed.get(p.box_id, p) for p in arrangement.placements if p.box_id != placement.box_id)
    return (*others, changed[placement.box_id])


def closed_up(placements: Iterable[Placement]) -> tuple[Placement, ...]:
    """The same placements with the gaps closed that boxes left behind in their drawers."""
    teams: dict[tuple[int, int], list[Placement]] = {}
    listed = tuple(placements)
    for p in sorted(listed, key=lambda p: (p.abreast, p.behind, p.box_id)):
        teams.setdefault((p.bay, p.row), []).append(p)
    moved: dict[str, Placement] = {}
    for team in teams.values():
        is_file = any(p.behind for p in team)
        for number, p in enumerate(team):
            place = min(number, MOST_TOGETHER - 1)
            wanted = (0, place) if is_file and len(team) > 1 else (place, 0)
            if (p.abreast, p.behind) != wanted:
                moved[p.box_id] = p.replace(abreast=wanted[0], behind=wanted[1])
    return tuple(moved.get(p.box_id, p) for p in listed)


def _others(team: Sequence[Placement], box_id: str) -> tuple[Placement, ...]:
    return tuple(p for p in team if p.box_id != box_id)


def _stands(board: Board, team: Sequence[Placement], sizes: Sequence[BoxSize]) -> Sequence[Stand]:
    if not team:
        return ()
    bay, row = team[0].bay, team[0].row
    found: Sequence[Stand] | None = None
    if bay < len(board.faces) and len(team) <= MOST_TOGETHER:
        drawer = Drawer(bay, row, tuple(board.boxes[p.box_id] for p in team))
        spot = board.contents.spot(board.faces[bay], bay, row, board.rows_of(drawer))
        found = board.fitting.stands(sizes, spot.room)
    return found or [Stand(min(number, MOST_TOGETHER - 1), 0, p.turned) for number, p in enumerate(team)]
