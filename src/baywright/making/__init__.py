"""What to buy and cut: parts, hardware and the drawer schedule of an arrangement."""

from baywright.making.difference import part_changes
from baywright.making.manufacture import manufacture
from baywright.making.upgrade import upgrade_remarks

__all__ = ["manufacture", "part_changes", "upgrade_remarks"]
