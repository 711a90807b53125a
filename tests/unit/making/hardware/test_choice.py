"""Runners, edging, joints, glue and oil chosen for a real run, with catalogues of their own."""

from decimal import Decimal

import pytest

from baywright.making import manufacture
from baywright.model.catalogue import CatalogueItem, HardwareKind, HardwareStock
from baywright.model.construction import DrawerForm, EdgingKind, EndPanels, Fronts, Jointing, Stand
from baywright.model.making import HardwareItem, Manufacture
from baywright.model.project import Project
from baywright.model.stock import Bar


def _runner(length: float, load: float | None, price: str | None = "5", room: float | None = 12.7) -> CatalogueItem:
    name = f"Runner {length:g} {load} {room}"
    ident = name.lower().replace(" ", "-").replace(".", "-")
    return CatalogueItem(
        id=ident, kind=HardwareKind.RUNNER, name=name, length_mm=length, load_class_kg=load, thickness_mm=room,
        price=None if price is None else Decimal(price),
    )  # fmt: skip


def _made(project: Project, *catalogue: CatalogueItem, **construction: object) -> Manufacture:
    return manufacture(project.replace(
        hardware=HardwareStock(catalogue=catalogue), construction=project.construction.replace(**construction)
    ))  # fmt: skip


def _line(made: Manufacture, number: str) -> HardwareItem:
    return next(item for item in made.hardware if item.number == number)


def test_the_cheapest_runner_that_carries_enough_is_taken(two_bays: Project) -> None:
    """All eight drawers need 350 mm and 35 kg: a pair for 45 kg at 6.50 is cheaper than one for 35 kg at 7.00."""
    made = _made(
        two_bays, _runner(350, 35, "7"), _runner(350, 45, "6.50"), _runner(350, 25, "1"), _runner(300, 45, "1")
    )
    line = _line(made, "RP350-35")
    assert (line.item_name, line.packs, line.cost) == ("Runner 350 45 12.7", 8, Decimal(52))


@pytest.mark.parametrize(
    ("runner", "reason"),
    [
        (_runner(300, 45), "no runner 350 mm long: there is only 300 mm"),
        (_runner(350, 25), "no runner 350 mm long, that carries 35 kg a pair: there is only 25 kg"),
        (_runner(350, 45, room=13.5), "that carries 35 kg a pair, for 12.7 mm a side: there is only 13.5 mm"),
        (_runner(350, 45, room=10.5), "for 12.7 mm a side: there is only 10.5 mm"),
        (_runner(350, None), "that carries 35 kg a pair: it does not say so of any"),
    ],
)
def test_why_no_runner_serves_is_said(two_bays: Project, runner: CatalogueItem, reason: str) -> None:
    made = _made(two_bays, runner)
    (remark,) = [remark for remark in made.remarks if remark.startswith("RP350-35: The catalogue has")]
    assert reason in remark
    assert _line(made, "RP350-35").price is None


def test_a_runner_for_what_no_class_carries_can_be_in_the_catalogue(two_bays: Project) -> None:
    """A box of 70 kg with its drawer is 71.8 kg: over every class of the construction, not over this runner."""
    boxes = (two_bays.boxes[0].replace(loaded_mass_kg=70), *two_bays.boxes[1:])
    project = two_bays.replace(boxes=boxes)
    weak = _made(project, _runner(350, 68))
    assert any("that carries 71.76 kg a pair: there is only 68 kg" in remark for remark in weak.remarks)
    assert _line(_made(project, _runner(350, 100)), "RP350-over68").item_name == "Runner 350 100 12.7"


def test_side_clearance_may_be_a_little_more_than_the_runner(two_bays: Project) -> None:
    assert _line(_made(two_bays, _runner(350, 45, room=12.0)), "RP350-35").item_id


def test_a_runner_without_a_price_is_taken_only_where_none_has_one(two_bays: Project) -> None:
    cheap, unknown = _runner(350, 45, "9"), _runner(350, 68, None)
    assert _line(_made(two_bays, unknown, cheap), "RP350-35").item_id == cheap.id
    alone = _line(_made(two_bays, unknown), "RP350-35")
    assert (alone.item_id, alone.cost) == (unknown.id, None)


def test_dowels_replace_tenons_and_screws_in_drawers(two_bays: Project) -> None:
    """24 of 8 × 40 in the uprights' ends; 8 drawers with 8 of 6 × 30 in their corners; no screws there."""
    order = {item.number: item.needed for item in _made(two_bays, jointing=Jointing.DOWEL).hardware}
    assert (order["DW8x40"], order["DW6x30"]) == (24, 64)
    assert not {"LT6x40", "WS4x40"} & order.keys()


def test_pocket_screws_hold_the_uprights(two_bays: Project) -> None:
    made = _made(two_bays, jointing=Jointing.POCKET_SCREW)
    assert (_line(made, "PS32").needed, _line(made, "PS32").kind) == (24, HardwareKind.POCKET_SCREW)


def test_plain_screws_go_through_base_and_top(two_bays: Project) -> None:
    """3 in each of 4 ends: through 18 mm of base 4 × 45, through 27 mm of top 5 × 60."""
    plain, screwed = _made(two_bays), _made(two_bays, jointing=Jointing.SCREW)
    assert _line(screwed, "WS4x45").needed - _line(plain, "WS4x45").needed == 12
    assert _line(screwed, "WS5x60").needed == 12


def test_fronts_stops_and_end_panels_have_screws_from_within(two_bays: Project) -> None:
    drawers = two_bays.construction.drawers.replace(fronts=Fronts.OVERLAY, has_box_stop=True)
    made = _made(two_bays, drawers=drawers, end_panels=EndPanels(left=True, right=True))
    notes = " ".join(item.note for item in made.hardware)
    assert "32 from drawers to front panels" in notes
    assert "from uprights to end panels" in notes
    stops = sum(part.quantity for part in made.parts if part.number.startswith("D4"))
    assert f"{2 * stops} from drawer bottoms to box stops" in notes


def test_edging_is_a_band_a_lipping_or_nothing(two_bays: Project) -> None:
    edging = two_bays.construction.edging
    band = CatalogueItem(
        id="band", kind=HardwareKind.EDGING, name="Band", thickness_mm=1, width_mm=22, pack_size=25, price=Decimal(9)
    )  # fmt: skip
    made = _made(two_bays, band)
    assert _line(made, "ED18").item_id == "band"
    assert any("ED27: The catalogue has no edging of 1 mm thickness, of 29 mm width" in r for r in made.remarks)
    lipping = _made(two_bays, edging=edging.replace(kind=EdgingKind.LIPPING, thickness_mm=6))
    assert _line(lipping, "ED18").name == "Lipping"
    assert "the longest strip is about 2420 mm" in _line(lipping, "ED18").note
    bare = _made(two_bays, edging=edging.replace(kind=EdgingKind.NONE))
    assert not [item for item in bare.hardware if item.kind is HardwareKind.EDGING]


def test_edging_that_is_cut_from_bars_is_not_ordered_twice(two_bays: Project) -> None:
    stocked = two_bays.replace(stock=two_bays.stock.replace(bars=(Bar(id="strip"),)))
    assert not [item for item in manufacture(stocked).hardware if item.kind is HardwareKind.EDGING]


def test_glue_by_the_area_of_the_joints(two_bays: Project) -> None:
    """By hand: 8 ends of 18 × 380 mm, 32 corners of 15 × 60 mm, 8 bottoms of 415 × 331 mm in grooves 6 mm deep.

    54,720 + 28,800 + 8 × 2 × 746 × 12 = 226,752 mm²; at 0.2 l/m² 0.045 l.
    """
    glue = _line(_made(two_bays), "GL")
    assert glue.needed == pytest.approx(0.045, abs=5e-4)
    assert glue.note.startswith("for 0.23 m² of joints")
    dry = _line(_made(two_bays, jointing=Jointing.SCREW), "GL")
    assert dry.needed == pytest.approx(0.2 * (226_752 - 54_720) * 1e-6, abs=5e-4)


def test_oil_by_the_area_of_all_parts(two_bays: Project) -> None:
    made = _made(two_bays)
    area = sum(
        part.quantity * 2e-6 * (
            part.length_mm * part.width_mm + part.length_mm * part.thickness_mm + part.width_mm * part.thickness_mm
        )
        for part in made.parts
    )  # fmt: skip
    oil = _line(made, "FI")
    assert oil.needed == pytest.approx(area * 2 * 0.08, abs=5e-4)
    assert (oil.unit, oil.packs) == ("l", 3)


def test_low_rails_of_a_tray_take_less_glue(two_bays: Project) -> None:
    drawers = two_bays.construction.drawers.replace(form=DrawerForm.TRAY, rail_height_mm=40)
    assert _line(_made(two_bays, drawers=drawers), "GL").needed < _line(_made(two_bays), "GL").needed


def test_feet_that_carry_too_little_do_not_serve(two_bays: Project) -> None:
    standing = two_bays.construction.standing.replace(kind=Stand.FEET)
    weak = CatalogueItem(id="weak", kind=HardwareKind.FOOT, name="Weak", length_mm=80, load_class_kg=5, pack_size=4)
    high = weak.replace(id="high", name="High", length_mm=150, load_class_kg=300)
    strong = weak.replace(id="strong", name="Strong", load_class_kg=300)
    assert _line(_made(two_bays, weak, high, standing=standing), "FT").item_id == ""
    assert _line(_made(two_bays, weak, high, strong, standing=standing), "FT").item_id == "strong"


def test_every_line_has_a_kind(two_bays: Project) -> None:
    assert all(item.kind is not HardwareKind.OTHER for item in _made(two_bays).hardware)
