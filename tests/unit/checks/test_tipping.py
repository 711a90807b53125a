"""What stands by itself is weighed by itself: carcasses before they are bolted, sections on either side of a gap."""

import pytest

from baywright.checks import inspect
from baywright.checks.beam import GRAVITY_M_S2
from baywright.checks.threshold import scope
from baywright.checks.weighing import front_line_mm, weigh
from baywright.making import manufacture
from baywright.making.material import mass_kg
from baywright.model.arrangement import Arrangement, Placement
from baywright.model.caution import FIX_FIRST
from baywright.model.construction import Back, Construction, Fronts, Rear, Stand, Standing, Uprights
from baywright.model.finding import CheckKind, Finding, Severity
from baywright.model.inventory import Box, BoxSize
from baywright.model.limits import Limits
from baywright.model.project import Project
from baywright.model.safety import BoardMaterial, Safety
from baywright.model.space import Space, Zone, ZoneEffect
from baywright.model.stock import BoardRole
from baywright.workings import derive

SIZE = BoxSize(id="full", name="Full", width_mm=400, depth_mm=300, height_mm=220)
GAP = Zone(
    id="door", label="Door", effect=ZoneEffect.KEEP_CLEAR, left_mm=600, width_mm=500, bottom_mm=0, height_mm=2_000
)


def run(*bays: tuple[float, ...], uprights: Uprights = Uprights.SHARED, **space: object) -> Project:
    """Bays with boxes of these masses one over the other, as many drawers in each as masses."""
    boxes, places = [], []
    for bay, masses in enumerate(bays):
        for number, kg in enumerate(masses):
            box_id = f"box-{bay}-{number}"
            boxes.append(Box(id=box_id, label=box_id, size_id="full", loaded_mass_kg=kg))
            places.append(Placement(box_id=box_id, bay=bay, row=1 + 8 * number))
    made = Construction(
        uprights=uprights, standing=Standing(kind=Stand.FEET, height_mm=80), rear=Rear(kind=Back.FULL_BACK)
    )
    return Project(
        space=Space(**{"length_mm": 4_000.0, "height_limit_mm": 2_400.0, **space}),  # type: ignore[arg-type]
        limits=Limits(bay_box_width_mm=400, shelf_bay=False),
        construction=made,
        box_sizes=(SIZE,),
        boxes=tuple(boxes),
        arrangement=Arrangement(bay_count=len(bays), upright_rows=50, placements=tuple(places)),
    )


def of(project: Project, kind: CheckKind = CheckKind.TIPPING) -> list[Finding]:
    return [finding for finding in inspect(project) if finding.kind is kind]


def test_the_worst_carcass_is_told_beside_the_run_that_is_bolted_together() -> None:
    project = run((5.0, 5.0), (25.0, 25.0, 25.0), (5.0, 5.0), uprights=Uprights.OWN)
    filled, filling, alone = sorted(of(project), key=lambda finding: "by itself" in finding.subject)
    assert filled.subject == "The run bolted together, unfixed, filled"
    assert filling.subject == "The run bolted together, unfixed, being filled"
    assert alone.subject == "Bay 2 by itself, the worst of 3 carcasses"
    assert alone.drawer is not None
    assert alone.drawer[0] == 1
    assert all(box_id.startswith("box-1-") for box_id in alone.box_ids)
    assert len(alone.box_ids) == 1
    assert alone.limit == 3
    assert "neither a neighbour nor a wall" in alone.given[-1].value
    assert "bolted together, as the order has it" in " ".join(given.value for given in filled.given)
    assert any("Bolt bay 2 to its neighbours" in mend.text for mend in alone.mends)


def test_together_they_stand_better_than_the_worst_alone() -> None:
    weighed = weigh(project := run((5.0,), (25.0, 25.0), (5.0,), uprights=Uprights.OWN), derive(project))
    alone, together = weighed.worst_carcass, weighed.worst_section(filled=False)
    assert alone is not None
    assert together is not None
    assert together.net_kgm(1, filled=False) > alone.net_kgm(1, filled=False)
    assert sum(carcass.boards_kg for carcass in weighed.carcasses) == pytest.approx(together.boards_kg)


@pytest.mark.parametrize("uprights", list(Uprights))
@pytest.mark.parametrize("fronts", list(Fronts))
def test_no_board_is_lost_or_weighed_twice(uprights: Uprights, fronts: Fronts) -> None:
    project = run((5.0,), (5.0, 7.0), uprights=uprights, zones=(GAP,))
    drawers = project.construction.drawers.replace(fronts=fronts)
    project = project.replace(construction=project.construction.replace(drawers=drawers))
    workings = derive(project)
    weighed = weigh(project, workings)
    of_drawers = {BoardRole.DRAWER_SIDE, BoardRole.DRAWER_BOTTOM, BoardRole.FRONT}
    boards_kg = mass_kg(part for part in manufacture(project, workings).parts if part.role not in of_drawers)
    for pieces in (weighed.sections, weighed.carcasses):
        assert sum(scales.boards_kg for scales in pieces) == pytest.approx(boards_kg)
    assert [len(section.drawers) for section in weighed.sections] == [1, 2]


def test_of_several_sections_the_one_that_tips_soonest_is_named_and_the_others_told() -> None:
    project = run((4.0, 4.0), (30.0, 30.0), zones=(GAP,))
    assert derive(project).layout.sections == 2
    filled, _ = of(project)
    assert filled.subject.startswith("Bay 2, the section that tips soonest")
    assert next(g.value for g in filled.given if g.name == "other sections").startswith("bay 1: ")


def test_a_section_does_not_hold_the_other_at_the_wall() -> None:
    light, heavy = (1.0, 1.0), (40.0, 40.0, 40.0, 40.0, 40.0)
    together = run(light, heavy, zones=(GAP,))
    (alone,) = [f for f in of(run(heavy), CheckKind.FIXING) if f.subject.startswith("Fixing")]
    (found,) = [f for f in of(together, CheckKind.FIXING) if f.subject.startswith("Fixing")]
    assert found.subject == "Fixing of bay 2 to the wall"
    assert found.value == pytest.approx(alone.value)
    screws = [next(g.value for g in f.given if g.name == "fixings in the order") for f in (alone, found)]
    assert screws[0] == screws[1]


def test_moments_by_hand() -> None:
    """One bay, one drawer of 3 + 2 kg: opening it moves its mass by its own length."""
    project = run((3.0,)).replace(safety=Safety(raised_rear_mm=0.0))
    workings = derive(project)
    scales = weigh(project, workings).worst_section(filled=True)
    assert scales is not None
    (drawer,) = scales.drawers
    assert drawer.loaded_kg == 5.0
    length = workings.value("drawer_outside_depth")
    closed, opened = (scales.net_kgm(count, filled=True) for count in (0, 1))
    assert closed - opened == pytest.approx((drawer.empty_kg + 5.0) * length / 1000)
    assert front_line_mm(project) == 50.0
    assert drawer.front_mm == pytest.approx(length + 50.0)
    finding = of(project)[0]
    edge = opened * GRAVITY_M_S2 / (drawer.front_mm / 1000)
    assert f"({edge:.0f} N)" in finding.message


def test_a_top_that_stands_out_and_a_back_at_the_rear_count_where_they_lie() -> None:
    project = run((20.0,)).replace(safety=Safety(raised_rear_mm=0.0))
    top = project.construction.top
    plain, out = (
        project.replace(construction=project.construction.replace(top=top.replace(overhang_front_mm=overhang)))
        for overhang in (0.0, 100.0)
    )
    closed = []
    for shown in (plain, out):
        scales = weigh(shown, derive(shown)).worst_section(filled=True)
        assert scales is not None
        closed.append(scales.net_kgm(0, filled=True) / scales.boards_kg)
    assert closed[1] < closed[0]


@pytest.mark.parametrize("existing_wall", [True, False])
def test_anchoring_is_always_advised_and_the_standards_are_named(existing_wall: bool) -> None:
    for project in (run((1.0,), existing_wall=existing_wall), run((30.0,) * 5, existing_wall=existing_wall)):
        for finding in of(project):
            assert finding.mends[-1].text == FIX_FIRST
            told = next(g.value for g in finding.given if g.name == "scope")
            assert all(name in told for name in ("ASTM F2057-23", "16 CFR 1261", "EN 14749", "ISO 7170", "outside"))
            assert any("2022" in g.name and "comparison" in g.name for g in finding.given)
        (fixing,) = [f for f in of(project, CheckKind.FIXING) if f.subject.startswith("Fixing")]
        assert FIX_FIRST in fixing.mends[-1].text


def test_what_is_too_low_for_the_standard_is_said_to_be() -> None:
    assert "lower or lighter" in scope(500.0, 40.0, is_fixed=True)
    assert "as high and heavy" in scope(700.0, 20.0, is_fixed=False)


def test_boards_of_which_the_density_is_not_known_are_not_weighed_as_nothing() -> None:
    project = run((20.0,)).replace(safety=Safety(board_material=BoardMaterial.OTHER))
    (told,) = of(project)
    assert told.severity is Severity.UNCHECKED
    assert told.mends[-1].text == FIX_FIRST
    assert {f.severity for f in of(project, CheckKind.FIXING)} == {Severity.UNCHECKED}


def test_more_than_wood_screws_hold_asks_for_stronger_ones() -> None:
    project = run(*((150.0,) * 6 for _ in range(2)), length_mm=1_000.0)
    (found,) = [f for f in of(project, CheckKind.FIXING) if f.subject == "Fixing to the wall"]
    assert found.severity is Severity.BROKEN
    assert "coach screws" in found.mends[0].text


@pytest.mark.parametrize(
    ("side_mm", "material", "severity"),
    [
        (15.0, BoardMaterial.BIRCH_PLYWOOD, Severity.UNCHECKED),  # too thin for six diameters of thread
        (30.0, BoardMaterial.BIRCH_PLYWOOD, Severity.KEPT),
        (30.0, BoardMaterial.OTHER, Severity.UNCHECKED),
    ],
)
def test_screws_of_the_runners_are_never_passed_over(
    side_mm: float, material: BoardMaterial, severity: Severity
) -> None:
    project = run((20.0,)).replace(safety=Safety(board_material=material))
    boards = project.construction.boards.replace(drawer_side_mm=side_mm)
    project = project.replace(construction=project.construction.replace(boards=boards))
    (found,) = [f for f in of(project, CheckKind.FIXING) if f.subject.startswith("Screws")]
    assert found.severity is severity
    assert found.value is not None
    if severity is Severity.KEPT:  # 68 kg: 333.5 N × 12.7 ÷ 22 ÷ 2 screws, twice
        assert found.value == pytest.approx(2 * 68 * 9.81 / 2 * 12.7 / 22 / 2)
