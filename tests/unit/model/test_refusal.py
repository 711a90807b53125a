"""Reasons for refusals name the unit of the bound, because the person may have typed inches or pounds."""

from decimal import Decimal

import pytest
from pydantic import ValidationError

from baywright.model.inventory import Box
from baywright.model.limits import Limits
from baywright.model.money import Pricing
from baywright.model.refusal import first_error
from baywright.model.space import Space
from baywright.model.stock import Material, Sheet


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


@pytest.mark.parametrize(
    ("typed", "words"),
    [
        ("99999", "must have at most 3 digits before the decimal point"),
        ("7.725", "must have at most 2 decimals"),
        ("120", "must be at most 100 %"),
    ],
)
def test_a_tax_that_cannot_be(typed: str, words: str) -> None:
    with pytest.raises(ValidationError) as error:
        Pricing(vat_percent=Decimal(typed))
    assert why(error.value) == words


def test_a_currency_is_three_letters_and_an_id_is_an_id() -> None:
    assert Pricing(currency="chf").currency == "CHF"
    for typed in ("EU", "euro", "€"):
        with pytest.raises(ValidationError) as currency:
            Pricing(currency=typed)
        assert why(currency.value) == "must be three letters, such as EUR, GBP or CHF"
    with pytest.raises(ValidationError) as identifier:
        Material(id="18 ply", name="ply", nominal_mm=18)
    assert why(identifier.value).startswith("must begin with a lower-case letter")


def test_a_density_is_told_in_its_unit() -> None:
    with pytest.raises(ValidationError) as error:
        Material(id="ply", name="ply", nominal_mm=18, density_kg_m3=0.68)
    assert why(error.value) == "must be at least 50 kg/m³"


@pytest.mark.parametrize("typed", ["12,50", "", "=1+1", True, [], float("nan"), "1e999"])
def test_a_price_that_is_none(typed: object) -> None:
    with pytest.raises(ValidationError) as error:
        Sheet.model_validate({"id": "full", "material_id": "ply", "price": typed})
    assert "number" in why(error.value) or "must have at most" in why(error.value)
    assert "input" not in why(error.value)
