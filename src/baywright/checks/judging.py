"""How a value beside its limit is judged, in one place for all checks."""

from baywright.model.finding import CheckKind, Finding, Mend, Severity

NEAR_SHARE = 0.8
"""From this share of the limit on a value counts as near it; common practice."""
MOST_NAMED = 4


def judged(value: float, limit: float) -> Severity:
    """The severity of a value that must not pass its limit."""
    if not value <= limit + 1e-9:  # so that what is no number is never well within a limit
        return Severity.BROKEN
    return Severity.NEAR if value > NEAR_SHARE * limit else Severity.KEPT


def no_runner(kind: CheckKind, subject: str, source: str) -> Finding:
    """That something could not be checked, because no runner fits: said, never passed over."""
    return Finding(
        kind=kind, severity=Severity.UNCHECKED, subject=subject, source=source,
        message="No runner fits, so it is not known how far drawers come out and what carries them.",
        mends=(Mend(text="Make room for a runner in the depth, or enter the length that you have."),),
    )  # fmt: skip


def no_density(kind: CheckKind, subject: str, source: str) -> Finding:
    """That something could not be checked, because nothing is known of the boards' density: said, never passed over."""
    return Finding(
        kind=kind, severity=Severity.UNCHECKED, subject=subject, source=source,
        message="It is not known how heavy the boards are.",
        mends=(Mend(text="Enter the density of the material that they are cut from."),),
    )  # fmt: skip


def not_weighed(kind: CheckKind, subject: str, labels: list[str], source: str) -> Finding:
    """That something could not be checked, because boxes were not weighed: said, never passed over."""
    shown = ", ".join(f"“{label}”" for label in labels[:MOST_NAMED]) + (" and more" if len(labels) > MOST_NAMED else "")
    boxes = "box" if len(labels) == 1 else "boxes"
    return Finding(
        kind=kind, severity=Severity.UNCHECKED, subject=subject, source=source,
        message=f"Mass missing for {len(labels)} {boxes} ({shown}).",
        mends=(Mend(text="Weigh the full boxes and enter their mass."),),
    )  # fmt: skip
