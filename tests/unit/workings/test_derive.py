"""Dimensions of whole projects, with their workings and chains."""

import math

import pytest

from baywright.model.construction import FirstRowRule, Uprights
from baywright.model.inventory import Box, BoxSize
from baywright.model.length import LengthUnit
from baywright.model.project import Project
from baywright.workings import Workings, derive
from baywright.workings.formulas import FORMULAS
from baywright.workings.pieces import PIECES

EURO = BoxSize(id="euro-120", name="Euro 120", width_mm=396, depth_mm=297, height_mm=120)


def project(**construction: dict[str, object] | str) -> Project:
    base = Project(box_sizes=(EURO,), boxes=(Box(id="box-1", label="Chains", size_id="euro-120"),))
    parts = {
        name: getattr(base.construction, name).replace(**value) if isinstance(value, dict) else value
        for name, value in construction.items()
    }
    return base.replace(construction=base.construction.replace(**parts))


def test_a_working_reads_like_a_sum_made_by_hand() -> None:
    working = derive(project(runners={"thickness_mm": 14})).entry("bay_clear_width").working
    assert working == "bay clear width = drawer outside width 430 + 2 × runner thickness 14 = 458 mm"


def test_the_chain_of_every_value_ends_in_inputs() -> None:
    workings = derive(project())

    def walk(key: str, depth: int = 0) -> None:
        assert depth < len(FORMULAS)
        entry = workings.by_key(key)
        assert entry.is_input == (not entry.inputs and not entry.excel)
        for inner in entry.inputs:
            walk(inner, depth + 1)

    for entry in workings.entries:
        walk(entry.key)


def test_nothing_else_rests_on_the_sizes_of_pieces() -> None:
    """They are worked out last, when somebody asks for one."""
    pieces = {formula.name for formula in PIECES}
    for formula in FORMULAS:
        assert formula.name in pieces or not pieces & set(formula.expression.names), formula.name
    known = {entry.name: entry.value for entry in derive(project()).entries}
    for name in pieces - {formula.name for formula in PIECES if formula.per_size}:
        assert name not in known or derive(project()).value(name) == known[name]


def test_every_name_is_declared_once_and_every_key_and_cell_is_unique() -> None:
    entries = derive(project()).entries
    assert len({entry.key for entry in entries}) == len(entries)
    assert len({entry.cell for entry in entries}) == len(entries)


def test_inches_are_shown_where_the_project_is_in_inches() -> None:
    inches = project().replace(unit=LengthUnit.INCH)
    assert derive(inches).entry("bay_clear_width").working.endswith("= 17.929 in")


@pytest.mark.parametrize(
    ("rule", "rows", "height", "first", "last"),
    [
        (FirstRowRule.HALF_PITCH, 32, 1024, 16, 1008),
        (FirstRowRule.HALF_BASE_THICKNESS, 25, 786, 9, 777),
        (FirstRowRule.SET, 10, 328, 20, 308),
    ],
)
def test_upright_is_cut_to_whole_rows_with_equal_ends(
    rule: FirstRowRule, rows: int, height: float, first: float, last: float
) -> None:
    one = project(hole_rows={"first_row_rule": rule, "first_row_mm": 20})
    workings = derive(one.replace(arrangement=one.arrangement.replace(bay_count=1, upright_rows=rows)))
    assert workings.value("upright_height") == height
    assert workings.value("first_row") == first
    assert workings.value("last_row") == last
    assert first == height - last


@pytest.mark.parametrize(
    ("offset", "gap", "lost", "edge"), [(16, 0, 0, 0), (20, 0, 1, 28), (14, 2, 0, 2), (14, 3, 1, 34)]
)
def test_a_runner_line_above_the_first_row_costs_a_row(offset: float, gap: float, lost: int, edge: float) -> None:
    workings = derive(project(runners={"line_offset_mm": offset, "gap_under_lowest_mm": gap}))
    assert workings.value("lowest_start_row") == lost
    assert workings.value("lowest_drawer_edge") == edge


def test_a_low_box_in_a_high_drawer_needs_the_drawer_sides_height() -> None:
    workings = derive(project(drawers={"side_height_mm": 200}))
    assert workings.value("need_height", "euro-120") == 203
    assert workings.value("opening_rows", "euro-120") == 7


def test_depth_goes_from_space_to_runner_to_drawer() -> None:
    workings = derive(project())
    assert workings.value("upright_depth") == 380
    assert workings.value("runner_length") == 350
    assert workings.value("drawer_inside_depth") == 320
    assert workings.value("bottom_depth") == 320 + 2 * 6 - 1
    shallow = project().replace(space=project().space.replace(depth_mm=250))
    assert derive(shallow).value("runner_length") == 0


def test_a_full_back_takes_its_thickness_from_the_uprights() -> None:
    assert derive(project(rear={"kind": "full_back"})).value("upright_depth") == 400 - 20 - 9


def test_rows_that_fit_leave_the_whole_run_under_the_height_limit() -> None:
    workings = derive(project())
    rows = int(workings.value("rows_that_fit"))
    for count, fits in ((rows, True), (rows + 1, False)):
        one = project()
        shaped = one.replace(arrangement=one.arrangement.replace(bay_count=1, upright_rows=count))
        assert (derive(shaped).value("unit_height") <= one.space.height_limit_mm) is fits


@pytest.mark.parametrize("kind", [Uprights.SHARED, Uprights.OWN])
def test_bays_that_fit_do_and_one_more_does_not(kind: Uprights) -> None:
    one = project(uprights=kind)
    bays = int(derive(one).value("bays_that_fit"))
    for count, fits in ((bays, True), (bays + 1, False)):
        shaped = one.replace(arrangement=one.arrangement.replace(bay_count=count, upright_rows=10))
        assert (derive(shaped).value("bays_run_length") <= one.space.length_mm) is fits


def test_every_value_is_finite_on_an_empty_project() -> None:
    workings: Workings = derive(Project())
    assert all(math.isfinite(entry.value) for entry in workings.entries)
    assert len(workings.entries) > 80
