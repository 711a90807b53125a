"""How well “why not” is answered: `python -m tests.benchmarks infeasible [CASES]` prints the table.

For every seeded request: whether the clash told is irreducible, shown anew on documents made without the planner's own
means; how long the explanation and the repairs take; whether every repair makes the request possible and the first one
is the cheapest of all changes of the kinds tried, shown by trying every lighter one.
"""

import time
from bisect import bisect_left
from collections import defaultdict
from dataclasses import dataclass
from statistics import median

from baywright.model.arrangement import Arrangement
from baywright.model.change import changed
from baywright.model.project import Project
from baywright.model.repair import Repair
from baywright.planner.distribution.budget import Budget
from baywright.planner.distribution.search import settle
from baywright.planner.framing.frame import Framer
from baywright.planner.reasons.clash import Clash, Clashes
from baywright.planner.reasons.question import Questions, Reading
from baywright.planner.reasons.remedies.ladder import Kind, Ladder
from baywright.planner.reasons.repair import kinds, repairs, together, works
from tests.benchmarks.impossible import impossible
from tests.oracle.dropping import only
from tests.oracle.measure import faults

EFFORT = 8.0


@dataclass(frozen=True)
class Verdict:
    """What was found of one request. Times in seconds of the processor (one is used), whatever else it does."""

    sort: str
    boxes: int
    clashes: int
    limits: int
    faults: tuple[str, ...]
    """What is wrong with the explanation or the repairs; empty where nothing is."""
    repairs: int
    kinds: int
    explained_s: float
    repaired_s: float


def judge(seed: int) -> Verdict:
    """The verdict on the request of a seed."""
    sort, project = impossible(seed)
    questions = Questions(Budget(EFFORT))
    began = time.process_time()
    clashes = Clashes(project, questions).find()
    explained = time.process_time()
    singles = repairs(project, clashes, questions)
    offered = singles or together(project, clashes, questions) if len(clashes) > 1 else singles
    ended = time.process_time()
    found = [fault for clash in clashes for fault in clash_faults(project, clash)]
    found += [] if clashes else ["no clash"]
    found += ["a question stayed open"] if questions.open else []
    for offer in offered:
        found += [f"{offer.text} {fault}" for fault in plan_faults(changed(project, offer.changes))]
    lightest = singles[0].weight if singles else float("inf")
    if (cheaper := cheaper_than(project, clashes, lightest)) is not None:
        found.append(f"cheaper: {cheaper}")
    paths = {offer.changes[0].path.split("[")[0] for offer in offered}
    return Verdict(
        sort, len(project.boxes), len(clashes), sum(len(clash.limits) for clash in clashes), tuple(found),
        len(offered), len(paths), explained - began, ended - explained,
    )  # fmt: skip


def clash_faults(project: Project, clash: Clash) -> list[str]:
    """Where a clash is not what it claims: possible with its limits, or impossible without one of them."""
    kept = {limit.path for limit in clash.limits}
    boxes = _misfits(project) | {limit.box_id for limit in clash.limits if limit.path.startswith("boxes[")}
    found = [] if clash.is_irreducible else ["not told as irreducible"]
    if Questions(Budget(EFFORT)).has_plan(only(project, kept, boxes)) is not False:
        found.append(f"possible with {sorted(kept)}")
    for path in kept:
        found += [f"without {path}: {fault}" for fault in plan_faults(only(project, kept - {path}, boxes))]
    return found


def _misfits(project: Project) -> set[str]:
    """Boxes that alone have no plan with no limit at all."""
    bare = only(project, ())
    if Questions(Budget(EFFORT)).has_plan(bare):
        return set()
    return {
        box.id
        for box in project.boxes_to_place
        if Questions(Budget(EFFORT)).has_plan(
            bare.replace(boxes=(box,), arrangement=bare.arrangement.replace(placements=()))
        )
        is False
    }


def plan_faults(project: Project) -> list[str]:
    """What is wrong where a document should have a plan: that there is none, or what measuring it finds."""
    if not project.boxes_to_place:
        return []
    arrangement = first_plan(project)
    return ["no plan"] if arrangement is None else faults(project.replace(arrangement=arrangement))[:1]


def first_plan(project: Project) -> Arrangement | None:
    """The first plan found of a document, without any goal."""
    reading = Reading(project)
    if reading.findings:
        return None
    frame, answer = settle(reading.frame, Budget(EFFORT))
    return Framer(project, reading.grid).arrangement(frame, answer.places) if answer.holds else None


def cheaper_than(project: Project, clashes: tuple[Clash, ...], weight: float) -> str | None:
    """A lighter change that works, sought among the steps of all kinds; None without one.

    Of a ladder only the largest lighter step is tried: where that one does not help, no smaller one does.
    """
    questions = Questions(Budget(EFFORT))
    for kind in kinds(project, clashes):
        for step in _lighter(kind, weight):
            if works(project, step, questions):
                return f"{step.text} {step.changes}"
    return None


def _lighter(kind: Kind, weight: float) -> list[Repair]:
    if not isinstance(kind, Ladder):
        return [offer for offer in kind.offers if offer.weight < weight]
    number = bisect_left(range(1, kind.steps + 1), weight, key=lambda k: kind.step(k).weight)
    return [kind.step(number)] if number else []


def main(cases: int = 500) -> None:
    """Measures so many seeded requests and prints a line for each sort, and one for all."""
    verdicts: dict[str, list[Verdict]] = defaultdict(list)
    for seed in range(cases):
        verdict = judge(seed)
        verdicts[verdict.sort].append(verdict)
        for fault in verdict.faults:
            print(f"  seed {seed}, {verdict.sort}: {fault}", flush=True)
    print(f"{'sort':22} cases  right  limits  ≥1 repair  ≥3 kinds  explained s (median, 95 %, most)  with repairs s")
    for sort, some in sorted(verdicts.items()):
        print(_line(sort, some))
    print(_line("all", [verdict for some in verdicts.values() for verdict in some]))


def _line(sort: str, some: list[Verdict]) -> str:
    explained, whole = (
        sorted(v.explained_s for v in some),
        sorted(v.explained_s + v.repaired_s for v in some),
    )
    right = sum(not v.faults for v in some)
    one, three = (sum(v.kinds >= least for v in some) for least in (1, 3))
    limits = sum(v.limits for v in some) / max(1, sum(v.clashes for v in some))
    counts = f"{len(some):5} {right:6} {limits:7.1f} {one:10} {three:9}"
    return f"{sort:22} {counts}  {_times(explained):>33}  {_times(whole):>14}"


def _times(times: list[float]) -> str:
    return f"{median(times):.2f}  {times[int(0.95 * (len(times) - 1))]:.2f}  {times[-1]:.2f}"
