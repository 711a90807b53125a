"""Why a project has no plan: which limit binds, by how much, and what would help.

Counting is tried first, because an inequality convinces where a solver's word does not. Where the sums would do and
yet nothing fits, either the locks are in the way, then as few of them as are needed for the clash are named; or the
boxes cannot be combined, then the rows that would do are worked out.
"""

from itertools import islice

from baywright.model.arrangement import Lock
from baywright.model.limits import MOST_ROWS
from baywright.model.plan import Conflict, LimitKind
from baywright.model.project import Project
from baywright.planner.bounds import Lack, Shortage, rows_needed, shortage
from baywright.planner.budget import Budget
from baywright.planner.frame import Frame, Framer
from baywright.planner.repair import MOST_STEPS, SHARE, repairs
from baywright.planner.search import holds

MOST_REPAIRS = 4
NOTHING_SINGLE = (
    "No single small change makes everything fit: allow more wall and more height, or leave several boxes out."
)


def why_not(project: Project, frame: Frame, budget: Budget) -> tuple[Conflict, ...]:
    """The conflicts of a project whose `frame`, the largest run allowed, was shown not to hold everything."""
    found = shortage(frame.problem)
    conflict = _counted(project, frame, found) if found is not None else None
    if conflict is None:
        conflict = _locked(project, frame, budget) or _combined(project, frame, budget)
    offers = [repair.text for repair in islice(repairs(project, budget), MOST_REPAIRS)]
    return (conflict.replace(mend=_sentence(offers)),)


def _sentence(offers: list[str]) -> str:
    """“Lower the clearance …; or give the uprights one more row (33).” Where no change helps, what to think of."""
    text = "; or ".join(offers)
    return f"{text[:1].upper()}{text[1:]}." if text else NOTHING_SINGLE


def _counted(project: Project, frame: Frame, lack: Shortage) -> Conflict:
    ids = tuple(frame.problem.items[i].name for i in lack.items)
    where = "" if lack.kind is None else f" in {_bays(frame.indices[lack.kind])}"
    if lack.lack is Lack.PLACE:
        names = ", ".join(f"“{project.box(i).label}”" for i in ids[:3]) + (" …" if len(ids) > 3 else "")
        return Conflict(
            kind=LimitKind.LOCK, message=f"The locks leave no place for {names}.", box_ids=ids,
        )  # fmt: skip
    if lack.lack is Lack.ROWS:
        return Conflict(
            kind=LimitKind.HEIGHT,
            message=f"{lack.needed} rows needed{where}, {_rows_there(frame, lack)}.",
            box_ids=ids, needed=lack.needed, available=lack.available, unit="rows",
        )  # fmt: skip
    if lack.lack is Lack.SPARE:
        spare = frame.problem.spare_rows
        return Conflict(
            kind=LimitKind.SPARE_ROWS,
            message=f"{lack.needed - spare} rows needed and {spare} to stay free are {lack.needed}; "
            f"there are {lack.available}.",
            box_ids=ids, needed=lack.needed, available=lack.available, unit="rows",
        )  # fmt: skip
    if lack.lack is Lack.DRAWERS:
        return Conflict(
            kind=LimitKind.DRAWERS_PER_BAY,
            message=f"{lack.needed} drawers needed{where}, {_drawers_there(project, frame, lack)}.",
            box_ids=ids, needed=lack.needed, available=lack.available, unit="drawers",
        )  # fmt: skip
    return Conflict(
        kind=LimitKind.BAY_COUNT,
        message=f"{lack.needed} boxes are so high that no two of them fit in one bay{where}; "
        f"there {'is' if lack.available == 1 else 'are'} {_count(lack.available, 'bay')}.",
        box_ids=ids, needed=lack.needed, available=lack.available, unit="bays",
    )  # fmt: skip


def _rows_there(frame: Frame, lack: Shortage) -> str:
    """“4 bays × 32 rows = 128 there”, with what the bottom, locked drawers and the top take or give."""
    kinds = frame.problem.kinds if lack.kind is None else (frame.problem.kinds[lack.kind],)
    bays = sum(kind.bays for kind in kinds)
    base = lack.available - lack.extra
    notes = []
    if len(kinds) == 1 and bays and base % bays == 0:
        text = f"{_count(bays, 'bay')} × {base // bays} rows = {base} there"
        if base // bays != frame.rows:
            notes.append(f"of the {frame.rows} rows in an upright {base // bays} carry whole drawers")
    else:
        text = f"{base} there in {_count(bays, 'bay')}"
        notes.append("without those of locked drawers")
    if lack.extra:
        notes.append(f"and {lack.extra} gained by top drawers, {lack.available} in all")
    return text + (f" ({'; '.join(notes)})" if notes else "")


def _drawers_there(project: Project, frame: Frame, lack: Shortage) -> str:
    limit = project.limits.drawers_per_bay
    bays = frame.bays if lack.kind is None else frame.problem.kinds[lack.kind].bays
    if limit is not None and bays * limit == lack.available:
        return f"{_count(bays, 'bay')} × {_count(limit, 'drawer')} = {lack.available} allowed"
    return f"{lack.available} there in {_count(bays, 'bay')}"


def _locked(project: Project, frame: Frame, budget: Budget) -> Conflict | None:
    """The locks that clash with all the boxes, as few as are needed; None where it fits with none of them neither."""
    locked = [p.box_id for p in project.arrangement.placements if p.lock is not Lock.NONE]
    if not locked or not _holds_with(project, frame, frozenset(), budget):
        return None
    kept = list(locked)
    for box_id in locked:
        fewer = frozenset(kept) - {box_id}
        if not _holds_with(project, frame, fewer, budget):
            kept.remove(box_id)
    names = ", ".join(f"“{project.box(i).label}”" for i in kept[:4]) + (" …" if len(kept) > 4 else "")
    return Conflict(
        kind=LimitKind.LOCK,
        message=f"Everything would fit if {names} {'were' if len(kept) > 1 else 'was'} not locked where "
        f"{'they are' if len(kept) > 1 else 'it is'}.",
        box_ids=tuple(kept),
    )


def _holds_with(project: Project, frame: Frame, locked: frozenset[str], budget: Budget) -> bool:
    """Whether everything fits with only those locks; True also where it stays open, so that no lock is blamed."""
    placements = tuple(p if p.box_id in locked else p.replace(lock=Lock.NONE) for p in project.arrangement.placements)
    changed = project.replace(arrangement=project.arrangement.replace(placements=placements))
    problem = Framer(changed).frame(frame.bays, frame.rows).problem
    return holds(problem, budget, SHARE).holds is not False


def _combined(project: Project, frame: Frame, budget: Budget) -> Conflict:
    """Sums would do, but no combination does: the rows that would."""
    problem = frame.problem
    rows = rows_needed(problem, tuple(range(len(problem.items))))
    limit = project.limits.drawers_per_bay
    drawers = "" if limit is None else f" with at most {_count(limit, 'drawer')} each"
    message = (
        f"The boxes cannot be combined into {_count(frame.bays, 'bay')} of {frame.rows} rows{drawers}, "
        f"though {rows} rows would do in sum."
    )
    conflict = Conflict(kind=LimitKind.HEIGHT, message=message, box_ids=tuple(i.name for i in problem.items))
    framer = Framer(project)
    for more in range(1, min(MOST_STEPS, MOST_ROWS - frame.rows) + 1):
        answer = holds(framer.frame(frame.bays, frame.rows + more).problem, budget, SHARE)
        if answer.holds is None:
            break
        if answer.holds:
            needed = frame.rows + more
            told = f"{message} They need uprights of {needed} rows."
            return conflict.replace(message=told, needed=needed, available=frame.rows, unit="rows")
    return conflict


def _bays(indices: tuple[int, ...]) -> str:
    numbers = ", ".join(str(index + 1) for index in indices)
    return f"bay {numbers}" if len(indices) == 1 else f"bays {numbers}"


def _count(number: int, noun: str) -> str:
    return f"{number} {noun}" if number == 1 else f"{number} {noun}s"
