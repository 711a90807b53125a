"""For which width of box each bay is made: as wished, as built, else as many of each width as serve best.

Laws: bays that stand keep their widths, and so do all to the left of them; then come the wishes; all other bays stand
widest first, or, where it matters which stands where, in every order. For fewest bays and lowest run the shortest run
is taken in which a plan is found; the goals after that are weighed in every run that may be best by them. That nothing
fits is only said when no choice that the wall holds would do.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from itertools import product
from math import prod

from baywright.model.arrangement import Lock
from baywright.model.project import Project
from baywright.planner.framing.bay import faces, is_plain
from baywright.workings import Workings, derive

MOST_CHOICES = 200
"""So many ways to mix widths are looked at for one number of bays at most."""
MOST_RIVALS = 24
"""So many are weighed by the goals after the first two at most."""
TOLERANCE_MM = 1e-9

Widths = tuple[float, ...]
"""The box width of every bay, from the left."""


@dataclass(frozen=True)
class Choices:
    """Ways to mix widths, the shortest run first; `is_complete` unless there were too many to look at all."""

    widths: tuple[Widths, ...]
    is_complete: bool


class WidthChoice:
    """The widths that the bays of one project may have."""

    def __init__(self, project: Project, workings: Workings) -> None:
        self._project = project
        self._workings = workings
        self.ordinary = workings.value("bay_box_width")
        others = project.limits.other_box_widths_mm
        self.widths: Widths = tuple(sorted({self.ordinary, *others}, reverse=True))
        """Every width that a bay without a wish may have, widest first."""

    @cached_property
    def fixed(self) -> tuple[float | None, ...]:
        """The widths of the first bays as built or wished; None where the planner may choose."""
        limits, built = self._project.limits, as_built(self._project)
        count = max(len(limits.bays), len(built))
        free = self.ordinary if len(self.widths) == 1 else None
        return tuple(built[bay] if bay < len(built) else limits.wish(bay).box_width_mm or free for bay in range(count))

    @cached_property
    def is_ordered(self) -> bool:
        """Whether it matters which bay stands where: under or before something, with wishes, or with boxes locked."""
        placed = {box.id for box in self._project.boxes_to_place}
        placements = self._project.arrangement.placements
        is_locked = any(p.lock is not Lock.NONE and p.box_id in placed for p in placements)
        return is_locked or not is_plain(self._project)

    @property
    def is_placed(self) -> bool:
        """Whether it matters where along the wall a bay stands."""
        return bool(self._project.space.ceiling or self._project.space.zones)

    @cached_property
    def bays_that_fit(self) -> int:
        """The bays that the wall holds at most: those that are not fixed as narrow as can be."""
        if not self.fixed and len(self.widths) == 1 and not self._workings.value("laid_out"):
            return round(self._workings.value("bays_that_fit"))
        narrowest = self.widths[-1]
        return self._workings.bays_that_fit([*(width or narrowest for width in self.fixed), narrowest])

    def usual(self, bays: int) -> Widths:
        """The widths of so many bays where the planner has no choice."""
        return self._filled([self.ordinary] * bays, bays)

    def narrowest(self, bays: int) -> Widths:
        """The widths of so many bays where those that are free are as narrow as can be."""
        return self._filled([self.widths[-1]] * bays, bays)

    def widest(self, bays: int) -> Widths:
        """The widths of so many bays where those that are free are as wide as can be."""
        return self._filled([self.widths[0]] * bays, bays)

    def most_rows_of_bays(self, bays: int, rows: int) -> int:
        """The rows of the highest of at most so many bays in a run of `rows` rows."""
        if is_plain(self._project):
            return rows
        if len(self.widths) > 1:  # which bays stand under what depends on the widths chosen
            wishes = [wish.rows for wish in self._project.limits.bays[:bays]]
            return max([row or rows for row in wishes] + [rows] * (bays > len(wishes)), default=rows)
        return max((face.rows for face in faces(self._project, self._workings, self.usual(bays), rows)), default=0)

    def every_width(self, bays: int) -> tuple[float, ...]:
        """Every width that one of at most so many bays may have."""
        fixed = self.fixed[:bays]
        free = bays > len(fixed) or None in fixed
        return tuple(sorted({width for width in fixed if width is not None} | (set(self.widths) if free else set())))

    def _filled(self, free: list[float], bays: int) -> Widths:
        chosen = iter(free)
        fixed = (*self.fixed[:bays], *(None,) * (bays - len(self.fixed)))
        return tuple(next(chosen, self.widths[-1]) if width is None else width for width in fixed)

    def choices(self, bays: int, rows: int, fewest: int = 1, *, wide_is_best: bool = False) -> Choices:
        """Ways to have so many bays, and where their number is free also fewer that are wider instead, though at least
        `fewest`; in each as many of the narrowest as the wall holds. `wide_is_best`: what fits a bay fits a wider one.
        """
        if len(self.widths) == 1:
            return Choices((self.usual(bays),), is_complete=True)
        given = sum(width is not None for width in self.fixed[:bays])
        least = bays if self._project.limits.bay_count is not None else min(bays, fewest)
        found: set[Widths] = set()
        tried = 0
        for mix in _mixes(bays - given, len(self.widths) - 1):
            if (tried := tried + 1) > MOST_CHOICES:
                break
            wide = [width for width, count in zip(self.widths, mix, strict=False) for _ in range(count)]
            widths = self._with_narrow(wide, bays, given)
            if widths is not None and len(widths) >= least:
                found.add(widths)
        is_complete = tried <= MOST_CHOICES
        if not is_complete:  # what was looked at has few of the widest, which boxes may need
            widest = (self._with_narrow([self.widths[0]] * count, bays, given) for count in range(bays - given + 1))
            found |= {widths for widths in widest if widths is not None and len(widths) >= least}
        if self.is_ordered:
            orders = self._orders(bays, rows, least)
            widest_of_all = wide_is_best and not self.is_placed and self.widest(bays) in found
            found, is_complete = (found, widest_of_all) if orders is None else (orders, True)
        lengths = {widths: self._length(widths, rows) for widths in found}
        ordered = sorted(found, key=lambda w: (-len(w), lengths[w], w))
        return Choices(tuple(ordered) or (self.usual(bays),), is_complete)

    def _orders(self, bays: int, rows: int, least: int) -> set[Widths] | None:
        """Every choice in every order but those that others only add bays to; None where there are too many."""
        free = [self.widths if n >= len(self.fixed) or self.fixed[n] is None else (self.fixed[n],) for n in range(bays)]
        if sum(prod(map(len, free[:count])) for count in range(least, bays + 1)) > MOST_CHOICES:
            return None
        found: set[Widths] = set()
        for count in range(bays, least - 1, -1):
            longer = {widths[:count] for widths in found}
            orders = (tuple(width or 0.0 for width in order) for order in product(*free[:count]))
            found |= {widths for widths in orders if widths not in longer and self.fits(widths, rows)}
        return found

    def rivals(self, bays: int, rows: int, *, ordered: bool, wide_is_best: bool) -> Choices:
        """The choices for exactly so many bays among which there is one that no other beats in any goal; with
        `ordered` also where bays differ only in their order.
        """
        if len(self.widths) == 1:
            return Choices((self.usual(bays),), is_complete=True)
        if wide_is_best and not self.is_placed and self.fits(widest := self.widest(bays), rows):
            return Choices((widest,), is_complete=True)
        if ordered or self.is_ordered or not wide_is_best:
            orders = self._orders(bays, rows, bays)
            found = sorted(orders or ())
            return Choices(tuple(found[:MOST_RIVALS]), orders is not None and len(found) <= MOST_RIVALS)
        choices = self.choices(bays, rows, bays)
        mixes = [widths for widths in choices.widths if len(widths) == bays]
        best = [w for w in mixes if not any(w != other and _is_as_wide(other, w) for other in mixes)]
        return Choices(tuple(best[:MOST_RIVALS]), choices.is_complete and len(best) <= MOST_RIVALS)

    def narrower(self, widths: Widths, bay: int) -> Widths:
        """The widths below its own that a bay may have, narrowest first; none where it is fixed."""
        is_fixed = bay < len(self.fixed) and self.fixed[bay] is not None
        return () if is_fixed else tuple(sorted(width for width in self.widths if width < widths[bay]))

    def _with_narrow(self, wide: list[float], bays: int, given: int) -> Widths | None:
        """The wide bays with as many of the narrowest as make `bays` in all, or as the wall holds."""
        narrowest = self.widths[-1]
        begun = self._filled([*wide, *[narrowest] * bays], min(bays, max(given + len(wide), len(self.fixed))))
        count = min(bays, self._workings.bays_that_fit([*begun, narrowest]))
        return None if count < len(begun) else self._filled([*wide, *[narrowest] * bays], count)

    def fits(self, widths: Widths, rows: int) -> bool:
        """Whether the wall holds bays of those widths, and the shelf bay that is wished for."""
        room = self._workings.value("room_for_run") - self._workings.value("shelf_room")
        return self._length(widths, rows) <= room + TOLERANCE_MM

    def _length(self, widths: Widths, rows: int) -> float:
        return self._workings.lay_out(widths, rows).bays_end_mm

    def allows(self, widths: Widths, rows: int) -> bool:
        """Whether bays may have those widths, and the wall holds them."""
        fixed = (*self.fixed, *(None,) * (len(widths) - len(self.fixed)))
        may = all(
            width in self.widths if wanted is None else width == wanted
            for width, wanted in zip(widths, fixed, strict=False)
        )
        return may and self.fits(widths, rows)

    def written(self, widths: Widths) -> Widths:
        """The widths as an arrangement holds them: none where all bays are made as the limits say."""
        wish = self._project.limits.wish
        said = all(width == (wish(bay).box_width_mm or self.ordinary) for bay, width in enumerate(widths))
        return () if said else widths


def _mixes(bays: int, widths: int) -> Iterator[tuple[int, ...]]:
    """Every way to give at most so many bays one of so many widths, few first."""
    if widths == 0:
        yield ()
        return
    for count in range(bays + 1):
        for rest in _mixes(bays - count, widths - 1):
            yield (count, *rest)


def _is_as_wide(widths: Widths, others: Widths) -> bool:
    """Whether every bay is at least as wide, both widest first."""
    return all(a >= b for a, b in zip(sorted(widths), sorted(others), strict=True))


def as_built(project: Project) -> Widths:
    """The box widths of the bays up to the last one that stands; empty where none stands."""
    if project.built is None:
        return ()
    return tuple(bay.box_width_mm for bay in derive(project.built.project).layout.bays[: project.built.bays[-1] + 1])
