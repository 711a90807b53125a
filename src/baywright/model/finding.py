"""What a check of strength, stability or safety found: one computation with its value, its limit and its source."""

from enum import StrEnum

from baywright.model.base import Frozen
from baywright.model.repair import FieldChange


class CheckKind(StrEnum):
    """What is checked."""

    SAG = "sag"
    RUNNER_LOAD = "runner_load"
    FIXING = "fixing"
    TIPPING = "tipping"
    LIFTING = "lifting"
    ACCESS = "access"
    TOLERANCE = "tolerance"

    @property
    def words(self) -> str:
        """Its name for people."""
        return self.value.replace("_", " ").capitalize()


class Severity(StrEnum):
    """How a finding is meant, gravest first."""

    BROKEN = "broken"
    """The limit is passed."""
    UNCHECKED = "unchecked"
    """It could not be computed, and nothing is known about it."""
    NEAR = "near"
    """Within the limit, but not far from it."""
    KEPT = "kept"
    """Well within the limit."""

    @property
    def words(self) -> str:
        """A sign and words for people, so that neither colour nor sign stands alone."""
        return _JUDGEMENTS[self]


_JUDGEMENTS = {
    Severity.BROKEN: "✗ over the limit",
    Severity.UNCHECKED: "? not checked",
    Severity.NEAR: "! near the limit",
    Severity.KEPT: "✓ kept",
}


class Given(Frozen):
    """One input of a finding, in words."""

    name: str
    value: str


class Mend(Frozen):
    """What would bring it within the limit, in words and, where the document can be changed so, as fields."""

    text: str
    changes: tuple[FieldChange, ...] = ()


class Finding(Frozen):
    """One check of one thing."""

    kind: CheckKind
    severity: Severity
    subject: str
    """What is checked, for people: “Shelf (S1)”, “bay 2, drawer 3”, “Pumps”."""
    message: str
    value: float | None = None
    limit: float | None = None
    unit: str = ""
    formula: str = ""
    given: tuple[Given, ...] = ()
    source: str = ""
    """Clause, table or book; “common practice” or “from memory” where there is none."""
    mends: tuple[Mend, ...] = ()
    part_number: str = ""
    box_ids: tuple[str, ...] = ()
    drawer: tuple[int, int] | None = None
    """Bay and row of the drawer concerned, from 0."""
