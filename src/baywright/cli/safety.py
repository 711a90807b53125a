"""What the checks of strength, stability and people found, as plain text for a terminal."""

from collections.abc import Sequence

from baywright.model.finding import Finding, Severity

CAUTION = (
    "Computed from the assumptions in the project, which are no permission: data sheets, local codes and licensed "
    "practice come first."
)
SAID_TWICE = "Not checked: "
"""How the message of a finding begins that was not checked, which its line says first."""


def findings_text(findings: Sequence[Finding]) -> str:
    """Every finding, gravest first, with what would mend what is over its limit or not checked."""
    lines = []
    for finding in findings:
        told = finding.message.removeprefix(SAID_TWICE)
        lines.append(f"{finding.severity.words}: {finding.kind.words}, {finding.subject}: {told[:1].upper()}{told[1:]}")
        if finding.severity in (Severity.BROKEN, Severity.UNCHECKED):
            lines += [f"  → {mend.text}" for mend in finding.mends]
    return "\n".join([*lines, CAUTION])


def is_broken(findings: Sequence[Finding]) -> bool:
    """Whether anything is over its limit."""
    return any(finding.severity is Severity.BROKEN for finding in findings)
