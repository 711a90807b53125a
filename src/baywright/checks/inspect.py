"""All checks of one document, gravest first."""

from baywright.checks.access import access_findings
from baywright.checks.fit import tolerance_findings
from baywright.checks.fixing import fixing_findings
from baywright.checks.groove import groove_findings
from baywright.checks.handling import lifting_findings
from baywright.checks.runner import runner_findings
from baywright.checks.sag import sag_findings
from baywright.checks.tipping import tipping_findings
from baywright.model.finding import Finding, Severity
from baywright.model.project import Project
from baywright.workings import Workings, derive


def inspect(project: Project, workings: Workings | None = None) -> tuple[Finding, ...]:
    """Every finding about the present arrangement; none while nothing is arranged. Pure."""
    if project.arrangement.bay_count == 0:
        return ()
    w = workings if workings is not None else derive(project)
    checks = (
        sag_findings,
        runner_findings,
        tipping_findings,
        fixing_findings,
        lifting_findings,
        access_findings,
        tolerance_findings,
        groove_findings,
    )
    found = [finding for check in checks for finding in check(project, w)]
    order = list(Severity)
    return tuple(sorted(found, key=lambda finding: order.index(finding.severity)))
