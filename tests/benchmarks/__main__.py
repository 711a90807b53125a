"""Prints the planner's figures as Markdown: `python -m tests.benchmarks [WHAT [NUMBERS]]`; without WHAT, what is quick.

Times are the processor's, one is used. Each part can be run by itself; the larger ones take minutes.
"""

import sys
from collections.abc import Callable

from tests.benchmarks import again, bins, planning, refusals

PARTS: dict[str, Callable[..., None]] = {
    "small": planning.small,
    "shops": planning.shops,
    "large": planning.large,
    "growth": planning.growth,
    "replan": again.replan,
    "destinations": again.where_to,
    "options": again.choice,
    "packing": bins.main,
    "infeasible": refusals.main,
}
QUICK = ("small", "replan", "destinations", "options")


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
