"""Cutting plans of invented parts and stocks, taken to the saw: each part once, kerf, trim, grain, stock, cuts kept."""

from decimal import Decimal

from hypothesis import given, settings
from hypothesis import strategies as st

from baywright.making.cutting.plan import cutting_plan
from baywright.model.construction import EdgingKind
from baywright.model.cutting import CuttingPlan
from baywright.model.machining import Side
from baywright.model.making import Grain, Part
from baywright.model.project import Project
from baywright.model.stock import Bar, BarUse, BoardRole, CuttingRules, Material, Sheet
from tests.oracle.sawshop import made, part, sheet, shop
from tests.oracle.sawyer import check_plan

THIN = Material(id="thin", name="Fibreboard 9 mm", has_grain=False, roles=(BoardRole.BACK,))
PLY = Material(id="ply", name="Plywood 18 mm", roles=(BoardRole.UPRIGHT, BoardRole.BRACE))

lengths = st.one_of(st.integers(20, 1400).map(float), st.floats(0.5, 2600).map(lambda mm: round(mm, 2)))
prices = st.sampled_from([None, Decimal(0), Decimal("12.50"), Decimal("48.3333"), Decimal(75)])
counts = st.one_of(st.none(), st.integers(0, 4))


@st.composite
def parts(draw: st.DrawFn) -> list[Part]:
    found = []
    for number in range(draw(st.integers(1, 7))):
        role = draw(st.sampled_from([BoardRole.UPRIGHT, BoardRole.BRACE, BoardRole.BACK]))
        found.append(
            part(
                f"{'URB'[number % 3]}{number}", draw(lengths), draw(lengths), draw(st.integers(1, 5)),
                grain=draw(st.sampled_from(Grain)), role=role,
                material="thin" if role is BoardRole.BACK else "ply",
                banded=tuple(draw(st.sets(st.sampled_from([Side.FRONT, Side.REAR, Side.START, Side.END]), max_size=2))),
                thickness_mm=9.0 if role is BoardRole.BACK else 18.0,
            )
        )  # fmt: skip
    return found


@st.composite
def sheets(draw: st.DrawFn) -> list[Sheet]:
    return [
        sheet(
            f"sheet-{number}", material_id=draw(st.sampled_from(["ply", "thin"])),
            length_mm=draw(st.sampled_from([400.0, 1220.5, 1525.0, 2500.0])),
            width_mm=draw(st.sampled_from([15.0, 300.0, 1250.0, 1525.0])), price=draw(prices), quantity=draw(counts),
            is_owned=draw(st.booleans()), is_trimmed=draw(st.booleans()),
        )
        for number in range(draw(st.integers(0, 5)))
    ]  # fmt: skip


@st.composite
def shops(draw: st.DrawFn) -> Project:
    rules = CuttingRules(
        kerf_mm=draw(st.sampled_from([0.0, 2.8, 3.2, 4.45])), trim_mm=draw(st.sampled_from([0.0, 2.0, 10.0])),
        stages=draw(st.sampled_from([None, 2, 3])), rest_length_mm=draw(st.sampled_from([200.0, 600.0])),
        rest_width_mm=draw(st.sampled_from([100.0, 700.0])), rails_from_bars=draw(st.booleans()),
    )  # fmt: skip
    bars = tuple(
        Bar(
            id=f"bar-{number}", use=draw(st.sampled_from(BarUse)), length_mm=draw(st.sampled_from([900.0, 2400.0])),
            width_mm=draw(st.sampled_from([None, 11.0, 20.0, 100.0])), price=draw(prices), quantity=draw(counts),
            is_owned=draw(st.booleans()),
        )
        for number in range(draw(st.integers(0, 3)))
    )  # fmt: skip
    edging = draw(st.sampled_from([EdgingKind.BAND, EdgingKind.LIPPING]))
    return shop(*draw(sheets()), materials=[PLY, THIN], bars=bars, rules=rules, edging=edging)


@given(shops(), parts())
@settings(max_examples=60)
def test_whatever_is_cut_can_be_sawn_and_what_is_not_is_told(project: Project, wanted: list[Part]) -> None:
    told: list[CuttingPlan] = []
    plan = cutting_plan(project, made(*wanted), effort=40, progress=told.append)
    check_plan(project, wanted, plan)
    check_plan(project, wanted, told[0])
    assert plan.is_finished
