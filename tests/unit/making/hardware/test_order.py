"""The hardware order against counts made by hand."""

import pytest

from baywright.making import manufacture
from baywright.model.construction import Back, Uprights
from baywright.model.inventory import Box
from baywright.model.making import HardwareItem
from baywright.model.project import Project


def _order(project: Project) -> dict[str, HardwareItem]:
    return {item.number: item for item in manufacture(project).hardware}


def test_counts_of_two_bays(two_bays: Project) -> None:
    """8 drawers: 16 runners with 3 + 3 screws each; 4 corners with 2 screws; 4 uprights with 3 tenons at each end.

    Wood screws 4 × 45: 4 cross pieces with 2 × 2 in their ends and 2 from the base, and 2 for the rail at 4 uprights.
    """
    needed = {number: item.needed for number, item in _order(two_bays).items()}
    edging_18, edging_27 = needed.pop("ED18"), needed.pop("ED27")
    assert {"GL", "FI"} <= needed.keys()
    del needed["GL"], needed["FI"]
    assert needed == {
        "RP350-35": 8,
        "SS10": 48,
        "WS4x13": 48,
        "WS4x40": 64,
        "WS4x45": 4 * 4 + 4 * 2 + 4 * 2,
        "LT6x40": 24,
        "SP5": 12,
        "WF": 5,
    }
    assert edging_18 == pytest.approx(4 * 1.056 + 2.4 + 3 * 1.4072 + 8 * 0.02)
    assert edging_27 == pytest.approx(2.4 + 2 * 0.4 + 3 * 0.02)


def test_packs_cover_need_and_allowance(two_bays: Project) -> None:
    order = _order(two_bays)
    assert (order["RP350-35"].allowance, order["RP350-35"].packs) == (0, 8)
    assert (order["SS10"].allowance, order["SS10"].pack_size, order["SS10"].packs) == (5, 200, 1)
    assert (order["SP5"].allowance, order["SP5"].packs) == (2, 1)


def test_edging_allows_for_waste(two_bays: Project) -> None:
    """8 strips (4 uprights, base, 3 shelves), each 20 mm longer than its edge; and 10 %."""
    edging = _order(two_bays)["ED18"]
    assert edging.note.startswith("8 strips on U1, U2, U4")
    assert edging.allowance == pytest.approx(0.1 * edging.needed)
    assert edging.packs == 1


def _with_mass(project: Project, mass_kg: float | None) -> Project:
    first: Box = project.boxes[0].replace(loaded_mass_kg=mass_kg)
    return project.replace(boxes=(first, *project.boxes[1:]))


def test_the_drawer_itself_counts_as_load(two_bays: Project) -> None:
    """A drawer is 2 × 350 × 60 × 15 and 2 × 404 × 60 × 15 and 415 × 331 × 9 mm: 2.593 dm³, 1.763 kg at 680 kg/m³."""
    light, heavy = _with_mass(two_bays, 35 - 1.77), _with_mass(two_bays, 35 - 1.75)
    assert {number: item.needed for number, item in _order(light).items() if number[:2] == "RP"} == {"RP350-35": 8}
    assert {number: item.needed for number, item in _order(heavy).items() if number[:2] == "RP"} == {
        "RP350-35": 7, "RP350-45": 1,
    }  # fmt: skip


def test_a_box_that_was_not_weighed_gets_the_highest_class_and_is_named(two_bays: Project) -> None:
    made = manufacture(_with_mass(two_bays, None))
    assert made.schedule[0].load_class_kg == 68
    assert {item.number: item.needed for item in made.hardware}["RP350-68"] == 1
    assert any("“Box 1” has no loaded mass" in remark and "68 kg" in remark for remark in made.remarks)


def test_a_box_too_heavy_for_every_class_is_named_and_stays_on_the_order(two_bays: Project) -> None:
    made = manufacture(_with_mass(two_bays, 70))
    assert made.schedule[0].load_class_kg is None
    line = next(item for item in made.hardware if item.number == "RP350-over68")
    assert line.needed == 1
    assert "to be found" in line.specification
    assert any("“Box 1” with its drawer is 71.8 kg" in remark for remark in made.remarks)


def test_screws_from_both_sides_of_a_shared_upright_are_noticed(two_bays: Project) -> None:
    """As arranged, bay 2 is one row higher than bay 1: no runners face each other. Level, four do.

    In 16 mm the holes leave 7 mm from either side, and the shortest screws go in 9; in 18 mm 8, and 9 mm just fit.
    """
    fitting = two_bays
    two_bays = thinner(two_bays, 16)
    level = two_bays.arrangement.replace(
        placements=tuple(p.replace(row=p.row - p.bay) for p in two_bays.arrangement.placements)
    )
    project = two_bays.replace(arrangement=level)
    assert not any("face each other" in remark for remark in manufacture(fitting.replace(arrangement=level)).remarks)
    assert not any("face each other" in remark for remark in manufacture(two_bays).remarks)
    assert any(remark.startswith("At 4 places") for remark in manufacture(project).remarks)
    own = project.replace(construction=project.construction.replace(uprights=Uprights.OWN))
    assert not any("face each other" in remark for remark in manufacture(own).remarks)


def thinner(project: Project, upright_mm: float) -> Project:
    boards = project.construction.boards.replace(upright_mm=upright_mm)
    return project.replace(construction=project.construction.replace(boards=boards))


def deeper(project: Project, hole_depth_mm: float) -> Project:
    rows = project.construction.hole_rows.replace(hole_depth_mm=hole_depth_mm)
    return project.replace(construction=project.construction.replace(hole_rows=rows))


@pytest.mark.parametrize(("hole_depth_mm", "length_mm"), [(9, 10), (11, 13), (12, 13), (14, 16), (16, 16)])
def test_system_screws_do_not_meet_the_ground_of_their_holes(
    two_bays: Project, hole_depth_mm: float, length_mm: int
) -> None:
    """Own uprights of 18 mm: no holes face each other, so they are as deep as is set, and at most 2 mm stay in front.

    1 mm of the screw is in the runner's steel, and the drill's tip goes 1 mm deeper.
    """
    own = two_bays.replace(construction=two_bays.construction.replace(uprights=Uprights.OWN))
    (screws,) = (item for number, item in _order(deeper(own, hole_depth_mm)).items() if number.startswith("SS"))
    assert (screws.number, screws.needed, screws.note) == (f"SS{length_mm}", 48, "runners to uprights")


def test_screws_for_holes_that_are_too_shallow_are_told(two_bays: Project) -> None:
    """Shared uprights of 16 mm have holes 7 mm deep, and the shortest screw takes 8."""
    assert "the holes are only 7 mm deep" in _order(thinner(two_bays, 16))["SS10"].note
    assert _order(two_bays)["SS10"].note == "runners to uprights"


@pytest.mark.parametrize(("side_mm", "length_mm"), [(14.6, 13), (14.81, 13), (15, 13), (17.6, 16), (18, 16)])
def test_a_measured_side_takes_the_screw_of_its_name(two_bays: Project, side_mm: float, length_mm: int) -> None:
    """A board a little thinner than it is called takes the same runner screws: 1 mm of them is in the steel."""
    boards = two_bays.construction.boards.replace(drawer_side_mm=side_mm)
    order = _order(two_bays.replace(construction=two_bays.construction.replace(boards=boards)))
    assert "from runners to drawer sides" in order[f"WS4x{length_mm}"].note


def test_a_thin_upright_cannot_take_a_runner_screw(two_bays: Project) -> None:
    boards = two_bays.construction.boards.replace(upright_mm=9)
    item = _order(two_bays.replace(construction=two_bays.construction.replace(boards=boards)))["SS10"]
    assert "comes through a 9 mm upright" in item.note


def test_joints_of_long_boards_take_tenons_and_screws_of_their_own(two_bays: Project) -> None:
    """One joint in base and top each: 3 tenons at 380 and 3 at 400; 27 mm boards take 8 mm tenons.

    The upright under both joints has two small tenons in each half of its ends, the other three have 3 in an end. The
    rail behind is joined there too: two slender screws in each half, two usual ones in each of the other three.
    """
    boards = two_bays.construction.boards.replace(longest_mm=2000)
    order = _order(two_bays.replace(construction=two_bays.construction.replace(boards=boards)))
    assert order["LT6x40"].needed == 3 * 2 * 3 + 3
    assert order["LT4x20"].needed == 2 * 2 * 2
    assert order["LT8x40"].needed == 3
    assert order["WS4x45"].needed == 5 * 4 + 5 * 2 + 3 * 2
    assert order["WS3x40"].needed == 2 * 2


def test_carcasses_of_own_uprights_are_bolted_together(two_bays: Project) -> None:
    """Two drawer bays and the shelf bay meet at two places."""
    own = two_bays.replace(construction=two_bays.construction.replace(uprights=Uprights.OWN))
    assert _order(own)["CB"].needed == 8
    assert "36 mm" in _order(own)["CB"].specification
    assert "CB" not in _order(two_bays)


def test_a_full_back_is_held_to_the_wall_by_angles(two_bays: Project) -> None:
    rear = two_bays.construction.rear.replace(kind=Back.FULL_BACK)
    order = _order(two_bays.replace(construction=two_bays.construction.replace(rear=rear)))
    assert order["WA"].needed == order["WF"].needed == 5


def test_a_full_back_is_screwed_to_every_upright_and_along_the_base(two_bays: Project) -> None:
    """8 screws on each of 4 uprights of 1,056 mm, 16 along 2,400 mm of base; through 9 mm they are 35 mm long."""
    rear = two_bays.construction.rear.replace(kind=Back.FULL_BACK)
    order = _order(two_bays.replace(construction=two_bays.construction.replace(rear=rear)))
    assert order["WS4x35"].needed == 8 * 4 + 16


def test_no_line_has_a_brand_or_an_empty_name(two_bays: Project) -> None:
    for item in manufacture(two_bays).hardware:
        assert item.name
        assert item.specification
        assert item.packs >= 1
