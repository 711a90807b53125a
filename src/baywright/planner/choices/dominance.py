"""Which shapes of the run are worth choosing from: those that no other one beats.

The rule: one option beats another when it is at least as good in every respect and better in one. The respects are
fewer bays; the worktop nearer to the wished range, then lower; more left-over width; longer runners; fewer sheets and
less cost, where they are known of all options; a top that keeps the overhang that is set more closely, in front and at
the sides (so that another overhang is offered only where it brings something); uprights of its own for each bay, which
can be built and carried one by one (so that own uprights are weighed against the room they take). Free rows and
handling are told but not weighed: they follow from the shape and its plan.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from baywright.model.construction import Uprights
from baywright.model.option import Option
from baywright.model.project import Project
from baywright.planner.choices.variant import present_variant

Respects = tuple[float | tuple[float, float], ...]
"""One figure for each respect; less is better."""

_DIGITS = 3
"""Lengths are weighed in thousandths of a mm, so that noise in the last digit never makes an option better."""


@dataclass(frozen=True)
class Yardstick:
    """What the options of one project are measured by."""

    project: Project
    with_sheets: bool = False
    with_cost: bool = False

    def respects(self, option: Option) -> Respects:
        """The figures of an option."""
        now = present_variant(self.project)
        found: list[float | tuple[float, float]] = [
            option.bays,
            (self._from_wish(option.unit_height_mm), round(option.unit_height_mm, _DIGITS)),
            -round(option.left_over_mm, _DIGITS),
            -round(option.runner_length_mm, _DIGITS),
            round(abs(option.overhang_front_mm - now.overhang_front_mm), _DIGITS),
            round(abs(option.overhang_side_mm - now.overhang_side_mm), _DIGITS),
            0 if option.uprights is Uprights.OWN else 1,
        ]
        if self.with_sheets and option.sheets is not None:
            found.append(option.sheets)
        if self.with_cost and option.cost is not None:
            found.append(option.cost)
        return tuple(found)

    def _from_wish(self, height_mm: float) -> float:
        """How far, in mm, a worktop at that height lies outside the wished range."""
        least, most = self.project.limits.worktop_least_mm, self.project.limits.worktop_most_mm
        under = 0.0 if least is None else least - height_mm
        over = 0.0 if most is None else height_mm - most
        return round(max(0.0, under, over), _DIGITS)


def yardstick(project: Project, options: Sequence[Option]) -> Yardstick:
    """The measure for these options: sheets and cost count only where every option has them."""
    return Yardstick(
        project,
        with_sheets=all(option.sheets is not None for option in options),
        with_cost=all(option.cost is not None for option in options),
    )


def beats(better: Respects, worse: Respects) -> bool:
    """Whether the first is at least as good in every respect and better in one."""
    pairs = list(zip(better, worse, strict=True))
    return all(a <= b for a, b in pairs) and any(a < b for a, b in pairs)  # type: ignore[operator]


def undominated(project: Project, options: Sequence[Option]) -> tuple[Option, ...]:
    """The options that no other one beats; of several that are alike in every respect the first.

    The present shape stays, marked as beaten where it is.
    """
    measure = yardstick(project, options)
    figures = [measure.respects(option) for option in options]
    kept: list[Option] = []
    for number, option in enumerate(options):
        mine = figures[number]
        is_beaten = mine in figures[:number] or any(beats(other, mine) for other in figures)
        if option.is_present or not is_beaten:
            kept.append(option.replace(is_beaten=is_beaten))
    return tuple(kept)
