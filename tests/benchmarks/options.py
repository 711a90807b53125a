"""How long the options of a workshop take: `python -m tests.benchmarks.options [BOXES …]`.

Seconds of the processor, so that what else the machine does is not counted.
"""

import sys
import time
from collections.abc import Sequence

from baywright.planner import options
from tests.benchmarks.workshops import workshop

BOXES = (25, 100, 300, 1000)


def main(sizes: Sequence[int]) -> None:
    """Print a line for each workshop: the first option, all of them with their plans, and how many."""
    print("| boxes | options | fewest to most bays | first s | all s |\n| --- | --- | --- | --- | --- |")
    for boxes in sizes:
        project = workshop(boxes, drawers_per_bay=6)
        told: list[float] = []
        begun = time.process_time()
        found = options(project, progress=lambda _so_far, told=told: told.append(time.process_time()))  # type: ignore[misc]
        ended = time.process_time()
        bays = [option.bays for option in found]
        print(
            f"| {boxes:,} | {len(found)} | {min(bays)} to {max(bays)} | {told[0] - begun:.2f} | {ended - begun:.1f} |",
            flush=True,
        )


if __name__ == "__main__":
    main([int(given) for given in sys.argv[1:]] or BOXES)
