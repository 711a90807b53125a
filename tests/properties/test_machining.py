"""Whatever the run is like: what is drilled and cut lies inside its part, keeps its distance, and meets what it should.

The witnesses in `tests/oracle` bore and put together on their own; what they find wrong must have been told by name.
"""

import random
import re
from collections import Counter

from hypothesis import given, settings
from hypothesis import strategies as st

from baywright.making import manufacture
from baywright.model.construction import (
    Back,
    Drilling,
    EdgingKind,
    FrontEdge,
    Fronts,
    Jointing,
    Stand,
)
from baywright.model.machining import HolePurpose
from baywright.model.making import Manufacture, Part
from baywright.model.project import Built, Project
from baywright.workings import derive
from tests.oracle.assembly import (
    base_upper,
    boards,
    clear_rooms,
    face_holes,
    first_row,
    row_holes,
    runner_heights,
    unmet_joints,
    unmet_screws,
    uprights,
)
from tests.oracle.drilling import all_faults, count
from tests.properties.invented import projects, thrown


@st.composite
def worked(draw: st.DrawFn) -> Project:
    """An invented workshop with boxes thrown into it, and everything that machining depends on chosen anew."""
    project = thrown(draw(projects()), random.Random(draw(st.integers(0, 10_000))), bays=draw(st.integers(1, 4)))
    made = project.construction
    if draw(st.booleans()):
        project = project.replace(built=Built(bays=(0,), project=project))
    thick = draw(st.sampled_from([16.0, 18.0, 19.0, 25.0]))
    return project.replace(
        construction=made.replace(
            boards=made.boards.replace(
                upright_mm=thick, base_mm=draw(st.sampled_from([thick, 18.0])),
                top_mm=draw(st.sampled_from([18.0, 27.0])),
                longest_mm=draw(st.sampled_from([700.0, 1220.0, 2500.0])),
            ),
            jointing=draw(st.sampled_from(Jointing)),
            hole_rows=made.hole_rows.replace(
                drilling=draw(st.sampled_from(Drilling)),
                front_setback_mm=draw(st.sampled_from([37.0, 37.0, 40.0, 50.0])),
                hole_diameter_mm=draw(st.sampled_from([5.0, 5.0, 3.0, 7.5])),
            ),
            standing=made.standing.replace(kind=draw(st.sampled_from(Stand))),
            rear=made.rear.replace(
                kind=draw(st.sampled_from(Back)), brace_width_mm=draw(st.sampled_from([60.0, 100.0]))
            ),
            top=made.top.replace(front_edge=draw(st.sampled_from(FrontEdge))),
            edging=made.edging.replace(kind=draw(st.sampled_from(EdgingKind))),
        )
    )  # fmt: skip


@st.composite
def odd(draw: st.DrawFn) -> Project:
    """The same with measures that nobody would choose, some of which no board can have."""
    project = draw(worked())
    made = project.construction

    def some(least: float, most: float) -> float:
        return round(draw(st.floats(least, most)), 1)

    heights = sorted((some(25, 200), some(25, 200)))
    boards = {
        f"{board}_mm": some(6, 40)
        for board in ("upright", "base", "top", "back", "brace", "plinth", "front", "end_panel")
    }  # fmt: skip
    return project.replace(
        construction=made.replace(
            boards=made.boards.replace(**boards, drawer_side_mm=some(8, 25), drawer_bottom_mm=some(3, 12)),
            hole_rows=made.hole_rows.replace(
                pitch_mm=some(5, 100), front_setback_mm=some(1, 300), rear_setback_mm=some(1, 300),
                hole_diameter_mm=some(2, 15), hole_depth_mm=some(3, 50), first_row_mm=some(1, 60),
            ),
            drawers=made.drawers.replace(
                side_height_mm=heights[1], rail_height_mm=heights[0], groove_depth_mm=some(0, 7.9),
                groove_offset_mm=some(0, 12), reveal_mm=some(0, 20),
            ),
            standing=made.standing.replace(height_mm=some(0, 200), plinth_setback_mm=some(0, 200)),
            rear=made.rear.replace(brace_width_mm=some(10, 300)),
            runners=made.runners.replace(line_offset_mm=some(0, 100)),
            top=made.top.replace(overhang_front_mm=some(0, 100), overhang_side_mm=some(0, 50)),
        )
    )  # fmt: skip


def _remarked(made: Manufacture) -> set[str]:
    """The numbers of parts that a remark names."""
    text = " ".join(made.remarks)
    return {part.number for part in made.parts if f"({part.number})" in text}


@settings(max_examples=40)
@given(st.one_of(worked(), odd()))
def test_every_hole_lies_in_its_part_and_keeps_its_distance_or_is_named(project: Project) -> None:
    made = manufacture(project)
    wrong = all_faults(list(made.parts))
    assert {number: faults for number, faults in wrong.items() if number not in _remarked(made)} == {}
    assert not any("reaches out" in fault for faults in wrong.values() for fault in faults)


@settings(max_examples=40)
@given(st.one_of(worked(), odd()))
def test_what_is_joined_meets(project: Project) -> None:
    made = manufacture(project)
    pieces = [*uprights(project, made), *boards(project, made)]
    assert unmet_joints(pieces) == []
    assert unmet_screws(pieces) == []


@settings(max_examples=25)
@given(worked())
def test_left_and_right_holes_of_a_bay_face_each_other_at_the_rows_of_the_arrangement(project: Project) -> None:
    workings = derive(project)
    made = manufacture(project, workings)
    standing = uprights(project, made)
    if not standing:
        return
    places = [(bay.left_mm, bay.left_mm + bay.clear_mm) for bay in workings.layout.bays]
    for bay, (before, after) in enumerate(clear_rooms(standing, places)):
        left, right = row_holes(before, is_right=True), row_holes(after, is_right=False)
        assert left == right
        screwed = {
            (round(base_upper(project) + line.runner_line_mm, 3), round(place, 3))
            for line in made.schedule if line.bay == bay + 1 for place in line.runner_holes_mm
        }  # fmt: skip
        assert screwed <= set(left), "the schedule names holes that are drilled"
        used = {z for z, _ in screwed}
        expected = runner_heights(project, bay, workings.layout.bays[bay].rows)
        assert used == expected or (used < expected and _is_told(made))
    shelf = workings.layout.shelf
    if shelf is not None:
        ((before, after),) = clear_rooms(standing, [(shelf.left_mm, shelf.left_mm + shelf.clear_mm)])
        pins = face_holes(before, HolePurpose.PIN, is_right=True)
        assert pins == face_holes(after, HolePurpose.PIN, is_right=False)


def _is_told(made: Manufacture) -> bool:
    """Whether it was told that drawers cannot hang because no runner fits, or that rows cannot be drilled."""
    return any("runner fits" in remark or "not drilled" in remark for remark in made.remarks)


@settings(max_examples=25)
@given(worked())
def test_the_hardware_order_is_what_the_drawings_show(project: Project) -> None:
    made = manufacture(project)
    parts = list(made.parts)
    needed: Counter[str] = Counter()
    for item in made.hardware:
        needed[item.number[:2]] += round(item.needed)
    assert needed["LT"] * 2 == count(parts, "mortise")
    assert needed["DW"] * 2 == count(parts, "dowel")
    assert needed["CB"] * 2 == count(parts, "connecting bolt")
    assert needed["PS"] == count(parts, "pocket screw")
    on_sides = sum(
        part.quantity * sum(hole.purpose is HolePurpose.RUNNER for hole in part.machining.holes)
        for part in parts if part.number.startswith("D1")
    )  # fmt: skip
    screwed = {(line.bay, line.drawer): len(line.runner_holes_mm) for line in made.schedule}
    assert needed["SS"] == 2 * sum(screwed.values()), "as the schedule says, in an upright at the left and the right"
    rows = {bay.number: bay.rows for bay in derive(project).layout.bays}
    all_hang = all(p.row < rows.get(p.bay, 0) for p in project.arrangement.placements)
    if all_hang and not any("(D1" in remark for remark in made.remarks) and not _is_told(made):
        assert needed["SS"] == on_sides, "a runner is screwed to upright and drawer with as many screws"
    of_rows = count([part for part in parts if part.number.startswith("U")], HolePurpose.RUNNER.value)
    assert of_rows <= needed["SS"], "a hole is told to be a runner's only where all pieces use it"
    assert needed["WS"] == count(parts, "screw through") + on_sides
    if not any("there is room for" in remark for remark in made.remarks):
        assert count(parts, "screw through") == count(parts, "screw blind")


@settings(max_examples=25)
@given(worked().filter(lambda project: project.construction.drawers.fronts is not Fronts.NONE))
def test_front_panels_are_drilled_where_the_rails_behind_them_are(project: Project) -> None:
    workings = derive(project)
    made = manufacture(project, workings)
    parts = {part.number: part for part in made.parts}
    beside = project.construction.runners.thickness_mm + project.boards.drawer_side_mm
    start = base_upper(project) + first_row(project) - project.construction.runners.line_offset_mm
    for panel in made.fronts:
        if panel.number not in parts or f"({panel.number})" in " ".join(made.remarks):
            continue
        bay = workings.layout.bays[panel.bay]
        rail = next(
            part for part in made.parts if part.number.startswith("D2") and _through(part)
            and abs(part.length_mm - (bay.clear_mm - 2 * beside)) < 1e-6
        )  # fmt: skip
        lower = start + panel.row * project.construction.hole_rows.pitch_mm
        behind = {(round(bay.left_mm + beside + x, 3), round(lower + y, 3)) for x, y in _through(rail)}
        holes = parts[panel.number].machining.holes
        assert {(round(panel.left_mm + h.x_mm, 3), round(panel.bottom_mm + h.y_mm, 3)) for h in holes} == behind


def _through(part: Part) -> list[tuple[float, float]]:
    return [(hole.x_mm, hole.y_mm) for hole in part.machining.holes if hole.depth_mm is None]


@settings(max_examples=25)
@given(worked(), st.randoms(use_true_random=False))
def test_whole_rows_stay_what_they_are_when_boxes_change_places(project: Project, chance: random.Random) -> None:
    """As long as the run keeps its shape and every drawer the runner of its bay, no upright changes."""
    rows = project.construction.hole_rows.replace(drilling=Drilling.WHOLE_ROWS)
    before = project.replace(construction=project.construction.replace(hole_rows=rows))
    after = before.replace(arrangement=thrown(before, chance, bays=before.arrangement.bay_count).arrangement)
    if derive(before).layout != derive(after).layout or len({k.zone_depth_mm for k in derive(after).kinds}) > 1:
        return
    one, other = (
        [part for part in manufacture(each).parts if part.number.startswith("U")] for each in (before, after)
    )  # fmt: skip
    assert one == other


@settings(max_examples=25)
@given(st.one_of(worked(), odd()))
def test_the_parts_list_names_the_lines_that_are_drilled(project: Project) -> None:
    """Or sends people to the drawing; what it names is what the part has, face by face."""
    for part in manufacture(project).parts:
        holes = [hole for hole in part.machining.holes if hole.row is not None]
        if not holes:
            assert "hole lines" not in part.note
            continue
        if "in the drawing" in part.note:
            continue
        told = re.search(r"rows (\d+) to (\d+) are drilled, the first ([\d.]+) mm .*?; hole lines (.*)$", part.note)
        assert told is not None, part.note
        assert {int(told[1]), int(told[2])} == {min(h.row or 0 for h in holes), max(h.row or 0 for h in holes)}
        assert float(told[3]) == round(min(hole.x_mm for hole in holes), 2)
        named = {float(number) for number in re.findall(r"\d+(?:\.\d+)?", told[4])}
        assert named == {round(hole.y_mm, 2) for hole in holes}
        assert (" face, " in told[4]) <= (len({hole.side for hole in holes}) == 2)
