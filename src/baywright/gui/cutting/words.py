"""What the cutting plan says in words: how many sheets, how good the layouts are known to be, what could not be cut."""

from collections.abc import Iterable, Sequence

from baywright.gui.wording import count_words
from baywright.model.cutting import BarCutting, CuttingPlan, SheetCutting, Unplaced, missing_words

NOTHING_ARRANGED = "Nothing to cut yet: plan the bays first (F5)."
NOT_ASKED = "How are the parts cut? Open this tab to find out."
LOOKING = "Looking for layouts …"
ANEW = "Looking for layouts anew after the last edit; what is shown was before it."
STOPPED = "Stopped before a layout was found. “Look again” starts anew."
NOTHING_CUT = "There is nothing to cut."
MOST_NAMED = 6


def plan_words(plan: CuttingPlan, *, is_searching: bool) -> str:
    """The whole plan in a few sentences: what to buy, what is owned, how sure it is, whether the search goes on."""
    cuttings: list[SheetCutting | BarCutting] = [*plan.sheets, *plan.bars]
    if not cuttings:
        return NOTHING_CUT
    bought = [
        count_words(sum(each.bought for each in some), one)
        for some, one in ((plan.sheets, "sheet"), (plan.bars, "bar"))
        if some
    ]
    owned = sum(layout.is_owned for each in cuttings for layout in each.layouts)
    words = " and ".join(bought) + " to buy" + (f", {count_words(owned, 'owned one')} used" if owned else "") + "."
    words += f" {sureness_words(cuttings)}"
    if any(each.is_assumed for each in cuttings):
        words += " Where nothing is in stock a usual size is taken for granted."
    if is_searching:
        return f"{words} Still looking for better layouts …"
    return words if plan.is_finished else f"{words} Stopped before the search was over."


def sureness_words(cuttings: Sequence[SheetCutting | BarCutting]) -> str:
    """For how many materials the layouts are proved best, and how much less is possible at most for the others."""
    missing = missing_words([left for each in cuttings for left in each.unplaced])
    whole = [each for each in cuttings if not each.unplaced]
    words = f"{missing}." if missing else ""
    return f"{words} {_sureness(whole)}".strip() if whole else words


def _sureness(cuttings: Sequence[SheetCutting | BarCutting]) -> str:
    """How sure it is of materials of which everything is cut."""
    proved = sum(each.is_proved for each in cuttings)
    if proved == len(cuttings):
        return "Proved best."
    gaps = [each.gap for each in cuttings if not each.is_proved]
    known = [gap for gap in gaps if gap is not None]
    less = f"at most {max(known):.1%} less is possible" if len(known) == len(gaps) else "better ones may exist"
    if not proved:
        return f"Not proved best: {less}."
    return f"Proved best for {proved} of {len(cuttings)} materials; for the others {less}."


def details_words(plan: CuttingPlan) -> str:
    """Each material and each section on a line of its own, and how sure it is that fewer would not do."""
    sheets = (_details(each, each.material, "sheet", "size") for each in plan.sheets)
    return "\n".join([*sheets, *(_details(each, each.name, "bar", "length") for each in plan.bars)])


def _details(cutting: SheetCutting | BarCutting, name: str, one: str, measure: str) -> str:
    owned = sum(layout.is_owned for layout in cutting.layouts)
    words = f"{name}: {count_words(cutting.bought, one)} to buy" + (f" and {owned} owned" if owned else "")
    words += f", of a usual {measure} that is taken for granted" if cutting.is_assumed else ""
    return f"{words}, {proof_words(cutting)}"


def proof_words(cutting: SheetCutting | BarCutting) -> str:
    """How good the layouts are known to be."""
    if cutting.unplaced:
        return missing_words(cutting.unplaced)
    if cutting.is_proved:
        return "proved best"
    return "not proved best" if cutting.gap is None else f"not proved best: at most {cutting.gap:.1%} less is possible"


def unplaced_lines(unplaced: Iterable[Unplaced]) -> list[str]:
    """What could not be cut and why, an entry each."""
    return [f"{left.part_number}, {count_words(left.pieces, 'piece')}. {_sentence(left.reason)}" for left in unplaced]


def unplaced_words(unplaced: Sequence[Unplaced]) -> str:
    """What could not be cut, in a sentence; empty where all is cut."""
    if not unplaced:
        return ""
    numbers = list(dict.fromkeys(left.part_number for left in unplaced))
    named = ", ".join(numbers[:MOST_NAMED]) + (
        f" and {len(numbers) - MOST_NAMED} more" if len(numbers) > MOST_NAMED else ""
    )
    return f"Not cut: {named}. The rest is. Why stands under “Not cut”."


def _sentence(reason: str) -> str:
    text = f"{reason[:1].upper()}{reason[1:]}"
    return text if text.endswith(".") else f"{text}."
