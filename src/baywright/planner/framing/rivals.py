"""Runs of as many bays and rows, but with bays of other widths: every one that may be best by the goals that follow.

Laws: for a goal the bound is the weakest of all rivals that could still be as good in the goals before it; a rival that
was not settled bounds nothing. Of plans that are alike in every goal the one with the narrowest bays is taken, or the
one with the bays that stand.
"""

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from baywright.model.goals import MORE_IS_BETTER, Goal
from baywright.planner.distribution.budget import Budget
from baywright.planner.distribution.problem import Place, is_kept
from baywright.planner.distribution.search import settle
from baywright.planner.framing.frame import Frame, Framer
from baywright.planner.framing.widths import Widths
from baywright.planner.goals.bound import easy_bounds
from baywright.planner.goals.ladder import Ladder, Reached
from baywright.planner.goals.task import Figures, Spots, Task, rank


@dataclass(frozen=True)
class Outcome:
    """The best plan of all rivals: its task, where everything stands, its figures and what bounds them."""

    task: Task
    spots: Spots
    figures: Figures
    bounds: Mapping[Goal, int]


Report = Callable[[Outcome], None]


class Rivals:
    """The climb through the goals of one shape of the run, in every mix of widths that may be best."""

    def __init__(self, framer: Framer, budget: Budget, task_of: Callable[[Frame], Task], report: Report) -> None:
        self._framer = framer
        self._budget = budget
        self._task_of = task_of
        self._report = report
        self._best: Outcome | None = None

    def climb(self, frame: Frame, known: Sequence[Spots]) -> Outcome:
        """The best plan of a frame and its rivals; `known` are legal plans of the frame, the one to keep first."""
        task = self._task_of(frame)
        others, is_complete = self._framer.rivals(frame, ordered=self._are_told_apart(task))
        if others == (frame.widths,) and is_complete:
            return self._outcome(task, Ladder(task, self._framer, self._budget, self._tell(task)).climb(list(known)))
        reached: list[Reached] = []
        for rival in self._frames(frame, others, is_complete=is_complete):
            own = self._task_of(rival)
            plans = [spots for spots in (*([self._best.spots] if self._best else []), *known) if own.is_legal(spots)]
            if not plans:
                _, answer = settle(replace(rival, others=(), is_complete=True), self._budget)
                is_complete = is_complete and answer.holds is not None
                if not answer.holds:
                    continue
                plans = [own.spots(answer.places)]
            found = Ladder(own, self._framer, self._budget, lambda _: None).climb(plans)
            reached.append(found)
            if self._best is None or rank(found.figures) < rank(self._best.figures):
                self._best = self._outcome(own, found)
                self._report(replace(self._best, bounds=self._open_bounds(own)))
        best = self._best
        assert best is not None
        bounds = combined(best.figures, [r.bounds for r in reached]) if is_complete else self._open_bounds(best.task)
        return replace(best, bounds=bounds)

    def _frames(self, frame: Frame, others: Sequence[Widths], *, is_complete: bool) -> Iterator[Frame]:
        """The frames that may be best; the given one, which holds everything for certain, where none else was."""
        if not is_complete or frame.widths in others:
            yield frame
        for widths in others:
            if widths != frame.widths:
                yield self._framer.frame_of(widths, frame.rows)
        if self._best is None:
            yield frame

    def _tell(self, task: Task) -> Callable[[Reached], None]:
        return lambda reached: self._report(self._outcome(task, reached))

    def _outcome(self, task: Task, reached: Reached) -> Outcome:
        return Outcome(task, reached.spots, dict(reached.figures), dict(reached.bounds))

    def _open_bounds(self, task: Task) -> Mapping[Goal, int]:
        """Bounds that hold in bays of any width."""
        top = max(task.longest, self._framer.grid.usable_rows(task.frame.rows))
        return {goal: top if goal in MORE_IS_BETTER else 0 for goal in easy_bounds(task)}

    def _are_told_apart(self, task: Task) -> bool:
        """Whether a goal tells bays apart that differ in nothing but their place."""
        return any(spot is not None for spot in task.stood)


def combined(figures: Figures, all_bounds: Sequence[Mapping[Goal, int]]) -> dict[Goal, int]:
    """What bounds the best figures, from the bounds of every rival."""
    alive = list(all_bounds)
    found: dict[Goal, int] = {}
    for goal in all_bounds[0]:
        is_more = goal in MORE_IS_BETTER
        own = [bounds[goal] for bounds in alive]
        found[goal] = max(own) if is_more else min(own)
        value = figures[goal]
        alive = [b for b in alive if (b[goal] >= value if is_more else b[goal] <= value)] or alive
    return found


def narrowed(
    framer: Framer, frame: Frame, places: Iterable[Place], stood: Widths = ()
) -> tuple[Frame, tuple[Place, ...]]:
    """The same plan with every bay as narrow as what is in it lets it be, or with the widths that `stood`."""
    places, choice = tuple(places), framer.choice
    if len(choice.widths) == 1:
        return frame, places
    if len(stood) == frame.bays and choice.allows(stood, frame.rows):
        kept = _moved(frame, places, framer.frame_of(stood, frame.rows))
        if kept is not None:
            return kept
    for bay in range(frame.bays):
        for width in choice.narrower(frame.widths, bay):
            widths = (*frame.widths[:bay], width, *frame.widths[bay + 1 :])
            if choice.allows(widths, frame.rows):
                smaller = _moved(frame, places, framer.frame_of(widths, frame.rows))
                if smaller is not None:
                    frame, places = smaller
                    break
    return frame, places


def _moved(frame: Frame, places: tuple[Place, ...], other: Frame) -> tuple[Frame, tuple[Place, ...]] | None:
    """The plan in a frame of other widths, where it is as legal there and every bay has the same rows."""
    kind_of = {bay: (kind, n) for kind, bays in enumerate(other.indices) for n, bay in enumerate(bays)}
    rows = {bay: frame.faces[kind].rows for kind, bays in enumerate(frame.indices) for bay in bays}
    if any(other.faces[kind_of[bay][0]].rows != own for bay, own in rows.items()):
        return None
    moved = tuple(Place(p.item, *kind_of[frame.indices[p.kind][p.bay]], p.row) for p in places)
    return (other, moved) if is_kept(other.problem, moved) else None
