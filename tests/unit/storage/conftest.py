"""What the storage tests share: a project with something of everything, and a person without the superuser's rights."""

import os
import shutil
import tempfile
from collections.abc import Iterator
from pathlib import Path

import pytest

from baywright.model.arrangement import Arrangement, Lock, Placement
from baywright.model.inventory import Box, BoxSize, Use
from baywright.model.length import LengthUnit
from baywright.model.project import Project

NOBODY = 65534


@pytest.fixture
def project() -> Project:
    """A small project that uses every part of the document."""
    return Project(
        name="Spoke & rim — Werkstatt “Süd”",
        note="two\nlines",
        unit=LengthUnit.INCH,
        box_sizes=(
            BoxSize(id="euro-120", name="Euro 120", width_mm=400, depth_mm=300, height_mm=120),
            BoxSize(id="euro-170", name="Euro 170", width_mm=400, depth_mm=300, height_mm=170.5),
        ),
        boxes=(
            Box(id="box-1", label="Spokes", size_id="euro-120", loaded_mass_kg=7.25, group="wheels", use=Use.DAILY),
            Box(id="box-2", label="=Chains", size_id="euro-170", contents="“9” and ‘10’ speed", note="…"),
        ),
        arrangement=Arrangement(
            bay_count=1, upright_rows=12, placements=(Placement(box_id="box-1", bay=0, row=1, lock=Lock.DRAWER),)
        ),
    )


@pytest.fixture
def ordinary_person() -> Iterator[Path]:
    """A folder of one's own, and no superuser's rights while the test runs."""
    folder = Path(tempfile.mkdtemp(prefix="baywright-test-"))
    rights = os.geteuid()
    try:
        if rights == 0:
            os.chown(folder, NOBODY, -1)
            os.seteuid(NOBODY)
        yield folder
    finally:
        if rights == 0:
            os.seteuid(0)
        folder.chmod(0o700)
        shutil.rmtree(folder)
