"""The dimensions drawn round the run: which ones there are, between which places, and the words on them.

A dimension's figure is always a value of the workings, never measured off the drawing.
"""

from dataclasses import dataclass

from baywright.gui.elevation.captions import bare_length, short_length
from baywright.gui.elevation.frame import Frame
from baywright.gui.wording import count_words
from baywright.model.length import LengthUnit
from baywright.workings import Workings

ACROSS_CHAINS, UP_CHAINS = 3, 2
"""Chains below the floor (bays, run, wall) and at the right (uprights, whole height)."""


@dataclass(frozen=True)
class Dimension:
    """One dimension line. `chain` counts outwards from the run; `texts` go from the fullest to the shortest."""

    start: float
    end: float
    chain: int
    texts: tuple[str, ...]
    is_last: bool = False
    """The last of its chain: beyond its end is room for a figure that is too wide to stand inside."""


@dataclass(frozen=True)
class Dimensions:
    """All dimensions of one elevation: below the floor along the wall, and at the right over the floor."""

    across: tuple[Dimension, ...]
    up: tuple[Dimension, ...]


def dimensions_of(frame: Frame, workings: Workings, unit: LengthUnit) -> Dimensions:
    """The dimensions of a frame with the workings that it was built from."""

    def length(name: str) -> tuple[str, str]:
        return short_length(workings.value(name), unit), bare_length(workings.value(name), unit)

    full, bare = length("bay_clear_width")
    across = [Dimension(bay.left, bay.right, 0, (full, bare)) for bay in frame.bays]
    if frame.shelf_bay is not None:
        full, bare = length("shelf_bay_clear_width")
        across.append(Dimension(frame.shelf_bay.left, frame.shelf_bay.right, 0, (f"shelves {full}", full, bare), True))
    elif frame.left_over is not None:
        full, bare = length("wall_left")
        across.append(
            Dimension(frame.left_over.left, frame.left_over.right, 0, (f"left over {full}", full, bare), True)
        )
    run, run_bare = length("run_length")
    wall, wall_bare = length("wall_length")
    run_end = workings.value("run_length")
    across.append(Dimension(0.0, run_end, 1, (f"run {run}", run, run_bare)))
    across.append(Dimension(frame.wall.left, frame.wall.right, 2, (f"wall {wall}", wall, wall_bare)))
    if workings.value("wall_left") < 0:
        beyond = short_length(-workings.value("wall_left"), unit)
        across.append(Dimension(frame.wall.right, frame.top.right, 2, (f"too long by {beyond}", f"+ {beyond}"), True))
    return Dimensions(tuple(across), _heights(frame, workings, unit))


def _heights(frame: Frame, workings: Workings, unit: LengthUnit) -> tuple[Dimension, ...]:
    upright = short_length(workings.value("upright_height"), unit)
    unit_height = short_length(workings.value("unit_height"), unit)
    rows = count_words(len(frame.rows), "row")
    lower = frame.uprights[0].bottom
    return (
        Dimension(lower, frame.uprights[0].top, 0, (f"uprights {upright} ({rows})", f"uprights {upright}", upright)),
        Dimension(0.0, frame.top.top, 1, (f"height {unit_height}", unit_height)),
    )
