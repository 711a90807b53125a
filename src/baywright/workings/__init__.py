"""Every derived dimension, declared once: its value, its working in words, its live formula for a spreadsheet."""

from baywright.workings.derive import Workings, derive
from baywright.workings.entry import Entry

__all__ = ["Entry", "Workings", "derive"]
