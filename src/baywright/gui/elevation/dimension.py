"""The dimensions drawn round the run: which ones there are, between which places, and the words on them.

A dimension's figure is always a value or a place of the workings, never measured off the drawing.
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

    across = [
        Dimension(bay.left, bay.right, 0, (short_length(place.clear_mm, unit), bare_length(place.clear_mm, unit)))
        for bay, place in zip(frame.bays, workings.layout.bays, strict=True)
    ]
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
    run_end = workings.layout.length_mm
    across.append(Dimension(0.0, run_end, 1, (f"run {run}", run, run_bare)))
    across.append(Dimension(frame.wall.left, frame.wall.right, 2, (f"wall {wall}", wall, wall_bare)))
    if workings.value("wall_left") < 0:
        beyond = short_length(-workings.value("wall_left"), unit)
        across.append(Dimension(frame.wall.right, frame.top.right, 2, (f"too long by {beyond}", f"+ {beyond}"), True))
    return Dimensions(tuple(across), _heights(frame, unit))


def _heights(frame: Frame, unit: LengthUnit) -> tuple[Dimension, ...]:
    highest = max(frame.uprights, key=lambda upright: upright.height)
    upright = short_length(highest.height, unit)
    unit_height = short_length(frame.top.top, unit)
    rows = count_words(len(frame.rows), "row")
    return (
        Dimension(highest.bottom, highest.top, 0, (f"uprights {upright} ({rows})", f"uprights {upright}", upright)),
        Dimension(0.0, frame.top.top, 1, (f"height {unit_height}", unit_height)),
    )
