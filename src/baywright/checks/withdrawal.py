"""How hard a wood screw can be pulled out of the face of a board.

    W = 2850 · G² · D   (lb an inch of thread in the wood)

Source: National Design Specification for Wood Construction (NDS) 2018, eq. 12.2-2, a reference design value; read
second-hand. G is the specific gravity of the wood, D the screw's diameter in inches. Not for end grain, into which
screws must not be loaded in withdrawal (NDS 12.2.2.3). The penetration must be at least six diameters.
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


def reference_n(specific_gravity: float, diameter_mm: float, thread_mm: float) -> float:
    """Reference withdrawal value of one screw in N; 0 where less than six diameters of thread are in the wood."""
    if thread_mm < LEAST_DIAMETERS * diameter_mm - 1e-9:
        return 0.0
    return reference_n_per_mm(specific_gravity, diameter_mm) * thread_mm


def ultimate_n(specific_gravity: float, diameter_mm: float, thread_mm: float) -> float:
    """At about how many N one screw tears out of side grain: p = 108.25·G²·D·L. Not a load to plan with."""
    return ULTIMATE * specific_gravity**2 * diameter_mm * thread_mm
