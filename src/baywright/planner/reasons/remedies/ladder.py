"""Changes of one kind, from small to large, and how they are gone through.

Laws: on a `Ladder` a larger step works wherever a smaller one does, so the least is found by halving; `Choices` have
no such law and are tried from the lightest on. `limit` is the path of the limit that a change eases, if it eases one:
where that limit is no part of a clash, the change cannot help and is not tried.
"""

from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction
from math import ceil, floor

from baywright.model.length import INCH_MM, LengthUnit, format_length
from baywright.model.project import Project
from baywright.model.repair import FieldChange, FieldValue, Repair
from baywright.planner.reasons.remedies.weight import Weight


@dataclass(frozen=True)
class Ladder:
    """`steps` changes of one kind; `step(1)` is the smallest. `told` puts a step into words where that takes long."""

    kind: str
    limit: str | None
    steps: int
    step: Callable[[int], Repair]
    told: Callable[[Repair], Repair] = lambda repair: repair


@dataclass(frozen=True)
class Choices:
    """Changes of one kind, lightest first, of which the first `most` that work are offered."""

    kind: str
    limit: str | None
    offers: tuple[Repair, ...]
    most: int = 1


Kind = Ladder | Choices


def single(text: str, path: str, value: FieldValue, weight: float) -> Repair:
    """A repair that changes one field; the text is a whole sentence."""
    return Repair(text=text, changes=(FieldChange(path=path, value=value),), weight=weight)


def choices(kind: str, limit: str | None, offers: list[Repair], most: int = 1) -> Choices:
    """The choices in the order of their weight."""
    return Choices(kind, limit, tuple(sorted(offers, key=lambda offer: (offer.weight, offer.text))), most)


class Lengths:
    """The lengths of one document that a person would type: whole mm, or 1/32 inches, which are shown as they are."""

    def __init__(self, project: Project) -> None:
        self._unit = project.unit
        self._step = Fraction(1) if project.unit is LengthUnit.MILLIMETRE else INCH_MM / 32

    def shown(self, length_mm: float) -> str:
        """As the project shows it."""
        return format_length(length_mm, self._unit)

    def upwards(
        self, kind: str, path: str, now_mm: float, most_mm: float, weight: Weight, text: Callable[[float], str],
        limit: str | None = None,
    ) -> Ladder:  # fmt: skip
        """A length made larger, up to `most_mm`."""
        first = floor(self._whole(now_mm)) + 1
        steps = max(0, floor(self._whole(most_mm)) - first + 1)
        return self._ladder(kind, path, now_mm, steps, lambda k: first + k - 1, weight, text, limit)

    def downwards(
        self, kind: str, path: str, now_mm: float, least_mm: float, weight: Weight, text: Callable[[float], str],
        limit: str | None = None,
    ) -> Ladder:  # fmt: skip
        """A length made smaller, down to `least_mm`."""
        first = ceil(self._whole(now_mm)) - 1
        steps = max(0, first - ceil(self._whole(least_mm)) + 1)
        return self._ladder(kind, path, now_mm, steps, lambda k: first - k + 1, weight, text, limit)

    def around(self, now_mm: float, most_mm: float) -> list[float]:
        """All such lengths from 0 up to `most_mm`, but the present one, nearest to it first."""
        values = (float(number * self._step) for number in range(floor(self._whole(most_mm)) + 1))
        return sorted((value for value in values if value != now_mm), key=lambda value: (abs(value - now_mm), value))

    def _whole(self, length_mm: float) -> Fraction:
        """In steps; a length within 1e-9 of a whole step is that step."""
        steps = Fraction(length_mm) / self._step
        near = round(steps)
        return Fraction(near) if abs(steps - near) < Fraction(1, 10**9) else steps

    def _ladder(
        self, kind: str, path: str, now_mm: float, steps: int, number: Callable[[int], int], weight: Weight,
        text: Callable[[float], str], limit: str | None,
    ) -> Ladder:  # fmt: skip
        def step(k: int) -> Repair:
            value = float(number(k) * self._step)
            return single("", path, value, weight.of(value - now_mm))

        def told(repair: Repair) -> Repair:
            value = repair.changes[0].value
            assert isinstance(value, float)
            return repair.replace(text=text(value))

        return Ladder(kind, limit, steps, step, told)
