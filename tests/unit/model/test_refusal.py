"""Reasons for refusals name the unit of the bound, because the person may have typed inches or pounds."""

import pytest
from pydantic import ValidationError

from baywright.model.inventory import Box
from baywright.model.limits import Limits
from baywright.model.refusal import first_error
from baywright.model.space import Space


def why(error: ValidationError) -> str:
    """The reason alone."""
    return first_error(error)[1]


def test_bounds_of_lengths_masses_and_counts() -> None:
    with pytest.raises(ValidationError) as length:
        Space(depth_mm=6_350.0)  # typed as 250 in an inch project
    assert why(length.value) == "must be at most 5,000 mm"
    with pytest.raises(ValidationError) as mass:
        Box(id="box", label="Chains", size_id="low", loaded_mass_kg=-1.0)
    assert why(mass.value) == "must be at least 0 kg"
    with pytest.raises(ValidationError) as count:
        Limits(bay_count=0)
    assert why(count.value) == "must be at least 1"
