"""The cutting of the benchmark's run, looked at by a sawyer: what comes out, never how long it takes."""

from functools import cache

from baywright.making.cutting.plan import cutting_plan
from baywright.model.cutting import CuttingPlan
from tests.benchmarks.sawing import STOCK, sawing_job
from tests.oracle.sawyer import check_plan

REACHED = (290.80, 76.00, 21.40)
"""The cost of each material's sheets that a search reached once; later ones must not be dearer."""


@cache
def cut() -> tuple[CuttingPlan, ...]:
    """Every plan that was told, the last one at the end."""
    project, made = sawing_job()
    told: list[CuttingPlan] = []
    told.append(cutting_plan(project, made, progress=told.append))
    return tuple(told)


def test_the_job_is_what_it_says() -> None:
    project, made = sawing_job()
    assert sum(part.quantity for part in made.parts) >= 150
    assert len({part.material_id for part in made.parts}) == 3
    assert sum(sheet.is_owned for sheet in STOCK.sheets) == 6
    assert project.stock.rules.kerf_mm > 0 < project.stock.rules.trim_mm


def test_every_plan_that_is_told_can_be_sawn_and_holds_every_part() -> None:
    project, made = sawing_job()
    for plan in cut():
        check_plan(project, made.parts, plan)
        assert not any(cutting.unplaced for cutting in (*plan.sheets,))
        assert not any(cutting.unplaced for cutting in (*plan.bars,))


def test_later_plans_are_never_dearer_and_the_last_one_costs_no_more_than_was_reached_before() -> None:
    """The second material cannot cost less: 23 rows of strips on the square sheet and both offcuts hold 99 of its 100
    parts, so that two half sheets are needed.
    """
    values = [sum(cutting.value for cutting in plan.sheets) for plan in cut()]
    assert values == sorted(values, reverse=True)
    last = cut()[-1]
    assert last.is_finished
    assert [cutting.value <= reached for cutting, reached in zip(last.sheets, REACHED, strict=True)] == [True] * 3
    assert all(cutting.is_proved for cutting in last.bars)
    assert last.sheets[2].is_proved
    assert any(layout.is_owned for layout in last.sheet_layouts)
