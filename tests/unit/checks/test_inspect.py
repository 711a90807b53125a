"""Checks of whole documents: a bad one shows each finding, and its mend, applied, clears it; nothing is passed over."""

import re

import pytest

from baywright.checks import inspect
from baywright.model.arrangement import Arrangement, Placement
from baywright.model.change import changed
from baywright.model.construction import Back, Construction, Rear, Stand, Standing
from baywright.model.finding import CheckKind, Finding, Severity
from baywright.model.inventory import Box, BoxSize
from baywright.model.limits import Limits
from baywright.model.material import MATERIALS
from baywright.model.project import Project
from baywright.model.safety import BoardMaterial, Climate, Safety
from baywright.model.space import Space

SIZE = BoxSize(id="full", name="Full", width_mm=400, depth_mm=300, height_mm=220)


def shop(masses_kg: tuple[float | None, ...], *, rows: int = 50, bays: int = 1, **space: object) -> Project:
    """Boxes one over the other in one bay, from the lowest row on."""
    boxes = tuple(
        Box(id=f"box-{n}", label=f"Box {n}", size_id="full", loaded_mass_kg=mass) for n, mass in enumerate(masses_kg)
    )
    places = tuple(Placement(box_id=box.id, bay=0, row=1 + 8 * n) for n, box in enumerate(boxes))
    return Project(
        space=Space(**{"length_mm": 1900.0, "height_limit_mm": 2400.0, **space}),  # type: ignore[arg-type]
        limits=Limits(bay_box_width_mm=400, shelf_count=3),
        construction=Construction(standing=Standing(kind=Stand.FEET, height_mm=80)),
        box_sizes=(SIZE,),
        boxes=boxes,
        arrangement=Arrangement(bay_count=bays, upright_rows=rows, placements=places),
    )


def found(project: Project, kind: CheckKind, severity: Severity) -> list[Finding]:
    return [f for f in inspect(project) if f.kind is kind and f.severity is severity]


def cleared(project: Project, finding: Finding) -> None:
    """Its first mend that can be applied, applied, leaves no such finding on the same subject."""
    mend = next(mend for mend in finding.mends if mend.changes)
    mended = changed(project, mend.changes)
    assert not [
        f for f in inspect(mended)
        if (f.kind, f.subject, f.severity) == (finding.kind, finding.subject, Severity.BROKEN)
    ]  # fmt: skip


def test_too_long_a_shelf_sags_and_a_thicker_board_mends_it() -> None:
    project = shop((5.0,))
    broken = found(project, CheckKind.SAG, Severity.BROKEN)
    assert [f.part_number for f in broken if f.subject.startswith("Shelf")] == ["S1"]
    for finding in broken:
        cleared(project, finding)


def test_a_shorter_span_is_told_in_whole_millimetres() -> None:
    (shelf,) = [f for f in found(shop((5.0,)), CheckKind.SAG, Severity.BROKEN) if f.subject.startswith("Shelf")]
    assert re.fullmatch(r"Or shorten the span to \d+ mm, or load it less\.", shelf.mends[-1].text)


def test_a_60_kg_drawer_in_runners_of_45() -> None:
    project = shop((60.0, 5.0))
    runners = project.construction.runners.replace(load_classes_kg=(35.0, 45.0))
    project = project.replace(construction=project.construction.replace(runners=runners))
    (finding,) = found(project, CheckKind.RUNNER_LOAD, Severity.BROKEN)
    assert finding.value is not None
    assert finding.value > 62.0  # its drawer and the allowance are on the runners too
    assert finding.box_ids == ("box-0",)
    cleared(project, finding)


def test_a_tall_run_standing_free_tips_and_a_wall_holds_it() -> None:
    project = shop((20.0, 20.0, 20.0, 20.0, 20.0), existing_wall=False, length_mm=520.0)
    project = project.replace(construction=project.construction.replace(rear=Rear(kind=Back.FULL_BACK)))
    tipping = found(project, CheckKind.TIPPING, Severity.BROKEN)
    assert tipping
    assert all(finding.value is not None and finding.value < 5 for finding in tipping)
    assert found(project, CheckKind.FIXING, Severity.BROKEN)
    for finding in tipping:
        cleared(project, finding)


def test_while_it_is_being_filled_fewer_may_be_open() -> None:
    project = shop((20.0, 20.0, 20.0, 20.0, 20.0), existing_wall=False, length_mm=520.0)
    filled, filling = [f for f in inspect(project) if f.kind is CheckKind.TIPPING]
    assert filled.value is not None
    assert filling.value is not None
    assert filling.value <= filled.value
    assert "while it is being filled" in filling.message or "while it is being filled" in filled.message


def test_a_heavy_box_on_the_floor_is_hard_on_the_back() -> None:
    project = shop((22.0, 4.0))
    finding, *others = found(project, CheckKind.LIFTING, Severity.BROKEN)
    assert all("within an hour" in other.subject for other in others)
    assert finding.box_ids == ("box-0",)
    assert finding.mends


def test_missing_masses_are_told_and_never_passed() -> None:
    findings = inspect(shop((None, None, None)))
    for kind in (CheckKind.RUNNER_LOAD, CheckKind.LIFTING, CheckKind.TIPPING, CheckKind.SAG):
        told = [f for f in findings if f.kind is kind and f.severity is Severity.UNCHECKED]
        assert told, kind
        assert told[0].message.startswith("Mass missing for 3 boxes")


@pytest.mark.parametrize(
    "safety",
    [
        Safety(board_material=BoardMaterial.OTHER),
        Safety(board_material=BoardMaterial.STRAND_BOARD, climate=Climate.OUTDOORS),
    ],
)  # fmt: skip
def test_an_unknown_material_or_climate_is_not_checked(safety: Safety) -> None:
    project = shop((5.0,)).replace(safety=safety)
    sag = [f for f in inspect(project) if f.kind is CheckKind.SAG]
    assert sag
    assert {f.severity for f in sag} == {Severity.UNCHECKED}


def test_a_box_too_high_to_reach() -> None:
    project = shop((3.0, 3.0, 3.0, 3.0, 3.0, 3.0))
    project = project.replace(safety=Safety(reach_height_mm=1_200.0, walkway_mm=500.0))
    broken = found(project, CheckKind.ACCESS, Severity.BROKEN)
    assert {f.subject for f in broken} == {"“Box 5”, the highest box", "Floor before the run"}


def test_every_finding_has_a_source_and_what_is_broken_has_a_mend() -> None:
    for project in (shop((60.0, None, 5.0)), shop((20.0,) * 5, existing_wall=False)):
        for finding in inspect(project):
            assert finding.source
            assert finding.mends or finding.severity in (Severity.KEPT, Severity.NEAR)


def test_nothing_arranged_nothing_found() -> None:
    assert inspect(Project()) == ()


def test_the_materials_to_choose_from_are_those_of_the_table() -> None:
    assert {*MATERIALS, BoardMaterial.OTHER} == set(BoardMaterial)


def test_what_no_dividing_mends_is_not_to_be_lifted_alone() -> None:
    project = shop((22.0, 4.0)).replace(safety=Safety(twist_degrees=180.0))
    finding, *_ = found(project, CheckKind.LIFTING, Severity.BROKEN)
    assert any("Nobody should lift it there alone" in mend.text for mend in finding.mends)
    assert not any("Divide" in mend.text for mend in finding.mends)
