"""The options as a table for a terminal: one numbered line for each shape that a builder can choose."""

from baywright.model.length import LengthUnit, format_length
from baywright.model.option import Option

NOTHING_FITS = "No shape of the run holds every box within the limits; “baywright plan” says what stands in the way."
UNKNOWN = "not known yet"
QUICK = "Sheets and cost are of a quick layout of the parts; “baywright cut” may find a cheaper one."
_HEADINGS = (
    *("No.", "Bays", "Rows", "Worktop", "Run", "Left over", "Overhang front / side", "Uprights", "Runner", "Free rows"),
    *("Handling", "Sheets", "Cost", ""),
)


def options_text(options: tuple[Option, ...], unit: LengthUnit, first: int = 1) -> str:
    """The options in their order, numbered from `first`; the present shape is marked."""
    rows = [_HEADINGS, *(_row(number, option, unit) for number, option in enumerate(options, first))]
    widths = [max(len(row[column]) for row in rows) for column in range(len(_HEADINGS))]
    lines = ("  ".join(cell.ljust(width) for cell, width in zip(row, widths, strict=True)).rstrip() for row in rows)
    is_told = any(option.sheets is not None for option in options)
    return "\n".join([*lines, QUICK] if is_told else lines)


def _row(number: int, option: Option, unit: LengthUnit) -> tuple[str, ...]:
    def length(length_mm: float) -> str:
        return format_length(length_mm, unit)

    return (
        str(number),
        str(option.bays),
        str(option.rows),
        length(option.unit_height_mm),
        length(option.run_length_mm),
        length(option.left_over_mm),
        f"{length(option.overhang_front_mm)} / {length(option.overhang_side_mm)}",
        option.uprights.value,
        length(option.runner_length_mm),
        f"{option.free_rows:,}",
        f"{option.handling:,.1f}",
        UNKNOWN if option.sheets is None else f"{option.sheets:,}",
        UNKNOWN if option.cost is None else f"{option.cost:,.2f}",
        _remark(option),
    )


def _remark(option: Option) -> str:
    if not option.is_present:
        return ""
    return "present shape, beaten by another" if option.is_beaten else "present shape"
