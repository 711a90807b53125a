"""The order of tasks: what waits for what, and what has to give way."""

from baywright.model.arrangement import Placement
from baywright.planner.replanning.course import SET_ASIDE, order_of
from baywright.planner.replanning.steps import steps
from baywright.planner.replanning.tasks import TaskKind, tasks_between
from baywright.planner.replanning.wall import Make, Spot, Wall

DEEP, SHALLOW = (432.0, 400.0), (432.0, 300.0)


def wall(drawers: dict[Spot, Make], boxes: dict[str, Spot], rows: int = 2) -> Wall:
    """A wall of drawers two rows high when empty, `rows` with a box."""
    placements = {name: Placement(box_id=name, bay=bay, row=row) for name, (bay, row) in boxes.items()}
    return Wall(drawers, placements, dict.fromkeys(boxes, rows), 2, lambda _spot, _boxes: False)


def events(there: Wall, then: Wall, runners: dict[Spot, Spot], *, new: tuple[Spot, ...] = (),
           idle: tuple[Spot, ...] = ()) -> list[tuple[str, str]]:  # fmt: skip
    tasks = tasks_between(there, then, runners, new, idle)
    return [
        ("ASIDE" if aside is SET_ASIDE else task.kind.name, task.box_id) for task, aside in order_of(tasks)
    ]  # fmt: skip


def test_drawers_of_two_makes_that_trade_places_have_one_taken_off_first() -> None:
    there = wall({(0, 0): DEEP, (0, 2): SHALLOW}, {})
    then = wall({(0, 0): SHALLOW, (0, 2): DEEP}, {})
    runners = {(0, 0): (0, 2), (0, 2): (0, 0)}
    kinds = [kind for kind, _ in events(there, then, runners)]
    assert sorted(kinds) == ["LAID_ON", "LAY_OFF", "RUNNERS"]
    assert kinds.index("LAY_OFF") < kinds.index("RUNNERS") < kinds.index("LAID_ON")
    texts = [step.text for step in steps(there, then, runners, (), (), {})]
    assert texts == [
        "Take the drawer and its runners off bay 1 row 1 and keep them at hand.",
        "Take the drawer and its runners off bay 1 row 3 and screw them on at bay 1 row 1.",
        "Screw the runners that are at hand on at bay 1 row 3 and hang their drawer.",
    ]


def test_boxes_in_drawers_that_trade_places_wait_on_the_bench_until_their_drawer_hangs() -> None:
    there = wall({(0, 0): DEEP, (0, 2): SHALLOW}, {"bells": (0, 0), "pumps": (0, 2)})
    then = wall({(0, 0): SHALLOW, (0, 2): DEEP}, {"bells": (0, 2), "pumps": (0, 0)})
    found = events(there, then, {(0, 0): (0, 2), (0, 2): (0, 0)})
    assert found.index(("ASIDE", "bells")) < found.index(("LAY_OFF", ""))
    assert found.index(("RUNNERS", "")) < found.index(("BOX", "pumps"))
    assert found.index(("LAID_ON", "")) < found.index(("BOX", "bells"))


def test_drawers_of_a_bay_are_shifted_upwards_from_the_top() -> None:
    there = wall({(0, 0): DEEP, (0, 2): DEEP, (0, 4): DEEP}, {})
    then = wall({(0, 1): DEEP, (0, 3): DEEP, (0, 5): DEEP}, {})
    tasks = tasks_between(there, then, {(0, 0): (0, 1), (0, 2): (0, 3), (0, 4): (0, 5)}, (), ())
    assert [task.before for task, _ in order_of(tasks)] == [(0, 4), (0, 2), (0, 0)]


def test_a_drawer_that_is_in_nobodys_way_is_taken_off_last_and_one_that_is_before() -> None:
    there = wall({(0, 0): DEEP, (0, 6): DEEP}, {"bells": (0, 0)})
    then = wall({(0, 0): DEEP, (0, 3): DEEP}, {"bells": (0, 0), "pumps": (0, 3)}, rows=3)
    far = events(there, then, {}, new=((0, 3),), idle=((0, 6),))
    assert [kind for kind, _ in far if kind != "BOX"] == ["NEW_DRAWER", "NEW_BOX", "IDLE_DRAWER"]
    near = wall({(0, 0): DEEP, (0, 4): DEEP}, {"bells": (0, 0)})
    close = events(near, then, {}, new=((0, 3),), idle=((0, 4),))
    assert [kind for kind, _ in close if kind != "BOX"] == ["IDLE_DRAWER", "NEW_DRAWER", "NEW_BOX"]


def test_a_box_waits_for_a_high_one_under_it_that_reaches_into_its_place() -> None:
    there = wall({(0, 0): DEEP, (0, 4): DEEP, (1, 0): DEEP}, {"bells": (0, 0), "pumps": (1, 0)}, rows=5)
    then = wall({(0, 0): DEEP, (0, 4): DEEP, (1, 0): DEEP}, {"bells": (1, 0), "pumps": (0, 4)}, rows=5)
    found = events(there, then, {})
    assert found == [("ASIDE", "bells"), ("BOX", "pumps"), ("BOX", "bells")]
    assert TaskKind.GONE_BOX < TaskKind.BOX
