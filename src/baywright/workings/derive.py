"""From a project document to all its dimensions, each with value, working and spreadsheet formula.

Laws: pure and cheap; every formula is evaluated once, in the order of declaration; entries stand in reading order
(groups as people work them out, inputs last).
"""

from functools import cached_property

from baywright.model.length import LengthUnit
from baywright.model.project import Project
from baywright.workings.entry import Entry, key_of
from baywright.workings.expression import Scope
from baywright.workings.formulas import FORMULAS, Formula
from baywright.workings.inputs import FAMILY_INPUTS, INPUTS, SIZE_INPUTS, FamilyInput, Input, SizeInput

MILLIMETRES_PER_INCH = 25.4


class Workings:
    """All dimensions of one project document."""

    def __init__(self, project: Project) -> None:
        self._unit = project.unit
        self._size_ids = tuple(size.id for size in project.box_sizes)
        self._size_names = {size.id: size.name for size in project.box_sizes}
        self._values: dict[tuple[str, str | None], float] = {}
        self._families = {family.name: family.read(project) for family in FAMILY_INPUTS}
        for given in INPUTS:
            self._values[given.name, None] = given.read(project)
        for size in project.box_sizes:
            for size_input in SIZE_INPUTS:
                self._values[size_input.name, size.id] = size_input.read(size)
        for formula in FORMULAS:
            for size_id in self._size_ids if formula.per_size else (None,):
                # Values only: words and spreadsheet text are made when somebody asks for them.
                scope = self._scope(size_id)
                self._values[formula.name, size_id] = formula.expression.evaluate(scope)

    def value(self, name: str, size_id: str | None = None) -> float:
        """The value of an input or formula, in its unit; KeyError where there is no such name or size."""
        return self._values[name, size_id]

    def entry(self, name: str, size_id: str | None = None) -> Entry:
        """The entry of a name; KeyError where there is none."""
        return self._by_key[key_of(name, size_id)]

    def by_key(self, key: str) -> Entry:
        """The entry with that key; KeyError where there is none."""
        return self._by_key[key]

    @cached_property
    def entries(self) -> tuple[Entry, ...]:
        """Every entry: derived dimensions group by group, then the inputs."""
        derived = [
            self._derived(f, size_id) for f in FORMULAS for size_id in (self._size_ids if f.per_size else (None,))
        ]
        return (*derived, *self._input_entries())

    @cached_property
    def _by_key(self) -> dict[str, Entry]:
        return {entry.key: entry for entry in self.entries}

    def _scope(self, size_id: str | None) -> Scope:
        return Scope(
            values=_SizedValues(self._values, size_id),
            families=self._families,
            word=lambda name: f"{_LABELS[name]} {self._number(self._sized(name, size_id), _UNITS[name])}",
            number=lambda value: self._number(value, "mm"),
            cell=lambda name: self._cell(name, size_id),
            family_cells=lambda name: tuple(f"{name}_{i + 1}" for i in range(len(self._families[name]))),
        )

    def _sized(self, name: str, size_id: str | None) -> float:
        return _SizedValues(self._values, size_id)[name]

    def _cell(self, name: str, size_id: str | None) -> str:
        if size_id is None or name not in _PER_SIZE:
            return name
        return f"{name}__size_{self._size_ids.index(size_id) + 1}"

    def _number(self, value: float, unit: str) -> str:
        if unit == "mm" and self._unit is LengthUnit.INCH:
            return f"{value / MILLIMETRES_PER_INCH:.3f}".rstrip("0").rstrip(".") + " in"
        return f"{value:.2f}".rstrip("0").rstrip(".").replace("-", "−")

    def _quantity(self, value: float, unit: str) -> str:
        number = self._number(value, unit)
        return number if not unit or (unit == "mm" and self._unit is LengthUnit.INCH) else f"{number} {unit}"

    def _derived(self, formula: Formula, size_id: str | None) -> Entry:
        scope = self._scope(size_id)
        value = self._values[formula.name, size_id]
        label = formula.label if size_id is None else f"{formula.label}, {self._size_names[size_id]}"
        words = formula.expression.words(scope)
        result = self._quantity(value, formula.unit)
        keys = [key_of(name, size_id if name in _PER_SIZE else None) for name in formula.expression.names]
        return Entry(
            key=key_of(formula.name, size_id),
            name=formula.name,
            size_id=size_id,
            label=label,
            unit=formula.unit,
            value=value,
            group=formula.group,
            is_input=False,
            working=f"{label} = {words} = {result}",
            inputs=tuple(key for key in keys if key not in self._families),
            field="",
            cell=self._cell(formula.name, size_id),
            excel=formula.expression.spreadsheet(scope),
            note=formula.note,
        )

    def _input_entries(self) -> list[Entry]:
        entries = [
            self._input(given.name, given.name, None, given.label, given.unit, given.group, given.field, given.note)
            for given in INPUTS
        ]
        for family in FAMILY_INPUTS:
            for number, value in enumerate(self._families[family.name], 1):
                name = f"{family.name}_{number}"
                label = f"{family.label} ({number})"
                entries.append(self._input(name, name, None, label, family.unit, family.group, family.field, "", value))
        for size_id in self._size_ids:
            for given_size in SIZE_INPUTS:
                name, field = given_size.name, f"box_sizes[{size_id}].{given_size.field}"
                label = f"{given_size.label}, {self._size_names[size_id]}"
                cell = self._cell(name, size_id)
                entries.append(self._input(name, cell, size_id, label, given_size.unit, given_size.group, field, ""))
        return entries

    def _input(
        self,
        name: str,
        cell: str,
        size_id: str | None,
        label: str,
        unit: str,
        group: str,
        field: str,
        note: str,
        value: float | None = None,
    ) -> Entry:
        value = self._values[name, size_id] if value is None else value
        return Entry(
            key=key_of(name, size_id),
            name=name,
            size_id=size_id,
            label=label,
            unit=unit,
            value=value,
            group=group,
            is_input=True,
            working=f"{label} {self._quantity(value, unit)}",
            inputs=(),
            field=field,
            cell=cell,
            excel="",
            note=note,
        )


class _SizedValues(dict[str, float]):
    """Reads a name at one box size: the size's own value where it has one, else the general one."""

    def __init__(self, values: dict[tuple[str, str | None], float], size_id: str | None) -> None:
        super().__init__()
        self._all = values
        self._size_id = size_id

    def __missing__(self, name: str) -> float:
        own = self._all.get((name, self._size_id))
        return self._all[name, None] if own is None else own


_DECLARED: tuple[Input | SizeInput | FamilyInput | Formula, ...] = (*INPUTS, *SIZE_INPUTS, *FAMILY_INPUTS, *FORMULAS)
_LABELS = {item.name: item.label for item in _DECLARED}
_UNITS = {item.name: item.unit for item in _DECLARED}
_PER_SIZE = {given.name for given in SIZE_INPUTS} | {formula.name for formula in FORMULAS if formula.per_size}


def derive(project: Project) -> Workings:
    """All dimensions of the project; pure."""
    return Workings(project)
