"""What the sides, ends and edges of a part are called by people who hold it, and what is done to it, in lines of text.

Laws: every hole, groove, mortise and shaped edge of the part stands in one of the lines; equal work is told once with
all its places; places and depths are in mm, which is what drills and stops are set to in every project.
"""

from collections.abc import Iterable, Iterator, Sequence
from itertools import pairwise

from baywright.model.count import count_words
from baywright.model.machining import Groove, Hole, HolePurpose, Joint, Side
from baywright.model.making import Part

_UPRIGHT = ("lower end", "upper end", "front edge", "rear edge")
_LYING = ("left end", "right end", "front edge", "rear edge")
_ON_EDGE = ("left end", "right end", "lower edge", "upper edge")
_FRONT_TO_REAR = ("front end", "rear end", "lower edge", "upper edge")
_BY_NUMBER = {
    "U": _UPRIGHT, "E": _UPRIGHT, "B": _LYING, "T": _LYING, "S": _LYING, "D3": _LYING, "D1": _FRONT_TO_REAR,
    "P3": _FRONT_TO_REAR,
}  # fmt: skip
_FACES = {
    "B": ("upper side", "lower side"), "T": ("lower side", "upper side"), "D1": ("inside", "outside"),
    "D2": ("inside", "outside"), "F": ("inside", "outside"), "E": ("inside", "outside"),
    "R": ("front side", "rear side"), "P1": ("front side", "rear side"), "P2": ("front side", "rear side"),
}  # fmt: skip


def side_word(part: Part, side: Side) -> str:
    """What people call a side of a part."""
    number = part.number
    if side in (Side.FACE, Side.REVERSE):
        face, reverse = _FACES.get(number[:2]) or _FACES.get(number[:1]) or _faces_of(part)
        return face if side is Side.FACE else reverse
    names = _BY_NUMBER.get(number[:2]) or _BY_NUMBER.get(number[:1]) or _ON_EDGE
    return names[(Side.START, Side.END, Side.FRONT, Side.REAR).index(side)]


def _faces_of(part: Part) -> tuple[str, str]:
    """Of an upright left and right, as far as all its pieces are of one hand."""
    if not part.number.startswith("U") or part.mirrored:
        return "face", "reverse"
    return ("right face", "left face") if part.machining.is_front_far else ("left face", "right face")


def figure(length_mm: float) -> str:
    """A length in mm to a tenth."""
    return f"{round(length_mm, 1):g}"


def figures(lengths_mm: Iterable[float]) -> str:
    """Lengths in mm, each once, in order."""
    return ", ".join(figure(length) for length in sorted({round(length, 1) for length in lengths_mm}))


def work_lines(part: Part) -> list[str]:
    """Everything that is done to a part, one piece of work a line."""
    return [
        *_grid_lines(part),
        *_hole_lines(part),
        *_joint_lines(part),
        *(_groove_line(part, groove) for groove in part.machining.grooves),
        *(
            f"{side_word(part, edge.side).capitalize()}: {'both corners' if edge.is_both else 'corner at the face'} "
            f"{edge.form.value}, {'radius' if edge.form.value == 'rounded' else 'leg'} {figure(edge.size_mm)}."
            for edge in part.machining.shaped_edges
        ),
    ]


# Hole rows

_USES = {HolePurpose.RUNNER: "runners", HolePurpose.PIN: "shelf pins"}


def _grid_lines(part: Part) -> Iterator[str]:
    """What is drilled, one line for rows with the same holes; then which of them are in use."""
    groups: dict[tuple[Side, float, float], list[Hole]] = {}
    for hole in part.machining.holes:
        if hole.row is not None:
            groups.setdefault((hole.side, hole.diameter_mm, hole.depth_mm or 0.0), []).append(hole)
    front = side_word(part, Side.FRONT)
    for (side, diameter, depth), holes in groups.items():
        for lines, rows in _alike(holes):
            yield (
                f"Hole rows, {side_word(part, side)}: Ø {figure(diameter)}, {figure(depth)} deep; {figures(lines)} "
                f"from the {front}; {_rows(rows)} from the {side_word(part, Side.START)}."
            )
    for side in (Side.FACE, Side.REVERSE):
        for purpose, word in _USES.items():
            used = [h for (of, _, _), holes in groups.items() if of is side for h in holes if h.purpose is purpose]
            for lines, rows in _alike(used):
                numbers = ", ".join(str(hole.row) for hole in rows)
                yield f"Of these, {word} use row {numbers}, {side_word(part, side)}, at {figures(lines)}."
    if any(h.purpose is HolePurpose.ROW for holes in groups.values() for h in holes) and max(part.bays, default=0) >= 0:
        yield "Which rows the runners of a bay are screwed on at, and in which holes: see the drawer schedule."


def _alike(holes: Sequence[Hole]) -> list[tuple[tuple[float, ...], list[Hole]]]:
    """Rows that have holes on the same lines, together; one hole for each row."""
    of_row: dict[int, list[Hole]] = {}
    for hole in holes:
        of_row.setdefault(hole.row or 0, []).append(hole)
    found: dict[tuple[float, ...], list[Hole]] = {}
    for row in sorted(of_row):
        found.setdefault(tuple(sorted(hole.y_mm for hole in of_row[row])), []).append(of_row[row][0])
    return list(found.items())


def _rows(holes: Sequence[Hole]) -> str:
    """Which rows, and how high they lie: the first and the step where they follow each other, else every height."""
    numbers, places = [hole.row or 0 for hole in holes], [hole.x_mm for hole in holes]
    steps = {round(b - a, 3) for a, b in pairwise(places)}
    if len(holes) > 2 and len(steps) == 1 and numbers[-1] - numbers[0] == len(numbers) - 1:
        return f"rows {numbers[0]} to {numbers[-1]}, every {figure(steps.pop())} from {figure(places[0])} on"
    told = ", ".join(f"{number} at {figure(place)}" for number, place in zip(numbers, places, strict=True))
    return f"{'row' if len(holes) == 1 else 'rows'} {told}"


# Single holes and joints


def _hole_lines(part: Part) -> Iterator[str]:
    groups: dict[tuple[Side, HolePurpose, float, float | None], list[tuple[float, float]]] = {}
    for hole in part.machining.holes:
        if hole.row is None:
            key = hole.side, hole.purpose, hole.diameter_mm, hole.depth_mm
            groups.setdefault(key, []).append((hole.x_mm, hole.y_mm))
    for (side, purpose, diameter, depth), places in groups.items():
        deep = "through" if depth is None else f"{figure(depth)} deep"
        what = count_words(len(places), f"{purpose.value} hole")
        slant = ", bored slantwise to its end" if purpose is HolePurpose.POCKET else ""
        yield f"{what}, {side_word(part, side)}: Ø {figure(diameter)}, {deep}{slant}; {_places(part, side, places)}."


def _joint_lines(part: Part) -> Iterator[str]:
    groups: dict[tuple[Side, str, float, float, float, bool], list[Joint]] = {}
    for joint in part.machining.joints:
        key = joint.side, joint.meets, joint.long_mm, joint.thick_mm, joint.depth_mm, joint.is_along
        groups.setdefault(key, []).append(joint)
    for (side, meets, long, thick, depth, is_along), joints in groups.items():
        places = [(joint.x_mm, joint.y_mm) for joint in joints]
        way = "" if side not in (Side.FACE, Side.REVERSE) else f", long side {'along' if is_along else 'across'}"
        yield (
            f"{count_words(len(joints), 'mortise')} for {meets}, {side_word(part, side)}: {figure(long)} × "
            f"{figure(thick)}, {figure(depth)} deep{way}; {_places(part, side, places)}."
        )


def _places(part: Part, side: Side, places: Sequence[tuple[float, float]]) -> str:
    """Where things lie on a side, from what people measure from; those that share a measure together."""
    along, beside = _measured_from(part, side)
    by_x, by_y = _grouped(places), _grouped([(y, x) for x, y in places])
    if len(by_y) <= len(by_x):
        return "; ".join(f"{figures(xs)} {along}, {_each(ys)} {beside}" for xs, ys in _merged(by_y))
    return "; ".join(f"{figures(ys)} {beside}, {_each(xs)} {along}" for ys, xs in _merged(by_x))


def _each(lengths_mm: Sequence[float]) -> str:
    return figures(lengths_mm) if len(lengths_mm) == 1 else f"each at {figures(lengths_mm)}"


def _grouped(places: Sequence[tuple[float, float]]) -> dict[float, list[float]]:
    found: dict[float, list[float]] = {}
    for first, second in sorted(places):
        found.setdefault(round(first, 1), []).append(round(second, 1))
    return found


def _merged(groups: dict[float, list[float]]) -> list[tuple[list[float], list[float]]]:
    """Groups with the same members, together: members and the measures at which they lie."""
    found: dict[tuple[float, ...], list[float]] = {}
    for measure, members in groups.items():
        found.setdefault(tuple(sorted(members)), []).append(measure)
    return [(list(members), measures) for members, measures in found.items()]


def _measured_from(part: Part, side: Side) -> tuple[str, str]:
    if side in (Side.FACE, Side.REVERSE):
        return f"from the {side_word(part, Side.START)}", f"from the {side_word(part, Side.FRONT)}"
    under = f"under the {side_word(part, Side.FACE)}"
    if side in (Side.START, Side.END):
        return f"from the {side_word(part, Side.FRONT)}", under
    return f"from the {side_word(part, Side.START)}", under


def _groove_line(part: Part, groove: Groove) -> str:
    run = part.length_mm if groove.is_along else part.width_mm
    is_whole = groove.from_mm <= 0 and groove.to_mm >= run - 1e-6
    start = side_word(part, Side.START if groove.is_along else Side.FRONT)
    where = "over the whole length" if is_whole else f"from {figure(groove.from_mm)} to {figure(groove.to_mm)}"
    measured = "" if is_whole else f" from the {start}"
    if groove.depth_mm >= part.thickness_mm - 1e-9:
        return f"Notch in the {side_word(part, Side.REAR)}: {figure(groove.width_mm)} deep, {where}{measured}."
    flank = side_word(part, Side.FRONT if groove.is_along else Side.START)
    return (
        f"Groove, {side_word(part, groove.side)}: {figure(groove.width_mm)} wide, {figure(groove.depth_mm)} deep, "
        f"{figure(groove.offset_mm)} from the {flank}, {where}{measured}."
    )
