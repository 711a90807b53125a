"""Sections of a long board are joined end to end the way the owner joins everything else."""

from collections import Counter

import pytest

from baywright.making import manufacture
from baywright.making.machining.counting import fixing_counts, screw_uses
from baywright.model.catalogue import HardwareKind
from baywright.model.construction import Jointing
from baywright.model.machining import Hole, HolePurpose, Joint, Side
from baywright.model.making import Manufacture, Part
from baywright.model.project import Project


def joined(two_bays: Project, way: Jointing) -> Manufacture:
    """Boards no longer than 1,500 mm: base and top are joined once, over the upright between drawers and shelves."""
    made = two_bays.construction
    boards = made.boards.replace(longest_mm=1500.0)
    return manufacture(two_bays.replace(construction=made.replace(boards=boards, jointing=way)))


def section(made: Manufacture, number: str) -> Part:
    return next(part for part in made.parts if part.number == number)


def in_end(part: Part, side: Side) -> list[Hole | Joint]:
    every: list[Hole | Joint] = [*part.machining.holes, *part.machining.joints]
    return [work for work in every if work.side is side]


def needed(made: Manufacture) -> Counter[HardwareKind]:
    found: Counter[HardwareKind] = Counter()
    for item in made.hardware:
        found[item.kind] += round(item.needed)
    return found


def test_loose_tenons_go_equally_deep_into_both_ends(two_bays: Project) -> None:
    made = joined(two_bays, Jointing.LOOSE_TENON)
    left, right = in_end(section(made, "B1.1"), Side.END), in_end(section(made, "B1.2"), Side.START)
    assert [(j.x_mm, j.y_mm, j.depth_mm) for j in left] == [(j.x_mm, j.y_mm, j.depth_mm) for j in right]
    assert {j.depth_mm for j in left} == {20.0}
    assert len(left) == 3


def test_who_joins_with_dowels_has_no_mortise_to_make(two_bays: Project) -> None:
    """18 mm: dowels of 8 × 40, half in each end; the top of 27 mm takes those of 10 × 50. Three in 380
    and in 400 mm: 50 from the edges, at most 150 apart."""
    made = joined(two_bays, Jointing.DOWEL)
    for number, count, diameter, deep in (("B1", 3, 8.0, 20.0), ("T1", 3, 10.0, 25.0)):
        left = in_end(section(made, f"{number}.1"), Side.END)
        right = in_end(section(made, f"{number}.2"), Side.START)
        assert [(h.x_mm, h.y_mm, h.depth_mm) for h in left] == [(h.x_mm, h.y_mm, h.depth_mm) for h in right]
        assert {(h.diameter_mm, h.depth_mm, h.purpose) for h in left if isinstance(h, Hole)} == {
            (diameter, deep, HolePurpose.DOWEL)
        }
        assert len(left) == count
    assert needed(made)[HardwareKind.TENON] == 0
    assert needed(made)[HardwareKind.DOWEL] == fixing_counts(made.parts, HolePurpose.DOWEL)


@pytest.mark.parametrize("way", [Jointing.POCKET_SCREW, Jointing.SCREW])
def test_screws_go_through_pockets_from_below_in_the_left_section(two_bays: Project, way: Jointing) -> None:
    made = joined(two_bays, way)
    for number, below in (("B1", Side.REVERSE), ("T1", Side.FACE)):
        left, right = section(made, f"{number}.1"), section(made, f"{number}.2")
        pockets = [hole for hole in left.machining.holes if hole.purpose is HolePurpose.POCKET]
        assert {hole.side for hole in pockets} == {below}
        assert {round(left.length_mm - hole.x_mm, 6) for hole in pockets} == {38.0}
        assert len(pockets) == 3
        assert not any(hole.purpose is HolePurpose.POCKET for hole in right.machining.holes)
    assert needed(made)[HardwareKind.TENON] == needed(made)[HardwareKind.DOWEL] == 0
    assert needed(made)[HardwareKind.POCKET_SCREW] == fixing_counts(made.parts, HolePurpose.POCKET)
    assert not any(part.machining.joints for part in made.parts)


@pytest.mark.parametrize("way", Jointing)
def test_the_ends_keep_clear_of_the_joint_with_the_upright(two_bays: Project, way: Jointing) -> None:
    made = joined(two_bays, way)
    assert not any("(B1" in remark or "(T1" in remark for remark in made.remarks)


@pytest.mark.parametrize("way", [Jointing.DOWEL, Jointing.POCKET_SCREW, Jointing.SCREW])
def test_each_half_of_an_upright_takes_slender_screws_in_its_middle(two_bays: Project, way: Jointing) -> None:
    """18 mm: halves of 9, so 4.5 mm or 1.5 diameters of a 3 mm screw to the joint and to the upright's face; two screws
    in each half, 3 × 40 through 18 mm and 3 × 45 through 27, at least six diameters deep."""
    made = joined(two_bays, way)
    for number, length in (("B1", 40), ("T1", 45)):
        left, right = section(made, f"{number}.1"), section(made, f"{number}.2")
        slender = [[hole for hole in part.machining.holes if hole.diameter_mm == 3.5] for part in (left, right)]
        assert [{round(h.x_mm, 6) for h in holes} for holes in slender] == [{round(left.length_mm - 4.5, 6)}, {4.5}]
        assert [len(holes) for holes in slender] == [2, 2]
        used = [use for use in screw_uses(two_bays, made.parts) if use.part in (left, right) and use.diameter_mm == 3.0]
        assert [(use.count, use.length_mm) for use in used] == [(2, length), (2, length)]
        assert length - left.thickness_mm >= 6 * 3.0
    pilots = [
        hole for part in made.parts if part.number.startswith("U")
        for hole in part.machining.holes if hole.diameter_mm == 2.0 and hole.side in (Side.START, Side.END)
    ]  # fmt: skip
    assert {round(hole.y_mm, 6) for hole in pilots} == {4.5, 13.5}
    assert len(pilots) == 8


def test_a_joined_rail_is_screwed_to_its_half_with_slender_screws(two_bays: Project) -> None:
    made = joined(two_bays, Jointing.LOOSE_TENON)
    left, right = section(made, "R4.1"), section(made, "R4.2")
    assert {round(left.length_mm - h.x_mm, 6) for h in left.machining.holes if h.diameter_mm == 3.5} == {4.5}
    assert {round(h.x_mm, 6) for h in right.machining.holes if h.diameter_mm == 3.5} == {4.5}


@pytest.mark.parametrize(("upright_mm", "is_told"), [(15.0, True), (17.6, False)])
def test_uprights_too_thin_for_two_halves_are_told(two_bays: Project, upright_mm: float, is_told: bool) -> None:
    made = two_bays.construction
    short = made.boards.replace(longest_mm=1500.0, upright_mm=upright_mm)
    remarks = manufacture(two_bays.replace(construction=made.replace(boards=short))).remarks
    told = [remark for remark in remarks if "each of two boards that meet has" in remark]
    assert bool(told) == is_told
    if is_told:
        assert "15 mm thick" in told[0]
        assert "7.5 mm" in told[0]
        assert "base (B1.1)" in told[0]
        assert "top (T1.2)" in told[0]
    whole = made.boards.replace(longest_mm=5000.0, upright_mm=upright_mm)
    assert not any("two boards that meet" in r for r in manufacture(
        two_bays.replace(construction=made.replace(boards=whole))).remarks)  # fmt: skip
