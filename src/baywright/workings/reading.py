"""What the names of formulas mean at one place, and the entries that are read from the evaluated formulas.

Laws: a name is looked up at the box size or kind of bay in question first, then in general; the three readings of a
formula (value, words, spreadsheet) use one scope, so they speak of the same values.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from baywright.model.length import LengthUnit
from baywright.model.project import Project
from baywright.workings.entry import Entry, key_of
from baywright.workings.expression import Scope
from baywright.workings.formula import Formula
from baywright.workings.formulas import FORMULAS
from baywright.workings.inputs import (
    FAMILY_INPUTS,
    INPUTS,
    KIND_INPUTS,
    OWN_INPUTS,
    SIZE_INPUTS,
    FamilyInput,
    Input,
    KindInput,
    PlaceInput,
    SizeInput,
)
from baywright.workings.kinds import BayKind

MILLIMETRES_PER_INCH = 25.4

_DECLARED: tuple[Input | SizeInput | KindInput | PlaceInput | FamilyInput | Formula, ...] = (
    *INPUTS, *SIZE_INPUTS, *OWN_INPUTS, *FAMILY_INPUTS, *FORMULAS,
)  # fmt: skip
_LABELS = {item.name: item.label for item in _DECLARED}
_UNITS = {item.name: item.unit for item in _DECLARED}
_PER_SIZE = {given.name for given in SIZE_INPUTS} | {formula.name for formula in FORMULAS if formula.per_size}
_PER_KIND = (
    {formula.name for formula in FORMULAS if formula.per_kind or formula.kind_only}
    | {given.name for given in KIND_INPUTS}
    | {"bay_box_width"}
)


@dataclass(frozen=True)
class Values:
    """Evaluated values by name and box size or kind of bay (None: in general), and lists of values by name."""

    numbers: dict[tuple[str, str | None], float]
    families: dict[str, tuple[float, ...]]


class Names:
    """How things are called: box sizes, cells, numbers in the document's unit."""

    def __init__(self, project: Project) -> None:
        self.project = project
        self.unit = project.unit
        self.size_ids = tuple(size.id for size in project.box_sizes)
        self.size_names = {size.id: size.name for size in project.box_sizes}

    def key(self, name: str, of: str | None) -> str:
        """The key of an entry; `of` is left out where the name has one value for all."""
        return key_of(name, of if of and (name in _PER_SIZE or name in _PER_KIND) else None)

    def cell(self, name: str, of: str | None, kinds: Sequence[BayKind]) -> str:
        """The spreadsheet name of a value."""
        if of is None:
            return name
        if name in _PER_SIZE and of in self.size_names:
            return f"{name}__size_{self.size_ids.index(of) + 1}"
        if name in _PER_KIND and of not in self.size_names:
            return f"{name}__kind_{[kind.id for kind in kinds].index(of)}"
        return name

    def number(self, value: float, unit: str) -> str:
        """A bare number; inches with their sign."""
        if unit == "mm" and self.unit is LengthUnit.INCH:
            return f"{value / MILLIMETRES_PER_INCH:.3f}".rstrip("0").rstrip(".") + " in"
        return f"{value:.2f}".rstrip("0").rstrip(".").replace("-", "−")

    def quantity(self, value: float, unit: str) -> str:
        """A number with its unit."""
        number = self.number(value, unit)
        return number if not unit or (unit == "mm" and self.unit is LengthUnit.INCH) else f"{number} {unit}"


class _ValuesAt(dict[str, float]):
    """Reads a name at one box size or kind of bay: its own value where it has one, else the general one."""

    def __init__(self, values: Values, of: str | None) -> None:
        super().__init__()
        self._numbers = values.numbers
        self._of = of

    def __missing__(self, name: str) -> float:
        own = self._numbers.get((name, self._of))
        return self._numbers[name, None] if own is None else own


def scope_of(names: Names, values: Values, kinds: Sequence[BayKind], of: str | None) -> Scope:
    """What names mean for a box size or a kind of bay (None: in general)."""
    at = _ValuesAt(values, of)

    def family_cells(name: str) -> tuple[str, ...]:
        if name in _PER_KIND:
            return tuple(names.cell(name, kind.id, kinds) for kind in kinds[1:])
        return tuple(f"{name}_{i + 1}" for i in range(len(values.families[name])))

    return Scope(
        values=at,
        families=values.families,
        word=lambda name: f"{_LABELS[name]} {names.number(at[name], _UNITS[name])}",
        number=lambda value: names.number(value, "mm"),
        cell=lambda name: names.cell(name, of, kinds),
        family_cells=family_cells,
    )


def read_entries(names: Names, kinds: Sequence[BayKind], values: Values) -> tuple[Entry, ...]:
    """Every entry: derived dimensions as declared, for all sizes and kinds that differ in them, then the inputs."""
    return _Reader(names, kinds, values).entries()


class _Reader:
    """Makes the entries of one document."""

    def __init__(self, names: Names, kinds: Sequence[BayKind], values: Values) -> None:
        self._names = names
        self._kinds = kinds
        self._values = values
        self._kind_words = {kind.id: kind.words(names.unit) for kind in kinds[1:]}

    def entries(self) -> tuple[Entry, ...]:
        """All of them, in reading order."""
        derived = [self._derived(formula, of) for formula in FORMULAS for of in self._places(formula)]
        return (*derived, *self._general(), *self._listed(), *self._of_sizes(), *self._of_kinds())

    def _places(self, formula: Formula) -> tuple[str | None, ...]:
        if formula.per_size:
            return self._names.size_ids
        kinds = tuple(kind.id for kind in self._kinds[1:])
        if formula.kind_only:
            return kinds
        return (None, *kinds) if formula.per_kind else (None,)

    def _label(self, label: str, of: str | None) -> str:
        if of is None:
            return label
        return f"{label}, {self._names.size_names.get(of) or self._kind_words[of]}"

    def _derived(self, formula: Formula, of: str | None) -> Entry:
        scope = scope_of(self._names, self._values, self._kinds, of)
        value = self._values.numbers[formula.name, of]
        label = self._label(formula.label, of)
        words = formula.expression.words(scope)
        result = self._names.quantity(value, formula.unit)
        read = [name for name in formula.expression.names if name not in self._values.families]
        return Entry(
            key=key_of(formula.name, of),
            name=formula.name,
            size_id=of if formula.per_size else None,
            kind_id=None if formula.per_size else of,
            label=label,
            unit=formula.unit,
            value=value,
            group=formula.group,
            is_input=False,
            working=f"{label} = {words} = {result}",
            inputs=tuple(key_of(name, of if (name, of) in self._values.numbers else None) for name in read),
            field="",
            cell=self._cell(formula.name, of),
            excel=formula.expression.spreadsheet(scope),
            note=formula.note,
        )

    def _general(self) -> list[Entry]:
        given = [self._input(item, item.name, self._field(item), self._note(item)) for item in INPUTS]
        return given + [self._input(item, item.name, "", item.note) for item in OWN_INPUTS]

    def _field(self, item: Input) -> str:
        """Where it can be changed; a thickness that was measured is changed by measuring."""
        is_measured = item.field.startswith("construction.boards.") and item.told and item.told(self._names.project)
        return "" if is_measured else item.field

    def _note(self, item: Input) -> str:
        return " ".join(filter(None, (item.note, item.told(self._names.project) if item.told else "")))

    def _listed(self) -> list[Entry]:
        found = []
        for family in FAMILY_INPUTS:
            for number, value in enumerate(self._values.families[family.name], 1):
                name = f"{family.name}_{number}"
                found.append(self._given(family, name, None, f"{family.label} ({number})", family.field, "", value))
        return found

    def _of_sizes(self) -> list[Entry]:
        return [
            self._input(item, self._cell(item.name, size_id), f"box_sizes[{size_id}].{item.field}", "", size_id)
            for size_id in self._names.size_ids
            for item in SIZE_INPUTS
        ]

    def _of_kinds(self) -> list[Entry]:
        width = next(item for item in INPUTS if item.name == "bay_box_width")
        items: tuple[Input | KindInput, ...] = (width, *KIND_INPUTS)
        return [
            self._input(item, self._cell(item.name, kind.id), "", item.note, kind.id)
            for kind in self._kinds[1:]
            for item in items
        ]

    def _cell(self, name: str, of: str | None) -> str:
        return self._names.cell(name, of, self._kinds)

    def _input(
        self, item: Input | SizeInput | KindInput | PlaceInput, cell: str, field: str, note: str, of: str | None = None
    ) -> Entry:
        value = self._values.numbers[item.name, of]
        return self._given(item, cell, of, self._label(item.label, of), field, note, value)

    def _given(
        self,
        item: Input | SizeInput | KindInput | PlaceInput | FamilyInput,
        cell: str,
        of: str | None,
        label: str,
        field: str,
        note: str,
        value: float,
    ) -> Entry:
        name = cell if isinstance(item, FamilyInput) else item.name
        is_size = isinstance(item, SizeInput)
        return Entry(
            key=key_of(name, of),
            name=name,
            size_id=of if is_size else None,
            kind_id=None if is_size else of,
            label=label,
            unit=item.unit,
            value=value,
            group=item.group if of is None or is_size else "Kinds of bays",
            is_input=True,
            working=f"{label} {self._names.quantity(value, item.unit)}",
            inputs=(),
            field=field,
            cell=cell,
            excel="",
            note=note,
        )
