"""The drawers of a run on the bench: sides, rails, bottoms, box stops and front panels, kind by kind.

Laws: drawers of a kind are worked alike but for what their own front panel and box stop ask for; with front panels the
front rails differ from the rear ones and have a number of their own.
"""

from collections.abc import Mapping, Sequence

from baywright.making.drawers import Kinds
from baywright.making.machining.bench import Work
from baywright.making.machining.drawer import build_drawer
from baywright.making.machining.panels import clear_front_rail, fix_stop, pilot_front
from baywright.making.schedule import lower_edge_mm
from baywright.model.making import FrontPanel, Part
from baywright.model.project import Project
from baywright.workings import Workings


class DrawerWork:
    """All drawers; `works` are those of each part by its number."""

    def __init__(self, project: Project, workings: Workings, kinds: Kinds, parts: Sequence[Part]) -> None:
        self._project, self._workings, self._kinds = project, workings, kinds
        self._parts = {part.number: part for part in parts}
        self.works: dict[str, list[Work]] = {}
        self.panels: dict[FrontPanel, Work] = {}

    @property
    def all_works(self) -> list[Work]:
        """The work on every part."""
        return [work for works in self.works.values() for work in works]

    def build(self, fronts: Sequence[FrontPanel], stops: Mapping[tuple[int, int], float]) -> None:
        """Works every drawer."""
        for kind in sorted(set(self._kinds.values())):
            places = sorted(place for place, of in self._kinds.items() if of == kind)
            side, rail = self._part("D1", kind), self._part("D2", kind)
            if side is None or rail is None:
                continue
            of_kind = set(places)
            panels = [p for p in fronts if (p.bay, p.row) in of_kind and p.number in self._parts]
            self._kind(side, rail, panels)
            self._stops(kind, places, stops)

    def _part(self, number: str, kind: str) -> Part | None:
        return self._parts.get(f"{number}{kind.removeprefix('bay')}")

    def _kind(self, side: Part, rail: Part, panels: Sequence[FrontPanel]) -> None:
        groove = self._workings.value("groove_width")
        side_work = Work(side)
        rails = [Work(rail)]
        if panels:
            bays = list(rail.bays)
            for panel in panels:
                bays.remove(panel.bay)
            rails = [
                Work(rail, place="front rail", quantity=len(panels), bays=tuple(panel.bay for panel in panels)),
                Work(rail, place="rear rail", quantity=rail.quantity - len(panels), bays=tuple(bays)),
            ]
        build_drawer(self._project, groove, side_work, rails)
        self.works[side.number], self.works[rail.number] = [side_work], rails
        if not panels:
            return
        places = clear_front_rail(self._project, rails[0])
        for panel in panels:
            work = Work(self._parts[panel.number], is_front_far=True, quantity=1, bays=(panel.bay,),
                        place=f"bay {panel.bay + 1} row {panel.row + 1}")  # fmt: skip
            self.works.setdefault(panel.number, []).append(work)
            self.panels[panel] = work
            bay = self._workings.layout.bays[panel.bay]
            rail_left = bay.left_mm + (bay.clear_mm - rail.length_mm) / 2
            up = lower_edge_mm(self._workings, panel.row) - panel.bottom_mm
            pilot_front(self._project, work, rail, places, rail_left - panel.left_mm, up)

    def _stops(self, kind: str, places: Sequence[tuple[int, int]], stops: Mapping[tuple[int, int], float]) -> None:
        bottom, stop = self._part("D3", kind), self._part("D4", kind)
        if bottom is None or stop is None:
            return
        boards, drawers = self._project.boards, self._project.construction.drawers
        to_stop = drawers.groove_depth_mm - drawers.bottom_play_mm / 2 + boards.drawer_side_mm / 2
        bottoms = [
            (Work(bottom, quantity=1, bays=(place[0],), place="with a box stop" if place in stops else ""), place)
            for place in places
        ]
        self.works[bottom.number] = [work for work, _ in bottoms]
        stop_work = Work(stop)
        self.works[stop.number] = [stop_work]
        fix_stop(self._project, stop_work, [(work, to_stop + stops[at]) for work, at in bottoms if at in stops])
