"""What shapes on offer need: sheets as soon as every part is cut, the cost once no price is missing."""

from decimal import Decimal

from baywright.app.commands import SetField
from baywright.app.edits.hardware import AdjustItem
from baywright.app.edits.materials import AdoptMaterial
from baywright.app.edits.stock import AddSheet
from baywright.app.purchases import Purchases
from baywright.app.session import Session
from baywright.making import manufacture
from baywright.making.cutting.plan import cutting_plan
from baywright.model.inventory import Box, BoxSize
from baywright.model.project import Project
from baywright.model.space import Space
from baywright.model.stock import BoardRole, Sheet
from baywright.planner.choices.options import Purchase
from baywright.workings.material import material_of


def shop() -> Project:
    """Eight boxes before a wall of six bays, not planned yet."""
    size = BoxSize(id="low", name="Low", width_mm=396, depth_mm=297, height_mm=120)
    boxes = tuple(Box(id=f"box-{n}", label=f"Box {n}", size_id="low", loaded_mass_kg=n) for n in range(1, 9))
    return Project(space=Space(length_mm=3000, height_limit_mm=900), box_sizes=(size,), boxes=boxes)


def looked(session: Session) -> Session:
    session.request_plan()
    session.options.request()
    return session


def test_every_option_tells_its_sheets_and_no_cost_while_prices_are_missing() -> None:
    session = looked(Session(shop(), synchronous=True))
    assert session.options.found
    assert all(option.sheets and option.cost is None for option in session.options.found)
    for option in session.options.found:
        shaped, derived = session.options.in_shape(option)
        assert derived.manufacture is not None
        assert option.sheets == cutting_plan(shaped, derived.manufacture, effort=0).sheets_bought


def test_prices_that_change_outdate_the_options() -> None:
    session = looked(Session(shop(), synchronous=True))
    session.do(SetField("stock.rules.kerf_mm", 4.0))
    assert session.options.found is None


def test_sheets_are_not_told_where_a_part_cannot_be_cut() -> None:
    session = looked(Session(shop(), synchronous=True))
    granted = material_of(session.project, BoardRole.UPRIGHT).id
    session.do(AdoptMaterial(granted))
    session.do(AddSheet(Sheet(id="tiny", material_id=granted, length_mm=400, width_mm=300, price=Decimal(4))))
    assert Purchases()(session.project) == Purchase()


def test_after_a_stop_nothing_is_known() -> None:
    session = looked(Session(shop(), synchronous=True))
    assert Purchases(lambda: True)(session.project) == Purchase()


def test_the_same_parts_are_reckoned_once() -> None:
    session = looked(Session(shop(), synchronous=True))
    reckoned = Purchases()
    first = reckoned(session.project)
    assert reckoned(session.project.replace(name="Another name")) is first
    assert first.sheets == cutting_plan(session.project, manufacture(session.project), effort=0).sheets_bought


def test_the_cost_is_told_once_sheets_and_hardware_all_have_prices() -> None:
    session = Session(shop(), synchronous=True)
    session.request_plan()
    granted = {material_of(session.project, role).id for role in BoardRole}
    for number, material_id in enumerate(sorted(granted)):
        session.do(AdoptMaterial(material_id))
        session.do(AddSheet(Sheet(id=f"sheet-{number}", material_id=material_id, length_mm=3000, price=Decimal(50))))
    assert Purchases()(session.project).cost is None
    assert session.manufacture is not None
    for item in session.manufacture.hardware:
        session.do(AdjustItem(item.number, "price", Decimal(2)))
    session.cutting.request()
    known = session.cutting.cost
    assert known is not None
    assert known.missing == ()
    bought = Purchases()(session.project)
    assert bought.sheets is not None
    assert bought.cost is not None
    assert bought.cost > 50 * bought.sheets
