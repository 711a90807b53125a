"""Seeded requests that cannot be met: the clash is irreducible, every change that is offered works and is undone."""

import pytest

from baywright.app.edits.repair import ApplyRepair
from baywright.app.session import Session
from baywright.planner import plan, why_not
from tests.benchmarks.impossible import SORTS, impossible
from tests.benchmarks.refusals import judge

SEEDS = 40
BLOCKS = 8


@pytest.mark.parametrize("block", range(BLOCKS))
def test_clashes_are_irreducible_repairs_work_and_the_first_is_the_cheapest(block: int) -> None:
    for seed in range(block, SEEDS, BLOCKS):
        verdict = judge(seed)
        assert verdict.faults == (), (seed, verdict.sort)


def test_every_sort_of_request_is_among_them() -> None:
    assert {impossible(seed)[0] for seed in range(len(SORTS))} >= set(SORTS) - {"worktop too high"}


@pytest.mark.parametrize("seed", [2, 4, 10, 21])
def test_each_repair_is_one_edit_after_which_there_is_a_plan_and_one_undo(seed: int) -> None:
    _, project = impossible(seed)
    refused = plan(project)
    assert refused.arrangement is None
    assert refused.repairs
    session = Session()
    session.new_project(project)
    for repair in refused.repairs:
        session.do(ApplyRepair(repair))
        assert plan(session.project, effort=0.5).arrangement is not None, repair.text
        session.undo()
        assert session.project == project


def test_the_same_request_is_answered_the_same_way_twice() -> None:
    _, project = impossible(9)
    assert why_not(project) == why_not(project)
