"""The whole published bin-packing set and triplets made here, with the engine's answers as Markdown.

`python -m tests.benchmarks packing [EFFORT [TRIPLETS]]`, with TRIPLETS items at most in a triplet instance (those of
249 items take most of the time); sources in `tests.benchmarks.packing`.
"""

from collections import defaultdict
from pathlib import Path

from tests.benchmarks.measuring import heading, middle_and_most, row
from tests.benchmarks.packing import Answer, Packing, fewest_bins, published, published_file, triplets

CHECKOUT = Path(__file__).resolve().parent.parent.parent
EFFORT = 20


def main(effort: int = EFFORT, most_triplets: int = 1_000) -> None:
    """Goes through all instances with so much effort each, in the solver's deterministic units."""
    print(heading("class", "instances", "at the optimum", "proved", "s: median / 95th percentile / most"))
    groups: dict[str, list[Packing]] = defaultdict(list)
    path = published_file(CHECKOUT)
    if not path.is_file():
        print(row("published classes: the file is not here", "", "", "", ""))
    for packing in published(path) if path.is_file() else ():
        name = packing.name.split("_")[0]
        if name.startswith("t") and len(packing.sizes) > most_triplets:
            continue
        groups[name].append(packing)
        if name.startswith("t"):
            groups[f"{name}, at most 2 a bin"].append(packing.with_at_most(2))
            groups[f"{name}, at most 3 a bin"].append(packing.with_at_most(3))
    for count in (60, 120):
        made = [triplets(count, seed) for seed in range(5)]
        groups[f"triplets of {count} made here"] += made
        groups[f"triplets of {count} made here, at most 2 a bin"] += [packing.with_at_most(2) for packing in made]
    for name, group in groups.items():
        answers = [(packing, fewest_bins(packing, float(effort))) for packing in group]
        print(_line(name, answers), flush=True)


def _line(name: str, answers: list[tuple[Packing, Answer]]) -> str:
    best = sum(answer.bins == packing.optimum for packing, answer in answers)
    proved = sum(answer.bins is not None and answer.bins == answer.bound for _, answer in answers)
    return row(name, len(answers), best, proved, middle_and_most([answer.seconds for _, answer in answers]))
