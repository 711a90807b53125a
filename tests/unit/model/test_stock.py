"""Materials and their batches: what is in force, and readings that look like a slip of the finger."""

import pytest

from baywright.model.project import Project
from baywright.model.stock import Batch, BoardRole, Material, Stock


def _batch(*readings: float) -> Batch:
    return Batch(id="b", name="May", readings_mm=readings)


def test_the_mean_of_the_batch_in_use_is_in_force_for_its_boards_and_no_others() -> None:
    material = Material(
        id="ply", name="birch plywood 18 mm", roles=(BoardRole.UPRIGHT, BoardRole.SHELF), batches=(_batch(17.6, 17.4),)
    )
    project = Project(stock=Stock(materials=(material,)))
    assert project.boards == project.construction.boards, "measured, but not in use"
    used = project.replace(stock=Stock(materials=(material.replace(batch_id="b"),)))
    assert (used.boards.upright_mm, used.boards.shelf_mm, used.boards.base_mm) == (17.5, 17.5, 18.0)
    assert used.construction.boards.upright_mm == 18.0


@pytest.mark.parametrize(
    ("readings", "doubt"),
    [
        ((17.6, 17.5, 17.7), ""),
        ((17.2, 18.2), ""),
        ((18.0, 12.0), "The readings of “May” differ by 6 mm: is one of them mistyped?"),
        ((14.8, 14.9), "“May” is 3.15 mm from the nominal 18 mm: is it of “birch plywood 18 mm”?"),
    ],
)
def test_readings_far_apart_or_far_from_the_name_are_doubted(readings: tuple[float, ...], doubt: str) -> None:
    assert Material(id="ply", name="birch plywood 18 mm").doubt(_batch(*readings)) == doubt


def test_two_materials_cannot_be_meant_for_the_same_boards() -> None:
    one = Material(id="a", name="A", roles=(BoardRole.TOP,))
    with pytest.raises(ValueError, match="both meant for the top"):
        Stock(materials=(one, one.replace(id="b")))
