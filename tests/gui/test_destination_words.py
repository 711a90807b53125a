"""The sentence over the places of a box."""

from baywright.gui.destination.line import PlaceLine, places_words
from baywright.model.destination import Destination
from baywright.model.difference import Place


def line(rank: int, bay: int, *, is_here: bool = False) -> PlaceLine:
    return PlaceLine(Destination(place=Place(bay=bay, row=0)), rank, 100.0, "", is_here)


def test_the_only_place_is_told_as_such() -> None:
    told = places_words("Pumps", [line(1, 0, is_here=True)], 190)
    assert told.startswith("“Pumps” could stand nowhere else with the other boxes as they are; 190 places were tried.")


def test_of_several_the_best_is_named() -> None:
    told = places_words("Pumps", [line(1, 1), line(2, 0, is_here=True)], 190)
    assert "2 places of 190" in told
    assert "The best is bay 2, row 1. Where it stands now is no. 2." in told
