"""Changes of invented walls: their steps are done by a witness, and small ones are tried in every order."""

import random
from collections.abc import Sequence

from hypothesis import given, settings
from hypothesis import strategies as st

from baywright.model.arrangement import Arrangement, Placement
from baywright.model.difference import StepKind
from baywright.model.inventory import Box, BoxSize, BoxStatus
from baywright.model.limits import Limits
from baywright.model.project import Project
from baywright.planner.replanning.difference import difference
from tests.oracle.joiner import Joiner, fewest_at_once, members, placed, width_of_bay

ROWS = 24
LOW, HIGH, HALF, THIRD = "low", "high", "half", "third"
SIZES = (
    BoxSize(id=LOW, name="Low", width_mm=396, depth_mm=297, height_mm=70),
    BoxSize(id=HIGH, name="High", width_mm=396, depth_mm=297, height_mm=140),
    BoxSize(id=HALF, name="Half", width_mm=190, depth_mm=297, height_mm=70, most_abreast=2),
    BoxSize(id=THIRD, name="Third", width_mm=120, depth_mm=297, height_mm=70, most_abreast=3),
)
TAKES = {LOW: 4, HIGH: 6, HALF: 4, THIRD: 4}


def arranged(project: Project, boxes: Sequence[Box], bays: int, chance: random.Random, fill: float) -> Project:
    """The boxes thrown into bays from the bottom up, with gaps; small ones two and two where it falls so."""
    waiting = list(boxes)
    chance.shuffle(waiting)
    placements = []
    for bay in range(bays):
        row = chance.choice([0, 0, 1, 3])
        while waiting:
            box = waiting[-1]
            if row + TAKES[box.size_id] > ROWS:
                break
            placements.append(Placement(box_id=waiting.pop().id, bay=bay, row=row))
            if (
                box.size_id in (HALF, THIRD)
                and waiting
                and waiting[-1].size_id == box.size_id
                and chance.random() < 0.7
            ):
                placements.append(Placement(box_id=waiting.pop().id, bay=bay, row=row, abreast=1))
            row += TAKES[box.size_id] + (0 if chance.random() < fill else chance.choice([1, 2, 4]))
    arrangement = Arrangement(bay_count=bays, upright_rows=ROWS, placements=tuple(placements))
    return project.replace(arrangement=arrangement)


@st.composite
def changes(draw: st.DrawFn, most_boxes: int = 14, most_bays: int = 3) -> tuple[Project, Project]:
    """A wall before and after: boxes bought, sold, wished for, and moved at random."""
    chance = draw(st.randoms(use_true_random=False))
    bays = draw(st.integers(1, most_bays))
    fill = draw(st.sampled_from([0.5, 1.0]))
    boxes = tuple(
        Box(
            id=f"box-{n}",
            label=f"Box {n}",
            size_id=draw(st.sampled_from([LOW, LOW, HIGH, HALF, THIRD, THIRD])),
            status=draw(st.sampled_from([BoxStatus.OWNED] * 9 + [BoxStatus.WISHED])),
        )
        for n in range(draw(st.integers(1, most_boxes)))
    )
    project = Project(box_sizes=SIZES, boxes=boxes, limits=Limits(bay_box_width_mm=396))
    stays = [box for box in boxes if chance.random() < 0.9]
    before = arranged(project, [box for box in boxes if chance.random() < 0.9], bays, chance, fill)
    after = arranged(project, stays, bays, chance, fill)
    if draw(st.booleans()):
        after = half_kept(before, after, chance)
    if draw(st.integers(0, 3)) == 0:
        after = with_wider_bay(after)
    return before, after


def half_kept(before: Project, after: Project, chance: random.Random) -> Project:
    """A change of one bay, or of a few boxes that trade places: closer to what planning asks for."""
    kept = list(before.arrangement.placements)
    alike = [p for p in kept if before.box(p.box_id).size_id == LOW]
    if len(alike) < 2:
        return after
    chosen = chance.sample(alike, min(len(alike), chance.randint(2, 5)))
    turned = {p.box_id: q for p, q in zip(chosen, [*chosen[1:], chosen[0]], strict=True)}
    placements = [p.replace(bay=turned[p.box_id].bay, row=turned[p.box_id].row) if p in chosen else p for p in kept]
    return before.replace(arrangement=before.arrangement.replace(placements=tuple(placements)))


def with_wider_bay(project: Project) -> Project:
    widths = [396.0] * project.arrangement.bay_count
    widths[-1] = 500.0
    return project.replace(arrangement=project.arrangement.replace(box_widths_mm=tuple(widths)))


@settings(max_examples=200)
@given(changes())
def test_the_steps_can_be_done_and_end_in_the_new_arrangement(change: tuple[Project, Project]) -> None:
    before, after = change
    found = difference(before, after)
    joiner = Joiner(before, after)
    joiner.do_all(found)
    assert joiner.is_done()


@settings(max_examples=100)
@given(changes())
def test_the_difference_counts_boxes_runners_and_drawers(change: tuple[Project, Project]) -> None:
    before, after = change
    found = difference(before, after)
    there, then = placed(before), placed(after)
    assert {m.box_id for m in found.moves} == {b for b in there.keys() & then.keys() if there[b] != then[b]}
    assert {m.box_id for m in found.new_boxes} == then.keys() - there.keys()
    assert {m.box_id for m in found.gone_boxes} == there.keys() - then.keys()
    if before.arrangement.box_widths_mm == after.arrangement.box_widths_mm:
        old, new = members(there).keys(), members(then).keys()
        assert len(found.runners) == min(len(old - new), len(new - old))
        assert len(found.new_drawers) == max(0, len(new - old) - len(old - new))
        assert len(found.idle_drawers) == max(0, len(old - new) - len(new - old))


@settings(max_examples=100)
@given(changes())
def test_nothing_changed_asks_for_nothing(change: tuple[Project, Project]) -> None:
    before, _ = change
    assert difference(before, before).is_empty


@settings(max_examples=100)
@given(changes())
def test_a_box_is_set_aside_only_when_no_other_can_move(change: tuple[Project, Project]) -> None:
    before, after = change
    found = difference(before, after)
    joiner = Joiner(before, after)
    goals = placed(after)
    for step in found.steps:
        if step.kind is StepKind.SET_ASIDE:
            for box_id, spot in joiner.boxes.items():
                assert goals.get(box_id) is not None, "what leaves the run is out by now"
                assert not can_go_straight(joiner, box_id, spot, goals[box_id]), step.text
        joiner.do(step)


def can_go_straight(joiner: Joiner, box_id: str, spot: tuple[int, int] | None, goal: tuple[int, int]) -> bool:
    """Whether the box could go from its old place or the bench to its goal now, beside what leaves it only where all
    that ever stand there fit together.
    """
    if spot == goal or joiner.drawers.get(goal) != width_of_bay(joiner.after, goal[0]):
        return False
    ever = [members(placed(project)).get(goal, frozenset()) for project in (joiner.before, joiner.after)]
    leaving = any(there == goal != placed(joiner.after).get(other) for other, there in joiner.boxes.items())
    if leaving and not joiner.fit(goal, ever[0] | ever[1]):
        return False
    before = dict(joiner.boxes)
    joiner.boxes[box_id] = goal
    try:
        joiner.look()
    except AssertionError:
        return False
    finally:
        joiner.boxes = before
    return True


@settings(max_examples=60)
@given(changes(most_boxes=5, most_bays=2))
def test_no_order_needs_fewer_boxes_on_the_bench_at_once(change: tuple[Project, Project]) -> None:
    before, after = change
    found = difference(before, after)
    joiner = Joiner(before, after)
    joiner.do_all(found)
    assert joiner.most_on_bench == fewest_at_once(before, after, found)
