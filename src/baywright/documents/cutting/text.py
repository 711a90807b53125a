"""The cuts of a sheet in words, for whoever stands at the saw: like cuts one after the other are one line.

Law: every cut of the layout is in exactly one line, in its order.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import groupby

from baywright.model.cutting import SawCut
from baywright.model.length import LengthUnit, format_length


@dataclass(frozen=True)
class CutRun:
    """Cuts of one panel, one after the other with the fence left where it is."""

    cuts: tuple[SawCut, ...]

    @property
    def numbers(self) -> str:
        """“7”, or “7–12”."""
        first, last = self.cuts[0].number, self.cuts[-1].number
        return str(first) if first == last else f"{first}–{last}"

    @property
    def panel(self) -> str:
        """What is cut."""
        return panel_words(self.cuts[0].panel)

    @property
    def way(self) -> str:
        """Across the sheet's length or along it."""
        return "across" if self.cuts[0].is_across else "along"

    @property
    def measure_mm(self) -> float:
        """What the fence is set to."""
        return self.cuts[0].measure_mm

    @property
    def gives(self) -> str:
        """All that comes off, and what is left at the end."""
        come_off = [cut.gives[0] for cut in self.cuts]
        come_off += [name for cut in self.cuts for name in cut.gives[1:] if name != cut.panel or cut is self.cuts[-1]]
        counted = [(name, len(list(same))) for name, same in groupby(_gathered(come_off))]
        return " and ".join(_shortened(counted))


def cut_runs(cuts: Sequence[SawCut]) -> list[CutRun]:
    """The cuts in lines; trim cuts, whose fence is set anew, stand alone."""
    grouped = groupby(cuts, key=lambda cut: (cut.panel, cut.is_across, cut.measure_mm))
    return [CutRun(tuple(same)) for _, same in grouped]


def panel_words(name: str) -> str:
    """A panel as people call it: those that a cut gave have a number."""
    return f"panel {name}" if name[:1].isdecimal() else name


def run_words(run: CutRun, unit: LengthUnit) -> str:
    """What is cut how, the fence's measure, and what comes of it."""
    measure = format_length(round(run.measure_mm, 1), unit)
    times = f" {len(run.cuts)} times" if len(run.cuts) > 1 else ""
    panel = run.panel
    return f"{panel[:1].upper()}{panel[1:]}, {run.way}{times} at {measure}: gives {run.gives}"


def _gathered(names: list[str]) -> list[str]:
    """Equal names together, in the order in which each came first."""
    return sorted(names, key=names.index)


def _shortened(counted: list[tuple[str, int]]) -> list[str]:
    """The names in words; three panels or more that follow each other are told as from the first to the last."""
    words: list[str] = []
    for _, following in groupby(enumerate(counted), key=lambda each: _family(*each)):
        names = [pair for _, pair in following]
        if len(names) > 2 and names[0][0][:1].isdecimal():
            words.append(f"panels {names[0][0]} to {names[-1][0]}")
        else:
            words += [_counted(*pair) for pair in names]
    return words


def _family(place: int, counted: tuple[str, int]) -> tuple[str, int]:
    """Alike for panels of one panel with numbers that follow each other as their places do."""
    name, _ = counted
    parent, _, number = name.rpartition(".")
    return (parent, int(number) - place) if number.isdecimal() else (name, place)


def _counted(name: str, count: int) -> str:
    words = panel_words(name)
    return words if count == 1 else f"{count} × {words}"
