"""Starts dealt out to bays: rules kept, drawers counted, and the present bays followed where they can be."""

from baywright.planner.distribution.flow import Arc, FlowModel, Start
from baywright.planner.distribution.paths import split
from baywright.planner.distribution.problem import Item, Kind, Place, Problem, Shape, Span, Team, is_kept
from baywright.planner.distribution.solving import fit


def row_of_bays(bays: int, items: int, drawers: int | None = None) -> Problem:
    shape = Shape((Span(2, 0, 4),))
    return Problem((Kind(bays, 6, drawers),), (shape,), tuple(Item(f"item-{n}", 0) for n in range(items)))


def test_a_flow_becomes_bays() -> None:
    problem = row_of_bays(2, 6)
    starts = tuple(Start(Arc(0, 0, row, 0), 2) for row in (0, 2, 4))
    places = split(problem, (0,), starts, (0, 0, 2, 2, 4, 4), {})
    assert is_kept(problem, places)
    assert [place.row for place in places] == [0, 0, 2, 2, 4, 4]


def test_each_goes_to_the_bay_where_it_stands_already() -> None:
    problem = row_of_bays(2, 6)
    starts = tuple(Start(Arc(0, 0, row, 0), 2) for row in (0, 2, 4))
    present = {0: (0, 1, 0), 1: (0, 0, 0), 2: (0, 0, 2), 3: (0, 1, 2), 4: (0, 1, 4), 5: (0, 0, 4)}
    places = split(problem, (0,), starts, (0, 0, 2, 2, 4, 4), present)
    assert places == tuple(Place(item, *where) for item, where in sorted(present.items()))


def test_drawers_are_counted_where_the_limit_can_bind() -> None:
    problem = row_of_bays(3, 6, drawers=2)
    flow = FlowModel(problem)
    outcome = fit(flow.model, 1.0)
    assert outcome.value is not None
    starts = flow.starts(outcome.value)
    places = split(problem, flow.family_of, starts, flow.rows(starts), {})
    assert is_kept(problem, places)
    assert {sum(1 for place in places if place.bay == bay) for bay in range(3)} == {2}


def test_items_that_share_a_drawer_stay_together_in_their_bay() -> None:
    span = Span(2, 0, 4)
    items = tuple(Item(f"item-{n}", 0) for n in range(4))
    problem = Problem((Kind(2, 6),), (Shape((span,)),), items, (Team((0, 0), (span,)),))
    present = {0: (0, 1, 2), 1: (0, 0, 2), 2: (0, 1, 2), 3: (0, 0, 2)}
    places = split(problem, (0,), (Start(Arc(1, 0, 2, 0), 2),), (2, 2, 2, 2), present)
    assert places == tuple(Place(item, *where) for item, where in sorted(present.items()))


def test_a_shared_drawer_whose_bay_is_not_ready_goes_elsewhere() -> None:
    span = Span(2, 0, 4)
    items = tuple(Item(f"item-{n}", 0) for n in range(3))
    problem = Problem((Kind(2, 6),), (Shape((span,)),), items, (Team((0, 0), (span,)),))
    starts = (Start(Arc(0, 0, 1, 0), 1), Start(Arc(1, 0, 2, 0), 1))
    places = split(problem, (0,), starts, (1, 2, 2), {0: (0, 0, 1), 1: (0, 0, 2), 2: (0, 0, 2)})
    assert places == (Place(0, 0, 0, 1), Place(1, 0, 1, 2), Place(2, 0, 1, 2))
