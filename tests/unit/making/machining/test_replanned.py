"""The demo planned again: with whole rows its uprights stay the parts that they were, whatever hangs on them."""

from collections import Counter
from pathlib import Path

import pytest

from baywright.making import manufacture
from baywright.model.catalogue import HardwareKind
from baywright.model.construction import Drilling
from baywright.model.inventory import Box
from baywright.model.making import Manufacture, Part
from baywright.model.project import Project
from baywright.planner import plan
from baywright.storage.projects import read_project


def planned(project: Project) -> Project:
    arrangement = plan(project, effort=0).arrangement
    assert arrangement is not None
    return project.replace(arrangement=arrangement)


@pytest.fixture(scope="module")
def demo(resources: Path) -> Project:
    return planned(read_project(resources / "demo.baywright"))


@pytest.fixture(scope="module")
def fuller(demo: Project) -> Project:
    """With one more box of the lowest size, planned again."""
    low = min(demo.box_sizes, key=lambda size: size.height_mm)
    box = Box(id="one-more", label="One more", size_id=low.id, loaded_mass_kg=3.0)
    return planned(demo.replace(boxes=(*demo.boxes, box)))


def drilled(project: Project, drilling: Drilling) -> Manufacture:
    rows = project.construction.hole_rows.replace(drilling=drilling)
    return manufacture(project.replace(construction=project.construction.replace(hole_rows=rows)))


def uprights(made: Manufacture) -> list[Part]:
    return [part for part in made.parts if part.number.startswith("U")]


def screws(made: Manufacture) -> float:
    return sum(item.needed for item in made.hardware if item.kind is HardwareKind.SYSTEM_SCREW)


def test_one_more_box_leaves_all_uprights_as_they_are(demo: Project, fuller: Project) -> None:
    before, after = (drilled(project, Drilling.WHOLE_ROWS) for project in (demo, fuller))
    assert uprights(before) == uprights(after)
    assert len(after.schedule) == len(before.schedule) + 1
    only_used = [drilled(project, Drilling.USED_ONLY) for project in (demo, fuller)]
    assert uprights(only_used[0]) != uprights(only_used[1]), "with used holes only, they would have to be drilled anew"


def test_inner_uprights_differ_only_where_the_rail_is_joined(demo: Project) -> None:
    """Under the rail's joint there are screws for two boards in the rear edge; all others are one part."""
    inner = [part for part in uprights(drilled(demo, Drilling.WHOLE_ROWS)) if part.number.startswith("U2")]
    assert [part.quantity for part in inner] in ([4], [3, 1], [1, 3], [2, 2])
    assert len(inner) <= 2
    rear = [sum(hole.side == "rear edge" for hole in part.machining.holes) for part in inner]
    assert len(set(rear)) == len(inner), "that is all that tells them apart"


def test_the_schedule_tells_as_many_screws_as_are_ordered_however_rows_are_drilled(fuller: Project) -> None:
    for drilling in Drilling:
        made = drilled(fuller, drilling)
        told = {(line.bay, line.drawer): len(line.runner_holes_mm) for line in made.schedule}
        assert screws(made) == 2 * sum(told.values()) > 0
        by_bay = Counter[int]()
        for (bay, _), count in told.items():
            by_bay[bay - 1] += 2 * count
        ordered = Counter[int]()
        for item in made.hardware:
            if item.kind is HardwareKind.SYSTEM_SCREW:
                ordered.update({bay: round(count) for bay, count in item.bays})
        assert ordered == by_bay
