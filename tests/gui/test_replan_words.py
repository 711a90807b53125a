"""The re-plan in a sentence: boxes that move are not mixed up with those that get their first place."""

from baywright.gui.replan.words import Movers, movers, summary
from baywright.model.difference import BoxMove, Difference, Place

HERE, THERE = Place(bay=0, row=3), Place(bay=1, row=0)


def test_boxes_are_counted_by_what_happens_to_them() -> None:
    moves = (
        BoxMove(box_id="old", before=HERE, after=THERE),
        BoxMove(box_id="new", before=None, after=HERE),
        BoxMove(box_id="newer", before=None, after=Place(bay=1, row=8)),
        BoxMove(box_id="gone", before=Place(bay=0, row=9), after=None),
    )
    assert movers(moves) == Movers(moved=1, new=2, gone=1)
    assert summary(movers(moves), Difference(), None) == (
        "1 box goes to another place, 2 boxes get their first place, 1 box leaves its drawer."
    )


def test_nothing_to_do_is_said() -> None:
    assert summary(Movers(0), Difference(), None) == "Nothing has to be done."
