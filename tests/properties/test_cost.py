"""Laws of costs: shares add up exactly, whatever the run, the prices and the currency."""

from decimal import Decimal

from hypothesis import given, settings
from hypothesis import strategies as st

from baywright.making import manufacture
from baywright.making.costing import cost
from baywright.making.frame import frame_of
from baywright.making.shares import divided, pieces_in, reaches
from baywright.model.catalogue import CatalogueItem, HardwareKind, HardwareStock
from baywright.model.money import Pricing
from baywright.model.project import Project
from baywright.workings import derive
from tests.properties.test_parts import projects

money = st.integers(0, 10**7).map(lambda hundredths: Decimal(hundredths) / 100)


@given(money, st.lists(st.floats(0, 1e6), min_size=1, max_size=12), st.sampled_from(["1", "0.01", "0.001"]))
def test_divided_money_adds_up_and_is_fair(amount: Decimal, weights: list[float], coin: str) -> None:
    shares = divided(amount, weights, Decimal(coin))
    assert sum(shares) == amount
    assert min(shares) >= 0
    total = sum(weights)
    for share, weight in zip(shares, weights, strict=True):
        fair = float(amount) * weight / total if total else float(amount) / len(weights)
        assert abs(float(share) - fair) < float(coin) * len(weights) + 1e-6


@given(projects())
@settings(max_examples=25)
def test_every_piece_belongs_to_bays(project: Project) -> None:
    workings = derive(project)
    frame = frame_of(project, workings)
    bays = reaches(frame)
    assert set(bays) == {span.number for span in frame.spans}
    assert abs(sum(right - left for left, right in bays.values()) - sum(b - a for a, b in frame.carcasses_mm)) < 1e-6
    for part in manufacture(project, workings).parts:
        held = pieces_in(part, bays)
        assert abs(sum(held.values()) - part.quantity) < 1e-6
        assert min(held.values()) >= 0


@st.composite
def priced(draw: st.DrawFn) -> Project:
    price = st.one_of(st.none(), st.integers(0, 5000).map(lambda n: Decimal(n) / 1000))
    kinds = (HardwareKind.GLUE, HardwareKind.FINISH, HardwareKind.WALL_FIXING)
    items = [
        CatalogueItem(id=f"item-{n}", kind=kind, name=f"Item {n}", price=draw(price), pack_size=draw(st.floats(0.1, 9)))
        for n, kind in enumerate(kinds)
    ]
    pricing = Pricing(
        currency=draw(st.sampled_from(["EUR", "JPY", "KWD"])), prices_include_vat=draw(st.booleans()),
        vat_percent=Decimal(draw(st.sampled_from(["0", "7.7", "19", "25.5"]))),
    )  # fmt: skip
    return draw(projects()).replace(hardware=HardwareStock(catalogue=tuple(items)), pricing=pricing)


@given(priced())
@settings(max_examples=25)
def test_lines_materials_and_bays_add_up_to_the_same(project: Project) -> None:
    found = cost(project, manufacture(project), None)
    known = sum((line.cost for line in found.lines if line.cost is not None), Decimal(0))
    entered = found.gross if found.prices_include_vat else found.net
    assert known == entered
    assert sum((share.cost for share in found.by_material), Decimal(0)) == entered
    assert sum((share.cost for share in found.by_bay), Decimal(0)) == entered
    assert found.net + found.vat == found.gross
    assert sum(share.missing for share in found.by_material) == sum(line.cost is None for line in found.lines)
    for shares in (found.by_material, found.by_bay):
        assert abs(sum(share.mass_kg for share in shares) - found.mass_kg) < 1e-6
