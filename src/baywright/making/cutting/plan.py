"""The cutting plan: every part of a run cut from sheets and bars.

First everything gets a layout, quickly, so that there is something to look at; then better ones are sought, of the bars
and of one material after the other. What cannot be cut is told by part, with the reason, and the rest is planned all
the same.

Laws: the same project and effort give the same plan on every machine; `progress` is told of each better plan, of the
first at once; `stop` ends the search soon, with the best so far, and only then `is_finished` is false.
"""

from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field

from baywright.making.cutting.bar_cutting import BarJob
from baywright.making.cutting.materials import materials_of
from baywright.making.cutting.packing import Packing, never
from baywright.making.cutting.pieces import demands, is_rail
from baywright.making.cutting.reasons import assumed_remarks
from baywright.making.cutting.sheet_cutting import SheetJob
from baywright.making.cutting.strips import bar_demands
from baywright.model.cutting import BarCutting, CuttingPlan, SheetCutting
from baywright.model.making import Manufacture, Part
from baywright.model.project import Project

EFFORT_A_PIECE = 60
"""Steps of search for each piece that are usual …"""
MOST_EFFORT = 40_000
"""… and so many at most: a step takes some tenths of a millisecond where there are many pieces."""
QUICK_EFFORT = 0
"""Steps for the first layout of a material."""
LEAST_EFFORT = 200
"""Steps that a material has at least."""
BAR_EFFORT = 200
"""Steps for the bars of one section, each about a millisecond."""

Progress = Callable[[CuttingPlan], None]
Stop = Callable[[], bool]


def cutting_plan(
    project: Project,
    manufacture: Manufacture,
    *,
    effort: int | None = None,
    stop: Stop = never,
    progress: Progress | None = None,
) -> CuttingPlan:
    """How the parts of `manufacture` are cut from the project's stock, at least cost.

    `effort` is the most steps of search for better sheets, in all, shared by the materials according to their pieces;
    None takes what is usual, with 0 the first layouts are the answer.
    """
    search = _Search(project, manufacture.parts, stop, progress)
    search.begin()
    if effort is None:
        effort = min(MOST_EFFORT, EFFORT_A_PIECE * search.size)
    if effort:
        search.bars(min(effort, BAR_EFFORT))
        search.improve(effort)
    return search.told(is_finished=not stop())


def sheets_needed(project: Project, parts: Sequence[Part], *, stop: Stop = never) -> int | None:
    """How many sheets a first layout of the parts takes that have to be bought; None where one cannot be cut.

    The same as in a cutting plan with an effort of 0, without the plan. After a stop the answer means nothing.
    """
    count = 0
    for job in _sheet_jobs(project, parts):
        packing = job.pack(effort=QUICK_EFFORT, stop=stop, found=lambda _packing: None)
        if packing.unplaced or not job.is_possible:
            return None
        count += job.bought(packing)
    return count


def _sheet_jobs(project: Project, parts: Sequence[Part]) -> list[SheetJob]:
    from_bars = project.stock.rules.rails_from_bars
    from_sheets = [part for part in parts if not (from_bars and is_rail(part))]
    return [SheetJob(project, demand) for demand in demands(from_sheets, materials_of(project, from_sheets))]


@dataclass
class _Sheets:
    """One material and the best packing of it so far."""

    job: SheetJob
    packing: Packing | None = None
    cutting: SheetCutting | None = None
    """The packing as told last, and its number of the first sheet."""
    first: int = 0

    def told(self, first: int) -> SheetCutting | None:
        """The cutting with its sheets numbered from `first`."""
        if self.packing is not None and (self.cutting is None or self.first != first):
            self.cutting, self.first = self.job.told(self.packing, first), first
        return self.cutting

    def take(self, better: Packing) -> None:
        self.packing, self.cutting = better, None


@dataclass
class _Search:
    """One run: the materials and bars so far."""

    project: Project
    parts: tuple[Part, ...]
    stop: Stop
    progress: Progress | None
    sheets: list[_Sheets] = field(default_factory=list)
    bar_cuttings: list[BarCutting] = field(default_factory=list)
    remarks: list[str] = field(default_factory=list)
    assumed: dict[str, str] = field(default_factory=dict)
    """What nothing is in stock of, with what was assumed for it."""

    def __post_init__(self) -> None:
        self.sheets = [_Sheets(job) for job in _sheet_jobs(self.project, self.parts)]
        self.remarks = [remark for sheets in self.sheets for remark in sheets.job.remarks]
        for sheets in self.sheets:
            self.assumed |= sheets.job.assumed

    def begin(self) -> None:
        """The first layouts of every material."""
        for sheets in self.sheets:
            sheets.take(sheets.job.pack(effort=QUICK_EFFORT, stop=self.stop, found=lambda _packing: None))
        self.bars(QUICK_EFFORT)

    def bars(self, effort: int) -> None:
        """All bars; each section takes what the one before has left."""
        taken: Counter[str] = Counter()
        first = 1
        cuttings: list[BarCutting] = []
        for demand in bar_demands(self.project, self.parts):
            job = BarJob(self.project, demand, taken)
            cutting = job.told(job.cut(effort=effort, stop=self.stop), first)
            taken.update(layout.bar_id for layout in cutting.layouts)
            first += len(cutting.layouts)
            cuttings.append(cutting)
            self.assumed |= job.assumed
        if not effort or cuttings != self.bar_cuttings:
            self.bar_cuttings = cuttings
            self._tell()

    @property
    def size(self) -> int:
        """How many pieces there are to cut from sheets."""
        return sum(sheets.job.size for sheets in self.sheets)

    def improve(self, effort: int) -> None:
        """Better layouts, material by material."""
        whole = self.size
        for sheets in self.sheets:
            if self.stop():
                return
            self._search(sheets, max(min(effort, LEAST_EFFORT), effort * sheets.job.size // max(1, whole)))

    def _search(self, sheets: _Sheets, effort: int) -> None:
        def found(better: Packing) -> None:
            if sheets.packing is None or not _is_worse(better, sheets.packing):
                sheets.take(better)
                self._tell()

        best = sheets.job.pack(effort=effort, stop=self.stop, found=found)
        if sheets.packing is None or (best != sheets.packing and not _is_worse(best, sheets.packing)):
            sheets.take(best)

    def told(self, *, is_finished: bool) -> CuttingPlan:
        """The plan as it is."""
        first, cuttings = 1, []
        for sheets in self.sheets:
            if (cutting := sheets.told(first)) is not None:
                cuttings.append(cutting)
                first += len(cutting.layouts)
        return CuttingPlan(
            sheets=tuple(cuttings),
            bars=tuple(self.bar_cuttings),
            remarks=(*assumed_remarks(self.assumed), *self.remarks),
            is_finished=is_finished,
        )

    def _tell(self) -> None:
        if self.progress is not None:
            self.progress(self.told(is_finished=False))


def _is_worse(packing: Packing, than: Packing) -> bool:
    return (len(packing.unplaced), packing.cost) > (len(than.unplaced), than.cost)
