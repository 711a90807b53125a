"""How box sizes are told apart on drawings: a shade and a hatching for each, readable in black and white too.

Laws: neighbours in the list differ in both; text never stands on a hatching.
"""

from dataclasses import dataclass

_SHADES = ("#9db8cf", "#e8c98a", "#7d9b76", "#d9a5a0", "#b9b4d6", "#f0e3c2", "#8a8f98", "#c4dfd3")
_HATCHES = ("", "/////", ".....", "\\\\\\\\\\", "xxxxx", "-----", "|||||", "ooo", "+++++")


@dataclass(frozen=True)
class Pattern:
    """Fill colour and matplotlib hatch of one box size."""

    shade: str
    hatch: str


def patterns(size_ids: list[str]) -> dict[str, Pattern]:
    """A pattern for each size id, in the order given."""
    return {
        size_id: Pattern(_SHADES[index % len(_SHADES)], _HATCHES[index % len(_HATCHES)])
        for index, size_id in enumerate(size_ids)
    }
