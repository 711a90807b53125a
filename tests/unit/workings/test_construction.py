"""What every choice of construction asks for in mm, figured by hand."""

import pytest

from baywright.model.arrangement import Arrangement
from baywright.model.construction import (
    Back,
    Construction,
    DrawerForm,
    Drawers,
    EndPanels,
    Fronts,
    Rear,
    Top,
    Uprights,
)
from baywright.model.inventory import Box, BoxSize
from baywright.model.limits import Limits
from baywright.model.project import Project
from baywright.model.safety import BoardMaterial
from baywright.model.space import Space, Zone, ZoneEffect
from baywright.model.stock import Batch, BoardRole, Material, Stock
from baywright.workings import derive

LOW = BoxSize(id="low", name="Low", width_mm=400, depth_mm=290, height_mm=120)
HIGH = BoxSize(id="high", name="High", width_mm=400, depth_mm=290, height_mm=220)
BOXES = (Box(id="a", label="A", size_id="low"), Box(id="b", label="B", size_id="high"))


def made(space: Space | None = None, bays: int = 2, **changes: object) -> Project:
    return Project(
        space=space or Space(length_mm=2400, depth_mm=400),
        construction=Construction().replace(**changes),
        limits=Limits(shelf_bay=False),
        box_sizes=(LOW, HIGH),
        boxes=BOXES,
        arrangement=Arrangement(bay_count=bays, upright_rows=33),
    )


def test_end_panels_take_their_thickness_off_the_wall_and_lengthen_the_top() -> None:
    """Wall 2,400: overhang 15 and panel 18 at each end leave 2,334. Two bays of 459.4 with three uprights of 18 are
    972.8 long; the top is 972.8 + 2 × 33.
    """
    w = derive(made(top=Top(overhang_side_mm=15), end_panels=EndPanels(left=True, right=True)))
    assert (w.value("left_end"), w.value("right_end"), w.value("room_for_run")) == (33, 33, 2334)
    assert w.value("bay_clear_width") == pytest.approx(459.4)
    assert w.value("top_length") == pytest.approx(972.8 + 66)
    assert w.value("end_panel_height") == 80 + 18 + 33 * 32
    assert w.layout.wall_left_mm == -33
    left, right = w.layout.end_panels
    assert (left.left_mm, left.right_mm, left.is_left) == (-18, 0, True)
    assert (right.left_mm, right.right_mm) == pytest.approx((972.8, 990.8))


def test_an_end_panel_on_one_side_only() -> None:
    w = derive(made(end_panels=EndPanels(right=True)))
    assert (w.value("left_end"), w.value("right_end"), w.layout.wall_left_mm) == (0, 18, 0)
    assert [panel.is_left for panel in w.layout.end_panels] == [False]


def test_each_piece_of_a_run_has_its_end_panels_and_a_door_stays_clear_of_them() -> None:
    """The second bay would end at 36 + 2 × 459.4 + 36 = 990.8 with its panel; a door from 980 on moves it behind."""
    door = Zone(id="door", label="Door", effect=ZoneEffect.KEEP_CLEAR, left_mm=980, width_mm=200, bottom_mm=0,
                height_mm=2000)  # fmt: skip
    space = Space(length_mm=2400, depth_mm=400, zones=(door,))
    ends = EndPanels(left=True, right=True)
    w = derive(made(space=space, end_panels=ends))
    first, second = w.layout.bays
    assert first.left_mm == 18
    assert second.left_mm - 18 - 18 == pytest.approx(1180 - 18)  # in x of the run: the wall begins at −18
    assert [(p.is_left, p.bay) for p in w.layout.end_panels] == [(True, 0), (False, 0), (True, 1), (False, 1)]
    assert derive(made(space=space)).layout.bays[1].section == 0


def test_overlay_fronts_need_depth_only_where_they_stand_out_more_than_the_top() -> None:
    overlay = Drawers(fronts=Fronts.OVERLAY)
    w = derive(made(drawers=overlay))
    assert (w.value("before_uprights"), w.value("upright_depth")) == (20, 380)
    w = derive(made(drawers=overlay, top=Top(overhang_front_mm=5)))
    assert (w.value("before_uprights"), w.value("upright_depth"), w.value("top_depth")) == (15, 385, 390)


def test_inset_fronts_take_their_thickness_off_the_runner() -> None:
    w = derive(made(drawers=Drawers(fronts=Fronts.INSET)))
    assert w.value("runner_room") == 380 - 15 - 10
    assert "front panel thickness 15" in w.entry("runner_room").working


def test_front_widths() -> None:
    """Clear 459.4. Inset less 2 × 2; overlay over half of each shared upright, and over 9 more beside an end one."""
    inset = derive(made(drawers=Drawers(fronts=Fronts.INSET)))
    overlay = derive(made(drawers=Drawers(fronts=Fronts.OVERLAY)))
    own = derive(made(drawers=Drawers(fronts=Fronts.OVERLAY), uprights=Uprights.OWN))
    assert inset.value("front_width") == pytest.approx(455.4)
    assert (overlay.value("front_width"), overlay.value("front_end_extra")) == pytest.approx((473.4, 9))
    assert (own.value("front_width"), own.value("front_end_extra")) == pytest.approx((491.4, 0))
    assert derive(made()).value("front_width") == 0


def test_a_front_is_as_high_as_its_opening_less_the_reveal() -> None:
    """Low: 17 + 120 + 12 = 149, five rows of 32; high: 249, eight rows."""
    w = derive(made(drawers=Drawers(fronts=Fronts.INSET, reveal_mm=1.5)))
    assert (w.value("front_height", "low"), w.value("front_height", "high")) == (157, 253)


def test_what_a_front_weighs_is_reckoned_to_the_safe_side() -> None:
    """(8 + 5) × 32 + 2 − 2 × 2 = 414 high, 455.4 wide, 15 thick at 680 kg/m³: 1.92 kg."""
    bare, inset = derive(made()), derive(made(drawers=Drawers(fronts=Fronts.INSET)))
    assert inset.value("reckoned_front_height") == 414
    assert inset.value("front_mass") == pytest.approx(1.923, abs=0.001)
    assert bare.value("front_mass") == 0
    assert inset.value("drawer_mass") - bare.value("drawer_mass") == pytest.approx(1.923, abs=0.001)


def test_a_tray_has_lower_rails_and_is_lighter() -> None:
    """Two rails of 404 × 20 × 15 mm less, at 680 kg/m³."""
    box, tray = derive(made()), derive(made(drawers=Drawers(form=DrawerForm.TRAY, rail_height_mm=40)))
    assert (box.value("drawer_rail_height"), tray.value("drawer_rail_height")) == (60, 40)
    assert box.value("drawer_mass") - tray.value("drawer_mass") == pytest.approx(2 * 404 * 20 * 15 * 680e-9)
    assert (tray.value("seat"), tray.value("opening_rows", "low")) == (box.value("seat"), 5)


@pytest.mark.parametrize(
    ("rail", "words"), [(70.0, "must not be higher than its sides"), (16.0, "does not fit in a rail 16 mm high")]
)
def test_a_tray_whose_rails_cannot_be_is_refused_with_what_to_do(rail: float, words: str) -> None:
    with pytest.raises(ValueError, match=words):
        Construction(drawers=Drawers(form=DrawerForm.TRAY, rail_height_mm=rail))
    Construction(drawers=Drawers(form=DrawerForm.FULL_BOX, rail_height_mm=rail))  # not used there


def test_the_groove_and_what_is_left_beside_it() -> None:
    w = derive(made())
    assert w.value("groove_width") == pytest.approx(9.2)
    assert w.value("groove_wood") == 9
    assert w.value("wood_over_groove") == pytest.approx(60 - 8 - 9.2)


def test_a_box_stop_lies_behind_the_box_and_its_air() -> None:
    w = derive(made(drawers=Drawers(has_box_stop=True)))
    assert w.value("box_stop_place", "low") == 295
    assert w.value("box_stop_length") == 403
    assert w.value("drawer_mass") - derive(made()).value("drawer_mass") == pytest.approx(403 * 20 * 15 * 680e-9)


def test_an_end_panel_covers_the_edge_of_a_full_back() -> None:
    w = derive(made(rear=Rear(kind=Back.FULL_BACK), end_panels=EndPanels(left=True)))
    assert w.value("end_panel_depth") == w.value("upright_depth") + 9 == 380


def measured(kind: BoardMaterial = BoardMaterial.BIRCH_PLYWOOD) -> Project:
    batch = Batch(id="spring", name="Spring", readings_mm=(17.5, 17.6, 17.7, 17.6))
    birch = Material(id="birch", name="Birch 18", kind=kind, roles=(BoardRole.UPRIGHT,), batches=(batch,),
                     batch_id="spring")  # fmt: skip
    return made().replace(stock=Stock(materials=(birch,)))


def test_a_measured_thickness_is_in_force_and_says_where_it_comes_from() -> None:
    w = derive(measured())
    entry = w.entry("upright_thickness")
    assert (entry.value, entry.field) == (17.6, "")
    assert entry.note == (
        "Mean of 4 readings from 17.5 to 17.7 mm of batch “Spring” of “Birch 18”, nominal 18 mm; the 18 mm of the "
        "construction are not used."
    )
    assert w.value("bay_pitch") == pytest.approx(459.4 + 17.6)
    assert derive(made()).entry("upright_thickness").field == "construction.boards.upright_mm"


def test_where_no_density_is_known_drawers_are_reckoned_as_of_the_densest_board_and_it_is_told() -> None:
    unknown = made().replace(safety=made().safety.replace(board_material=BoardMaterial.OTHER))
    w = derive(unknown)
    assert w.drawer_mass() is None
    assert w.value("drawer_side_density") == 740
    assert "Not known" in w.entry("drawer_side_density").note
    assert derive(made()).drawer_mass() == derive(made()).value("drawer_mass")
