"""How exactly boards keep to their thickness: by material, by what was measured, and never as known where it is not."""

import pytest

from baywright.checks.fit import deviations, tolerance_findings
from baywright.model.finding import CheckKind, Severity
from baywright.model.project import Project
from baywright.model.safety import BoardMaterial, Safety
from baywright.model.stock import Batch, BoardRole, Material
from baywright.workings import derive


def of(kind: BoardMaterial) -> Project:
    return Project(safety=Safety(board_material=kind))


@pytest.mark.parametrize(
    ("kind", "under", "over", "named"),
    [
        (BoardMaterial.BIRCH_PLYWOOD, 0.85, 0.65, "EN 315"),  # 15 mm: 0.4 + 0.45 under, 0.2 + 0.45 over
        (BoardMaterial.PARTICLEBOARD, 0.3, 0.3, "EN 312"),
        (BoardMaterial.FIBREBOARD, 0.2, 0.2, "EN 622-1"),
        (BoardMaterial.SPRUCE, 0.5, 0.5, "common practice"),
    ],
)
def test_each_material_has_its_own_tolerance(kind: BoardMaterial, under: float, over: float, named: str) -> None:
    known = deviations(of(kind))
    assert known is not None
    side = known[0][-1]
    assert (side.under_mm, side.over_mm) == pytest.approx((under, over))
    assert named in known[1]


def test_of_a_material_that_nothing_is_known_of_nothing_is_claimed() -> None:
    project = of(BoardMaterial.OTHER)
    assert deviations(project) is None
    told = [f for f in tolerance_findings(project, derive(project)) if f.subject == "Drawers in their bays"]
    assert [finding.severity for finding in told] == [Severity.UNCHECKED]
    assert all("calliper" in mend.text for finding in told for mend in finding.mends)


def test_a_measured_batch_deviates_by_its_own_readings() -> None:
    batch = Batch(id="batch", name="Spring", readings_mm=(14.8, 14.9, 15.0))
    sides = Material(
        id="sides", name="Sides", nominal_mm=15, roles=(BoardRole.DRAWER_SIDE,), batches=(batch,), batch_id="batch"
    )
    plain = Project()
    known = deviations(plain.replace(stock=plain.stock.replace(materials=(sides,))))
    assert known is not None
    side = known[0][-1]
    assert (side.under_mm, side.over_mm) == pytest.approx((0.1, 0.1))
    assert "3 readings" in known[1]


def test_it_says_how_to_measure_and_where_to_adjust() -> None:
    project = Project()
    for finding in tolerance_findings(project, derive(project)):
        assert finding.kind is CheckKind.TOLERANCE
        assert finding.mends
