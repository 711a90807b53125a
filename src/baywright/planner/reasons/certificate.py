"""Why a document has no plan, in the owner's words and numbers: an inequality wherever counting shows it.

Counting comes first, because an inequality convinces where a solver's word does not. Where the sums would do and yet
nothing fits, that is said with the sums. The document is that of a clash: it has only the limits that clash.
"""

from collections import Counter

from baywright.model.length import format_length
from baywright.model.plan import Conflict, LimitKind
from baywright.planner.distribution.bounds import Lack, Shortage, rows_available, rows_needed, shortage
from baywright.planner.framing.frame import Frame
from baywright.planner.framing.widths import WidthChoice
from baywright.planner.reasons.limits import count
from baywright.planner.reasons.question import Reading

MOST_NAMED = 4


def certificate(reading: Reading) -> tuple[Conflict, ...]:
    """What makes it impossible, one conflict for each finding; a `mend` only where the finding has one of its own."""
    if reading.findings:
        return reading.findings
    found = shortage(reading.frame.problem)
    reason = _combined(reading) if found is None else _counted(reading, found)
    return (reason.replace(message=_mix(reading) + reason.message),)


def _mix(reading: Reading) -> str:
    """Where bays of several widths are to be had: for which of them the numbers are told."""
    unit = reading.project.unit
    if len(WidthChoice(reading.project, reading.workings).widths) == 1:
        return ""
    widths = Counter(reading.frame.widths)
    each = " and ".join(f"{count(n, 'bay')} for boxes {format_length(mm, unit)} wide" for mm, n in widths.items())
    return f"No mix of bays of several widths does. With {each}: "


_UNITS = {
    Lack.ROWS: (LimitKind.HEIGHT, "rows"),
    Lack.DRAWERS: (LimitKind.DRAWERS_PER_BAY, "drawers"),
    Lack.SPARE: (LimitKind.SPARE_ROWS, "rows"),
    Lack.BAYS: (LimitKind.BAY_COUNT, "bays"),
}


def _counted(reading: Reading, lack: Shortage) -> Conflict:
    ids = tuple(reading.frame.problem.items[i].name for i in lack.items)
    if lack.lack is Lack.PLACE:
        return Conflict(kind=LimitKind.PLACE, message=f"There is no place for {named(reading, ids)}.", box_ids=ids)
    kind, unit = _UNITS[lack.lack]
    return Conflict(
        kind=kind, message=_inequality(reading, lack), box_ids=ids, needed=lack.needed, available=lack.available,
        unit=unit,
    )  # fmt: skip


def _inequality(reading: Reading, lack: Shortage) -> str:
    """What is needed, and how much less of it there is."""
    frame = reading.frame
    where = "" if lack.kind is None else f" in {_bays(frame.indices[lack.kind])}"
    if lack.lack is Lack.ROWS:
        return f"{count(lack.needed, 'row')} needed{where}, {_rows_there(frame, lack)}."
    if lack.lack is Lack.DRAWERS:
        return f"{count(lack.needed, 'drawer')} needed{where}, {_drawers_there(reading, lack)}."
    if lack.lack is Lack.SPARE:
        spare = reading.project.limits.spare_rows
        return (
            f"{count(lack.needed - spare, 'row')} needed and {spare} to stay free make {lack.needed}; "
            f"{lack.available} are there in {count(frame.bays, 'bay')}."
        )
    return (
        f"{lack.needed} boxes are so high that no two of them fit in one bay{where}; "
        f"there {'is' if lack.available == 1 else 'are'} {count(lack.available, 'bay')}."
    )


def _rows_there(frame: Frame, lack: Shortage) -> str:
    """“4 bays × 32 rows = 128 there”, with what the bottom, locked drawers and the top take or give."""
    kinds = frame.problem.kinds if lack.kind is None else (frame.problem.kinds[lack.kind],)
    bays = sum(kind.bays for kind in kinds)
    base = lack.available - lack.extra
    notes = []
    if len(kinds) == 1 and bays and base % bays == 0:
        text = f"{count(bays, 'bay')} × {base // bays} rows = {base} there"
        if base // bays != kinds[0].rows:
            notes.append(f"of the {kinds[0].rows} rows in an upright {base // bays} carry whole drawers")
    else:
        text = f"{base} there in {count(bays, 'bay')}"
        if any(kind.blocked for kind in kinds):
            notes.append("without those of locked drawers")
    if lack.extra:
        notes.append(f"and {lack.extra} gained by top drawers, {lack.available} in all")
    return text + (f" ({'; '.join(notes)})" if notes else "")


def _drawers_there(reading: Reading, lack: Shortage) -> str:
    frame, limit = reading.frame, reading.project.limits.drawers_per_bay
    bays = frame.bays if lack.kind is None else frame.problem.kinds[lack.kind].bays
    if limit is not None and bays * limit == lack.available:
        return f"{count(bays, 'bay')} × {count(limit, 'drawer')} = {lack.available} allowed"
    return f"{lack.available} there in {count(bays, 'bay')}"


def _combined(reading: Reading) -> Conflict:
    """Sums would do, but no combination does."""
    frame = reading.frame
    problem = frame.problem
    items = tuple(range(len(problem.items)))
    rows = rows_needed(problem, items)
    there = sum(sum(rows_available(problem, kind, items)) for kind in range(len(problem.kinds)))
    heights = {kind.rows for kind in problem.kinds}
    each = f" of {min(heights)} rows" if len(heights) == 1 else ""
    message = (
        f"The boxes cannot be combined into {count(frame.bays, 'bay')}{each}, "
        f"though {count(rows, 'row')} would do in sum and {there} are there."
    )
    return Conflict(kind=LimitKind.HEIGHT, message=message, box_ids=tuple(item.name for item in problem.items))


def named(reading: Reading, ids: tuple[str, ...]) -> str:
    """“Pumps”, “Tubes” and so on: the first few of some boxes by their labels."""
    labels = [f"“{reading.project.box(box_id).label}”" for box_id in ids[:MOST_NAMED]]
    return ", ".join(labels) + (" …" if len(ids) > MOST_NAMED else "")


def _bays(indices: tuple[int, ...]) -> str:
    numbers = ", ".join(str(index + 1) for index in indices)
    return f"bay {numbers}" if len(indices) == 1 else f"bays {numbers}"
