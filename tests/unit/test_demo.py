"""The demo is an ordinary project file, and such a wall as a workshop could have."""

from pathlib import Path

import pytest

from baywright.model.inventory import Use
from baywright.model.project import Project
from baywright.storage.projects import encode_project, read_project

EMPTY_BOX_KG = {75: 0.7, 120: 0.95, 170: 1.2, 220: 1.5, 270: 1.8, 320: 2.1}
"""Mass of an empty box by height; from memory."""


@pytest.fixture(scope="module")
def file(resources: Path) -> Path:
    return resources / "demo.baywright"


@pytest.fixture(scope="module")
def demo(file: Path) -> Project:
    return read_project(file)


def test_saving_the_demo_would_not_change_it(file: Path, demo: Project) -> None:
    assert encode_project(demo) == file.read_bytes()


def test_the_wall_and_the_number_of_boxes_are_those_of_the_workshop(demo: Project) -> None:
    assert demo.space.length_mm == 2940
    assert 24 <= len(demo.boxes) <= 30


def test_the_boxes_are_euro_boxes(demo: Project) -> None:
    """Outer 396 × 297 mm for the nominal 400 × 300: Euro container after VDA 4500, as given by an encyclopaedia.

    Smooth-wall heights: common practice, from memory.
    """
    assert {(size.width_mm, size.depth_mm) for size in demo.box_sizes} == {(396, 297)}
    assert {size.height_mm for size in demo.box_sizes} == {75, 120, 170, 220, 270, 320}


def test_every_box_says_what_it_holds_and_weighs_more_than_itself(demo: Project) -> None:
    for box in demo.boxes:
        assert box.contents, box.label
        assert box.group, box.label
        assert box.loaded_mass_kg is not None
        empty = EMPTY_BOX_KG[int(demo.size_of(box).height_mm)]
        assert empty + 0.5 < box.loaded_mass_kg < 15, box.label


def test_every_size_and_every_frequency_of_use_occurs(demo: Project) -> None:
    assert {box.size_id for box in demo.boxes} == {size.id for size in demo.box_sizes}
    assert {box.use for box in demo.boxes} == set(Use)
