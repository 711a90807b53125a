"""What each bay has of the run: two bays of 429.4 mm and a shelf bay on a wall of 2,400 mm, uprights of 18 mm."""

import pytest

from baywright.making import manufacture
from baywright.making.frame import frame_of
from baywright.making.shares import along, pieces_in, reaches, used_in
from baywright.model.construction import Back, Uprights
from baywright.model.making import HardwareItem, Part
from baywright.model.project import Project
from baywright.workings import derive

Bays = dict[int, tuple[float, float]]


def _bays(project: Project) -> Bays:
    return reaches(frame_of(project, derive(project)))


def _part(project: Project, number: str) -> Part:
    return next(part for part in manufacture(project).parts if part.number == number)


def test_bays_reach_to_the_middle_of_the_uprights_they_share(two_bays: Project) -> None:
    """Clear width: 400 + 2 × 2 of play, 2 × 15 of sides, 2 × 12.7 of runners make 459.4 mm."""
    bays = _bays(two_bays)
    assert list(bays) == [0, 1, -1]
    assert bays[0] == pytest.approx((0, 18 + 459.4 + 9))
    assert bays[1] == pytest.approx((486.4, 486.4 + 477.4))
    assert bays[-1] == pytest.approx((963.8, 2400))


def test_bays_of_own_uprights_reach_to_their_outer_faces(two_bays: Project) -> None:
    own = two_bays.replace(construction=two_bays.construction.replace(uprights=Uprights.OWN))
    assert along(_bays(own)) == pytest.approx({0: 495.4, 1: 495.4, -1: 2400 - 2 * 495.4})


def test_a_shared_upright_is_half_each_bays(two_bays: Project) -> None:
    bays = _bays(two_bays)
    assert pieces_in(_part(two_bays, "U1"), bays) == {0: 1, 1: 0, -1: 0}
    assert pieces_in(_part(two_bays, "U2"), bays) == {0: 0.5, 1: 0.5, -1: 0}
    assert pieces_in(_part(two_bays, "U4"), bays) == {0: 0, 1: 0.5, -1: 0.5}


def test_base_and_top_are_shared_by_length(two_bays: Project) -> None:
    bays = _bays(two_bays)
    shares = {0: 486.4 / 2400, 1: 477.4 / 2400, -1: 1436.2 / 2400}
    assert pieces_in(_part(two_bays, "B1"), bays) == pytest.approx(shares)


def test_what_a_top_stands_out_is_the_outer_bays(two_bays: Project) -> None:
    top = two_bays.construction.top.replace(overhang_side_mm=50)
    project = two_bays.replace(construction=two_bays.construction.replace(top=top))
    board, bays = _part(project, "T1"), _bays(project)
    shares = pieces_in(board, bays)
    length = board.length_mm
    assert shares[0] == pytest.approx((along(bays)[0] + 50) / length)
    assert sum(shares.values()) == pytest.approx(1)


def test_drawers_and_shelves_are_where_they_are(two_bays: Project) -> None:
    bays = _bays(two_bays)
    assert pieces_in(_part(two_bays, "D3"), bays) == {0: 4, 1: 4, -1: 0}
    assert pieces_in(_part(two_bays, "S1"), bays) == {0: 0, 1: 0, -1: 3}


@pytest.mark.parametrize("back", list(Back))
def test_everything_belongs_to_some_bay(two_bays: Project, back: Back) -> None:
    rear = two_bays.construction.rear.replace(kind=back)
    project = two_bays.replace(construction=two_bays.construction.replace(rear=rear))
    bays = _bays(project)
    for part in manufacture(project).parts:
        assert sum(pieces_in(part, bays).values()) == pytest.approx(part.quantity)


def test_hardware_is_where_it_is_used_or_along_the_run(two_bays: Project) -> None:
    bays = _bays(two_bays)
    items: dict[str, HardwareItem] = {item.number: item for item in manufacture(two_bays).hardware}
    assert used_in(items["RP350-35"], bays) == {0: 4, 1: 4, -1: 0}
    assert used_in(items["SP5"], bays) == {0: 0, 1: 0, -1: 12}
    assert used_in(items["WF"], bays) == along(bays)


def test_without_bays_nothing_is_shared(two_bays: Project) -> None:
    assert pieces_in(_part(two_bays, "U1"), {}) == {}
