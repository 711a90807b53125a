"""All the work on all the parts of a run.

Laws: pure; sizes come from the parts, places from frame and workings; a part that is not worked comes back as it was;
pieces of a part stay together as far as their work is equal.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from baywright.making.boards import pieces_of
from baywright.making.drawers import Kinds
from baywright.making.frame import Frame
from baywright.making.machining.bench import Work, finished
from baywright.making.machining.cabinet import DrawerWork
from baywright.making.machining.carcass import Board, bolt_carcasses, join_ends, join_steps
from baywright.making.machining.note import with_rows_told
from baywright.making.machining.panels import fix_end_panel
from baywright.making.machining.rear import fix_back, fix_rails
from baywright.making.machining.remark import half_remarks, lack_remarks, row_remarks
from baywright.making.machining.rows import RowPlan
from baywright.making.machining.spacing import spacing_remarks
from baywright.making.machining.splice import join_lengths
from baywright.making.machining.stand import build_plinth, screw_base_down
from baywright.making.machining.upright import Fixings, UprightWork, fixings_of, upright_works
from baywright.making.stops import Stops
from baywright.model.construction import Back, FrontEdge, Fronts
from baywright.model.machining import EdgeForm, ShapedEdge, Side
from baywright.model.making import FrontPanel, Part
from baywright.model.project import Project
from baywright.workings import Workings


@dataclass(frozen=True)
class Machined:
    """The parts with their work, and what cannot be done as it should be, for people."""

    parts: tuple[Part, ...]
    fronts: tuple[FrontPanel, ...]
    """The front panels with the numbers that their parts have now."""
    remarks: tuple[str, ...]
    fixings: Fixings
    """Where the runners are screwed to the uprights."""


def machined(
    project: Project, workings: Workings, frame: Frame, parts: Sequence[Part], kinds: Kinds,
    fronts: Sequence[FrontPanel] = (), stops: Stops | None = None,
) -> Machined:  # fmt: skip
    """The parts of a run with their holes, grooves, joints and shaped edges."""
    shop = _Workshop(project, workings, frame, parts, kinds)
    shop.build_carcass()
    shop.build_rear()
    shop.build_stand()
    shop.cover_ends()
    drawers = DrawerWork(project, workings, kinds, parts)
    drawers.build(fronts, stops or {})
    done: list[Part] = []
    numbers: dict[int, str] = {}
    for part in parts:
        works = shop.works.get(part.number) or drawers.works.get(part.number) or [Work(part)]
        for piece, same in finished(part, works):
            done.append(with_rows_told(piece, project.unit))
            numbers.update((id(work), piece.number) for work in same)
    remarks = [
        *row_remarks(project, shop.plan),
        *half_remarks(project, parts),
        *lack_remarks(shop.all_works + drawers.all_works),
    ]
    panels = tuple(
        panel.replace(number=numbers[id(drawers.panels[panel])]) if panel in drawers.panels else panel
        for panel in fronts
    )  # fmt: skip
    return Machined(tuple(done), panels, (*remarks, *spacing_remarks(done)), fixings_of(shop.uprights, shop.plan))


class _Workshop:
    """The boards of the carcass on the bench."""

    def __init__(
        self, project: Project, workings: Workings, frame: Frame, parts: Sequence[Part], kinds: Kinds
    ) -> None:  # fmt: skip
        self._project, self._workings, self._parts = project, workings, list(parts)
        rear = project.construction.rear
        self._has_rail = rear.kind is not Back.FULL_BACK
        rail_mm = project.boards.brace_mm if self._has_rail else 0.0
        inset = project.construction.drawers.fronts is Fronts.INSET
        self.plan = RowPlan(
            project, workings, kinds, behind_mm=rail_mm,
            runner_from_mm=project.boards.front_mm if inset else 0.0,
        )  # fmt: skip
        self.uprights: list[UprightWork] = upright_works(project, workings, frame, self.plan, parts)
        self.works: dict[str, list[Work]] = {}
        for upright in self.uprights:
            self.works.setdefault(upright.work.part.number, []).append(upright.work)
        self._bases, self._tops = self._boards("B1"), self._boards("T1", is_far=True)

    @property
    def all_works(self) -> list[Work]:
        """Every piece."""
        return [work for works in self.works.values() for work in works]

    def _boards(self, number: str, *, is_far: bool = False) -> list[Board]:
        """The boards of a number along the run, from left to right."""
        boards: list[Board] = []
        for part in pieces_of(number, self._parts):
            works = [Work(part, is_front_far=is_far, left_mm=left, quantity=1) for left in part.lefts_mm]
            self.works[part.number] = works
            boards += zip(part.lefts_mm, works, strict=True)
        return sorted(boards, key=lambda board: board[0])

    def build_carcass(self) -> None:
        """Uprights to base and top, boards to each other, carcasses to each other; the top's front edge."""
        project, brace = self._project, self._project.boards.brace_mm
        rear = project.construction.rear.kind
        lower = brace if rear is Back.TWO_BRACES else 0.0
        upper = brace if self._has_rail else 0.0
        self._at_base = join_ends(project, self.uprights, self._bases, is_top=False, rail_mm=lower)
        at_top = join_ends(project, self.uprights, self._tops, is_top=True, rail_mm=upper)
        join_lengths(project, self._bases, self.uprights, self._at_base, is_top=False)
        join_lengths(project, self._tops, self.uprights, at_top, is_top=True)
        join_steps(project, self.uprights, self._tops)
        bolt_carcasses(self._workings, self.uprights, self.plan.diameter_mm, brace if self._has_rail else 0.0)
        self._shape_top()

    def _shape_top(self) -> None:
        top = self._project.construction.top
        if top.front_edge is FrontEdge.SQUARE or 2 * top.front_edge_size_mm > self._project.boards.top_mm:
            return
        form = EdgeForm.ROUNDED if top.front_edge is FrontEdge.ROUNDED else EdgeForm.CHAMFERED
        for _, work in self._tops:
            work.shaped_edges.append(ShapedEdge(side=Side.FRONT, form=form, size_mm=top.front_edge_size_mm))

    def build_rear(self) -> None:
        """Rails in notches, or the full back."""
        project, wall = self._project, self._project.space.existing_wall
        for number, is_upper in (("R2", True), ("R3", False), ("R4", True)):
            rails = self._boards(number)
            fix_rails(self.uprights, rails, is_upper=is_upper, is_fixed_to_wall=is_upper and wall)
        fix_back(project, self.uprights, self._boards("R1"), self._bases)

    def build_stand(self) -> None:
        """The plinth and the base on it."""
        fronts, rears = self._boards("P1"), self._boards("P2")
        part = next((part for part in self._parts if part.number == "P3"), None)
        if part is None or not fronts:
            return
        cross = Work(part)
        self.works[part.number] = [cross]
        build_plinth(self.uprights, fronts, rears, cross)
        screw_base_down(self._project, self.uprights, self._bases, fronts, cross, self._at_base)

    def cover_ends(self) -> None:
        """End panels to the uprights that they cover."""
        lower = self._workings.value("base_upper_height")
        by_number = {part.number: part for part in self._parts}
        usual = round(self._workings.value("upright_rows"))
        for panel in self._workings.layout.end_panels:
            number = ("E1L" if panel.is_left else "E1R") + (f"-{panel.rows}" if panel.rows != usual else "")
            along = panel.right_mm if panel.is_left else panel.left_mm
            upright = next((u for u in self.uprights if _is_covered(u, along, is_left=panel.is_left)), None)
            if number not in by_number or upright is None:
                continue
            work = Work(by_number[number], is_front_far=panel.is_left, quantity=1)
            self.works.setdefault(number, []).append(work)
            fix_end_panel(self._project, work, upright, lower)


def _is_covered(upright: UprightWork, along_mm: float, *, is_left: bool) -> bool:
    return abs((upright.standing.left_mm if is_left else upright.right_mm) - along_mm) < 1e-6
