"""Which boxes stand on the bench: circles of boxes that wait for each other."""

import random

from baywright.planner.replanning.bench import Needs, set_aside_in_order


def circle(*names: str) -> dict[str, frozenset[str]]:
    """Each waits for the next, the last for the first."""
    return {name: frozenset({names[(i + 1) % len(names)]}) for i, name in enumerate(names)}


def all_arrive(needs: Needs, order: tuple[str, ...]) -> bool:
    """Whether every box can leave when those of `order` are set aside, each as late as can be."""
    gone: set[str] = set()
    waiting = list(order)
    while len(gone) < len(needs):
        free = [box for box in needs if box not in gone and needs[box] <= gone]
        if not free and not waiting:
            return False
        gone.add(free[0] if free else waiting.pop(0))
    return not waiting


def test_two_that_trade_places_need_one_aside() -> None:
    assert len(set_aside_in_order(circle("a", "b"))) == 1


def test_a_box_whose_drawer_goes_with_it_is_set_aside_itself() -> None:
    assert set_aside_in_order({"a": frozenset({"a"})}) == ("a",)


def test_one_box_that_two_circles_share_opens_both() -> None:
    needs = {**circle("hub", "a"), **circle("b", "hub")}
    needs["hub"] = frozenset({"a", "b"})
    assert set_aside_in_order(needs) == ("hub",)


def test_circles_far_too_large_to_try_are_opened_all_the_same() -> None:
    chance = random.Random(5)
    for size in (40, 200):
        names = [f"box-{n}" for n in range(size)]
        needs = circle(*names)
        for name in names:
            needs[name] |= {chance.choice(names), chance.choice(names)} - {name}
        order = set_aside_in_order(needs)
        assert len(set(order)) == len(order) < size
        assert all_arrive(needs, order)
