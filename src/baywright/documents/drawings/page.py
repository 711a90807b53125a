"""The drawings of all parts as a book of A4 pages: how to read them, cautions, a list, then one part a page.

Laws: one page for every part number, with further ones where its work does not fit on one; every piece of work stands
in words with all figures; outline to scale; readable in black and white; the same parts give the same bytes.
"""

from collections.abc import Sequence

from baywright.documents.book import book
from baywright.documents.drawings.face import FacePicture, look_of
from baywright.documents.drawings.words import figure, work_lines
from baywright.documents.lengths import plain_length
from baywright.documents.lettering import width_of, wrapped
from baywright.documents.sketch import FAINT, Format, Look, Sketch
from baywright.model.caution import WHO_DECIDES, Topic, cautions_about
from baywright.model.count import count_words
from baywright.model.length import LengthUnit
from baywright.model.making import Grain, Manufacture, Part
from baywright.model.project import Project

WIDTH, HEIGHT = 842.0, 595.0
"""A4 landscape in points."""
MARGIN = 28.0
_LOWEST = 40.0
_SIZE, _PITCH, _GUTTER = 7.6, 10.4, 20.0
_HEAD = 62.0
_LEAST_TEXT, _MOST_PICTURE = 120.0, 330.0

HOW_TO_READ = (
    "Every part lies as on the bench, its face up, and the lower, left or front end at the left hand. Places are "
    "measured from that end and from the front or lower edge, on both sides from the same corner, as if the board were "
    "glass. Of mirrored pieces all figures are the same, but the front or lower edge lies on the other hand.",
    "Places, depths and diameters are in mm in every project, for drills and stops are set in mm; sizes of parts are "
    "finished sizes, edging and all. Rings are holes in the side that is up, crosses holes in the other one, filled "
    "circles go through. Bold ones are for a runner or a shelf; where whole rows are drilled any runner may take any "
    "row, and the drawer schedule tells which. Broken lines lie on the other side. A thick edge is covered with "
    "edging. Notches are hatched crosswise, grooves once.",
    "Sizes of tenons, dowels, pockets and runner holes are common practice: look at the data sheets of what was bought "
    "before the first hole, and drill a piece left over first.",
)


def part_drawings(project: Project, manufacture: Manufacture) -> bytes:
    """The drawings of all parts as the content of a PDF file."""
    sheets = _first_pages(project, manufacture)
    for part in manufacture.parts:
        sheets += part_pages(project, part)
    return book(sheets, f"{project.name}: drawings of the parts")


def part_drawing(project: Project, part: Part, kind: Format) -> bytes:
    """The first page of a part's drawing as PNG, SVG or PDF."""
    return part_pages(project, part)[0].to_bytes(kind)


# The first page


def _first_pages(project: Project, manufacture: Manufacture) -> list[Sketch]:
    cautions = [f"{c.title}: {c.text}" for c in cautions_about(Topic.CUTTING, Topic.DRILLING)]
    remarks = [f"Mind: {remark}" for remark in manufacture.remarks]
    rows = [
        f"{part.number}  {part.name}, {count_words(part.quantity, 'piece')}"
        f"{f', {part.mirrored} of them mirrored' if part.mirrored else ''}, {_size(part, project.unit)}"
        for part in manufacture.parts
    ]
    pages = _Pages(f"{project.name}: drawings of the parts")
    for paragraph in (*cautions, WHO_DECIDES, *HOW_TO_READ, *remarks):
        pages.paragraph(paragraph, 9.0)
    pages.paragraph("The parts, each on a page of its own:", 9.0, bold=True)
    for row in rows:
        pages.paragraph(row, 8.0, air=0.0)
    return pages.sheets


class _Pages:
    """Pages of running text under one heading."""

    def __init__(self, title: str) -> None:
        self._title = title
        self.sheets: list[Sketch] = []
        self._begin()

    def _begin(self) -> None:
        sheet = Sketch(WIDTH, HEIGHT)
        words = self._title if not self.sheets else f"{self._title}, continued"
        sheet.text(MARGIN, HEIGHT - 36.0, words, 15.0, room=WIDTH - 2 * MARGIN, bold=True)
        self.sheets.append(sheet)
        self._y = HEIGHT - 62.0

    def paragraph(self, words: str, size: float, *, bold: bool = False, air: float = 4.0) -> None:
        """One paragraph, on a further page where it has no room."""
        for line in wrapped(words, WIDTH - 2 * MARGIN, size, bold):
            if self._y < _LOWEST:
                self._begin()
            self.sheets[-1].text(MARGIN, self._y, line, size, bold=bold)
            self._y -= size * 1.4
        self._y -= air


# One part


def part_pages(project: Project, part: Part) -> list[Sketch]:
    """The pages of one part: its picture with its work in words under it, and further pages for more words."""
    sheet = Sketch(WIDTH, HEIGHT)
    upper = _heading(sheet, project, part)
    blocks = [wrapped(words, _column(), _SIZE) for words in _lines(part)]
    needed = min(_LEAST_TEXT, (sum(map(len, blocks)) // 2 + 2) * _PITCH)
    room = WIDTH - 2 * MARGIN, min(_MOST_PICTURE, upper - _LOWEST - needed)
    picture = FacePicture(sheet, part, MARGIN, upper, room)
    picture.draw()
    _foot(sheet, project, part, picture.scale)
    pages, y = [sheet], upper - picture.height - 6.0
    while blocks:
        blocks = _columns(pages[-1], blocks, y)
        if blocks:
            more = Sketch(WIDTH, HEIGHT)
            more.text(MARGIN, HEIGHT - 36.0, f"{part.number} {part.name}, continued", 13.0, bold=True)
            pages.append(more)
            y = HEIGHT - 62.0
    return pages


def _columns(sheet: Sketch, blocks: list[list[str]], upper: float) -> list[list[str]]:
    """Writes as many whole blocks as have room in two columns of like length; returns the rest."""
    most = max(1, int((upper - _LOWEST) // _PITCH) + 1)
    half = min(most, max(-(-sum(map(len, blocks)) // 2), len(blocks[0])))
    left = list(blocks)
    for column, rows in enumerate((half, most)):
        used = 0
        while left and (used + len(left[0]) <= rows or used == 0):
            for line in left.pop(0)[:most]:
                sheet.text(MARGIN + column * (_column() + _GUTTER), upper - used * _PITCH, line, _SIZE)
                used += 1
    return left


def _column() -> float:
    return (WIDTH - 2 * MARGIN - _GUTTER) / 2


def _lines(part: Part) -> list[str]:
    return work_lines(part) or ["Nothing is drilled, grooved or shaped; cut it to size only."]


def _heading(sheet: Sketch, project: Project, part: Part) -> float:
    """The part's number, name, pieces, sizes and note; returns the height on the page where the picture may begin."""
    room = WIDTH - 2 * MARGIN
    mirrored = f", {part.mirrored} of them mirrored" if part.mirrored else ""
    pieces = f"{count_words(part.quantity, 'piece')}{mirrored}"
    sheet.text(MARGIN, HEIGHT - 32.0, f"{part.number}  {part.name}", 15.0, room=room * 0.62, bold=True)
    sheet.text(WIDTH - MARGIN, HEIGHT - 32.0, pieces, 12.0, room=room * 0.36, bold=True, across="right")
    facts = [f"finished {_size(part, project.unit)}"]
    cut = part.cut_length_mm, part.cut_width_mm
    if any(cut) and cut != (part.length_mm, part.width_mm):
        facts.append(f"cut to {_written(cut, project.unit)} before edging")
    facts += [part.material, f"grain {part.grain.value}" if part.grain is not Grain.ANY else "grain any way"]
    if part.mass_kg is not None:
        facts.append(f"{part.mass_kg:.2f} kg")
    y = HEIGHT - 50.0
    for line in wrapped("; ".join(facts), room, 8.4):
        sheet.text(MARGIN, y, line, 8.4)
        y -= 11.0
    for line in wrapped(part.note, room, 7.6)[:3]:
        sheet.text(MARGIN, y, line, 7.6)
        y -= 10.0
    return y


def _size(part: Part, unit: LengthUnit) -> str:
    return _written((part.length_mm, part.width_mm, part.thickness_mm), unit)


def _written(lengths_mm: Sequence[float], unit: LengthUnit) -> str:
    words = " × ".join(plain_length(length, unit) for length in lengths_mm)
    if unit is LengthUnit.INCH:
        return f"{words} ({' × '.join(figure(length) for length in lengths_mm)} mm)"
    return f"{words} mm"


_LEGEND = {
    Look.RING: "hole in the side that is up", Look.BOLD_RING: "for a runner or shelf", Look.DISC: "goes through",
    Look.CROSS: "hole in the other side", Look.BOLD_CROSS: "for a runner or shelf, other side",
}  # fmt: skip


def _foot(sheet: Sketch, project: Project, part: Part, scale: float) -> None:
    """What the marks mean, as far as there are any; the project's name and the scale."""
    sheet.line((MARGIN, 26.0), (WIDTH - MARGIN, 26.0), 0.4, FAINT)
    x = MARGIN + 4.0
    looks = {look_of(hole) for hole in part.machining.holes}
    for look in (look for look in Look if look in looks):
        sheet.marks([(x, 16.0)], look, 5.0)
        sheet.text(x + 7.0, 16.0, _LEGEND[look], 7.0)
        x += 7.0 + width_of(_LEGEND[look], 7.0) + 16.0
    told = f"{project.name}; drawn 1 : {72.0 / 25.4 / scale:.3g}; places in mm"
    sheet.text(WIDTH - MARGIN, 16.0, told, 7.0, room=WIDTH - MARGIN - x - 10.0, across="right")
