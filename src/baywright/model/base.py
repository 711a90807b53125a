"""What all values of the model share: frozen, nothing unknown accepted, no infinite or undefined numbers."""

from typing import Annotated, Self

from pydantic import BaseModel, ConfigDict, Field, StringConstraints


class Frozen(BaseModel):
    """A value: checked when made, never changed afterwards; a change makes a new value with `replace`."""

    model_config = ConfigDict(
        frozen=True,
        extra="forbid",
        allow_inf_nan=False,
        validate_default=True,
        json_schema_serialization_defaults_required=True,  # what is written always has every field
    )

    def replace(self, **changes: object) -> Self:
        """Return a copy with `changes` made, checked anew (pydantic's own `model_copy` does not check).

        Raises `pydantic.ValidationError` where the changed value would not be valid.
        """
        fields: dict[str, object] = {name: getattr(self, name) for name in type(self).model_fields}
        return type(self).model_validate({**fields, **changes})


PositiveMillimetres = Annotated[float, Field(gt=0, le=100_000.0)]
"""A length in mm that something real has: over 0 and at most 100 m."""

Millimetres = Annotated[float, Field(ge=0, le=100_000.0)]
"""A length in mm that may be nothing at all: 0 to 100 m."""

BoardThicknessMillimetres = Annotated[float, Field(ge=1.0, le=100.0)]
"""A board's thickness in mm: 1 to 100."""

Kilograms = Annotated[float, Field(ge=0, le=1_000.0)]
"""A mass in kg: 0 to 1,000."""

Identifier = Annotated[str, StringConstraints(pattern=r"^[a-z][a-z0-9_-]{0,63}$")]
"""A short name by which one value points to another: lower-case letters, digits, `_` and `-`."""

Label = Annotated[str, StringConstraints(strip_whitespace=True, min_length=1, max_length=200)]
"""A name that a person gave: one to 200 characters, no blanks at the ends."""

Text = Annotated[str, StringConstraints(max_length=2_000)]
"""Free text of a person, possibly empty."""
