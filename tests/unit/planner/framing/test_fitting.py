"""What goes into a drawer: rows and files, turning, the load that is left."""

import pytest

from baywright.model.inventory import BoxSize
from baywright.model.project import Project
from baywright.planner.framing.fitting import Fitting, Stand, is_orderly, possible_stands


def size(width: float, depth: float, *, turn: bool = False, abreast: int = 1, behind: int = 1) -> BoxSize:
    name = f"s-{width:g}-{depth:g}-{turn:d}-{abreast}-{behind}".replace(".", "_")
    return BoxSize(
        id=name, name="Size", width_mm=width, depth_mm=depth, height_mm=100,
        may_turn=turn, most_abreast=abreast, most_behind=behind,
    )  # fmt: skip


def fitting(*sizes: BoxSize) -> Fitting:
    """Bays for boxes 400 mm wide; 350 mm runners with 320 mm inside, 5 mm stop, 2 mm play."""
    project = Project(box_sizes=sizes)
    return Fitting(project.replace(limits=project.limits.replace(bay_box_width_mm=400)))


def test_a_box_alone_needs_its_width_and_its_depth_with_the_stop() -> None:
    fit = fitting()
    room = fit.room(400)
    assert room.inside_mm == 320
    assert fit.stands([size(400, 315)], room) == (Stand(),)
    assert fit.stands([size(401, 315)], room) is None
    assert fit.stands([size(400, 316)], room) is None


def test_a_box_is_turned_only_where_it_must_and_may_be() -> None:
    fit = fitting()
    room = fit.room(400)
    assert fit.stands([size(300, 300, turn=True)], room) == (Stand(),)
    assert fit.stands([size(300, 390, turn=True)], room) == (Stand(turned=True),)
    assert fit.stands([size(300, 390)], room) is None


def test_side_by_side_there_is_air_between_boxes() -> None:
    fit = fitting()
    room = fit.room(400)
    assert fit.stands([size(199, 300, abreast=2)] * 2, room) == (Stand(0), Stand(1))
    assert fit.stands([size(199.5, 300, abreast=2)] * 2, room) is None
    assert fit.stands([size(132, 300, abreast=3)] * 3, room) == (Stand(0), Stand(1), Stand(2))


def test_one_behind_another_there_is_a_stop_for_each() -> None:
    fit = fitting()
    room = fit.room(400)
    assert fit.stands([size(400, 155, behind=2)] * 2, room) == (Stand(0, 0), Stand(0, 1))
    assert fit.stands([size(400, 155.5, behind=2)] * 2, room) is None


def test_all_must_be_allowed_as_many_and_in_the_same_way() -> None:
    fit = fitting()
    room = fit.room(400)
    assert fit.stands([size(100, 100, abreast=2), size(100, 100, behind=2)], room) is None
    assert fit.stands([size(100, 100, abreast=3)] * 2 + [size(100, 100, abreast=2)], room) is None


def test_a_zone_behind_the_bay_takes_a_shorter_runner() -> None:
    fit = fitting()
    assert fit.room(400, 40).runner_mm == 300
    assert fit.room(400, 20).runner_mm == 350
    assert fit.room(400, 4000).inside_mm == 0


def test_the_load_left_is_shared_evenly() -> None:
    fit = fitting()
    room = fit.room(400)
    assert room.left_kg == pytest.approx(68 - 1.75057092 * 1, abs=0.05)
    assert fit.share(room.left_kg, room) == 1
    assert fit.share(room.left_kg + 0.01, room) == 0
    assert fit.share(room.left_kg / 2, room) == 2
    assert fit.share(room.left_kg / 3, room) == 3
    assert fit.share(None, room) == 3


def test_order_in_a_drawer_has_one_place_for_each() -> None:
    pair = [size(100, 100, abreast=2)] * 2
    assert is_orderly(pair, [Stand(1), Stand(0)])
    assert not is_orderly(pair, [Stand(0), Stand(0)])
    assert not is_orderly(pair, [Stand(0, 0), Stand(0, 1)])
    assert not is_orderly(pair[:1], [Stand(turned=True)])


def test_a_heap_of_boxes_on_one_place_stands_in_no_way_and_is_told_at_once() -> None:
    assert possible_stands([size(50, 50, turn=True, abreast=3, behind=3)] * 60) == []
