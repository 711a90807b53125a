"""A cut in words, for whoever stands at the saw."""

from baywright.model.cutting import SawCut
from baywright.model.length import LengthUnit, format_length


def cut_words(cut: SawCut, unit: LengthUnit) -> str:
    """What is cut how, the fence's measure, and what comes of it."""
    way = "across" if cut.is_across else "along"
    measure = format_length(round(cut.measure_mm, 1), unit)
    return f"{cut.panel[:1].upper()}{cut.panel[1:]}, {way} at {measure}: gives {' and '.join(cut.gives)}"
