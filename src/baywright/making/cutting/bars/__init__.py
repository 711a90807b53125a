"""Cutting bars: pieces of given lengths from bars of given lengths, costs and numbers, with a proved bound."""

from baywright.making.cutting.bars.search import cut_bars
from baywright.making.cutting.bars.stock import Bar, BarPacking, Length, Pattern

__all__ = ["Bar", "BarPacking", "Length", "Pattern", "cut_bars"]
