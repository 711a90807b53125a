"""The complete result of one project as one value, with a published schema, for those who read it by program."""

import json
from typing import Literal

from baywright.app.session import Session
from baywright.model.base import Frozen
from baywright.model.difference import Difference
from baywright.model.finding import Finding
from baywright.model.making import Manufacture
from baywright.model.plan import ArrangementReport, PlanResult
from baywright.model.project import Project


class Dimension(Frozen):
    """One input or derived dimension: value in `unit` (lengths in mm), its working in words, what it is made from."""

    key: str
    label: str
    unit: str
    value: float
    working: str
    made_from: tuple[str, ...]
    """Keys of the dimensions that the working reads; empty for an input."""


class CompleteResult(Frozen):
    """Everything the program knows of one project."""

    result_version: Literal[2] = 2
    project: Project
    plan: PlanResult | None
    """The planner's answer; None where the arrangement was taken as it stood in the file."""
    report: ArrangementReport
    dimensions: tuple[Dimension, ...]
    manufacture: Manufacture | None
    """Parts, hardware and drawer schedule; None while nothing is arranged."""
    findings: tuple[Finding, ...] = ()
    """What the checks of strength, stability and people found, gravest first; none while nothing is arranged."""
    difference: Difference | None = None
    """The work from the bays that stand as built to the arrangement; None where nothing is as built."""


def complete_result(session: Session) -> CompleteResult:
    """The complete result of a session's present document."""
    dimensions = tuple(
        Dimension(
            key=entry.key,
            label=entry.label,
            unit=entry.unit,
            value=entry.value,
            working=entry.working,
            made_from=entry.inputs,
        )
        for entry in session.workings.entries
    )
    return CompleteResult(
        project=session.project,
        plan=session.plan,
        report=session.report,
        dimensions=dimensions,
        manufacture=session.manufacture,
        findings=session.derived.findings,
        difference=session.difference,
    )


def result_schema() -> str:
    """The JSON schema (draft 2020-12) of `CompleteResult`, as indented JSON."""
    schema = CompleteResult.model_json_schema(mode="serialization")
    return json.dumps({"$schema": "https://json-schema.org/draft/2020-12/schema", **schema}, indent=2)
