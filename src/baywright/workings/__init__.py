"""Every derived dimension, declared once: its value, its working in words, its live formula for a spreadsheet."""

from baywright.workings.derive import Workings, derive
from baywright.workings.entry import Entry
from baywright.workings.kinds import BayKind
from baywright.workings.layout import BayPlace, Layout, PanelPlace, Place, Stretch, UprightPlace

__all__ = [
    "BayKind",
    "BayPlace",
    "Entry",
    "Layout",
    "PanelPlace",
    "Place",
    "Stretch",
    "UprightPlace",
    "Workings",
    "derive",
]
