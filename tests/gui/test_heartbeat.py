"""Planning never holds the window up: a heartbeat in its thread is never late by much while the planner works."""

import time

import pytest
from pytestqt.qtbot import QtBot

from baywright.model.inventory import Box, BoxSize
from baywright.model.project import Project
from baywright.model.space import Space
from tests.gui.desk import OpenDesk
from tests.gui.heart import GAPS_FORGIVEN, LONGEST_GAP_S, Heart


def many_boxes(count: int) -> Project:
    heights = (105, 157.5, 210, 315)
    sizes = tuple(
        BoxSize(id=f"h{n}", name=f"H{n}", width_mm=396, depth_mm=297, height_mm=height)
        for n, height in enumerate(heights)
    )
    boxes = tuple(
        Box(id=f"box-{n}", label=f"Box {n}", size_id=f"h{(0, 1, 1, 2, 3)[n % 5]}", loaded_mass_kg=2 + n / 4)
        for n in range(count)
    )
    return Project(space=Space(length_mm=120 * count, height_limit_mm=1200), box_sizes=sizes, boxes=boxes)


@pytest.mark.parametrize("count", [20, 150])
def test_the_window_answers_while_a_plan_is_made(open_desk: OpenDesk, qtbot: QtBot, count: int) -> None:
    desk = open_desk(many_boxes(count), synchronous=False)
    heart = Heart()
    qtbot.wait(50)  # the window is drawn
    # Drawing the new arrangement once, after the answer, is not part of planning: the heart stands still by then.
    desk.session.subscribe(lambda _notice: None if desk.session.is_planning else heart.stop())
    heart.start()
    desk.actions.plan.trigger()
    qtbot.waitUntil(lambda: not desk.session.is_planning, timeout=30_000)
    assert len(heart.gaps) <= GAPS_FORGIVEN, heart.gaps
    assert desk.window.status.placed.text() == f"{count} of {count} placed"


def test_a_window_that_is_kept_busy_is_noticed(qtbot: QtBot) -> None:
    heart = Heart()
    heart.start()
    qtbot.wait(20)
    began = time.process_time()
    while time.process_time() - began < 2 * LONGEST_GAP_S:
        pass
    qtbot.wait(20)
    heart.stop()
    assert len(heart.gaps) >= 1
