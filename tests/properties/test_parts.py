"""Laws of the parts list for any construction, checked by counting and adding up in another way."""

from itertools import combinations, pairwise

from hypothesis import given
from hypothesis import strategies as st

from baywright.making import manufacture
from baywright.making.frame import frame_of
from baywright.making.sections import divide
from baywright.model.arrangement import Arrangement, Placement
from baywright.model.construction import (
    Back,
    Boards,
    Construction,
    FirstRowRule,
    HoleRows,
    Rear,
    Runners,
    Stand,
    Standing,
    Top,
    Uprights,
)
from baywright.model.inventory import Box, BoxSize
from baywright.model.making import Manufacture
from baywright.model.project import Project
from baywright.model.space import Space
from baywright.workings import derive

thickness = st.sampled_from([9.0, 12.0, 15.0, 17.6, 18.0, 27.0])


@st.composite
def constructions(draw: st.DrawFn) -> Construction:
    boards = Boards(
        upright_mm=draw(thickness),
        base_mm=draw(thickness),
        top_mm=draw(thickness),
        brace_mm=draw(thickness),
        longest_mm=draw(st.sampled_from([500.0, 1220.0, 2440.0, 2500.0, 20_000.0])),
    )
    return Construction(
        uprights=draw(st.sampled_from(Uprights)),
        boards=boards,
        standing=Standing(kind=draw(st.sampled_from(Stand)), height_mm=draw(st.sampled_from([0.0, 80.0, 100.5]))),
        rear=Rear(kind=draw(st.sampled_from(Back))),
        top=Top(overhang_side_mm=draw(st.sampled_from([0.0, 15.0]))),
        hole_rows=HoleRows(first_row_rule=draw(st.sampled_from(FirstRowRule))),
        runners=Runners(length_mm=draw(st.sampled_from([None, 300.0, 2000.0]))),
    )


@st.composite
def projects(draw: st.DrawFn) -> Project:
    size = BoxSize(id="size", name="Size", width_mm=draw(st.floats(100, 800)), depth_mm=300, height_mm=120)
    bays, rows = draw(st.integers(1, 9)), draw(st.integers(1, 60))
    places = draw(st.sets(st.tuples(st.integers(0, bays - 1), st.integers(0, rows - 1)), max_size=12))
    masses = st.one_of(st.none(), st.floats(0, 100))
    boxes = [Box(id=f"box-{n}", label=f"{n}", size_id="size", loaded_mass_kg=draw(masses)) for n in range(len(places))]
    placements = [
        Placement(box_id=box.id, bay=bay, row=row) for box, (bay, row) in zip(boxes, sorted(places), strict=True)
    ]
    return Project(
        space=Space(length_mm=draw(st.floats(600, 9000)), depth_mm=draw(st.floats(150, 900))),
        construction=draw(constructions()),
        box_sizes=(size,),
        boxes=tuple(boxes),
        arrangement=Arrangement(bay_count=bays, upright_rows=rows, placements=tuple(placements)),
    )


def _length_of(made: Manufacture, number: str) -> float:
    return sum(
        part.quantity * part.length_mm
        for part in made.parts
        if part.number == number or part.number.startswith((f"{number}.", f"{number}s"))
    )


@given(projects())
def test_what_is_listed_can_be_made_and_fills_the_run(project: Project) -> None:
    workings = derive(project)
    made = manufacture(project, workings)
    for part in made.parts:
        assert min(part.quantity, part.length_mm, part.width_mm, part.thickness_mm) > 0
    run = workings.value("run_length")
    if workings.value("upright_height") > 0 and workings.value("upright_depth") > 0:
        assert abs(_length_of(made, "B1") - run) < 1e-6
        assert abs(_length_of(made, "T1") - workings.value("top_length")) < 1e-6
        uprights = sum(part.quantity for part in made.parts if part.number.startswith("U"))
        assert uprights == len(frame_of(project, workings).uprights)
    rear = next(number for number in ("R1", "R2", "R4") if _length_of(made, number) or number == "R4")
    assert abs(_length_of(made, rear) - run) < 1e-6 or workings.value("upright_height") <= 0


@given(projects())
def test_hardware_follows_from_parts_and_schedule(project: Project) -> None:
    made = manufacture(project)
    order = {item.number: item for item in made.hardware}
    drawers = len(made.schedule)
    pairs = sum(item.needed for number, item in order.items() if number.startswith("RP"))
    assert pairs == (drawers if derive(project).value("runner_length") > 0 else 0)
    edging = sum(item.needed for number, item in order.items() if number.startswith("ED"))
    longer_mm = project.construction.edging.overlength_mm
    strips = [part.quantity * (part.edged_length_mm + part.edging_strips * longer_mm) for part in made.parts]
    assert abs(edging - sum(strips) / 1000) < 1e-9
    for item in made.hardware:
        covered = item.packs * item.pack_size
        assert covered + 1e-6 >= item.needed + item.allowance > covered - item.pack_size


@given(projects())
def test_the_schedule_tells_every_placed_box_once_in_order(project: Project) -> None:
    schedule = manufacture(project).schedule
    assert sorted(line.box_id for line in schedule) == sorted(p.box_id for p in project.arrangement.placements)
    assert [(line.bay, line.drawer) for line in schedule] == sorted((line.bay, line.drawer) for line in schedule)
    for lower, upper in pairwise(schedule):
        if lower.bay == upper.bay:
            assert abs(lower.lower_edge_mm + lower.opening_mm - upper.lower_edge_mm) < 1e-6


@given(projects())
def test_the_same_document_gives_the_same_answer(project: Project) -> None:
    assert manufacture(project) == manufacture(Project.model_validate_json(project.model_dump_json()))


@given(
    st.lists(st.integers(1, 900), min_size=1, max_size=8),
    st.integers(300, 2500),
)
def test_no_other_division_has_fewer_or_evener_sections(bays: list[int], longest: int) -> None:
    """Brute force over all choices of joints."""
    places = [sum(bays[:n]) for n in range(len(bays) + 1)]
    longest = max(longest, *bays)
    end, joints = places[-1], places[1:-1]
    choices = (
        (0, *chosen, end)
        for count in range(len(joints) + 1)
        for chosen in combinations(joints, count)
    )  # fmt: skip
    best = min(
        (len(ends), max(b - a for a, b in pairwise(ends)))
        for ends in choices
        if all(b - a <= longest for a, b in pairwise(ends))
    )
    found = divide(0, end, joints, longest)
    assert (len(found), max(b - a for a, b in pairwise(found))) == best
