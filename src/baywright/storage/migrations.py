"""Bringing documents of older formats up to the present one, a step a version.

Laws: a step takes the plain data of format n and returns that of format n + 1; it never looks at the present model, so
it stays right when the model moves on; steps are only ever added. Format 2 only added fields that may be left out:
zones and ceiling, wishes for single bays, boxes that share a drawer, the order of the goals, what is as built. So did
format 3: stock, hardware, prices and further choices of the construction.
"""

from collections.abc import Callable, Mapping

Document = dict[str, object]
Step = Callable[[Document], Document]

OLDEST_VERSION = 1


def _from_2(document: Document) -> Document:
    """The bays as built hold a document of their own, which is of the same format."""
    built = document.get("built")
    if not isinstance(built, dict) or not isinstance(built.get("project"), dict):
        return dict(document)
    return {**document, "built": {**built, "project": {**built["project"], "format_version": 3}}}


STEPS: Mapping[int, Step] = {1: dict, 2: _from_2}
"""Format version → the step that leads from it to the next."""


def migrate(document: Document, version: int, newest: int, steps: Mapping[int, Step] = STEPS) -> Document:
    """The document of format `version` brought to format `newest`, its `format_version` set.

    Raises LookupError where a step is missing; whatever a step raises on damaged data passes through.
    """
    for number in range(version, newest):
        if number not in steps:
            raise LookupError(f"No step leads on from format {number}.")
        document = {**steps[number](document), "format_version": number + 1}
    return document
