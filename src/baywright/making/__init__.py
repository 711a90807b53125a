"""What to buy and cut: parts, hardware and the drawer schedule of an arrangement."""

from baywright.making.difference import part_changes
from baywright.making.listing import parts_to_cut
from baywright.making.manufacture import manufacture
from baywright.making.upgrade import upgrade_remarks

__all__ = ["manufacture", "part_changes", "parts_to_cut", "upgrade_remarks"]
