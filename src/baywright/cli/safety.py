"""What the checks of strength, stability and people found, as plain text for a terminal."""

from collections.abc import Sequence

from baywright.model.caution import COMPUTED
from baywright.model.finding import Finding, Severity


def findings_text(findings: Sequence[Finding]) -> str:
    """Every finding, gravest first, with what would mend what is over its limit or not checked."""
    lines = []
    for finding in findings:
        lines.append(f"{finding.severity.words}: {finding.kind.words}, {finding.subject}: {finding.message}")
        if finding.severity in (Severity.BROKEN, Severity.UNCHECKED):
            lines += [f"  → {mend.text}" for mend in finding.mends]
    return "\n".join([*lines, COMPUTED])


def is_broken(findings: Sequence[Finding]) -> bool:
    """Whether anything is over its limit."""
    return any(finding.severity is Severity.BROKEN for finding in findings)
