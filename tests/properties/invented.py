"""Invented workshops: a hypothesis strategy over the whole model, and boxes thrown anywhere in them.

Laws: every project is valid as a document, whether or not anything fits; measures lie on half millimetres, so that
nothing rests on the last digit; `FEATURES` names what the strategy makes use of, so that one can be looked at alone.
"""

import random
from collections.abc import Set
from itertools import count

from hypothesis import strategies as st

from baywright.model.arrangement import Arrangement, Lock, Placement
from baywright.model.construction import Back, Construction, DrawerForm, EndPanels, FirstRowRule, Fronts, Uprights
from baywright.model.inventory import Box, BoxSize, BoxStatus, Use
from baywright.model.limits import BayWish, Limits
from baywright.model.project import Project
from baywright.model.space import CeilingPoint, Space, Zone, ZoneEffect

FEATURES = frozenset(
    {"widths", "wishes", "share", "turn", "zones", "ceiling", "worktop", "spare", "status", "shelf", "load"}
)
"""Bays of several widths; wishes for single bays; shared drawers; turned boxes; zones of the wall; a sloping ceiling;
a range for the worktop; spare rows; boxes wished for or kept elsewhere; a shelf bay of a wished width; boxes about as
heavy as runners can carry.
"""

WIDTHS_MM = (200.0, 297.0, 396.0, 594.0)
DEPTHS_MM = (200.0, 297.0, 396.0)


@st.composite
def projects(draw: st.DrawFn, features: Set[str] = FEATURES, most_boxes: int = 12) -> Project:
    """A workshop with boxes that have no places yet."""
    sizes = draw(box_sizes(features))
    inventory = draw(boxes(sizes, features, most_boxes))
    return Project(
        space=draw(spaces(features)),
        construction=draw(constructions(features)),
        box_sizes=sizes,
        boxes=inventory,
        limits=draw(limits(features)),
    )


@st.composite
def box_sizes(draw: st.DrawFn, features: Set[str]) -> tuple[BoxSize, ...]:
    heights = draw(st.lists(st.integers(40, 350), min_size=1, max_size=4, unique=True))
    mixed = "widths" in features or "share" in features
    found = []
    for number, height in enumerate(heights):
        shares = "share" in features and draw(st.booleans())
        found.append(
            BoxSize(
                id=f"size-{number}",
                name=f"Size {number}",
                width_mm=draw(st.sampled_from(WIDTHS_MM[:3])) if mixed else 396,
                depth_mm=draw(st.sampled_from(DEPTHS_MM)) if mixed else 297,
                height_mm=height + draw(st.sampled_from([0, 0.5])),
                may_turn="turn" in features and draw(st.booleans()),
                most_abreast=draw(st.integers(1, 3)) if shares else 1,
                most_behind=draw(st.integers(1, 3)) if shares else 1,
            )
        )
    return tuple(found)


@st.composite
def boxes(draw: st.DrawFn, sizes: tuple[BoxSize, ...], features: Set[str], most: int) -> tuple[Box, ...]:
    statuses = [BoxStatus.OWNED] * 4
    if "status" in features:
        statuses += [BoxStatus.WISHED, BoxStatus.ELSEWHERE]
    found = tuple(
        Box(
            id=f"box-{n}",
            label=f"Box {n}",
            size_id=draw(st.sampled_from(sizes)).id,
            loaded_mass_kg=draw(st.none() | st.integers(1, 24)),
            use=draw(st.sampled_from(list(Use))),
            group=draw(st.sampled_from(["", "", "a", "b"])),
            status=draw(st.sampled_from(statuses)),
        )
        for n in range(1, draw(st.integers(1, most)) + 1)
    )
    if all(box.status is BoxStatus.ELSEWHERE for box in found):
        return (found[0].replace(status=BoxStatus.OWNED), *found[1:])
    return found


@st.composite
def constructions(draw: st.DrawFn, features: Set[str]) -> Construction:
    made = Construction()
    return made.replace(
        uprights=draw(st.sampled_from(list(Uprights))),
        drawers=made.drawers.replace(
            clearance_mm=draw(st.integers(0, 40)),
            fronts=draw(st.sampled_from([Fronts.NONE, *Fronts])),
            form=draw(st.sampled_from(DrawerForm)),
            rail_height_mm=draw(st.sampled_from([40, 60])),
            has_box_stop=draw(st.booleans()),
        ),
        end_panels=EndPanels(left=draw(st.booleans()), right=draw(st.booleans())),
        runners=made.runners.replace(
            line_offset_mm=draw(st.integers(0, 40)),
            gap_under_lowest_mm=draw(st.integers(0, 10)),
            load_classes_kg=draw(st.sampled_from([(35.0, 45.0, 68.0), (25.0,) if "load" in features else (45.0,)])),
        ),
        hole_rows=made.hole_rows.replace(
            first_row_rule=draw(st.sampled_from(list(FirstRowRule))),
            first_row_mm=draw(st.integers(5, 40)),
            pitch_mm=draw(st.sampled_from([32, 32, 64])),
        ),
        top=made.top.replace(overhang_side_mm=draw(st.sampled_from([0, 0, 15]))),
        rear=made.rear.replace(kind=draw(st.sampled_from(list(Back)))),
    )


@st.composite
def spaces(draw: st.DrawFn, features: Set[str]) -> Space:
    length, height = draw(st.integers(1200, 4000)), draw(st.integers(900, 1600))
    zones: list[Zone] = []
    if "zones" in features:
        names = count(1)
        zones = [
            draw(wall_zones(f"zone-{next(names)}", length, height)) for _ in range(draw(st.sampled_from([0, 0, 1, 2])))
        ]
    ceiling: list[CeilingPoint] = []
    if "ceiling" in features and draw(st.integers(0, 3)) == 3:
        places = sorted(draw(st.lists(st.integers(0, length), min_size=1, max_size=3, unique=True)))
        ceiling = [CeilingPoint(along_mm=x, height_mm=draw(st.integers(500, 1700))) for x in places]
    return Space(
        length_mm=length,
        height_limit_mm=height,
        depth_mm=draw(st.sampled_from([400, 400, 350, 600])),
        zones=tuple(zones),
        ceiling=tuple(ceiling),
    )


@st.composite
def wall_zones(draw: st.DrawFn, name: str, length: int, height: int) -> Zone:
    effect = draw(st.sampled_from(list(ZoneEffect)))
    bottom = 0
    if effect is ZoneEffect.END_BELOW:
        bottom = draw(st.integers(400, height))
    elif effect is ZoneEffect.STAY_IN_FRONT:
        bottom = draw(st.integers(0, height))
    return Zone(
        id=name,
        label=name,
        effect=effect,
        left_mm=draw(st.integers(0, length)),
        width_mm=draw(st.integers(20, 900)),
        bottom_mm=bottom,
        height_mm=draw(st.integers(50, 600)),
        depth_mm=draw(st.sampled_from([10, 40, 100])) if effect is ZoneEffect.STAY_IN_FRONT else 0,
    )


@st.composite
def limits(draw: st.DrawFn, features: Set[str]) -> Limits:
    wishes: list[BayWish] = []
    if "wishes" in features:
        wishes = [
            BayWish(
                box_width_mm=draw(st.none() | st.sampled_from(WIDTHS_MM)) if "widths" in features else None,
                rows=draw(st.none() | st.integers(8, 28)),
                drawers=draw(st.none() | st.integers(0, 4)),
            )
            for _ in range(draw(st.sampled_from([0, 0, 1, 2])))
        ]
    others: list[float] = []
    if "widths" in features:
        others = draw(st.lists(st.sampled_from(WIDTHS_MM), max_size=2, unique=True))
    least = draw(st.none() | st.integers(500, 1000)) if "worktop" in features else None
    most = draw(st.none() | st.integers(800, 1300)) if "worktop" in features else None
    if least is not None and most is not None:
        least, most = min(least, most), max(least, most)
    return Limits(
        drawers_per_bay=draw(st.none() | st.integers(2, 8)),
        bays=tuple(wishes),
        other_box_widths_mm=tuple(others),
        worktop_least_mm=least,
        worktop_most_mm=most,
        spare_rows=draw(st.sampled_from([0, 0, 1, 5, 12])) if "spare" in features else 0,
        shelf_bay_clear_width_mm=draw(st.none() | st.integers(100, 500)) if "shelf" in features else None,
    )


def thrown(project: Project, chance: random.Random, bays: int = 2, rows: int = 22) -> Project:
    """The first boxes of a project thrown into a run, some of them together, some turned; seldom all well."""
    wanted = project.boxes_to_place[:4]
    placements: list[Placement] = []
    for box in wanted:
        spot = chance.randrange(bays), chance.randrange(rows)
        abreast = behind = 0
        if placements and chance.random() < 0.4:
            last = placements[-1]
            spot = last.bay, last.row
            together = sum(1 for p in placements if (p.bay, p.row) == spot)
            if last.abreast or (not last.behind and chance.random() < 0.5):
                abreast = min(2, together)
            else:
                behind = min(2, together)
        placements.append(
            Placement(
                box_id=box.id, bay=spot[0], row=spot[1], abreast=abreast, behind=behind,
                turned=chance.random() < 0.2,
            )
        )  # fmt: skip
    kept = {p.box_id for p in placements}
    boxes_left = tuple(box for box in project.boxes if box.id in kept)
    arrangement = Arrangement(bay_count=bays, upright_rows=rows, placements=tuple(placements))
    return project.replace(boxes=boxes_left, arrangement=arrangement)


def dragged(project: Project, chance: random.Random) -> Project:
    """A planned project with one or two boxes put somewhere near, turned, or put together with others."""
    placements = list(project.arrangement.placements)
    for _ in range(chance.choice([1, 1, 2])):
        n = chance.randrange(len(placements))
        p = placements[n]
        kind = chance.choice(["row", "row", "bay", "turned", "beside", "behind"])
        other = chance.choice(placements)
        if kind == "row":
            placements[n] = p.replace(row=max(0, p.row + chance.choice([-3, -2, -1, 1, 2, 3])))
        elif kind == "bay":
            placements[n] = p.replace(bay=chance.randrange(project.arrangement.bay_count + 1))
        elif kind == "turned":
            placements[n] = p.replace(turned=not p.turned)
        elif other is not p:
            together = sum(1 for q in placements if (q.bay, q.row) == (other.bay, other.row) and q is not p)
            there = {"abreast": min(2, together), "behind": 0}
            if kind == "behind":
                there = {"abreast": 0, "behind": min(2, together)}
            placements[n] = p.replace(bay=other.bay, row=other.row, **there)
    return project.replace(arrangement=project.arrangement.replace(placements=tuple(placements)))


def locked(project: Project, chance: random.Random) -> Project:
    """The same arrangement with some boxes locked."""
    placements = tuple(
        p.replace(lock=chance.choice([Lock.NONE, Lock.NONE, Lock.BAY, Lock.DRAWER]))
        for p in project.arrangement.placements
    )
    return project.replace(arrangement=project.arrangement.replace(placements=placements))
