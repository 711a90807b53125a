"""Findings as lines of a terminal: the judgement once, then what was found, and what would mend it."""

from baywright.cli.safety import findings_text
from baywright.model.caution import COMPUTED
from baywright.model.finding import CheckKind, Finding, Mend, Severity


def test_what_is_not_checked_is_said_once() -> None:
    finding = Finding(
        kind=CheckKind.ACCESS,
        severity=Severity.UNCHECKED,
        subject="Floor before the run",
        message="It is not known how much floor is free.",
        mends=(Mend(text="Measure it."),),
    )
    assert findings_text([finding]).splitlines() == [
        "? not checked: Access, Floor before the run: It is not known how much floor is free.",
        "  → Measure it.",
        COMPUTED,
    ]
