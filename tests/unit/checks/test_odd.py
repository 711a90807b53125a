"""Checks of odd documents: none breaks off, and what cannot be known is said to be unchecked."""

import pytest

from baywright.checks import inspect
from baywright.checks.judging import judged
from baywright.checks.statics import Mass, tilted
from baywright.model.arrangement import Arrangement, Placement
from baywright.model.construction import Construction, Stand, Standing, Uprights
from baywright.model.finding import CheckKind, Finding, Severity
from baywright.model.inventory import Box, BoxSize, BoxStatus
from baywright.model.project import Project
from baywright.model.safety import Safety
from baywright.model.space import Space

SIZE = BoxSize(id="full", name="Full", width_mm=400, depth_mm=300, height_mm=220)
BOX = Box(id="box", label="Box", size_id="full", loaded_mass_kg=8.0)
MADE = Construction(standing=Standing(kind=Stand.FEET, height_mm=80))


def shop(*boxes: Box, rows: int = 60, bays: int = 1, depth_mm: float = 400.0) -> Project:
    places = tuple(Placement(box_id=box.id, bay=n % bays, row=1 + 8 * (n // bays)) for n, box in enumerate(boxes))
    return Project(
        space=Space(length_mm=2400.0, height_limit_mm=2400.0, depth_mm=depth_mm),
        construction=MADE,
        box_sizes=(SIZE,),
        boxes=boxes,
        arrangement=Arrangement(bay_count=bays, upright_rows=rows, placements=places),
    )


def of(project: Project, kind: CheckKind) -> list[Finding]:
    return [finding for finding in inspect(project) if finding.kind is kind]


def test_a_floor_that_rises_by_more_than_the_run_is_deep_lays_it_on_its_front() -> None:
    (mass,) = tilted([Mass(10.0, 200.0, 500.0)], 100.0, 40.0)
    assert mass.x_mm == pytest.approx(-500.0)
    assert mass.z_mm == pytest.approx(200.0)
    shallow = shop(BOX, depth_mm=120.0).replace(safety=Safety(raised_rear_mm=100.0))
    assert of(shallow, CheckKind.TIPPING)


def test_where_no_runner_fits_nothing_that_hangs_on_it_is_kept() -> None:
    project = shop(BOX, depth_mm=150.0)
    for kind in (CheckKind.RUNNER_LOAD, CheckKind.TIPPING, CheckKind.FIXING):
        assert {finding.severity for finding in of(project, kind)} == {Severity.UNCHECKED}, kind
        assert all("No runner fits" in finding.message for finding in of(project, kind))


def test_boards_of_which_nothing_is_left_are_not_checked() -> None:
    top = MADE.top.replace(overhang_front_mm=400.0)
    project = shop(BOX, depth_mm=10.0)
    for made in (MADE, MADE.replace(top=top)):
        sags = of(project.replace(construction=made), CheckKind.SAG)
        assert any(finding.severity is Severity.UNCHECKED for finding in sags)
        assert all(finding.value is None or finding.value >= 0 for finding in sags)


def test_a_box_that_is_kept_elsewhere_but_has_a_place_does_not_hold_up_the_check_of_reach() -> None:
    project = shop(BOX.replace(status=BoxStatus.ELSEWHERE))
    assert of(project, CheckKind.ACCESS)


def test_a_wished_box_that_nobody_can_weigh_yet_is_no_load_of_the_run() -> None:
    wished = Box(id="wished", label="Wished", size_id="full", status=BoxStatus.WISHED)
    assert not [f for f in of(shop(BOX, wished), CheckKind.TIPPING) if f.severity is Severity.UNCHECKED]
    unweighed = wished.replace(status=BoxStatus.OWNED)
    assert [f for f in of(shop(BOX, unweighed), CheckKind.TIPPING) if f.severity is Severity.UNCHECKED]


def test_a_run_that_leans_too_far_tips_with_every_drawer_closed() -> None:
    project = shop(*(BOX.replace(id=f"box-{n}") for n in range(6)))
    leaning = project.replace(safety=Safety(raised_rear_mm=100.0))
    assert any("every drawer closed" in finding.message for finding in of(leaning, CheckKind.TIPPING))
    assert not any("every drawer closed" in finding.message for finding in of(project, CheckKind.TIPPING))


def test_carcasses_that_nothing_holds_together_may_tip_one_by_one() -> None:
    project = shop(BOX, BOX.replace(id="other"), bays=2)
    apart = project.replace(construction=MADE.replace(uprights=Uprights.OWN))

    def alone(shown: Project) -> list[Finding]:
        return [f for f in of(shown, CheckKind.TIPPING) if "by itself" in f.subject]

    assert [finding.severity for finding in alone(apart)] == [Severity.NEAR]
    assert not alone(project)


def test_lifts_that_must_not_be_done_at_all_make_the_whole_infinite() -> None:
    high = [BOX.replace(id=f"box-{n}", label=f"Box {n}") for n in range(7)]
    leaping = shop(*high, rows=70).replace(safety=Safety(twist_degrees=180.0))
    (together,) = [f for f in of(leaping, CheckKind.LIFTING) if "within an hour" in f.subject]
    assert together.severity is Severity.BROKEN
    assert "infinite" in together.message


def test_a_wished_box_is_not_taken_out_within_the_hour() -> None:
    wished = BOX.replace(id="wished", status=BoxStatus.WISHED)
    project = shop(BOX, BOX.replace(id="other"), wished)
    (together,) = [f for f in of(project, CheckKind.LIFTING) if "within an hour" in f.subject]
    assert together.subject.startswith("All 2 boxes")


def test_what_is_no_number_is_over_every_limit() -> None:
    assert judged(float("nan"), 1.0) is Severity.BROKEN
