"""A front panel in the elevation: a thick outline over the drawer that hangs behind it, and its part number.

Laws: what is behind a panel stays readable; the number stands in the panel's upper right corner on white, and words of
boxes keep clear of it; where a panel is too low for its number, the outline stands alone.
"""

from dataclasses import dataclass

from baywright.documents.lettering import width_of
from baywright.documents.scene import Scene
from baywright.model.making import FrontPanel

_LINE, _SIZE, _TAG_HEIGHT, _BESIDE = 1.5, 6.0, 8.0, 2.0


@dataclass(frozen=True)
class Tag:
    """Where a panel's number stands, in points."""

    left: float
    lower: float
    width: float

    def room_taken(self, right: float) -> float:
        """How much the number takes of the width of words that end at `right` and stand as high as it."""
        return max(0.0, right - self.left + _BESIDE)


def tag_of(scene: Scene, front: FrontPanel) -> Tag | None:
    """Where the panel's number stands; None where there is no room for it."""
    width = width_of(front.number, _SIZE, bold=True) + 2 * _BESIDE
    if scene.mm(front.height_mm) < _TAG_HEIGHT + 2 * _LINE or scene.mm(front.width_mm) < 2 * width:
        return None
    right, upper = scene.scale.x(front.right_mm) - _LINE, scene.scale.y(front.top_mm) - _LINE
    return Tag(right - width, upper - _TAG_HEIGHT, width)


def draw_front(scene: Scene, front: FrontPanel) -> None:
    """The panel's outline and number over what is drawn behind it."""
    left, right = scene.scale.x(front.left_mm), scene.scale.x(front.right_mm)
    lower, upper = scene.scale.y(front.bottom_mm), scene.scale.y(front.top_mm)
    half = _LINE / 2  # the outline lies inside the panel, so that panels beside each other stay apart
    for y in (lower + half, upper - half):
        scene.sheet.line((left, y), (right, y), _LINE)
    for x in (left + half, right - half):
        scene.sheet.line((x, lower), (x, upper), _LINE)
    tag = tag_of(scene, front)
    if tag is not None:
        scene.sheet.blank(tag.left, tag.lower, tag.width, _TAG_HEIGHT)
        middle = tag.left + tag.width / 2
        scene.sheet.text(middle, tag.lower + _TAG_HEIGHT / 2, front.number, _SIZE, bold=True, across="center")
