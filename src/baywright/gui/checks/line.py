"""The table of findings: judgement in sign and word, what is checked, value beside limit."""

from baywright.gui.tables.column import Column
from baywright.model.finding import Finding, Severity

_ORDER = list(Severity)


def amount(value: float | None, unit: str) -> str:
    """A value with its unit; empty where there is none."""
    if value is None:
        return ""
    number = f"{value:,.0f}" if abs(value) >= 100 or value == round(value) else f"{value:,.2f}"
    return f"{number} {unit}".strip()


def finding_columns() -> tuple[Column[Finding], ...]:
    """The columns, the judgement first."""
    return (
        Column("Judgement", lambda f: f.severity.words, lambda f: _ORDER.index(f.severity),
               "Over its limit, not checked, near its limit, or kept"),
        Column("Check", lambda f: f.kind.words, lambda f: f.kind.words, "What is checked"),
        Column("What", lambda f: f.subject, lambda f: f.subject, "Part, drawer, box or the run"),
        Column("Value", lambda f: amount(f.value, f.unit), lambda f: f.value, "What was computed", is_number=True),
        Column("Limit", lambda f: amount(f.limit, f.unit), lambda f: f.limit, "What it must not pass", is_number=True),
        Column("Finding", lambda f: f.message, lambda f: f.message, "What that means"),
    )  # fmt: skip
