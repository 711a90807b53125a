"""What follows from one document, worked out when first asked for, and kept while the document is the present one."""

from collections.abc import Mapping
from functools import cached_property

from baywright.app.proposal import work_to
from baywright.checks import inspect, lifting_indices
from baywright.making import manufacture
from baywright.model.difference import Difference
from baywright.model.finding import Finding
from baywright.model.making import Manufacture
from baywright.model.plan import ArrangementReport
from baywright.model.project import Project
from baywright.planner import report
from baywright.workings import Workings, derive


class Derived:
    """What follows from one document, each worked out when first asked for."""

    def __init__(self, project: Project) -> None:
        self._project = project

    @cached_property
    def workings(self) -> Workings:
        """All dimensions."""
        return derive(self._project)

    @cached_property
    def report(self) -> ArrangementReport:
        """What is wrong with the arrangement as it stands, and how full it is."""
        return report(self._project)

    @cached_property
    def manufacture(self) -> Manufacture | None:
        """Parts, hardware and schedule; None while nothing is arranged."""
        return manufacture(self._project, self.workings) if self._project.arrangement.bay_count else None

    @property
    def known_manufacture(self) -> Manufacture | None:
        """The same where it has been worked out already; None where it has not, or nothing is arranged."""
        known: Manufacture | None = self.__dict__.get("manufacture")
        return known

    @cached_property
    def findings(self) -> tuple[Finding, ...]:
        """What the checks of strength, stability and safety found; none while nothing is arranged."""
        return inspect(self._project, self.workings)

    @cached_property
    def lifting_indices(self) -> Mapping[str, float]:
        """How hard each placed and weighed box is to lift, by its id; over 1 is too hard."""
        return lifting_indices(self._project, self.workings)

    @cached_property
    def difference(self) -> Difference | None:
        """The work from the bays that stand as built to the arrangement; None where nothing is as built."""
        return work_to(self._project)
