"""What the goals tell apart: the rows that a drawer takes wherever it starts are those of its own size."""

from baywright.model.goals import Goal
from baywright.model.inventory import Box, BoxSize
from baywright.model.project import Project
from baywright.planner.distribution.flow import FlowModel
from baywright.planner.figures import Scale
from baywright.planner.framing.frame import Framer
from baywright.planner.goals.sorts import Sorts
from baywright.planner.goals.task import Task


def test_a_low_drawer_takes_no_row_always_that_only_a_high_one_does() -> None:
    sizes = (
        BoxSize(id="high", name="High", width_mm=300, depth_mm=300, height_mm=150),
        BoxSize(id="low", name="Low", width_mm=300, depth_mm=300, height_mm=60),
    )
    boxes = tuple(Box(id=size.id, label=size.name, size_id=size.id, group="a") for size in sizes)
    project = Project(box_sizes=sizes, boxes=boxes)
    frame = Framer(project).frame(1, 9)
    task = Task(frame, Scale(project), project.arrangement)
    sorts = Sorts(task, FlowModel(task.problem), {Goal.GROUPS})
    high, low = (sorts.likeness_of[item] for item in range(2))
    assert [span.rows for shape in task.problem.shapes if (span := shape.spans[0]) is not None] == [6, 3]
    assert sorts.always_taken(high, 0) == range(3, 6)
    assert not sorts.always_taken(low, 0)
