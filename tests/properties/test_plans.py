"""Plans of invented workshops, measured by a witness; small problems against trying everything."""

import random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from baywright.model.construction import FirstRowRule, Uprights
from baywright.model.inventory import Box, BoxSize, Use
from baywright.model.plan import PlanStatus
from baywright.model.project import Project
from baywright.planner import plan, report
from baywright.planner.budget import Budget
from baywright.planner.cheapest import improved
from baywright.planner.problem import Item, Kind, Problem, Shape, Span, is_kept
from baywright.planner.search import holds
from tests.oracle.exhaustive import least_cost
from tests.oracle.measure import faults


@st.composite
def projects(draw: st.DrawFn) -> Project:
    plain = Project()
    heights = draw(st.lists(st.integers(40, 350), min_size=1, max_size=4, unique=True))
    sizes = tuple(
        BoxSize(id=f"h-{h}", name=f"{h}", width_mm=396, depth_mm=297, height_mm=h + draw(st.sampled_from([0, 0.5])))
        for h in heights
    )
    boxes = tuple(
        Box(
            id=f"box-{n}",
            label=f"Box {n}",
            size_id=draw(st.sampled_from(sizes)).id,
            loaded_mass_kg=draw(st.none() | st.integers(1, 30)),
            use=draw(st.sampled_from(list(Use))),
        )
        for n in range(1, draw(st.integers(1, 14)) + 1)
    )
    made = plain.construction
    construction = made.replace(
        uprights=draw(st.sampled_from(list(Uprights))),
        drawers=made.drawers.replace(clearance_mm=draw(st.integers(0, 40))),
        runners=made.runners.replace(
            line_offset_mm=draw(st.integers(0, 40)), gap_under_lowest_mm=draw(st.integers(0, 10))
        ),
        hole_rows=made.hole_rows.replace(
            first_row_rule=draw(st.sampled_from(list(FirstRowRule))), first_row_mm=draw(st.integers(5, 40))
        ),
    )
    return plain.replace(
        construction=construction,
        box_sizes=sizes,
        boxes=boxes,
        space=plain.space.replace(length_mm=draw(st.integers(600, 3500)), height_limit_mm=draw(st.integers(600, 1500))),
        limits=plain.limits.replace(drawers_per_bay=draw(st.none() | st.integers(1, 6))),
    )


@settings(max_examples=60, deadline=None)
@given(projects())
def test_every_plan_fits_when_it_is_measured(project: Project) -> None:
    result = plan(project)
    if result.arrangement is not None:
        done = project.replace(arrangement=result.arrangement)
        assert faults(done) == []
        assert report(done).conflicts == ()
        assert report(done).unplaced == ()
    else:
        assert result.status is PlanStatus.IMPOSSIBLE
        assert result.conflicts
        assert all(conflict.message for conflict in result.conflicts)


@settings(max_examples=60, deadline=None)
@given(projects(), st.randoms(use_true_random=False))
def test_the_report_finds_a_fault_exactly_where_the_witness_does(project: Project, chance: random.Random) -> None:
    """Boxes thrown anywhere: the program's report and the witness agree whether anything is wrong."""
    placements = [
        {"box_id": box.id, "bay": chance.randint(0, 1), "row": chance.randint(0, 25)} for box in project.boxes[:3]
    ]
    thrown = project.replace(
        boxes=project.boxes[:3],
        arrangement={"bay_count": 2, "upright_rows": 22, "placements": placements},
    )
    assert bool(report(thrown).conflicts) == bool(faults(thrown)), (report(thrown).conflicts, faults(thrown))


def small_problem(seed: int) -> Problem:
    chance = random.Random(seed)
    rows = chance.randint(6, 14)
    lowest = chance.choice([0, 0, 1])
    shapes = []
    for _ in range(chance.randint(1, 3)):
        tall = chance.randint(2, 5)
        # A top drawer may reach beyond the last whole row by what its opening was rounded up.
        highest = rows - tall + chance.choice([0, 0, 1])
        shapes.append(
            Shape(
                (Span(tall, lowest, highest),),
                tuple(abs(row - rows // 2) * chance.choice([1, 3]) for row in range(rows)),
            )
        )
    items = tuple(
        Item(f"item-{n}", chance.randrange(len(shapes)), chance.randint(0, 9)) for n in range(chance.randint(1, 6))
    )
    kind = Kind(chance.randint(1, 3), rows, chance.choice([None, 2, 3]))
    return Problem((kind,), tuple(shapes), items)


@pytest.mark.parametrize("block", range(10))
def test_the_flow_finds_the_optimum_that_trying_everything_finds(block: int) -> None:
    settled = 0
    for seed in range(block * 30, block * 30 + 30):
        problem = small_problem(seed)
        expected = least_cost(problem)
        answer = holds(problem, Budget(20.0))
        if expected is None:
            assert answer.holds is False, seed
            continue
        assert answer.holds is True, seed
        best = improved(problem, answer.places, {}, Budget(20.0))
        assert is_kept(problem, best.places), seed
        assert (problem.cost(best.places), best.bound) == (expected, expected), seed
        settled += 1
    assert settled > 5
