"""How long the options of a workshop take: `python -m tests.benchmarks.options [BOXES …]`.

Seconds of the processor, so that what else the machine does is not counted.
"""

import sys
import time
from collections.abc import Sequence

from baywright.model.option import Option
from baywright.planner import options
from tests.benchmarks.workshops import workshop

BOXES = (25, 100, 300, 1000)


def measured(boxes: int) -> str:
    """One workshop as a line of the table."""
    project = workshop(boxes, drawers_per_bay=6)
    told: list[float] = []

    def note(_so_far: tuple[Option, ...]) -> None:
        told.append(time.process_time())

    begun = time.process_time()
    found = options(project, progress=note)
    ended = time.process_time()
    bays = [option.bays for option in found]
    span = f"{min(bays)} to {max(bays)}"
    return f"| {boxes:,} | {len(found)} | {span} | {told[0] - begun:.2f} | {ended - begun:.1f} |"


def main(sizes: Sequence[int]) -> None:
    """Print the table."""
    print("| boxes | options | fewest to most bays | first s | all s |\n| --- | --- | --- | --- | --- |")
    for boxes in sizes:
        print(measured(boxes), flush=True)


if __name__ == "__main__":
    main([int(given) for given in sys.argv[1:]] or BOXES)
