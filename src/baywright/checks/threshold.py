"""The moment that furniture had to withstand by the method of 2022, as a measure beside our own statics.

Source: the United States' rule of 2022 for clothing storage units (87 FR 72598, 16 CFR 1261.4): the greatest of three
threshold moments, with every drawer that no interlock holds fully open and filled with 8.5 lb/ft³ (method read
second-hand, the formulas from memory, 85 %). The third, of somebody on an open door, is left out: a run has no doors.
The rule was replaced by ASTM F2057-23 on 1 September 2023 (88 FR 28403), and what is built in or is no clothing storage
is outside both; so its figure is shown, never judged by.
"""

FOOT_MM = 304.8
FOOT_POUND_NM = 1.3558179483
HIGHEST_HANDHOLD_MM = 56 * 25.4
FILLING_KG_PER_LITRE = 8.5 * 0.45359237 / 28.316846592
"""8.5 lb a cubic foot."""
IN_SCOPE_HEIGHT_MM, IN_SCOPE_KG, IN_SCOPE_LITRES = 686.0, 13.6, 90.6
"""From these on ASTM F2057-23 applies to clothing storage: 27 in, 30 lb, 3.2 ft³; read second-hand."""
SOURCE = "threshold: 16 CFR 1261.4 of 2022, since replaced (formula from memory, 85 %), for comparison only"


def extended_nm(before_pivot_mm: float) -> float:
    """Somebody on an open drawer: 55.3·X + 26.6 lbf·ft, X from the pivot to the front of the drawer."""
    return (55.3 * before_pivot_mm / FOOT_MM + 26.6) * FOOT_POUND_NM


def handhold_nm(height_mm: float) -> float:
    """Somebody pulling at the highest handhold: 17.2·Z lbf·ft, Z its height over the floor (56 in at most)."""
    return 17.2 * min(height_mm, HIGHEST_HANDHOLD_MM) / FOOT_MM * FOOT_POUND_NM


def threshold_nm(before_pivot_mm: float, handhold_mm: float) -> float:
    """The greater of both: X of the drawer that comes out farthest, Z of the highest handhold."""
    return max(extended_nm(before_pivot_mm), handhold_nm(handhold_mm))


def scope(height_mm: float, empty_kg: float, *, is_fixed: bool) -> str:
    """Which standards test such furniture, and that this run is outside or only like what they mean."""
    is_large = height_mm >= IN_SCOPE_HEIGHT_MM and empty_kg >= IN_SCOPE_KG
    size = "as high and heavy as what" if is_large else "lower or lighter than what"
    built_in = "what is fixed to a wall is outside some of them" if is_fixed else "a workshop wall is outside most"
    return (
        "ASTM F2057-23 (16 CFR 1261, clothing storage that stands free), EN 14749 with EN 16122 and ISO 7170 test such "
        f"furniture; this is {size} the first of them means; {built_in}; none of these tests is applied here"
    )
