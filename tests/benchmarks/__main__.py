"""Prints the planner's figures as Markdown: `python -m tests.benchmarks [WHAT [NUMBERS]]`; without WHAT, what is quick.

Times are the processor's, one is used. Each part can be run by itself; the larger ones take minutes.
"""

import sys
from collections.abc import Callable

from tests.benchmarks import again, bars, bins, changes, options, panels, planning, refusals, sawing

PARTS: dict[str, Callable[..., None]] = {
    "small": planning.small,
    "shops": planning.shops,
    "large": planning.large,
    "growth": planning.growth,
    "replan": again.replan,
    "destinations": again.where_to,
    "options": lambda *boxes: options.main(boxes or options.BOXES),
    "steps": lambda *boxes: changes.main(*([boxes] if boxes else [])),
    "packing": bins.main,
    "bars": bars.main,
    "infeasible": refusals.main,
    "sheets": panels.main,
    "sawing": sawing.main,
}
QUICK = ("small", "replan", "destinations")


def main(arguments: list[str]) -> None:
    """Run one part with its numbers, or the quick ones."""
    if not arguments:
        for name in QUICK:
            print(f"\n{name}\n")
            PARTS[name]()
    elif arguments[0] in PARTS:
        PARTS[arguments[0]](*(int(number) for number in arguments[1:]))
    else:
        print(f"There is no part “{arguments[0]}”. Parts: {', '.join(PARTS)}.")


if __name__ == "__main__":
    main(sys.argv[1:])
