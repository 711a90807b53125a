"""Parts of every construction fit together: the parts list of invented runs, put together by a joiner of its own."""

import random

from hypothesis import given, settings
from hypothesis import strategies as st

from baywright.making import manufacture
from baywright.model.arrangement import Arrangement, Placement
from baywright.model.construction import (
    Back,
    Boards,
    Construction,
    DrawerForm,
    Drawers,
    Edging,
    EdgingKind,
    EndPanels,
    Fronts,
    Rear,
    Runners,
    Stand,
    Standing,
    Top,
    Uprights,
)
from baywright.model.inventory import Box, BoxSize
from baywright.model.limits import Limits
from baywright.model.project import Project
from baywright.model.space import Space
from baywright.model.stock import Batch, BoardRole, Material, Stock
from baywright.workings import derive
from tests.oracle.cabinet import misfits, misfits_along
from tests.oracle.drawer import lower_edge_mm, rows_taken
from tests.oracle.wall import clear_mm
from tests.properties.invented import FEATURES, projects, thrown

HEIGHTS_MM = [70.0, 120.0, 170.0, 220.0]
ROWS = 40


@st.composite
def constructions(draw: st.DrawFn) -> Construction:
    thickness = st.sampled_from([12.0, 15.0, 17.6, 18.0, 21.3])
    boards = Boards(**{f"{role.value}_mm": draw(thickness) for role in BoardRole}, longest_mm=draw(
        st.sampled_from([1220.0, 2500.0, 20_000.0])
    ))  # fmt: skip
    boards = boards.replace(drawer_bottom_mm=draw(st.sampled_from([6.5, 9.0])))
    return Construction(
        uprights=draw(st.sampled_from(Uprights)),
        boards=boards,
        drawers=Drawers(
            form=draw(st.sampled_from(DrawerForm)), rail_height_mm=draw(st.sampled_from([30.0, 55.5])),
            fronts=draw(st.sampled_from(Fronts)), reveal_mm=draw(st.sampled_from([0.0, 1.5, 3.0])),
            has_box_stop=draw(st.booleans()), lateral_play_mm=draw(st.sampled_from([0.0, 2.5])),
        ),
        runners=Runners(length_mm=draw(st.sampled_from([None, 350.0])), line_offset_mm=draw(
            st.sampled_from([0.0, 14.0, 37.0])
        )),
        standing=Standing(kind=draw(st.sampled_from(Stand)), height_mm=draw(st.sampled_from([0.0, 80.0]))),
        rear=Rear(kind=draw(st.sampled_from(Back))),
        top=Top(overhang_side_mm=draw(st.sampled_from([0.0, 15.0])), overhang_front_mm=draw(
            st.sampled_from([0.0, 8.0, 30.0])
        )),
        edging=Edging(kind=draw(st.sampled_from(EdgingKind)), thickness_mm=draw(st.sampled_from([0.4, 2.0, 8.0]))),
        end_panels=EndPanels(left=draw(st.booleans()), right=draw(st.booleans())),
    )  # fmt: skip


@st.composite
def runs(draw: st.DrawFn) -> Project:
    """A run whose bays are filled from the bottom, with rows left free here and there."""
    sizes = tuple(
        BoxSize(
            id=f"size-{n}", name=f"Size {n}", width_mm=400, depth_mm=draw(st.sampled_from([200, 290])), height_mm=mm
        )
        for n, mm in enumerate(draw(st.lists(st.sampled_from(HEIGHTS_MM), min_size=1, max_size=3, unique=True)))
    )
    bays = draw(st.integers(1, 4))
    plain = Project(
        space=Space(length_mm=4000.0, depth_mm=draw(st.sampled_from([380.0, 450.0]))),
        construction=draw(constructions()),
        limits=Limits(bay_box_width_mm=400.0, shelf_bay=draw(st.booleans()), bay_count=bays),
        box_sizes=sizes,
    )
    chance = random.Random(draw(st.integers(0, 10_000)))
    boxes: list[Box] = []
    placements: list[Placement] = []
    for bay in range(bays):
        row = next(n for n in range(9) if lower_edge_mm(plain, n) >= plain.construction.runners.gap_under_lowest_mm)
        while chance.random() < 0.8:
            size = chance.choice(sizes)
            row += chance.choice([0, 0, 0, 1, 3, 9])
            rows = rows_taken(plain, size.height_mm)
            if row + rows >= ROWS:
                break
            box = Box(id=f"box-{len(boxes)}", label=f"Box {len(boxes)}", size_id=size.id)
            boxes.append(box)
            placements.append(Placement(box_id=box.id, bay=bay, row=row))
            row += rows
    arrangement = Arrangement(bay_count=bays, upright_rows=ROWS, placements=tuple(placements))
    return plain.replace(boxes=tuple(boxes), arrangement=arrangement)


@settings(max_examples=150)
@given(runs())
def test_the_parts_of_every_construction_fit_together(project: Project) -> None:
    assert misfits(project, manufacture(project)) == []


@settings(max_examples=60)
@given(runs())
def test_no_drawer_is_heavier_than_it_was_reckoned(project: Project) -> None:
    """Two sides, two rails, a bottom, a stop and the front that hangs there, against what the planner counts with."""
    made = manufacture(project)
    heaviest: dict[str, float] = {}
    for part in made.parts:
        if part.role in (BoardRole.DRAWER_SIDE, BoardRole.DRAWER_BOTTOM, BoardRole.FRONT):
            name = part.name.partition(",")[0]
            heaviest[name] = max(heaviest.get(name, 0.0), part.mass_kg or 0.0)
    pieces = {"Drawer side": 2, "Drawer rail": 2}
    total = sum(pieces.get(name, 1) * mass for name, mass in heaviest.items())
    assert total <= (derive(project).drawer_mass() or 0.0) + 1e-9


@settings(max_examples=60)
@given(projects(FEATURES - {"shelf"}), st.randoms(use_true_random=False))
def test_parts_fit_where_bays_differ_and_the_run_is_interrupted(project: Project, chance: random.Random) -> None:
    plain = project.replace(limits=project.limits.replace(shelf_bay=False))
    there = thrown(plain, chance, bays=chance.randint(1, 4), rows=chance.randint(3, 30))
    made = manufacture(there)
    if any("would have no size left" in remark for remark in made.remarks):
        return  # a bay without rows, which no plan has
    assert misfits_along(there, made) == []


def _measured(project: Project, off: dict[BoardRole, float]) -> Project:
    """The same project with batches for some roles: as thick as its construction says, which then says otherwise."""
    boards = project.construction.boards
    materials, said = [], {}
    for role, by in off.items():
        thick = getattr(boards, f"{role.value}_mm")
        batch = Batch(id="batch", name="Batch", readings_mm=(round(thick - 0.1, 2), round(thick + 0.1, 2)))
        materials.append(Material(
            id=f"m-{role.value.replace('_', '-')}", name=role.value, nominal_mm=thick + by, roles=(role,),
            batches=(batch,), batch_id="batch",
        ))  # fmt: skip
        said[f"{role.value}_mm"] = thick + by
    return project.replace(
        construction=project.construction.replace(boards=boards.replace(**said)),
        stock=Stock(materials=tuple(materials)),
    )


@settings(max_examples=40)
@given(runs(), st.dictionaries(st.sampled_from(BoardRole), st.sampled_from([0.5, 1.0]), max_size=5))
def test_measured_thicknesses_are_in_force_in_every_size(project: Project, off: dict[BoardRole, float]) -> None:
    """Whether a thickness was entered or measured, the same boards are cut."""
    by_hand, measured = manufacture(project), manufacture(_measured(project, off))
    assert [(p.number, p.quantity, p.length_mm, p.width_mm, p.thickness_mm) for p in measured.parts] == [
        (p.number, p.quantity, p.length_mm, p.width_mm, p.thickness_mm) for p in by_hand.parts
    ]
    assert measured.fronts == by_hand.fronts
    for part in measured.parts:
        assert ("thick, called" in part.note) == (part.role in off)


def test_a_joiner_who_gets_a_wrong_board_says_so() -> None:
    """The witness can fail: each board made a little too long or too wide is found out."""
    size = BoxSize(id="size", name="Size", width_mm=400, depth_mm=200, height_mm=120)
    construction = Construction(
        drawers=Drawers(fronts=Fronts.OVERLAY, has_box_stop=True, form=DrawerForm.TRAY, rail_height_mm=40),
        end_panels=EndPanels(left=True, right=True),
    )
    boxes = tuple(Box(id=f"box-{n}", label=f"{n}", size_id="size") for n in range(2))
    places = tuple(Placement(box_id=box.id, bay=0, row=6 * n) for n, box in enumerate(boxes))
    project = Project(
        construction=construction, box_sizes=(size,), boxes=boxes,
        arrangement=Arrangement(bay_count=1, upright_rows=20, placements=places),
    )  # fmt: skip
    made = manufacture(project)
    assert misfits(project, made) == []
    assert {part.number for part in made.parts} >= {"D4", "F1", "E1L", "E1R"}
    for index, part in enumerate(made.parts):
        for measure in ("length_mm", "width_mm", "cut_length_mm", "cut_width_mm"):
            if (part.number, measure) in {("D4", "width_mm"), ("R4", "width_mm"), ("D4", "length_mm")}:
                continue  # nothing else is cut to these
            wrong = part.replace(**{measure: getattr(part, measure) + 0.5})
            spoilt = made.replace(parts=(*made.parts[:index], wrong, *made.parts[index + 1 :]))
            assert misfits(project, spoilt), (part.number, measure)
    assert clear_mm(project, 400) > 400
