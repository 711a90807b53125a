"""Boards as thick as they really are: in the groove, and beside it; figured by hand."""

import pytest

from baywright.checks.fit import tolerance_findings
from baywright.checks.groove import groove_findings
from baywright.checks.thickness import thickness
from baywright.model.finding import Finding, Severity
from baywright.model.project import Project
from baywright.model.safety import BoardMaterial, Safety
from baywright.model.stock import Batch, BoardRole, Material, Stock
from baywright.workings import derive


def measured(role: BoardRole, *readings_mm: float, kind: BoardMaterial = BoardMaterial.BIRCH_PLYWOOD) -> Project:
    batch = Batch(id="batch", name="Spring", readings_mm=readings_mm)
    material = Material(id="m", name="M", kind=kind, roles=(role,), batches=(batch,), batch_id="batch")
    return Project(stock=Stock(materials=(material,)))


def grooves(project: Project) -> list[Finding]:
    return groove_findings(project, derive(project))


def test_boards_that_were_not_measured_are_as_their_standard_allows() -> None:
    """EN 315, sanded: 9 mm −0.67/+0.47."""
    found = thickness(Project(), BoardRole.DRAWER_BOTTOM)
    assert found is not None
    assert (found.least_mm, found.reckoned_mm, found.most_mm) == pytest.approx((8.33, 9.0, 9.47))
    assert not found.is_measured


def test_a_batch_is_between_its_own_readings() -> None:
    found = thickness(measured(BoardRole.DRAWER_BOTTOM, 8.7, 8.9, 9.0), BoardRole.DRAWER_BOTTOM)
    assert found is not None
    assert (found.least_mm, found.reckoned_mm, found.most_mm) == pytest.approx((8.7, 8.87, 9.0))
    assert (found.under_mm, found.over_mm) == pytest.approx((0.17, 0.13))


def test_one_reading_says_nothing_of_how_boards_differ() -> None:
    found = thickness(measured(BoardRole.DRAWER_BOTTOM, 8.7), BoardRole.DRAWER_BOTTOM)
    assert found is not None
    assert (found.least_mm, found.most_mm) == pytest.approx((8.7 - 0.661, 8.7 + 0.461))


def test_the_worst_case_of_unmeasured_bottoms_binds() -> None:
    """Groove 9.2, bottom up to 9.47: −0.27 mm of air."""
    (found,) = grooves(Project())
    assert found.severity is Severity.NEAR
    assert found.value == pytest.approx(-0.27)
    assert "8.3 to 9.5 mm thick, which leaves −0.3 to 0.9 mm of air" in found.message
    assert found.mends


def test_measured_bottoms_that_all_go_in_are_kept() -> None:
    """Mean 9, groove 9.2, thickest 9.1: 0.1 mm of air at least."""
    (found,) = grooves(measured(BoardRole.DRAWER_BOTTOM, 8.9, 9.1))
    assert found.severity is Severity.KEPT
    assert found.value == pytest.approx(0.1)


def test_bottoms_that_differ_too_much_rattle() -> None:
    """Mean 8.92, groove 9.12; the thinnest 8.0 leaves 1.1 mm."""
    (found,) = grooves(measured(BoardRole.DRAWER_BOTTOM, 8.0, 9.1, 9.1, 9.1, 9.1, 9.1))
    assert found.severity is Severity.NEAR
    assert "rattle" in found.message


@pytest.mark.parametrize(
    ("readings", "severity", "words"),
    [((7.0, 9.0), Severity.NEAR, "only 1.0 mm stay"), ((5.5, 6.5), Severity.BROKEN, "cuts through the thinnest")],
)
def test_a_side_that_is_left_too_thin_is_told(readings: tuple[float, ...], severity: Severity, words: str) -> None:
    found = [f for f in grooves(measured(BoardRole.DRAWER_SIDE, *readings)) if "sides" in f.subject]
    assert [f.severity for f in found] == [severity]
    assert words in found[0].message


def test_of_unknown_boards_nothing_is_claimed() -> None:
    project = Project(safety=Safety(board_material=BoardMaterial.OTHER))
    assert [f.severity for f in grooves(project)] == [Severity.UNCHECKED]


def test_the_room_for_the_runners_is_told_from_the_least_to_the_most() -> None:
    """25.4 ± 1 for two cuts, less twice the side's deviation: measured 14.9 to 15.1 that is ± 0.2 more."""
    project = measured(BoardRole.DRAWER_SIDE, 14.9, 15.1)
    (found,) = tolerance_findings(project, derive(project))
    assert found.given[0].value == "24.2 to 26.6 mm, nominal 25.4 mm"
