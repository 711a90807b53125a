"""Wood screws: counted from the holes that they go through, ordered by diameter and length.

Laws: nothing is counted here but holes of the parts, so order and drawings cannot disagree; equal screws of several
uses are one line whose note lists the uses.
"""

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from baywright.making.hardware.fasteners import RUNNER_SCREW_MM, runner_screw
from baywright.making.hardware.need import Amounts, Need, long, thick
from baywright.making.machining.counting import runner_holes, screw_uses
from baywright.model.catalogue import HardwareKind
from baywright.model.making import Part
from baywright.model.project import Project

PACK = 200

_PURPOSES = {
    "D1": "at drawer corners, with glue",
    "D2": "from drawers to front panels",
    "D3": "from drawer bottoms to box stops",
    "U": "from uprights to end panels",
    "B": "through the base",
    "T": "through the top",
    "P": "at the plinth",
    "R1": "from the back to uprights and base",
    "R2": "from the upper brace to uprights",
    "R3": "from the lower brace to uprights",
    "R4": "from the fixing rail to uprights",
}
"""What screws are for that start in a part, by the beginning of its number."""


@dataclass(frozen=True)
class Use:
    """Screws for one purpose: how many, and of which size in mm; in which bays, if not all along the run."""

    purpose: str
    count: int
    diameter_mm: float
    length_mm: int
    bays: Amounts = ()


def screw_needs(project: Project, worked: Sequence[Part]) -> list[Need]:
    """All wood screws of the run, short ones first."""
    uses = [_on_runners(project, worked)]
    for use in screw_uses(project, worked):
        size = use.diameter_mm, use.length_mm
        uses.append(Use(_purpose(use.part), use.count, *size, _shared(use.part, use.count)))
    return _grouped(use for use in uses if use.count)


def _on_runners(project: Project, worked: Sequence[Part]) -> Use:
    """The screws of the runners' inner members in the drawer sides."""
    length = runner_screw(project.boards.drawer_side_mm)
    count = runner_holes(worked)
    held: Counter[int] = Counter(bay for part in worked if part.number.startswith("D1") for bay in part.bays)
    bays = tuple((bay, count * pieces / held.total()) for bay, pieces in sorted(held.items()))
    return Use("from runners to drawer sides", count, RUNNER_SCREW_MM, length, bays)


def _purpose(part: Part) -> str:
    """What screws that start in a part are for."""
    found = next((words for start, words in _PURPOSES.items() if part.number.startswith(start)), "")
    return found or f"through {part.name.lower()}"


def _shared(part: Part, count: int) -> Amounts:
    """How screws that start in a drawer's part are shared by the bays; others are all along the run."""
    if not part.number.startswith("D") or not part.bays:
        return ()
    return tuple((bay, count * n / len(part.bays)) for bay, n in sorted(Counter(part.bays).items()))


def _grouped(uses: Iterable[Use]) -> list[Need]:
    sizes: dict[tuple[float, int], list[Use]] = {}
    for use in uses:
        sizes.setdefault((use.diameter_mm, use.length_mm), []).append(use)
    return [
        Need(
            number=f"WS{diameter:g}x{length}", kind=HardwareKind.WOOD_SCREW, name="Wood screw",
            specification=f"{diameter:g} × {length} mm", needed=sum(use.count for use in same), pack_size=PACK,
            note=_note(same), measures=(thick(diameter, 0.25), long(length)), bays=_together(same),
        )
        for (diameter, length), same in sorted(sizes.items())
    ]  # fmt: skip


def _note(uses: list[Use]) -> str:
    """How many are for what; parts of one kind are told together."""
    counts: Counter[str] = Counter()
    for use in uses:
        counts[use.purpose] += use.count
    return "; ".join(f"{count} {purpose}" for purpose, count in counts.items())


def _together(uses: list[Use]) -> Amounts:
    """In which bays screws of several uses are; all along the run where those of one use are."""
    if any(not use.bays for use in uses):
        return ()
    totals: dict[int, float] = {}
    for use in uses:
        for bay, amount in use.bays:
            totals[bay] = totals.get(bay, 0.0) + amount
    return tuple(sorted(totals.items()))
