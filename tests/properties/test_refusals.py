"""Seeded requests that cannot be met: the clash is irreducible, every change that is offered works and is undone."""

import random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from baywright.app.edits.repair import ApplyRepair
from baywright.app.session import Session
from baywright.model.change import changed
from baywright.model.project import Project
from baywright.planner import plan, why_not
from baywright.planner.distribution.budget import Budget
from baywright.planner.reasons.explanation import explain
from tests.benchmarks.impossible import SORTS, impossible
from tests.benchmarks.refusals import clash_faults, judge, plan_faults
from tests.properties import invented

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


@settings(max_examples=15)
@given(invented.projects(), st.integers(0, 1_000))
def test_of_invented_workshops_of_the_whole_model_clashes_and_repairs_hold_too(project: Project, chance: int) -> None:
    if chance % 2:
        project = invented.locked(invented.thrown(project, random.Random(chance)), random.Random(chance))
    if why_not(project) is None:
        return
    answer = explain(project, Budget(8.0))
    assert answer.conflicts
    for repair in answer.repairs:
        assert plan_faults(changed(project, repair.changes)) == [], repair.text
    if answer.is_settled:
        assert [fault for clash in answer.clashes for fault in clash_faults(project, clash)] == []
    else:
        assert answer.remarks
