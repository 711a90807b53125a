"""What stays over, in one long piece: the rest is handed in as a piece more, as long as it will go.

Law: the same bars hold the same pieces; only the longest rest is longer.
"""

from collections.abc import Sequence

from baywright.making.cutting.bars.budget import Budget
from baywright.making.cutting.bars.columns import cut_of
from baywright.making.cutting.bars.exchange import into
from baywright.making.cutting.bars.task import Cut, Task

TRIES = 8
"""So many lengths of the rest are tried, halving what is open each time."""
EFFORT = 4.0
"""Steps of exchanging for each."""


def longer_rest(task: Task, cuts: Sequence[Cut], seed: int, budget: Budget) -> list[Cut] | None:
    """Cuts of the same bars and pieces with a longer rest in one bar; None: none found."""
    rests = [task.kinds[kind].length - task.filled(counts) for kind, counts in cuts]
    shortest = min((length for length, count in zip(task.lengths, task.counts, strict=True) if count), default=0)
    sure = max(rests, default=0)
    most = min(sum(rests), task.longest_bar - shortest)
    kinds = sorted((kind for kind, _ in cuts), reverse=True)
    pieces = [task.lengths[number] for _, counts in cuts for number, count in counts for _ in range(count)]
    best, tried = None, most
    for _ in range(TRIES):
        if tried <= sure:
            break
        filled = into([*pieces, tried], [task.kinds[kind].length for kind in kinds], EFFORT, seed, budget)
        if filled is None:
            most = tried - 1
        else:
            sure, best = tried, _without(task, filled, kinds, tried)
        tried = (sure + most + 1) // 2
    return best


def _without(task: Task, filled: Sequence[list[int]], kinds: Sequence[int], rest: int) -> list[Cut]:
    """The bars without the piece that stands for the rest."""
    cuts, is_out = [], False
    for kind, held in zip(kinds, filled, strict=True):
        if not is_out and rest in held:
            held = list(held)
            held.remove(rest)
            is_out = True
        if held:
            cuts.append(cut_of(task, kind, held))
    return cuts
