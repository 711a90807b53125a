"""What to buy and cut: parts, hardware and the drawer schedule of an arrangement."""

from baywright.making.manufacture import manufacture

__all__ = ["manufacture"]
