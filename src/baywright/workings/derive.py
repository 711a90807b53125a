"""From a project document to all its dimensions, each with value, working and spreadsheet formula.

Laws: pure and cheap; formulas are evaluated in the order of declaration, once where all bays are alike; where they are
not, the bays are laid out along the wall with what was found, and everything is evaluated anew with what follows from
that. Sizes of pieces, on which nothing else rests, wait until one is asked for. Entries stand in reading order (groups
as people work them out, inputs last).
"""

from collections.abc import Sequence
from functools import cache, cached_property

from baywright.model.limits import MOST_BAYS
from baywright.model.project import Project
from baywright.model.stock import BoardRole
from baywright.workings.entry import Entry
from baywright.workings.formula import Formula
from baywright.workings.formulas import FORMULAS
from baywright.workings.inputs import FAMILY_INPUTS, INPUTS, KIND_INPUTS, OWN_INPUTS, SIZE_INPUTS
from baywright.workings.kinds import BayKind, KindList
from baywright.workings.layout import BayPlace, BayShape, Layout, Rules, bays_that_fit, lay_out
from baywright.workings.material import density_kg_m3, material_of
from baywright.workings.pieces import PIECES
from baywright.workings.reading import Names, Values, read_entries, scope_of

_PER_KIND = frozenset(formula.name for formula in FORMULAS if formula.per_kind or formula.kind_only)
_OF_A_KIND = _PER_KIND | {given.name for given in KIND_INPUTS} | {"bay_box_width"}
_SHAPE = tuple(formula for formula in FORMULAS if formula not in PIECES)
_PIECES = frozenset(formula.name for formula in PIECES)
_BY_NAME = {formula.name: formula for formula in FORMULAS}


class Workings:
    """All dimensions of one project document."""

    def __init__(self, project: Project) -> None:
        self._project = project
        self._names = Names(project)
        self._values: dict[tuple[str, str | None], float] = {}
        self._families = {family.name: family.read(project) for family in FAMILY_INPUTS}
        self._families["clear_of_bays"] = ()
        self._clear_widths: dict[float, float] = {}
        self._has_pieces = False
        self.kinds: tuple[BayKind, ...] = ()
        """The kinds of bays; the first is the ordinary one, with an empty id."""
        self._read_inputs()
        self._evaluate()
        self.kinds = (BayKind(self.value("bay_box_width"), bays=round(self.value("bay_count"))),)
        if _is_mixed(project):
            self._lay_out_one_by_one()

    def value(self, name: str, of: str | None = None) -> float:
        """The value of an input or formula, in its unit; `of` is a box size's id where each size has its own, or the id
        of a further kind of bay. KeyError where there is no such name or size.
        """
        return self._number(name, of or None)

    def at_kind(self, name: str, kind_id: str) -> float:
        """The value of a name for a kind of bay: its own, or the general one where kinds do not differ in it."""
        return self._number(name, kind_id if kind_id and name in _OF_A_KIND else None)

    def drawer_mass(self, kind_id: str = "") -> float | None:
        """Mass in kg of an empty drawer of a kind of bay; None where the density of its boards is not known."""
        fronts = (BoardRole.FRONT,) if self.value("fronts") else ()
        roles = (BoardRole.DRAWER_SIDE, BoardRole.DRAWER_BOTTOM, *fronts)
        if any(density_kg_m3(material_of(self._project, role)) is None for role in roles):
            return None
        return self.at_kind("drawer_mass", kind_id)

    def entry(self, name: str, of: str | None = None) -> Entry:
        """The entry of a name; KeyError where there is none."""
        return self._by_key[self._names.key(name, of)]

    def by_key(self, key: str) -> Entry:
        """The entry with that key; KeyError where there is none."""
        return self._by_key[key]

    @cached_property
    def entries(self) -> tuple[Entry, ...]:
        """Every entry: derived dimensions group by group, then the inputs."""
        self._evaluate_pieces()
        return read_entries(self._names, self.kinds, Values(self._values, self._families))

    @cached_property
    def _by_key(self) -> dict[str, Entry]:
        return {entry.key: entry for entry in self.entries}

    @cached_property
    def layout(self) -> Layout:
        """Where every bay and upright of the present run stands."""
        return lay_out(self._shapes(), self._rules(), self.value("shelf_bay_clear_width"))

    def lay_out(self, box_widths_mm: Sequence[float], rows: int) -> Layout:
        """Where drawer bays for boxes of those widths would stand, from the left, in a run of `rows` rows; without a
        shelf bay. It fits the wall where its `bays_end_mm` is at most `room_for_run` less `shelf_room`.
        """
        return lay_out(self._shapes_of(box_widths_mm), self._rules(rows))

    def bays_that_fit(self, box_widths_mm: Sequence[float]) -> int:
        """How many bays the wall holds when they have those box widths from the left, the last width going on."""
        kept = self.value("shelf_room")
        return bays_that_fit(self._shapes_of(box_widths_mm), self._rules(), kept, MOST_BAYS)

    def upright_height(self, rows: int) -> float:
        """Height in mm of an upright with that many rows, by the formula."""
        return self._with("bay_rows", rows, "upright_height") if rows else 0.0

    def kind_of(self, bay: BayPlace, zone_depth_mm: float = 0.0) -> str:
        """The id of a bay's kind, or of its kind of drawers where a zone takes so much of their depth; KeyError where
        there is no such kind in the present run.
        """
        wanted = BayKind(bay.box_width_mm, bay.rows if bay.has_own_rows else 0, zone_depth_mm)
        return self._kind_ids[wanted]

    def zone_depth(self, bay: BayPlace, row: int, rows: int) -> float:
        """How deep into the bay the zones reach that a drawer at that row, `rows` rows high, crosses; in mm."""
        if not bay.zones:
            return 0.0
        lower = self.value("base_upper_height") + self.value("first_row") - self.value("line_offset")
        bottom = lower + self.value("pitch") * row
        top = bottom + self.value("pitch") * rows
        return max(
            (z.depth_mm for z in bay.zones if z.bottom_mm < top - 1e-9 and bottom + 1e-9 < z.top_mm), default=0.0
        )

    def drawer_kind(self, bay: int, row: int, rows: int) -> str:
        """The id of the kind that a drawer at that place of the present run is of; IndexError for an unknown bay."""
        place = self.layout.bays[bay]
        return self.kind_of(place, self.zone_depth(place, row, rows))

    @cached_property
    def _kind_ids(self) -> dict[BayKind, str]:
        return {kind: kind.id for kind in self.kinds}

    # Evaluation

    def _read_inputs(self) -> None:
        for given in INPUTS:
            self._values[given.name, None] = given.read(self._project)
        for size in self._project.box_sizes:
            for size_input in SIZE_INPUTS:
                self._values[size_input.name, size.id] = size_input.read(size)
        for item in OWN_INPUTS:
            self._values[item.name, None] = item.ordinary

    def _number(self, name: str, of: str | None) -> float:
        if (name, of) not in self._values and name in _PIECES:
            self._evaluate_pieces()
        return self._values[name, of]

    def _evaluate(self, formulas: Sequence[Formula] = _SHAPE) -> None:
        """Values only: words and spreadsheet text are made when somebody asks for them."""
        for formula in formulas:
            if not formula.kind_only:
                for of in self._names.size_ids if formula.per_size else (None,):
                    self._values[formula.name, of] = self._result(formula, of)

    def _evaluate_pieces(self) -> None:
        """The sizes of pieces, on which nothing else rests, when first somebody asks for one."""
        if self._has_pieces:
            return
        self._has_pieces = True
        self._evaluate(PIECES)
        for kind in self.kinds[1:]:
            self._evaluate_kind(kind, PIECES)

    def _result(self, formula: Formula, of: str | None) -> float:
        return formula.expression.evaluate(scope_of(self._names, Values(self._values, self._families), self.kinds, of))

    def _evaluate_kind(self, kind: BayKind, formulas: Sequence[Formula] = _SHAPE) -> None:
        self._values["bay_box_width", kind.id] = kind.box_width_mm
        for own in KIND_INPUTS:
            self._values[own.name, kind.id] = own.read(kind)
        for formula in formulas:
            if formula.name in _PER_KIND:
                self._values[formula.name, kind.id] = self._result(formula, kind.id)

    # Bays that are not all alike

    def _lay_out_one_by_one(self) -> None:
        value = self._values
        value["laid_out", None] = 1.0
        # One bay more than any that has a width of its own: the ordinary width is what goes on.
        bays = max(round(self.value("bay_count")), len(self._project.limits.bays)) + 1
        widths = [shape.box_width_mm for shape in self._shapes(bays)]
        value["laid_out_bays", None] = self.bays_that_fit(widths)
        self._evaluate()
        self._take_in(lay_out(self._shapes(), self._rules()))

    def _take_in(self, layout: Layout) -> None:
        """What follows from where the bays stand: their kinds, and the run's length."""
        met = KindList(BayKind(self.value("bay_box_width")))
        for bay in layout.bays:
            rows = bay.rows if bay.has_own_rows else 0
            met.meet(BayKind(bay.box_width_mm, rows), 1)
            for depth in sorted({zone.depth_mm for zone in bay.zones if zone.depth_mm > 0}):
                met.meet(BayKind(bay.box_width_mm, rows, depth))
        self.kinds = met.kinds
        others = self.kinds[1:]
        place = {
            "other_bays": float(sum(kind.bays for kind in others)),
            "sections": float(max(1, layout.sections)),
            "gaps": layout.gaps_mm,
            "closed_wall": layout.closed_mm,
        }
        self._values.update({(name, None): number for name, number in place.items()})
        self._evaluate()  # before the kinds, which rest on general values
        for kind in others:
            self._evaluate_kind(kind)
        self._families["clear_of_bays"] = tuple(self._values["clear_of_bays", kind.id] for kind in others)
        self._evaluate()

    def _shapes(self, bays: int | None = None) -> list[BayShape]:
        limits, fixed = self._project.limits, self._project.arrangement.box_widths_mm
        ordinary = self.value("bay_box_width")
        widths = [
            fixed[bay] if bay < len(fixed) else limits.wish(bay).box_width_mm or ordinary
            for bay in range(round(self.value("bay_count")) if bays is None else bays)
        ]
        return self._shapes_of(widths)

    def _shapes_of(self, box_widths_mm: Sequence[float]) -> list[BayShape]:
        wish = self._project.limits.wish
        return [BayShape(w, self._clear_width(w), wish(bay).rows) for bay, w in enumerate(box_widths_mm)]

    def _clear_width(self, box_width_mm: float) -> float:
        """A bay's clear width by the formulas, for any box width."""
        if box_width_mm not in self._clear_widths:
            self._clear_widths[box_width_mm] = self._with("bay_box_width", box_width_mm, "bay_clear_width")
        return self._clear_widths[box_width_mm]

    def _rows_under(self, height_mm: float) -> int:
        return round(self._with("height_limit", height_mm, "rows_that_fit"))

    def _with(self, name: str, value: float, wanted: str) -> float:
        """What `wanted` would be if an input had another value."""
        changed = dict(self._values)
        changed[name, None] = value
        values = Values(changed, self._families)
        for needed in _needs(wanted, name):
            scope = scope_of(self._names, values, self.kinds, None)
            changed[needed, None] = _BY_NAME[needed].expression.evaluate(scope)
        return changed[wanted, None]

    def _rules(self, rows: int | None = None) -> Rules:
        return Rules(
            space=self._project.space,
            upright_mm=self.value("upright_thickness"),
            left_end_mm=self.value("left_end"),
            right_end_mm=self.value("right_end"),
            left_panel_mm=self.value("left_panel") * self.value("end_panel_thickness"),
            right_panel_mm=self.value("right_panel") * self.value("end_panel_thickness"),
            own_uprights=self.value("own_uprights") > 0,
            room_mm=self.value("room_for_run"),
            rows=round(self.value("upright_rows")) if rows is None else rows,
            rows_under=self._rows_under,
        )


def _is_mixed(project: Project) -> bool:
    """Whether bays may differ from one another, or must go around something."""
    space, limits = project.space, project.limits
    return bool(space.zones or space.ceiling or limits.bays or project.arrangement.box_widths_mm)


@cache
def _needs(wanted: str, changed: str) -> tuple[str, ...]:
    """The formulas between a changed input and a wanted formula, in the order of declaration."""
    touched = {changed}
    order = []
    for formula in FORMULAS:
        if not formula.per_size and not formula.kind_only and touched & set(formula.expression.names):
            touched.add(formula.name)
            order.append(formula.name)
    below = {wanted}
    for name in reversed(order):
        if name in below:
            below |= set(_BY_NAME[name].expression.names)
    return tuple(name for name in order if name in below)


def derive(project: Project) -> Workings:
    """All dimensions of the project; pure."""
    return Workings(project)
