"""The usual cautions of the trade, each with what it is about: the only home of them, for window, sheets and drawings.

Laws: a caution names the danger and who decides: local codes, the maker's data sheet, licensed practice.
"""

from dataclasses import dataclass
from enum import Enum, auto


class Topic(Enum):
    """What a sheet is about, as far as danger goes."""

    RUNNERS = auto()
    LIFTING = auto()
    CUTTING = auto()
    DRILLING = auto()
    WALL = auto()
    STRENGTH = auto()


@dataclass(frozen=True)
class Caution:
    """One caution: a word for it, and what to do."""

    topic: Topic
    title: str
    text: str


CAUTIONS: tuple[Caution, ...] = (
    Caution(
        Topic.WALL,
        "Tipping",
        "Several open, loaded drawers can pull a run over. Fix it to the wall (or the floor) before the first loaded "
        "drawer is opened, and open one drawer at a time until then. Which fixing holds depends on the wall: follow "
        "the local building code and the fixing maker's data sheet, and ask a licensed tradesperson where in doubt.",
    ),
    Caution(
        Topic.WALL,
        "Cables and pipes",
        "Before drilling into a wall, look for hidden cables, water and gas pipes with a detector, and switch off the "
        "circuits concerned. Work on them is for licensed electricians and plumbers only.",
    ),
    Caution(
        Topic.RUNNERS,
        "Runner loads",
        "A load class is the maker's rating of a pair under the maker's conditions, evenly loaded. Check the chosen "
        "runner's data sheet for the load at this length and width, the clearance a side, and which holes to use.",
    ),
    Caution(
        Topic.LIFTING,
        "Lifting",
        "Keep heavy boxes between knee and shoulder height, lift them close to the body, and have two people lift what "
        "one cannot carry with ease. 23 kg is the most for one person under ideal conditions by the revised NIOSH "
        "lifting equation (Publication 94-110); reaching, twisting and repeating make it less. Local rules come first.",
    ),
    Caution(
        Topic.CUTTING,
        "Saws and dust",
        "Use guard, riving knife and push sticks; wear eye and hearing protection; keep hands out of the blade's line "
        "and follow the machine maker's manual. Wood dust harms the lungs: use extraction, and a mask where it is not "
        "enough. Large boards are heavy: carry them with two people.",
    ),
    Caution(
        Topic.DRILLING,
        "Drilling and routing",
        "Clamp every piece, keep hands away from the bit, and wear eye and hearing protection. Unplug the machine "
        "before a bit is changed; feed a router against its turn, as its maker's manual says. Set the depth stop on a "
        "piece left over, so that nothing comes through. Use extraction: fine dust harms the lungs.",
    ),
    Caution(
        Topic.STRENGTH,
        "Strength",
        "Sag, runner loads, tipping and lifting are worked out on the sheet Checks from stated assumptions; joints, "
        "the wall and what people do are not. Have the run judged by someone who knows before heavy things are stored "
        "high up or people may lean or climb on it.",
    ),
)


FIX_FIRST = (
    "Fix every run to the wall or the floor before the first loaded drawer is opened, fill it from below, and open one "
    "drawer at a time until then."
)
"""What is advised whatever the figures say."""
WHO_DECIDES = (
    "What this program works out never replaces local codes, the maker's data sheet or licensed practice. Measure your "
    "boards, boxes and wall before you cut."
)
COMPUTED = (
    "Computed from stated assumptions, which are no permission: data sheets, local codes and licensed practice come "
    "first. Fix the run before the first loaded drawer is opened."
)
"""What stands beside every finding."""
ON_DRAWINGS = (
    "Fix the run to the wall before the first loaded drawer is opened. Look for cables and pipes before you drill.",
    "Heavy boxes between knee and shoulder. Local codes, makers' data sheets and licensed practice come first; see the "
    "cautions in the workbook.",
)
"""The same in two lines, for the foot of a drawing."""


def cautions_about(*topics: Topic) -> list[Caution]:
    """The cautions on these topics, in the usual order."""
    return [caution for caution in CAUTIONS if caution.topic in topics]
