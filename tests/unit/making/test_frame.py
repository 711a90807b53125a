"""Where uprights, bays and joints lie along the run."""

import pytest

from baywright.making.frame import Role, frame_of
from baywright.model.construction import Uprights
from baywright.model.project import Project
from baywright.workings import derive


def _own(project: Project) -> Project:
    return project.replace(construction=project.construction.replace(uprights=Uprights.OWN))


def test_shared_uprights_stand_a_bay_pitch_apart(two_bays: Project) -> None:
    frame = frame_of(two_bays, derive(two_bays))
    assert [upright.left_mm for upright in frame.uprights] == pytest.approx([0, 477.4, 954.8, 2382])
    assert [upright.role for upright in frame.uprights] == [
        Role.LEFT, Role.INNER, Role.BEFORE_SHELVES, Role.SHELVES_RIGHT,
    ]  # fmt: skip
    assert [span.bay for span in frame.spans] == [0, 1, None]


def test_own_uprights_stand_in_pairs(two_bays: Project) -> None:
    project = _own(two_bays)
    frame = frame_of(project, derive(project))
    assert [upright.left_mm for upright in frame.uprights] == pytest.approx([0, 477.4, 495.4, 972.8, 990.8, 2382])
    assert [left for left, _ in frame.carcasses_mm] == pytest.approx([0, 495.4, 990.8])
    assert frame.joints_mm == pytest.approx((495.4, 990.8))
    assert frame.upright_at(495.4) == "uprights 2 and 3"


@pytest.mark.parametrize("own", [False, True])
@pytest.mark.parametrize("shelves", [False, True])
def test_the_frame_is_as_long_as_the_workings_say(two_bays: Project, own: bool, shelves: bool) -> None:
    project = _own(two_bays) if own else two_bays
    project = project.replace(limits=project.limits.replace(shelf_bay=shelves))
    workings = derive(project)
    frame = frame_of(project, workings)
    assert frame.length_mm == pytest.approx(workings.value("run_length"))
    filled = sum(span.width_mm for span in frame.spans) + len(frame.uprights) * frame.upright_mm
    assert filled == pytest.approx(frame.length_mm)


def test_without_a_shelf_bay_the_last_upright_is_the_right_one(two_bays: Project) -> None:
    project = two_bays.replace(limits=two_bays.limits.replace(shelf_bay=False))
    frame = frame_of(project, derive(project))
    assert [upright.role for upright in frame.uprights] == [Role.LEFT, Role.INNER, Role.RIGHT]
    assert frame.joints_mm == pytest.approx((486.4,))
    assert frame.upright_at(486.4) == "upright 2"
