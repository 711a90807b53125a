"""Small runs for the tests of goals: boxes of one width in bays of a dozen rows, and tasks made from them."""

from baywright.model.arrangement import Arrangement, Lock, Placement
from baywright.model.goals import USUAL_ORDER, Goal
from baywright.model.inventory import Box, BoxSize, BoxStatus
from baywright.model.project import Project
from baywright.planner.distribution.budget import Budget
from baywright.planner.figures import Scale
from baywright.planner.framing.frame import Framer
from baywright.planner.goals.ladder import Ladder, Reached
from baywright.planner.goals.task import Spots, Task
from baywright.planner.replanning.standing import standing_of
from baywright.workings import derive

HEIGHTS_MM = {"low": 60.0, "middle": 120.0, "high": 220.0}
SIZES = tuple(
    BoxSize(id=name, name=name.title(), width_mm=300, depth_mm=200, height_mm=height)
    for name, height in HEIGHTS_MM.items()
)


def box(box_id: str, size: str = "low", group: str = "", mass: float = 5.0, wished: bool = False) -> Box:
    status = BoxStatus.WISHED if wished else BoxStatus.OWNED
    return Box(id=box_id, label=box_id, size_id=size, loaded_mass_kg=mass, group=group, status=status)


def run(*boxes: Box, bays: int = 2, rows: int = 12, drawers: int | None = None, **spots: tuple[int, int]) -> Project:
    """A run of that shape with boxes standing at `spots`."""
    placements = tuple(Placement(box_id=box_id, bay=bay, row=row) for box_id, (bay, row) in spots.items())
    plain = Project(box_sizes=SIZES, boxes=boxes)
    return plain.replace(
        limits=plain.limits.replace(bay_count=bays, upright_rows=rows, drawers_per_bay=drawers),
        arrangement=Arrangement(bay_count=bays, upright_rows=rows, placements=placements),
    )


def locked(project: Project, box_id: str, lock: Lock = Lock.DRAWER) -> Project:
    placements = tuple(p.replace(lock=lock) if p.box_id == box_id else p for p in project.arrangement.placements)
    return project.replace(arrangement=project.arrangement.replace(placements=placements))


def ordered(project: Project, *first: Goal) -> Project:
    """The project with these goals before the others."""
    return project.replace(goals=(*first, *(goal for goal in USUAL_ORDER if goal not in first)))


def task(project: Project, *, keep: bool = False) -> Task:
    """The task of the run as it stands."""
    arrangement = project.arrangement
    frame = Framer(project).frame(arrangement.bay_count, arrangement.upright_rows)
    return Task(frame, Scale(project, standing_of(project) if keep else None), arrangement)


def spots_of(given: Task, **spots: tuple[int, int]) -> Spots:
    """A plan by the names of its boxes."""
    return tuple(spots[item.id] for item in given.boxes)


def climbed(project: Project, *plans: Spots, keep: bool = False, effort: float = 4.0) -> tuple[Task, Reached]:
    """The best plan by all goals from given plans, or from the one that stands."""
    given = task(project, keep=keep)
    standing = tuple(spot for spot in given.present if spot is not None)
    ladder = Ladder(given, Framer(project), Budget(effort), lambda best: None)
    return given, ladder.climb(list(plans) or [standing])


def rows_of(project: Project, size: str) -> int:
    """The rows that a drawer with a box of that size takes."""
    return round(derive(project).value("opening_rows", size))
