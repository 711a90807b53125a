"""Which drawer the arrow keys go to from the selected ones."""

from baywright.gui.elevation.drawers import Drawer
from baywright.gui.elevation.layout import Layout


def neighbour(layout: Layout, selected: tuple[str, ...], step: tuple[int, int]) -> str | None:
    """The box of the next drawer, `step` (bays to the right, drawers upwards) from the outermost selected one.

    With nothing selected it is the lowest drawer of the leftmost bay. None where there is no further drawer.
    """
    across, up = step
    chosen = [drawer for drawer in layout.drawers if drawer.box.id in set(selected)]
    if not chosen:
        return layout.drawers[0].box.id if layout.drawers else None
    at = max(chosen, key=lambda drawer: (across * drawer.bay, up * drawer.number))
    found = _in_bay(layout, at, up) if up else _in_drawer(layout, at, across) or _beside(layout, at, across)
    return found.box.id if found else None


def _in_bay(layout: Layout, at: Drawer, up: int) -> Drawer | None:
    return next((d for d in layout.drawers if d.bay == at.bay and d.number == at.number + up), None)


def _in_drawer(layout: Layout, at: Drawer, across: int) -> Drawer | None:
    """The box next to it in the same drawer."""
    team = [placement.box_id for placement in at.team]
    place = team.index(at.box.id) + across if at.box.id in team else -1
    return layout.drawer(team[place]) if 0 <= place < len(team) else None


def _beside(layout: Layout, at: Drawer, across: int) -> Drawer | None:
    """In the nearest bay with drawers on that side, the drawer whose box is nearest in height."""
    others = [drawer for drawer in layout.drawers if (drawer.bay - at.bay) * across > 0]
    middle = at.areas.box.centre.y()
    return min(others, key=lambda d: (abs(d.bay - at.bay), abs(d.areas.box.centre.y() - middle)), default=None)
