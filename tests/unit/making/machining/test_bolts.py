"""Bolts through carcasses that stand side by side lie inside both of them."""

import pytest

from baywright.making import manufacture
from baywright.model.arrangement import Arrangement, Placement
from baywright.model.construction import Uprights
from baywright.model.inventory import Box, BoxSize
from baywright.model.limits import BayWish, Limits
from baywright.model.machining import HolePurpose
from baywright.model.project import Project


@pytest.mark.parametrize("rows", [(20, 1), (1, 20), (20, 2), (20, 12)])
def test_bolts_lie_inside_the_lower_of_two_carcasses(rows: tuple[int, int]) -> None:
    project = Project()
    project = project.replace(
        construction=project.construction.replace(uprights=Uprights.OWN),
        limits=Limits(bays=tuple(BayWish(rows=each) for each in rows), shelf_bay=False),
        box_sizes=(BoxSize(id="low", name="Low", width_mm=300, depth_mm=300, height_mm=20),),
        boxes=(Box(id="box-1", label="Cables", size_id="low", loaded_mass_kg=3),),
        arrangement=Arrangement(
            bay_count=2, upright_rows=20, placements=(Placement(box_id="box-1", bay=rows.index(max(rows)), row=4),)
        ),
    )
    bolted = [
        (part, hole)
        for part in manufacture(project).parts
        for hole in part.machining.holes
        if hole.purpose is HolePurpose.BOLT
    ]
    assert bolted
    for part, hole in bolted:
        assert hole.diameter_mm / 2 < hole.x_mm < part.length_mm - hole.diameter_mm / 2, part.number
