"""Millimetres as the whole numbers that cutting is reckoned in: hundredths of a mm.

Law: a length that was given to a hundredth of a mm comes back as it was.
"""

A_MM = 100


def units(length_mm: float) -> int:
    """A length in mm as so many hundredths, to the nearest."""
    return round(length_mm * A_MM)


def millimetres(length: int) -> float:
    """So many hundredths in mm."""
    return length / A_MM
