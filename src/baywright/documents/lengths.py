"""Lengths as documents write them: short beside dimension lines, full in lists of inch projects."""

from baywright.model.length import LengthUnit, format_length


def plain_length(length_mm: float, unit: LengthUnit) -> str:
    """The length without unit and rounding error, for a drawing whose heading names the unit: `396.5`, `15 19/32"`.

    Millimetres are written to one decimal, inches to the nearest 1/32.
    """
    if unit is LengthUnit.INCH:
        return format_length(length_mm, unit).partition(" (")[0]
    return format_length(round(length_mm, 1), unit).removesuffix(" mm")
