"""The words that the elevation writes on drawers, beside them and in their tool tips."""

from html import escape

from baywright.gui.elevation.drawers import Drawer
from baywright.gui.wording import count_words, lifting_words, mass_words
from baywright.model.arrangement import Lock
from baywright.model.inventory import Box, BoxSize, BoxStatus
from baywright.model.length import LengthUnit, format_length

LOCKED: dict[Lock, str] = {Lock.NONE: "", Lock.BAY: "locked in bay", Lock.DRAWER: "locked in drawer"}


def short_length(length_mm: float, unit: LengthUnit) -> str:
    """A length for the drawing: as in lists, but an inexact inch figure is marked “≈” instead of giving its error."""
    text, bracket, _ = format_length(length_mm, unit).partition(" (")
    return f"≈ {text}" if bracket else text


def bare_length(length_mm: float, unit: LengthUnit) -> str:
    """A length for a narrow place: the figure alone."""
    return short_length(length_mm, unit).replace("≈ ", "≈").removesuffix(" mm")


def mass_caption(box: Box) -> str:
    """The loaded mass with its unit, or that it is not known."""
    return f"{mass_words(box.loaded_mass_kg)} kg" if box.loaded_mass_kg is not None else "not weighed"


def place_caption(bay: int, row: int) -> str:
    """A place as people count: “bay 2, row 5”."""
    return f"bay {bay + 1}, row {row + 1}"


def drawer_details(drawer: Drawer, unit: LengthUnit) -> tuple[tuple[str, ...], ...]:
    """The lines under a drawer's label, most important first; each with shorter wordings for narrow drawers."""
    length, mass = short_length(drawer.size.height_mm, unit), mass_caption(drawer.box)
    figures = f"{length} · {mass}"
    wordings = [f"{figures} · top drawer", f"{figures} · top"] if drawer.is_top else []
    wordings += [figures, f"{bare_length(drawer.size.height_mm, unit)} · {mass}", mass]
    if drawer.is_hard_to_lift:
        wordings = [f"✗ lifting {lifting_words(drawer.lifting_index)[2:]} · {mass}", f"✗ lift · {mass}", *wordings]
    if drawer.lock is not Lock.NONE:
        wordings = [f"{LOCKED[drawer.lock]} · {figures}", f"locked · {figures}", *wordings]
    if drawer.is_turned:
        wordings = [*(f"turned · {wording}" for wording in wordings), "turned"]
    if drawer.is_wished:
        wordings = [f"wished · {figures}", "wished"]
    if drawer.count_behind:
        more = f"{drawer.count_behind} behind"
        wordings = [*(f"{more} · {wording}" for wording in wordings), more]
    return (tuple(wordings), *(((drawer.box.contents,),) if drawer.box.contents else ()))


def box_details(box: Box, size: BoxSize, unit: LengthUnit) -> str:
    """Size and mass of a box in one line."""
    wished = " · wished" if box.status is BoxStatus.WISHED else ""
    return f"{short_length(size.height_mm, unit)} · {mass_caption(box)}{wished}"


def opening_caption(drawer: Drawer, unit: LengthUnit) -> str:
    """The height that a drawer takes: in rows, or for the top drawer the room left over it."""
    height = format_length(drawer.areas.opening.height, unit)
    if drawer.is_top:
        return f"top drawer: {height} to the top"
    return f"{count_words(drawer.opening_rows, 'row')} = {height}"


def standing_words(drawer: Drawer) -> list[str]:
    """How a box stands in its drawer, where that is out of the ordinary: one phrase each."""
    count = len(drawer.team)
    words = []
    if count > 1 and any(p.behind for p in drawer.team):
        words.append(f"Place {drawer.is_behind + 1} of {count} from the front of its drawer")
    elif count > 1:
        number = [p.box_id for p in drawer.team].index(drawer.box.id) + 1
        words.append(f"Place {number} of {count} from the left in its drawer")
    if drawer.is_turned:
        words.append("Stands turned by a quarter, its depth across the drawer front")
    if drawer.is_wished:
        words.append("Only wished for: room is kept free, no drawer is made")
    return words


def box_tip(box: Box, size: BoxSize, unit: LengthUnit, drawer: Drawer | None) -> str:
    """The tool tip of a box, as rich text: contents, mass, size, place, lock and what is wrong."""
    lengths = " × ".join(format_length(mm, unit) for mm in (size.width_mm, size.depth_mm, size.height_mm))
    lines = [f"<b>{escape(box.label)}</b>"]
    lines += [escape(box.contents)] if box.contents else []
    lines += [escape(f"{mass_caption(box).capitalize()} · used {box.use.value} · {size.name}"), escape(lengths)]
    if drawer is None:
        lines.append("Has no drawer yet.")
    else:
        place = place_caption(drawer.bay, drawer.row).capitalize()
        lines.append(f"{place} · drawer {drawer.number} · {escape(opening_caption(drawer, unit))}")
        lines += [escape(words) for words in standing_words(drawer)]
        if drawer.lifting_index is not None:
            lines.append(f"Lifting index {lifting_words(drawer.lifting_index)}: over 1 is too hard for many people")
        edge = format_length(drawer.lower_edge, unit)
        lines.append(f"Drawer's lower edge {escape(edge)} over the floor")
        lines += [LOCKED[drawer.lock].capitalize()] if drawer.lock is not Lock.NONE else []
        lines += [f"<b>⚠ {escape(trouble)}</b>" for trouble in drawer.troubles]
    return "<p>" + "<br>".join(lines) + "</p>"
