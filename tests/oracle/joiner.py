"""A witness of steps: does them one by one on a wall of its own, with a rule in its hand.

Shares no code with the planner. It refuses whatever hands cannot do: take a drawer off that holds a box, hang one where
another or a box is in the way, put a box where no drawer hangs or among boxes that it never stands with.
"""

from baywright.model.difference import Difference, Place, Step, StepKind
from baywright.model.inventory import BoxStatus
from baywright.model.project import Project

Spot = tuple[int, int]
TINY_MM = 1e-6


def placed(project: Project) -> dict[str, Spot]:
    """The boxes that stand in drawers."""
    owned = {box.id for box in project.boxes if box.status is BoxStatus.OWNED}
    return {p.box_id: (p.bay, p.row) for p in project.arrangement.placements if p.box_id in owned}


def width_of_bay(project: Project, bay: int) -> float:
    """The width of box that a bay is made for."""
    widths = project.arrangement.box_widths_mm
    if bay < len(widths):
        return widths[bay]
    assert project.limits.bay_box_width_mm is not None
    return project.limits.bay_box_width_mm


def members(places: dict[str, Spot]) -> dict[Spot, frozenset[str]]:
    """The boxes of every drawer."""
    found: dict[Spot, set[str]] = {}
    for box_id, spot in places.items():
        found.setdefault(spot, set()).add(box_id)
    return {spot: frozenset(boxes) for spot, boxes in found.items()}


class Joiner:
    """A wall in the state of `before`, and the hands that work on it."""

    def __init__(self, before: Project, after: Project) -> None:
        self.before, self.after = before, after
        self.boxes: dict[str, Spot | None] = dict(placed(before))
        """Where every box is; None on the bench."""
        self.drawers = {spot: width_of_bay(before, spot[0]) for spot in members(placed(before))}
        self.at_hand: list[float] = []
        self.idle: list[float] = []
        self.most_on_bench = 0
        self.times_on_bench = 0
        self._together = {*members(placed(before)).values(), *members(placed(after)).values()}

    def do_all(self, difference: Difference) -> None:
        """Every step, with a look at the wall after each."""
        for step in difference.steps:
            self.do(step)
            self.look(step.text)

    def do(self, step: Step) -> None:
        """One step; AssertionError where it cannot be done."""
        old, new = _spot(step.before), _spot(step.after)
        match step.kind:
            case StepKind.CUT | StepKind.PUT_UP:
                pass
            case StepKind.TAKE_OUT:
                assert self.boxes.pop(step.box_id) == old, step.text
            case StepKind.SET_ASIDE:
                assert self.boxes[step.box_id] == old is not None, step.text
                self.boxes[step.box_id] = None
                self.times_on_bench += 1
            case StepKind.PUT:
                assert step.box_id in self.boxes or step.box_id not in placed(self.before), step.text
                assert self.boxes.get(step.box_id) == old, step.text
                assert new in self.drawers, step.text
                self.boxes[step.box_id] = new
            case StepKind.SCREW | StepKind.HANG | StepKind.REMOVE:
                self._handle_drawer(step, old, new)

    def _handle_drawer(self, step: Step, old: Spot | None, new: Spot | None) -> None:
        in_hand = None
        if old is not None:
            assert old not in self.boxes.values(), f"not empty: {step.text}"
            in_hand = self.drawers.pop(old)
        if step.kind is StepKind.REMOVE:
            assert in_hand is not None
            assert new is None
            self.idle.append(in_hand)
        elif step.kind is StepKind.HANG:
            assert in_hand is None
        elif new is None:
            assert in_hand is not None
            self.at_hand.append(in_hand)
        if new is not None:
            width = width_of_bay(self.after, new[0])
            if step.kind is StepKind.SCREW and in_hand is None:
                self.at_hand.remove(width)
            assert in_hand in (None, width), f"wrong width: {step.text}"
            assert new not in self.drawers, step.text
            self.drawers[new] = width

    def look(self, text: str = "") -> None:
        """No two drawers in each other's room, and in every drawer boxes that stand together before or after."""
        contents = members({box: spot for box, spot in self.boxes.items() if spot is not None})
        for spot, boxes in contents.items():
            assert any(boxes <= some for some in self._together) or self.fit(spot, boxes), text
        tops: dict[int, float] = {}
        for bay, row in sorted(self.drawers):
            bottom = row * self.after.construction.hole_rows.pitch_mm
            assert bottom >= tops.get(bay, 0.0) - TINY_MM, f"bay {bay} row {row}: no room; {text}"
            tops[bay] = bottom + max(map(self._need_mm, contents.get((bay, row), [""])))
        bench = sum(spot is None for spot in self.boxes.values())
        self.most_on_bench = max(bench, self.most_on_bench)

    def fit(self, spot: Spot, boxes: frozenset[str]) -> bool:
        """Whether boxes go side by side into the drawer at a place and may."""
        owned = {box.id: box for box in self.after.boxes}
        if not boxes <= owned.keys():
            return False
        sizes = [self.after.size_of(owned[box_id]) for box_id in boxes]
        play = (len(sizes) - 1) * self.after.construction.drawers.lateral_play_mm
        across = sum(size.width_mm for size in sizes) + play
        return across <= width_of_bay(self.after, spot[0]) and all(len(sizes) <= size.most_abreast for size in sizes)

    def _need_mm(self, box_id: str) -> float:
        drawers = self.after.construction.drawers
        empty = drawers.side_height_mm + drawers.gap_over_side_mm
        if not box_id:
            return empty
        project = self.after if box_id in {box.id for box in self.after.boxes} else self.before
        height = project.size_of(project.box(box_id)).height_mm
        seat = drawers.groove_offset_mm + self.after.construction.boards.drawer_bottom_mm
        return max(empty, seat + height + drawers.clearance_mm)

    def is_done(self) -> bool:
        """Whether the wall is exactly as `after` has it."""
        there = {spot: width_of_bay(self.after, spot[0]) for spot in members(placed(self.after))}
        return self.boxes == placed(self.after) and self.drawers == there and not self.at_hand


def _spot(place: Place | None) -> Spot | None:
    return None if place is None else (place.bay, place.row)


def fewest_at_once(before: Project, after: Project, difference: Difference) -> int:
    """The fewest boxes that must stand on the bench at once, by trying every order; runner pairs as `difference` has
    them. For a few boxes only.
    """
    for most in range(len(before.boxes) + 1):
        if _can_be_done(before, after, difference, most):
            return most
    raise AssertionError("it cannot be done at all")


def _can_be_done(before: Project, after: Project, difference: Difference, most: int) -> bool:
    goals = placed(after)
    works = [Step(kind=StepKind.SCREW, text="", before=r.before, after=r.after) for r in difference.runners]
    works += [Step(kind=StepKind.HANG, text="", after=place) for place in difference.new_drawers]
    works += [Step(kind=StepKind.REMOVE, text="", before=place) for place in difference.idle_drawers]
    for box_id, spot in placed(before).items():
        start = Place(bay=spot[0], row=spot[1])
        works.append(Step(kind=StepKind.SET_ASIDE, text="", box_id=box_id, before=start))
        if box_id not in goals:
            works.append(Step(kind=StepKind.TAKE_OUT, text="", box_id=box_id, before=start))
        else:
            goal = Place(bay=goals[box_id][0], row=goals[box_id][1])
            if goal != start:
                works.append(Step(kind=StepKind.PUT, text="", box_id=box_id, before=start, after=goal))
            works.append(Step(kind=StepKind.PUT, text="", box_id=box_id, after=goal))
    works += [
        Step(kind=StepKind.PUT, text="", box_id=box_id, after=Place(bay=spot[0], row=spot[1]))
        for box_id, spot in goals.items()
        if box_id not in placed(before)
    ]
    return _reached(Joiner(before, after), works, most)


def _reached(start: Joiner, works: list[Step], most: int) -> bool:
    todo, known = [start], {_state(start)}
    while todo:
        now = todo.pop()
        if now.is_done():
            return True
        for work in works:
            then = _copy(now)
            try:
                then.do(work)
                then.look()
            except (AssertionError, KeyError, ValueError):
                continue
            bench = sum(spot is None for spot in then.boxes.values())
            if bench <= most and _state(then) not in known:
                known.add(_state(then))
                todo.append(then)
    return False


def _state(joiner: Joiner) -> tuple[object, ...]:
    return tuple(sorted(joiner.boxes.items(), key=str)), tuple(sorted(joiner.drawers.items()))


def _copy(joiner: Joiner) -> Joiner:
    copy = Joiner.__new__(Joiner)
    copy.__dict__.update(joiner.__dict__)
    copy.boxes, copy.drawers = dict(joiner.boxes), dict(joiner.drawers)
    copy.at_hand, copy.idle = list(joiner.at_hand), list(joiner.idle)
    return copy
