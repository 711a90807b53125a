"""The box sizes known while a table is read: the project's and those that accepted rows add.

Laws: a row finds its size by name, or by width, depth and height, or by both if they agree; two sizes with the same
three measures are one; a new size is kept only when its row is accepted.
"""

from collections.abc import Sequence

from pydantic import ValidationError

from baywright.model.identity import id_from_name
from baywright.model.inventory import BoxSize
from baywright.model.length import LengthUnit, format_exact
from baywright.model.project import MOST_BOX_SIZES
from baywright.storage.cells import BoxFields, RowReader
from baywright.storage.columns import LENGTH_COLUMNS, Column
from baywright.storage.faults import first_fault
from baywright.storage.matching import size_key
from baywright.storage.preview import CellFault
from baywright.storage.table import Row

_NEAR_MM = 1e-6
_FIELDS = {"name": Column.SIZE, "width_mm": Column.WIDTH, "depth_mm": Column.DEPTH, "height_mm": Column.HEIGHT}

Found = tuple[BoxSize | None, list[CellFault]]


class SizeList:
    """All sizes that a row may refer to."""

    def __init__(self, sizes: Sequence[BoxSize]) -> None:
        self._by_name = {size_key(size.name): size for size in reversed(sizes)}
        self._by_measures = {_measures(size.width_mm, size.depth_mm, size.height_mm): size for size in reversed(sizes)}
        self._ids = {size.id for size in sizes}
        self._row_of: dict[str, int] = {}
        self._new: list[BoxSize] = []

    @property
    def new_sizes(self) -> tuple[BoxSize, ...]:
        """The sizes that accepted rows add."""
        return tuple(self._new)

    def find(self, fields: BoxFields, cells: RowReader, row: Row) -> Found:
        """The size that a row means, known or new, or why there is none."""
        given = (fields.width_mm, fields.depth_mm, fields.height_mm)
        named = self._by_name.get(size_key(fields.size_name)) if fields.size_name else None
        if named is not None:
            return self._agreeing(named, given, cells, row)
        missing = [
            column for column, value in zip(LENGTH_COLUMNS, given, strict=True)
            if value is None and not cells.text(row, column)
        ]  # fmt: skip
        if missing:
            return None, [self._nothing_to_go_by(fields, missing, cells, row)]
        if None in given:
            return None, []  # a length that could not be read has its own fault
        return self._by_size(fields, cells, row)

    def keep(self, size: BoxSize, row_number: int) -> None:
        """Take a size of an accepted row into the list, if it is new."""
        if size.id in self._ids:
            return
        self._ids.add(size.id)
        self._new.append(size)
        self._row_of[size.id] = row_number
        self._by_name.setdefault(size_key(size.name), size)
        self._by_measures.setdefault(_measures(size.width_mm, size.depth_mm, size.height_mm), size)

    def _agreeing(self, named: BoxSize, given: Sequence[float | None], cells: RowReader, row: Row) -> Found:
        for column, value, own in zip(
            LENGTH_COLUMNS, given, (named.width_mm, named.depth_mm, named.height_mm), strict=True
        ):
            if value is not None and abs(value - own) > _NEAR_MM:
                origin = f" since row {self._row_of[named.id]}" if named.id in self._row_of else ""
                why = f"the size “{named.name}” has the {column} {_millimetres(own)}{origin}, not {_millimetres(value)}"
                return None, [cells.fault(row, column, why, "Give this size another name, or correct the measure.")]
        return named, []

    def _nothing_to_go_by(self, fields: BoxFields, missing: Sequence[Column], cells: RowReader, row: Row) -> CellFault:
        """The fault of a row whose size is not known and that does not give all three measures."""
        words = f"{', '.join(missing[:-1])} and {missing[-1]}" if len(missing) > 1 else missing[0]
        if fields.size_name:
            why = f"there is no box size “{fields.size_name}”"
            return cells.fault(
                row, Column.SIZE, why, f"Add this size to the project first, or give its {words} as well."
            )
        if len(missing) == len(LENGTH_COLUMNS):
            return cells.fault(row, Column.SIZE, "the box has no size", "Write the name of its size, or its measures.")
        verb = "is" if len(missing) == 1 else "are"
        return cells.fault(row, missing[0], f"the {words} of the box {verb} missing", f"Give the {words}.")

    def _by_size(self, fields: BoxFields, cells: RowReader, row: Row) -> Found:
        width, depth, height = fields.width_mm or 0.0, fields.depth_mm or 0.0, fields.height_mm or 0.0
        known = self._by_measures.get(_measures(width, depth, height))
        if known is not None:
            return known, []
        if len(self._ids) >= MOST_BOX_SIZES:
            why = f"a project holds at most {MOST_BOX_SIZES:,} box sizes"
            return None, [cells.fault(row, Column.SIZE, why, "Use sizes that are there already.")]
        exact = [format_exact(length, LengthUnit.MILLIMETRE).removesuffix(" mm") for length in (width, depth, height)]
        name = fields.size_name or " × ".join(exact) + " mm"
        try:
            size = BoxSize(
                id=id_from_name(name, "size", self._ids), name=name, width_mm=width, depth_mm=depth, height_mm=height
            )
        except ValidationError as error:
            place, why = first_fault(error)
            return None, [
                cells.fault(row, _FIELDS.get(place, Column.SIZE), why, "Boxes measure 10 to 3000 mm each way.")
            ]
        return size, []


def _measures(width_mm: float, depth_mm: float, height_mm: float) -> tuple[int, int, int]:
    return round(width_mm / _NEAR_MM), round(depth_mm / _NEAR_MM), round(height_mm / _NEAR_MM)


def _millimetres(length_mm: float) -> str:
    return format_exact(length_mm, LengthUnit.MILLIMETRE)
