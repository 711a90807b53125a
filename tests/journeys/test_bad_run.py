"""A run that is wrong in every way, and its mends: made by the commands that the window sends, on the demo itself.

Every finding over its limit names what it is about, its value and limit, and where the limit comes from; the first of
its mends that can be applied is applied as one edit, and the finding is gone.
"""

from collections.abc import Iterator
from pathlib import Path

import pytest

from baywright.app.commands import SetField
from baywright.app.edits.inventory import EditBox
from baywright.app.edits.repair import ApplyRepair
from baywright.app.live import LiveMode
from baywright.app.session import Session
from baywright.model.finding import CheckKind, Finding, Severity
from baywright.model.plan import PlanStatus
from baywright.model.repair import Repair
from baywright.storage.projects import read_project

TALL_AND_FREE: dict[str, object] = {
    "space.length_mm": 2_800.0,
    "space.height_limit_mm": 2_400.0,
    "space.existing_wall": False,
    "construction.rear.kind": "full_back",
    "limits.bay_count": 3,
    "limits.drawers_per_bay": None,
    "limits.upright_rows": None,
}


@pytest.fixture(scope="module")
def bad(resources: Path) -> Session:
    """The demo, higher and with a wide shelf bay, planned; then 60 kg in a drawer on weaker runners."""
    session = Session(read_project(resources / "demo.baywright"), synchronous=True)
    session.live.mode = LiveMode.CHECK
    for field, value in TALL_AND_FREE.items():
        session.do(SetField(field, value))
    session.request_plan()
    assert session.plan is not None
    assert session.plan.status is PlanStatus.PROVED_BEST
    session.do(EditBox("chains", "loaded_mass_kg", 60.0))
    session.do(SetField("construction.runners.load_classes_kg", (35.0, 45.0)))
    return session


def over(session: Session) -> list[Finding]:
    return [finding for finding in session.derived.findings if finding.severity is Severity.BROKEN]


def mended(session: Session) -> Iterator[Finding]:
    """Apply one mend after the other, each to the gravest finding that has one, until none is left; tell which."""
    while finding := next((f for f in over(session) if any(mend.changes for mend in f.mends)), None):
        mend = next(mend for mend in finding.mends if mend.changes)
        session.do(ApplyRepair(Repair(text=mend.text, changes=mend.changes)))
        yield finding


def test_everything_that_is_wrong_is_found(bad: Session) -> None:
    found = over(bad)
    subjects = {(finding.kind, finding.subject.split(" (")[0]) for finding in found}
    assert (CheckKind.SAG, "Shelf") in subjects
    assert (CheckKind.SAG, "Top over the shelf bay") in subjects
    assert any(f.kind is CheckKind.SAG and f.subject.startswith("Drawer bottom") for f in found)
    assert any(f.kind is CheckKind.RUNNER_LOAD and "Chains" in f.subject and (f.value or 0) > 60 for f in found)
    assert (CheckKind.TIPPING, "The run, standing free, filled") in subjects
    assert (CheckKind.TIPPING, "The run, standing free, being filled") in subjects
    assert any(f.kind is CheckKind.FIXING and f.message.startswith("Nothing holds the run") for f in found)
    assert (CheckKind.LIFTING, "“Chains”") in subjects


def test_each_finding_names_value_limit_source_and_mend(bad: Session) -> None:
    for finding in over(bad):
        assert finding.value is not None, finding
        assert finding.limit is not None, finding
        assert finding.source, finding
        assert finding.formula, finding
        assert finding.given, finding
        assert finding.mends, finding
        assert not finding.message.startswith("Not checked"), finding


def test_the_mends_applied_leave_nothing_over_its_limit(bad: Session) -> None:
    document = bad.project
    for finding in mended(bad):
        same = [f for f in over(bad) if (f.kind, f.subject) == (finding.kind, finding.subject)]
        assert same == [], finding
    assert over(bad) == []
    while bad.project != document:  # each mend was one edit that one undo takes back
        bad.undo()
    assert over(bad)
