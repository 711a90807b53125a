"""How hard a screw or a nail can be pulled out of the side grain of wood.

    wood screw  W = 2850 · G² · D          lag (coach) screw  W = 1800 · G^1.5 · D^0.75
    nail        W = 1380 · G^2.5 · D       each in lb an inch of thread (of a nail: of its length) in the wood

Source: National Design Specification for Wood Construction (NDS) 2018, reference design values: wood screws eq. 12.2-2
and nails read second-hand, lag screws (eq. 12.2-1) from memory and confirmed by a published example. G is the specific
gravity of the wood, D the diameter in inches. Not for end grain, into which screws must not be loaded in withdrawal
(NDS 12.2.2.3). A wood screw must be at least six diameters deep.
"""

ULTIMATE = 108.25
"""Ultimate withdrawal in N a mm of diameter and of thread at G = 1: Wood Handbook, eq. 8-10 (from memory, 85 %)."""
INCH_MM = 25.4
POUND_FORCE_N = 4.4482216
LEAST_DIAMETERS = 6


def reference_n_per_mm(specific_gravity: float, diameter_mm: float) -> float:
    """Reference withdrawal value in N for every mm of thread in the side grain of the wood."""
    pounds_an_inch = 2850.0 * specific_gravity**2 * diameter_mm / INCH_MM
    return pounds_an_inch * POUND_FORCE_N / INCH_MM


def lag_n_per_mm(specific_gravity: float, diameter_mm: float) -> float:
    """Reference withdrawal value of a lag (coach) screw in N for every mm of thread, without its tip."""
    pounds_an_inch: float = 1800.0 * specific_gravity**1.5 * (diameter_mm / INCH_MM) ** 0.75
    return pounds_an_inch * POUND_FORCE_N / INCH_MM


def nail_n_per_mm(specific_gravity: float, diameter_mm: float) -> float:
    """Reference withdrawal value of a smooth nail in N for every mm of it in the wood that holds its point."""
    pounds_an_inch: float = 1380.0 * specific_gravity**2.5 * diameter_mm / INCH_MM
    return pounds_an_inch * POUND_FORCE_N / INCH_MM


def reference_n(specific_gravity: float, diameter_mm: float, thread_mm: float) -> float:
    """Reference withdrawal value of one screw in N; 0 where less than six diameters of thread are in the wood."""
    if thread_mm < LEAST_DIAMETERS * diameter_mm - 1e-9:
        return 0.0
    return reference_n_per_mm(specific_gravity, diameter_mm) * thread_mm


def ultimate_n(specific_gravity: float, diameter_mm: float, thread_mm: float) -> float:
    """At about how many N one screw tears out of side grain: p = 108.25·G²·D·L. Not a load to plan with."""
    return ULTIMATE * specific_gravity**2 * diameter_mm * thread_mm
