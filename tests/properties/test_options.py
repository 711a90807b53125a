"""Options of invented workshops over the whole model: each fits when it is measured, none beats another, planning keeps
the shape of each, and a run that can be planned has an option.
"""

from hypothesis import given, settings

from baywright.model.change import changed
from baywright.model.plan import PlanStatus
from baywright.model.project import Project
from baywright.planner import options, plan
from baywright.planner.choices.dominance import beats, yardstick
from tests.oracle.measure import faults
from tests.properties.invented import projects


@settings(max_examples=20, deadline=None)
@given(projects(most_boxes=8))
def test_every_option_fits_and_keeps_its_shape_and_none_beats_another(project: Project) -> None:
    found = options(project)
    measure = yardstick(project, found)
    figures = [measure.respects(option) for option in found]
    assert not any(beats(one, other) for one in figures for other in figures)
    for option in found:
        chosen = changed(project, option.changes)
        assert faults(chosen.replace(arrangement=option.arrangement)) == []
    for option in found[:2]:
        again = plan(changed(project, option.changes)).arrangement
        assert again is not None
        assert (again.bay_count, again.upright_rows) == (option.bays, option.rows)
    free = project.replace(limits=project.limits.replace(bay_count=None, upright_rows=None))
    if (best := plan(free)).status is PlanStatus.PROVED_BEST:
        assert best.arrangement is not None
        assert min(option.bays for option in found) == best.arrangement.bay_count
        rows = [option.rows for option in found if option.bays == best.arrangement.bay_count]
        assert min(rows) <= best.arrangement.upright_rows
