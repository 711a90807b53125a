"""As few limits as together make a plan impossible.

Limits that leave no plan each by itself come first. Any other clash is found by leaving out limits, many at once where
that goes, for as long as it stays impossible: what cannot be left out any more is the clash. It is irreducible: without
any one of its limits, and without all limits that are not of it, everything has a place; that is asked once more for
each before it is told. Where several things are wrong that have no limit in common, each is a clash of its own, found
when those before it are left out. Laws: every answer rests on solves; one that stays open keeps its limit in the
clash, which is then not told as irreducible.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from baywright.model.project import Project
from baywright.planner.reasons.limits import LOCKS, Limit, limits_of, status_limits
from baywright.planner.reasons.question import Questions, Reading
from baywright.planner.reasons.relaxation import Relaxer

MOST_CLASHES = 6
"""So many clashes that have nothing in common are told."""


@dataclass(frozen=True)
class Clash:
    """Limits that together leave no plan. `core` is the document with no other limit than these."""

    limits: tuple[Limit, ...]
    core: Project
    is_irreducible: bool
    """Whether it was shown by solving that without any one of them there is a plan."""


class Clashes:
    """Finds the clashes of one document."""

    def __init__(self, project: Project, questions: Questions) -> None:
        self._questions = questions
        self._reading = Reading(project)
        self._relaxer = Relaxer(self._reading)
        self._limits = limits_of(self._reading)

    def find(self) -> tuple[Clash, ...]:
        """All clashes that have no limit in common with those before them, at most `MOST_CLASHES`; none where there
        is a plan, or none is shown to be impossible.
        """
        self._limits += self._misfits()
        found = self._alone()
        gone = frozenset(limit.path for clash in found for limit in clash.limits)
        while len(found) < MOST_CLASHES and self._is_impossible(gone):
            clash = self._clash(gone)
            found.append(clash)
            gone |= {limit.path for limit in clash.limits}
            if not clash.limits:
                break
        return tuple(found)

    def _misfits(self) -> tuple[Limit, ...]:
        """Boxes that have no place whatever limits are left out; that they are to have one is then a limit too."""
        every = {limit.path for limit in self._limits}
        box_ids: dict[str, None] = {}
        core = self._relaxer.without(every)
        findings = Reading(core).findings if core.boxes_to_place else ()
        for finding in findings:
            box_ids |= dict.fromkeys(finding.box_ids)
        return status_limits(self._reading.project, tuple(box_ids))

    def _alone(self) -> list[Clash]:
        """The limits, but for locks, each of which alone leaves no plan, such as a width too small for a box."""
        every = frozenset(limit.path for limit in self._limits)
        if not self._is_impossible(frozenset()) or self._questions.has_plan(self._relaxer.without(every)) is not True:
            return []
        found = []
        for limit in self._limits:
            core = every - {limit.path}
            if not limit.path.startswith(LOCKS) and self._is_impossible(core):
                found.append(Clash((limit,), self._relaxer.without(core), is_irreducible=True))
        return found[:MOST_CLASHES]

    def _is_impossible(self, left_out: frozenset[str]) -> bool:
        return self._questions.has_plan(self._relaxer.without(left_out)) is False

    def _clash(self, gone: frozenset[str]) -> Clash:
        rest = [limit for limit in self._limits if limit.path not in gone]
        left_out = gone
        locks = [limit for limit in rest if limit.path.startswith(LOCKS)]
        others = [limit for limit in rest if not limit.path.startswith(LOCKS)]
        for group in (locks, *([limit] for limit in others)):
            left_out = self._leave_out(group, left_out)
        kept = tuple(limit for limit in rest if limit.path not in left_out)
        return self._proved(kept)

    def _leave_out(self, group: Sequence[Limit], left_out: frozenset[str]) -> frozenset[str]:
        """As many of a group left out as leave it impossible, halves at once where that goes."""
        if not group:
            return left_out
        more = left_out | {limit.path for limit in group}
        if self._is_impossible(more):
            return more
        if len(group) == 1:
            return left_out
        middle = len(group) // 2
        return self._leave_out(group[middle:], self._leave_out(group[:middle], left_out))

    def _proved(self, limits: tuple[Limit, ...]) -> Clash:
        """The clash of those limits, shown anew by solving: impossible with them alone, possible without any one."""
        every = frozenset(limit.path for limit in self._limits)
        kept = limits
        is_irreducible = True
        for limit in limits:
            fewer = tuple(other for other in kept if other is not limit)
            answer = self._questions.has_plan(self._relaxer.without(every - {other.path for other in fewer}))
            if answer is False:
                kept = fewer
            elif answer is None:
                is_irreducible = False
        return Clash(kept, self._relaxer.without(every - {limit.path for limit in kept}), is_irreducible)
