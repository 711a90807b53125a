"""Whether a planner's answer still holds after an edit, so that writing a note does not cost the proof.

Laws: an answer is kept only where it provably holds. Names, notes and contents mean nothing to the planner, nor does
how boards are joined, drilled and edged; a lock on a box that stands where it was planned takes away other plans, never
this one, so the best plan stays the best. Whatever else differs ends the answer.
"""

from collections import deque

from baywright.model.arrangement import Lock
from baywright.model.construction import Construction
from baywright.model.inventory import Box
from baywright.model.plan import PlanResult
from baywright.model.project import Project
from baywright.model.stock import BoardRole
from baywright.planner.handling import habits
from baywright.workings.material import reckoned_kg_m3

MOST_ANSWERS = 4
_ANY = Construction()
_NOT_OF_ROWS = ("drilling", "hole_diameter_mm", "hole_depth_mm")
_NOT_OF_TOP = ("front_edge", "front_edge_size_mm")
_HEAVY = (BoardRole.DRAWER_SIDE, BoardRole.DRAWER_BOTTOM, BoardRole.FRONT)
"""Boards that hang on the runners with the boxes."""
_STRENGTH = {Lock.NONE: 0, Lock.BAY: 1, Lock.DRAWER: 2}


def still_holds(result: PlanResult, planned: Project, present: Project) -> bool:
    """Whether `result`, whose arrangement is that of `planned`, is also an answer to `present`."""
    if planned is present:
        return True
    if result.arrangement is None:
        # Its reasons name boxes and lengths, and rest on locks: only what nobody reads there may differ.
        same_words = planned.unit == present.unit and planned.arrangement == present.arrangement
        return same_words and is_same_task(planned, present, labels_matter=True)
    return (
        is_same_task(planned, present, labels_matter=bool(result.remarks))
        and _places(planned) == _places(present)
        and _locks_only_added(planned, present)
    )


class Answers:
    """The planner's newest answers, each with the document that it is an answer to, so that undo finds them again."""

    def __init__(self) -> None:
        self._kept: deque[tuple[PlanResult, Project]] = deque(maxlen=MOST_ANSWERS)
        self._found: tuple[Project, PlanResult | None] | None = None

    def keep(self, result: PlanResult, planned: Project) -> None:
        """Keeps an answer; `planned` is the document with its arrangement taken in."""
        self._kept.appendleft((result, planned))
        self._found = None

    def forget(self) -> None:
        """Forgets all: another document was opened."""
        self._kept.clear()
        self._found = None

    def to(self, present: Project) -> PlanResult | None:
        """The newest answer that holds for a document, or None."""
        if self._found is None or self._found[0] is not present:
            holding = (result for result, planned in self._kept if still_holds(result, planned, present))
            self._found = (present, next(holding, None))
        return self._found[1]


def is_same_task(planned: Project, present: Project, *, labels_matter: bool = False) -> bool:
    """Whether two documents ask the same of the planner, whatever stands where; `labels_matter` where its answer names
    boxes.
    """
    return (
        planned.space == present.space
        and _weighed(planned) == _weighed(present)
        and planned.limits == present.limits
        and planned.goals == present.goals
        and habits(planned.safety) == habits(present.safety)
        and planned.built == present.built
        and planned.box_sizes == present.box_sizes
        and len(planned.boxes) == len(present.boxes)
        and all(
            before is after or _weighing(before, labels_matter) == _weighing(after, labels_matter)
            for before, after in zip(planned.boxes, present.boxes, strict=True)
        )
    )


def _weighed(project: Project) -> tuple[Construction, tuple[float, ...]]:
    """How the run is built as far as the planner weighs it: the thicknesses in force and what drawers are heavy by, not
    how boards are joined, drilled and edged.
    """
    made = project.construction
    rows = made.hole_rows.model_copy(update={name: getattr(_ANY.hole_rows, name) for name in _NOT_OF_ROWS})
    top = made.top.model_copy(update={name: getattr(_ANY.top, name) for name in _NOT_OF_TOP})
    weighed = made.model_copy(
        update={
            "boards": project.boards, "hole_rows": rows, "top": top, "edging": _ANY.edging, "jointing": _ANY.jointing,
        }
    )  # fmt: skip
    return weighed, tuple(reckoned_kg_m3(project, role) for role in _HEAVY)


def _weighing(box: Box, labels_matter: bool) -> Box:
    """The box without what the planner does not weigh; its remarks also name it."""
    return box.model_copy(update={"label": box.label if labels_matter else "", "contents": "", "note": ""})


def _places(project: Project) -> tuple[int, int, tuple[float, ...], frozenset[tuple[str, int, int, int, int, bool]]]:
    arrangement = project.arrangement
    places = frozenset((p.box_id, p.bay, p.row, p.abreast, p.behind, p.turned) for p in arrangement.placements)
    return arrangement.bay_count, arrangement.upright_rows, arrangement.box_widths_mm, places


def _locks_only_added(planned: Project, present: Project) -> bool:
    before = {p.box_id: _STRENGTH[p.lock] for p in planned.arrangement.placements}
    return all(_STRENGTH[p.lock] >= before[p.box_id] for p in present.arrangement.placements)
