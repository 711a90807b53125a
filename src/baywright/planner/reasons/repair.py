"""Single changes that would make everything fit, each solved before it is offered, the least first.

Of each kind of change the least step that works is sought: by halving where a larger step works whenever a smaller one
does, from the lightest on where it may not. How much a step asks of the owner is its weight, on the scale of
`reasons.remedies.weight`; since within a kind a larger step weighs more, the first of the offers is the
cheapest of all changes of all kinds, as long as no question stayed open.

A change that eases a limit can only help where that limit is part of every clash (a clash is impossible by itself,
whatever becomes of other limits), so others are not tried. Where several clashes have no limit in common and no single
change mends them all, one change for each is offered together: the least for each by itself, solved together.
"""

from collections.abc import Iterator, Sequence
from itertools import islice, product

from pydantic import ValidationError

from baywright.model.change import changed
from baywright.model.project import Project
from baywright.model.repair import Repair
from baywright.planner.reasons.clash import Clash, Clashes
from baywright.planner.reasons.question import Questions, Reading
from baywright.planner.reasons.relaxation import Relaxer
from baywright.planner.reasons.remedies.boxes import box_changes
from baywright.planner.reasons.remedies.ladder import Choices, Kind, Ladder, Lengths
from baywright.planner.reasons.remedies.shape import shapes
from baywright.planner.reasons.remedies.wish import wishes

MOST_REPAIRS = 12
MOST_OF_EACH = 3
"""Of the changes against one of several clashes so many are tried together with those against the others."""
MOST_SETS = 12
MOST_TOGETHER = 3


def repairs(project: Project, clashes: Sequence[Clash], questions: Questions) -> tuple[Repair, ...]:
    """The least change of every kind that makes everything fit, the lightest first, at most `MOST_REPAIRS`."""
    found = [offer for kind in kinds(project, clashes) for offer in offers(project, kind, questions)]
    found.sort(key=lambda offer: (offer.weight, offer.text))
    return tuple(_best_of_alike(found)[:MOST_REPAIRS])


def together(project: Project, clashes: Sequence[Clash], questions: Questions) -> tuple[Repair, ...]:
    """One change for each clash, made together, at most `MOST_TOGETHER` such sets, the lightest first; where the least
    changes by themselves are not enough together, one set found change after change.
    """
    each = [repairs(_alone(project, clash, clashes), (clash,), questions)[:MOST_OF_EACH] for clash in clashes]
    sets = [_as_one(chosen) for chosen in product(*each)]
    sets.sort(key=lambda offer: (offer.weight, offer.text))
    working = (offer for offer in islice(sets, MOST_SETS) if works(project, offer, questions))
    return tuple(islice(working, MOST_TOGETHER)) or _one_after_the_other(project, clashes, questions)


def _one_after_the_other(project: Project, clashes: Sequence[Clash], questions: Questions) -> tuple[Repair, ...]:
    """The least change against one clash, then that against one that is left, until none is."""
    made: list[Repair] = []
    now, left = project, tuple(clashes)
    while left and len(made) <= len(clashes):
        found = repairs(_alone(now, left[0], left), left[:1], questions)
        if not found:
            return ()
        made.append(found[0])
        now = changed(now, found[0].changes)
        left = Clashes(now, questions).find()
    whole = _as_one(made)
    return (whole,) if works(project, whole, questions) else ()


def _alone(project: Project, clash: Clash, clashes: Sequence[Clash]) -> Project:
    """The document without the limits of all other clashes."""
    others = {limit.path for other in clashes if other is not clash for limit in other.limits}
    return Relaxer(Reading(project)).without(others)


def _as_one(chosen: Sequence[Repair]) -> Repair:
    """Several repairs as one; of several changes of the same field the last is made."""
    once = {tuple(change.path for change in repair.changes): repair for repair in chosen}
    first, *others = (repair.text.rstrip(".") for repair in once.values())
    text = "; and ".join([first, *(f"{other[:1].lower()}{other[1:]}" for other in others)]) + "."
    changes = tuple(change for repair in once.values() for change in repair.changes)
    return Repair(text=text, changes=changes, weight=round(sum(repair.weight for repair in once.values()), 6))


def kinds(project: Project, clashes: Sequence[Clash]) -> Iterator[Kind]:
    """The kinds of changes that can help against all of these clashes."""
    common = _common(clashes)
    reading, lengths = Reading(project), Lengths(project)
    named = frozenset(limit.path for clash in clashes for limit in clash.limits)
    every = (*box_changes(reading, lengths, common, named), *shapes(reading, lengths), *wishes(reading, lengths))
    yield from (kind for kind in every if kind.limit is None or kind.limit in common)


def offers(project: Project, kind: Kind, questions: Questions) -> Iterator[Repair]:
    """The changes of one kind that work and are worth an offer."""
    match kind:
        case Ladder():
            yield from _least(project, kind, questions)
        case Choices(offers=choices, most=most):
            given = 0
            for offer in choices:
                if given < most and works(project, offer, questions):
                    given += 1
                    yield offer


def works(project: Project, repair: Repair, questions: Questions) -> bool:
    """Whether the document has a plan once the repair is made; False also where that stays open."""
    try:
        after = changed(project, repair.changes)
    except ValidationError:
        return False  # a value that nobody could enter, such as more bays wished for than are fixed
    return questions.has_plan(after) is True


def _least(project: Project, ladder: Ladder, questions: Questions) -> Iterator[Repair]:
    if not ladder.steps or not works(project, ladder.step(ladder.steps), questions):
        return
    low, high = 1, ladder.steps
    while low < high:
        middle = (low + high) // 2
        if works(project, ladder.step(middle), questions):
            high = middle
        else:
            low = middle + 1
    yield ladder.told(ladder.step(low))


def _common(clashes: Sequence[Clash]) -> frozenset[str]:
    paths = [frozenset(limit.path for limit in clash.limits) for clash in clashes]
    return frozenset.intersection(*paths) if paths else frozenset()


def _best_of_alike(found: Sequence[Repair]) -> list[Repair]:
    """Without a second, heavier change of the very same field, such as a box unlocked wholly and in part."""
    best: dict[tuple[str, ...], Repair] = {}
    for offer in found:
        best.setdefault(tuple(change.path for change in offer.changes), offer)
    return list(best.values())
