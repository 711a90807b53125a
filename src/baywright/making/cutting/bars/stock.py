"""What cutting bars is asked and answers: whole numbers only, nothing of a project.

Laws: a piece needs its length, a bar gives its length, in one unit; the kerf stays outside: with kerf k, pieces are
handed in as l + k and bars as L + k (less what is squared off at the ends). `bound` is never above what any cutting of
all placeable pieces costs.
"""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Length:
    """So many pieces of one length."""

    id: int
    length: int
    count: int = 1


@dataclass(frozen=True, slots=True)
class Bar:
    """A kind of bar to cut from, what one costs and how many there are (None: no limit)."""

    id: int
    length: int
    cost: int = 1
    available: int | None = None


@dataclass(frozen=True, slots=True)
class Pattern:
    """What is cut from `times` bars of one kind: (id of the length, how many) in each of them, longest first."""

    bar: int
    counts: tuple[tuple[int, int], ...]
    times: int = 1


@dataclass(frozen=True, slots=True)
class BarPacking:
    """The bars cut, the pieces left over as (id, how many), what the bars cost, and a bound no cutting goes below."""

    patterns: tuple[Pattern, ...]
    unplaced: tuple[tuple[int, int], ...]
    cost: int
    bound: int
    unplaceable: tuple[tuple[int, int], ...] = ()
    """Those of `unplaced` that are longer than every kind of bar, so that no cutting could give them."""

    @property
    def proved(self) -> bool:
        """Whether every placeable piece is cut and no cutting of them costs less."""
        return self.cost == self.bound and self.unplaced == self.unplaceable
