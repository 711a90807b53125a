"""What a formula of the workings is: a name, a label, a unit and an expression over other names."""

from dataclasses import dataclass
from functools import cached_property

from baywright.workings.expression import Expression


@dataclass(frozen=True)
class Formula:
    """A named formula over named inputs and earlier formulas. `per_size` ones have a value for each box size,
    `per_kind` ones a general value and one for each further kind of bay, `kind_only` ones these only.
    """

    name: str
    label: str
    unit: str
    text: str
    group: str
    note: str = ""
    per_size: bool = False
    per_kind: bool = False
    kind_only: bool = False

    @cached_property
    def expression(self) -> Expression:
        """The parsed expression."""
        return Expression(self.text)
