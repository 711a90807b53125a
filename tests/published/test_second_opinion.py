"""The beam formulas against a general-purpose algebra library that solves the same beams from the load on.

SymPy's `Beam` integrates load, shear, moment and slope by singularity functions; it knows nothing of our coefficients.
"""

import pytest
from sympy import Rational, Symbol
from sympy.physics.continuum_mechanics.beam import Beam

from baywright.checks.beam import Case, Section, deflection_mm

SPAN, WIDTH, THICKNESS, ELASTIC = 900, 300, 18, 7000
SECOND_MOMENT = WIDTH * THICKNESS**3 // 12


def test_two_spans_with_the_load_on_one() -> None:
    """The library's beam on three supports, loaded on the left span only; greatest deflection found by scanning."""
    beam = Beam(2 * SPAN, ELASTIC, SECOND_MOMENT)
    reactions = [Symbol(name) for name in ("RA", "RB", "RC")]
    for number, reaction in enumerate(reactions):
        beam.apply_load(reaction, number * SPAN, -1)
    beam.bc_deflection = [(number * SPAN, 0) for number in range(3)]
    beam.apply_load(-Rational(196) / SPAN, 0, 0, end=SPAN)
    beam.solve_for_reaction_loads(*reactions)
    curve = beam.deflection()
    greatest = max(abs(float(curve.subs(beam.variable, x))) for x in range(0, SPAN, 5))
    ours = deflection_mm(Case.UNIFORM_TWO_SPANS, 196.0, SPAN, Section(WIDTH, THICKNESS), ELASTIC)
    assert ours == pytest.approx(greatest, rel=1e-3)


def deflected(fixed: bool, *, point_n: float = 0.0, spread_n: float = 0.0, free_end: bool = False) -> float:
    """The greatest deflection of a beam by the library, in mm."""
    beam = Beam(SPAN, ELASTIC, SECOND_MOMENT)
    left, right = Symbol("R0"), Symbol("RL")
    unknown = [left]
    beam.apply_load(left, 0, -1)
    beam.bc_deflection = [(0, 0)]
    if fixed or free_end:
        moment = Symbol("M0")
        beam.apply_load(moment, 0, -2)
        beam.bc_slope = [(0, 0)]
        unknown.append(moment)
    if not free_end:
        beam.apply_load(right, SPAN, -1)
        beam.bc_deflection.append((SPAN, 0))
        unknown.append(right)
        if fixed:
            moment = Symbol("ML")
            beam.apply_load(moment, SPAN, -2)
            beam.bc_slope.append((SPAN, 0))
            unknown.append(moment)
    if point_n:
        beam.apply_load(-Rational(point_n), SPAN if free_end else Rational(SPAN, 2), -1)
    if spread_n:
        beam.apply_load(-Rational(spread_n) / SPAN, 0, 0, end=SPAN)
    beam.solve_for_reaction_loads(*unknown)
    at = SPAN if free_end else Rational(SPAN, 2)
    return abs(float(beam.deflection().subs(beam.variable, at)))


@pytest.mark.parametrize(
    ("case", "fixed", "free_end", "is_point"),
    [
        (Case.UNIFORM_SIMPLE, False, False, False),
        (Case.UNIFORM_CLAMPED, True, False, False),
        (Case.POINT_SIMPLE, False, False, True),
        (Case.POINT_CLAMPED, True, False, True),
        (Case.UNIFORM_CANTILEVER, False, True, False),
        (Case.POINT_CANTILEVER, False, True, True),
    ],
)
def test_the_library_bends_the_same_beams_as_far(case: Case, fixed: bool, free_end: bool, is_point: bool) -> None:
    load = 196.0
    opinion = deflected(fixed, free_end=free_end, **{"point_n" if is_point else "spread_n": load})
    assert deflection_mm(case, load, SPAN, Section(WIDTH, THICKNESS), ELASTIC) == pytest.approx(opinion, rel=1e-6)
