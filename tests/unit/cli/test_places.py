"""Places for a box as lines of a terminal, and the words where there is only the one it has."""

from baywright.cli.places import places_text
from baywright.model.arrangement import Placement
from baywright.model.destination import Destination
from baywright.model.difference import Place
from baywright.model.inventory import Box

PUMPS = Box(id="pumps", label="Pumps", size_id="low")
HERE, THERE = Destination(place=Place(bay=0, row=3)), Destination(place=Place(bay=1, row=0))
STANDS = Placement(box_id="pumps", bay=0, row=3)


def test_the_only_place_is_told_as_such() -> None:
    told = places_text(PUMPS, STANDS, (HERE,), 20)
    assert told == "“Pumps” can go nowhere else: bay 1 row 4 is the only place, where it stands now."


def test_several_places_are_counted() -> None:
    told = places_text(PUMPS, STANDS, (HERE, THERE), 20).splitlines()
    assert told[0] == "“Pumps” can go to 2 places, best first:"
    assert "  bay 1 row 4: where it stands now" in told


def test_one_other_place_is_a_place() -> None:
    assert places_text(PUMPS, STANDS, (THERE,), 20).startswith("“Pumps” can go to 1 place, best first:")
