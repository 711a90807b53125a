"""Puts a parts list together with a rule: whether boards, drawers and fronts of every construction fit each other.

Shares no code with the program's workings or making: it takes the finished sizes from the list as a joiner takes boards
from a pile, adds thicknesses, heights and depths up, and looks whether the sums are what the document asks for.
"""

import re
from collections.abc import Iterable, Iterator
from itertools import combinations, pairwise
from string import ascii_lowercase

from baywright.model.construction import Back, DrawerForm, EdgingKind, Fronts, Stand, Uprights
from baywright.model.machining import Side
from baywright.model.making import FrontPanel, Manufacture, Part
from baywright.model.project import Project
from tests.oracle.wall import TINY_MM, Bay, base_mm, bays, beyond_mm, clear_mm, upright_mm

Sum = tuple[str, float, float]
"""What was added up, what it came to, what it should come to."""
EDGES_ALONG_LENGTH = {Side.START, Side.END}
"""Edges whose edging makes a part longer; the two others make it wider."""


def misfits(project: Project, made: Manufacture) -> list[str]:
    """What does not fit, of a run with bays all alike and nothing in its way; empty where all does."""
    return _told([
        *_pieces(project, made.parts),
        *_height(project, made.parts),
        *_length(project, made.parts),
        *_depth(project, made.parts),
        *_plinth(project, made.parts),
        *_drawers(project, made),
        *_fronts(project, made),
    ])  # fmt: skip


def misfits_along(project: Project, made: Manufacture) -> list[str]:
    """What does not fit along the wall and up it where bays differ and the run is interrupted; without a shelf bay."""
    measured, parts = bays(project), made.parts
    own = project.construction.uprights is Uprights.OWN
    post = project.construction.boards.upright_mm
    pieces: list[list[Bay]] = [[measured[0]]]
    for bay in measured[1:]:
        joins = bay.left_mm - pieces[-1][-1].right_mm < (TINY_MM if own else TINY_MM - post)
        pieces[-1].append(bay) if joins else pieces.append([bay])
    ends, left_right = project.construction.end_panels, beyond_mm(project)
    stands = [piece[-1].right_mm - piece[0].left_mm for piece in pieces]
    found: list[Sum] = [
        ("tops", sum(part.quantity * part.length_mm for part in _of(parts, "T1")),
         sum(stands) + len(pieces) * sum(left_right)),
        ("bases", sum(part.quantity * part.length_mm for part in _of(parts, "B1")), sum(stands)),
    ]  # fmt: skip
    for number, is_there, outer in (("E1L", ends.left, 0), ("E1R", ends.right, -1)):
        heights = sorted(base_mm(project) + upright_mm(project, piece[outer].rows) for piece in pieces if is_there)
        panels = sorted(part.length_mm for part in _of(parts, number) for _ in range(part.quantity))
        found.append((f"{number} pieces", len(panels), len(heights)))
        found += [(f"{number} height", got, wanted) for got, wanted in zip(panels, heights, strict=False)]
    for panel in made.fronts:
        bay = measured[panel.bay]
        top = base_mm(project) + upright_mm(project, bay.rows)
        found.append(_least(f"air under the top, {_at(panel)}", top - panel.top_mm, 0.0))
        left, over = left_right[0], post if project.construction.drawers.fronts is Fronts.OVERLAY else 0.0
        found.append(_least(f"left end, {_at(panel)}", left + panel.left_mm, bay.clear_left_mm - over))
        found.append(_least(f"right end, {_at(panel)}", bay.clear_right_mm + over, left + panel.right_mm))
    found += [
        _least(f"air between fronts {_at(one)} and {_at(other)}", one.left_mm, other.right_mm)
        for other, one in pairwise(sorted(made.fronts, key=lambda panel: panel.left_mm))
        if one.bay != other.bay
    ]
    return _told([*_pieces(project, parts), *found])


def _told(found: Iterable[Sum]) -> list[str]:
    return [f"{what}: {got:.4f}, should be {wanted:.4f}" for what, got, wanted in found if abs(got - wanted) > TINY_MM]


def _of(parts: Iterable[Part], number: str) -> list[Part]:
    """The lines of a kind of part: what stands behind its number says which piece, drilling, height or bay it is."""
    return [part for part in parts if re.split(r"[./-]", part.number)[0].rstrip(ascii_lowercase) == number]


def _least(what: str, got: float, least: float) -> Sum:
    return f"{what}, at least", min(got, least), least


def _pieces(project: Project, parts: Iterable[Part]) -> Iterator[Sum]:
    """Every part alone: glued up it has its finished size, and it is told where each piece belongs."""
    edging = project.construction.edging
    glued = 0.0 if edging.kind is EdgingKind.NONE else edging.thickness_mm
    for part in parts:
        longer = [side for side in part.banded if side in EDGES_ALONG_LENGTH]
        wider = [side for side in part.banded if side not in EDGES_ALONG_LENGTH]
        yield f"{part.number} length", part.cut_length_mm + glued * len(longer), part.length_mm
        yield f"{part.number} width", part.cut_width_mm + glued * len(wider), part.width_mm
        yield _least(f"{part.number} bays", len(part.bays), part.quantity)
        if not glued:
            yield f"{part.number} bare edges", len(part.banded), 0
        yield f"{part.number} edging", part.edged_length_mm, (
            len(wider) * part.length_mm + len(longer) * part.width_mm
        )  # fmt: skip


def _height(project: Project, parts: Iterable[Part]) -> Iterator[Sum]:
    """From the floor up: stand, base, upright, top; an end panel, top; the back beside both."""
    boards, rows = project.construction.boards, project.arrangement.upright_rows
    uprights = [part for part in parts if part.number.startswith("U")]
    for upright in uprights:
        stood = project.construction.standing.height_mm + boards.base_mm + upright.length_mm
        yield "floor to under the top", stood, base_mm(project) + upright_mm(project, rows)
        for number in ("E1L", "E1R"):
            for panel in _of(parts, number):
                yield f"{number} beside an upright", panel.length_mm, stood
        for back in _of(parts, "R1"):
            yield "back beside an upright", back.width_mm, boards.base_mm + upright.length_mm
    ends = project.construction.end_panels
    for number, is_there in (("E1L", ends.left), ("E1R", ends.right)):
        yield f"{number} there", sum(part.quantity for part in _of(parts, number)), float(is_there)


def _length(project: Project, parts: Iterable[Part]) -> Iterator[Sum]:
    """Along the wall: every upright's thickness and every clear width is a board's length under and over them."""
    measured, boards = bays(project), project.construction.boards
    uprights = sum(part.quantity for part in parts if part.number.startswith("U"))
    clears = sum(bay.clear_right_mm - bay.clear_left_mm for bay in measured)
    has_shelf = any(part.number[:2] in ("U4", "U5", "U6") for part in parts)
    own = project.construction.uprights is Uprights.OWN
    bay_count = len(measured) + has_shelf
    yield "uprights", uprights, 2 * bay_count if own else bay_count + 1
    base = sum(part.quantity * part.length_mm for part in _of(parts, "B1"))
    if has_shelf:
        clears = base - uprights * boards.upright_mm  # what is left over is the shelf bay's
        shelves = [part.length_mm for part in _of(parts, "S1")]
        shelf_clear = clears - sum(bay.clear_right_mm - bay.clear_left_mm for bay in measured)
        for length in shelves:
            yield "shelf with its play", length + 2 * project.limits.shelf_play_mm, shelf_clear
    yield "base under all", base, uprights * boards.upright_mm + clears
    left, right = beyond_mm(project)
    yield "top over all", sum(part.length_mm for part in _of(parts, "T1")), left + base + right
    rear = {Back.FULL_BACK: "R1", Back.TWO_BRACES: "R2", Back.EXISTING_WALL: "R4"}[project.construction.rear.kind]
    yield "rear behind all", sum(part.quantity * part.length_mm for part in _of(parts, rear)), base
    for front, rest in (("P1", "P2"),):
        for number in (front, rest):
            if plinth := _of(parts, number):
                yield f"{number} under all", sum(part.length_mm for part in plinth), base


def _depth(project: Project, parts: Iterable[Part]) -> Iterator[Sum]:
    """Front to back: what stands out in front, the upright, the back."""
    made = project.construction
    back = made.boards.back_mm if made.rear.kind is Back.FULL_BACK else 0.0
    front = made.boards.front_mm if made.drawers.fronts is Fronts.OVERLAY else 0.0
    out = max(front, made.top.overhang_front_mm)
    for upright in (part for part in parts if part.number.startswith("U")):
        yield "depth of all", out + upright.width_mm + back, project.space.depth_mm
        for top in _of(parts, "T1"):
            yield "top's depth", top.width_mm, made.top.overhang_front_mm + upright.width_mm + back
        for number in ("E1L", "E1R"):
            for panel in _of(parts, number):
                yield "end panel covers upright and back", panel.width_mm, upright.width_mm + back
        for base in _of(parts, "B1"):
            yield "base's depth", base.width_mm, upright.width_mm
        for shelf in _of(parts, "S1"):
            rail = 0.0 if made.rear.kind is Back.FULL_BACK else made.boards.brace_mm
            yield "shelf before the rail", shelf.width_mm + rail, upright.width_mm


def _plinth(project: Project, parts: Iterable[Part]) -> Iterator[Sum]:
    standing = project.construction.standing
    crosses = _of(parts, "P3")
    is_plinth = standing.kind is Stand.PLINTH and standing.height_mm > 0
    yield "plinth there", float(bool(crosses)), float(is_plinth)
    for cross in crosses:
        boards = sum(part.thickness_mm for part in (_of(parts, "P1")[0], _of(parts, "P2")[0]))
        depth = next(part.width_mm for part in parts if part.number.startswith("U"))
        yield "plinth's depth", standing.plinth_setback_mm + boards + cross.length_mm, depth
        yield "plinth's height", cross.width_mm, standing.height_mm


def _drawers(project: Project, made: Manufacture) -> Iterator[Sum]:
    """A drawer between its runners, the bottom in its grooves, the strip behind the box."""
    drawers, boards = project.construction.drawers, project.construction.boards
    count = len({(line.bay, line.drawer) for line in made.schedule})
    sides, rails, bottoms = (_of(made.parts, number) for number in ("D1", "D2", "D3"))
    if not sides:
        return
    side, rail, bottom = sides[0], rails[0], bottoms[0]
    for same, pieces in ((sides, 2), (rails, 2), (bottoms, 1)):
        yield f"{same[0].name} pieces", sum(part.quantity for part in same), pieces * count
        for part in same:
            yield f"{part.number} bays", len(part.bays), part.quantity
            yield f"{part.number} length", part.length_mm, same[0].length_mm
            yield f"{part.number} width", part.width_mm, same[0].width_mm
    width = bays(project)[0].box_width_mm
    across = rail.length_mm + 2 * side.thickness_mm + 2 * project.construction.runners.thickness_mm
    yield "drawer between runners", across, clear_mm(project, width)
    yield "room for the box", rail.length_mm, width + 2 * drawers.lateral_play_mm
    yield "side's height", side.width_mm, drawers.side_height_mm
    is_tray = drawers.form is DrawerForm.TRAY
    yield "rail's height", rail.width_mm, drawers.rail_height_mm if is_tray else drawers.side_height_mm
    yield _least("wood over the groove", rail.width_mm - drawers.groove_offset_mm - bottom.thickness_mm, 0.0)
    inside = side.length_mm - 2 * rail.thickness_mm
    for what, got, room in (("wide", bottom.length_mm, rail.length_mm), ("deep", bottom.width_mm, inside)):
        yield f"bottom {what} in its grooves", got + drawers.bottom_play_mm, room + 2 * drawers.groove_depth_mm
    upright = next(part for part in made.parts if part.number.startswith("U"))
    panel = boards.front_mm if drawers.fronts is Fronts.INSET else 0.0
    closed = panel + side.length_mm + project.construction.runners.rear_gap_mm
    yield _least("room behind the drawer", upright.width_mm - closed, 0.0)
    yield from _stops(project, made, rail, inside)


def _stops(project: Project, made: Manufacture, rail: Part, inside: float) -> Iterator[Sum]:
    stops = _of(made.parts, "D4")
    places = {(line.bay, line.drawer): line.box_stop_mm for line in made.schedule}
    with_stop = [mm for mm in places.values() if mm is not None]
    yield "box stops", sum(part.quantity for part in stops), len(with_stop)
    for line in made.schedule:
        size = project.size_of(project.box(line.box_id))
        taken = size.depth_mm + project.construction.drawers.stop_mm
        room = inside - taken
        asked = project.construction.drawers.has_box_stop and room >= project.construction.boards.drawer_side_mm
        yield f"stop behind {line.box_id}", float(line.box_stop_mm is not None), float(asked)
        if line.box_stop_mm is not None:
            yield f"place of the stop behind {line.box_id}", line.box_stop_mm, taken
            yield _least("stop before the rear rail", inside - line.box_stop_mm - stops[0].thickness_mm, 0.0)
            yield _least("stop between the sides", rail.length_mm - stops[0].length_mm, 0.0)


def _fronts(project: Project, made: Manufacture) -> Iterator[Sum]:
    """Front panels: one a drawer, as large as they are cut, with the reveal round each and nothing in the way."""
    fronts, reveal = made.fronts, project.construction.drawers.reveal_mm
    drawers = {(line.bay - 1, line.runner_row - 1) for line in made.schedule}
    has_fronts = project.construction.drawers.fronts is not Fronts.NONE and bool(_of(made.parts, "D1"))
    yield "fronts", len(fronts), len(drawers) if has_fronts else 0
    yield "fronts to cut", sum(part.quantity for part in _of(made.parts, "F1")), len(fronts)
    for part in _of(made.parts, "F1"):
        same = [panel for panel in fronts if panel.number == part.number]
        yield f"{part.number} pieces", part.quantity, len(same)
        for panel in same:
            yield f"{part.number} across", panel.right_mm - panel.left_mm, part.length_mm
            yield f"{part.number} upright", panel.top_mm - panel.bottom_mm, part.width_mm
    for one, other in combinations(fronts, 2):
        yield _least(f"air between fronts {_at(one)} and {_at(other)}", _apart(one, other), 2 * reveal)
    for panel in fronts:
        yield from _around(project, made, panel, reveal)


def _around(project: Project, made: Manufacture, panel: FrontPanel, reveal: float) -> Iterator[Sum]:
    """What a front must stay clear of, and what it must hide."""
    left, _ = beyond_mm(project)
    measured = bays(project)
    bay, post = measured[panel.bay], project.construction.boards.upright_mm
    under_top = base_mm(project) + upright_mm(project, project.arrangement.upright_rows)
    yield _least(f"air under the top, {_at(panel)}", under_top - panel.top_mm, reveal)
    yield _least(f"air over the base, {_at(panel)}", panel.bottom_mm - base_mm(project), reveal)
    own = project.construction.uprights is Uprights.OWN
    has_shelf = any(part.number[:2] in ("U4", "U5", "U6") for part in made.parts)
    over = [0.0, 0.0]
    if project.construction.drawers.fronts is Fronts.OVERLAY:
        is_last = panel.bay == len(measured) - 1 and not has_shelf
        over = [post if own or panel.bay == 0 else post / 2, post if own or is_last else post / 2]
    yield f"left end, {_at(panel)}", left + panel.left_mm, bay.clear_left_mm - over[0] + reveal
    yield f"right end, {_at(panel)}", left + panel.right_mm, bay.clear_right_mm + over[1] - reveal
    for line in made.schedule:
        if (line.bay - 1, line.runner_row - 1) == (panel.bay, panel.row):
            yield _least(f"front over the box, {_at(panel)}", panel.top_mm + reveal - line.box_top_mm, 0.0)
            yield _least(f"front under the drawer, {_at(panel)}", line.lower_edge_mm + reveal - panel.bottom_mm, 0.0)


def _at(panel: FrontPanel) -> str:
    return f"bay {panel.bay} row {panel.row}"


def _apart(one: FrontPanel, other: FrontPanel) -> float:
    """The wider of the two gaps between rectangles: across and upright."""
    across = max(one.left_mm, other.left_mm) - min(one.right_mm, other.right_mm)
    upright = max(one.bottom_mm, other.bottom_mm) - min(one.top_mm, other.top_mm)
    return max(across, upright)
