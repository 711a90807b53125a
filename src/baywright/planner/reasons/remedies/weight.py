"""How much a change asks of the owner, as one number, so that changes of different kinds can stand in one order.

The scale is our judgement of common practice in a workshop, no measured fact: about 1 to 3 for a number that is only
less comfortable (a free row less, a little less air over a box), about 4 to 8 for what is felt every day or costs some
room (a higher run, a box moved, another width), about 10 and more for what costs boards or wall (one more bay), 20 and
more for what stands in the room already, 100 where what is built would have to be given up. Within a kind a larger
step always weighs more, so the least step of a kind is its cheapest.
"""

from enum import Enum


class Weight(Enum):
    """Base of a kind of change, and what each unit of it (mm, row, drawer, bay, kg) adds."""

    SPARE_ROW = (1.0, 0.1)
    WORKTOP_MM = (2.0, 0.02)
    CLEARANCE_MM = (2.0, 0.25)
    DRAWER_OF_A_BAY = (2.0, 1.0)
    DRAWER_OF_ALL_BAYS = (3.0, 1.5)
    ROW_UNLOCKED_KG = (2.5, 0.01)
    BAY_UNLOCKED_KG = (3.5, 0.01)
    LINE_OFFSET_MM = (3.0, 0.05)
    SHELF_MM = (3.0, 0.01)
    WISHED_BOX_ROW = (3.0, 0.3)
    ROW_OF_A_BAY = (3.0, 0.75)
    TURNING = (3.0, 0.0)
    SHARING_BOX = (3.0, 0.5)
    ROW = (4.0, 1.0)
    RUNNER_MM = (4.0, 0.01)
    HEIGHT_MM = (5.0, 0.03)
    WIDTH_MM = (5.0, 0.01)
    MORE_WIDTHS = (7.0, 0.0)
    BOX_ROW = (6.0, 0.5)
    DEPTH_MM = (8.0, 0.03)
    SHARED_UPRIGHTS = (8.0, 0.0)
    BAY = (9.0, 6.0)
    WALL_MM = (12.0, 0.01)
    ZONE_MM = (20.0, 0.02)
    BUILT = (100.0, 0.0)

    def of(self, units: float) -> float:
        """The weight of a change by so many units."""
        base, each = self.value
        return round(base + each * abs(units), 6)
