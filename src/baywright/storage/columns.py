"""What the columns of an inventory table can mean, and how to guess it from headings in several languages.

Laws: a heading is recognised as a whole phrase or by one telling word, else not at all; a heading whose words tell two
meanings is not recognised; the guess is only ever a proposal.
"""

import re
import unicodedata
from collections.abc import Sequence
from enum import StrEnum

from baywright.storage.table import Row


class Column(StrEnum):
    """What a column of an inventory table can say about a box."""

    LABEL = "label"
    SIZE = "size"
    """Name of a box size."""
    WIDTH = "width"
    DEPTH = "depth"
    HEIGHT = "height"
    MASS = "mass"
    """Loaded mass: box and contents."""
    CONTENTS = "contents"
    GROUP = "group"
    USE = "use"
    NOTE = "note"
    STATUS = "status"
    """Whether the box is there, wished for, or kept elsewhere."""
    QUANTITY = "quantity"


LENGTH_COLUMNS = (Column.WIDTH, Column.DEPTH, Column.HEIGHT)

_PHRASES: dict[Column, str] = {
    Column.LABEL: "label, name, box, box name, box label, title, item, bezeichnung, beschriftung, kiste, kasten, "
    "etikett, nom, etiquette, boite, nombre, etiqueta, caja, nome, etichetta, scatola, naam, bak, doos",
    Column.SIZE: "size, box size, type, box type, format, model, grosse, kistengrosse, kastengrosse, boxgrosse, typ, "
    "taille, tamano, formato, dimensione, maat, grootte",
    Column.WIDTH: "width, w, wide, outside width, breite, b, aussenbreite, largeur, ancho, anchura, larghezza, breedte",
    Column.DEPTH: "depth, d, deep, outside depth, tiefe, t, aussentiefe, profondeur, profundidad, fondo, "
    "profondita, diepte",
    Column.HEIGHT: "height, h, high, tall, outside height, hohe, aussenhohe, hauteur, alto, altura, altezza, hoogte",
    Column.MASS: "mass, weight, loaded mass, loaded weight, gross weight, total weight, kg, lb, lbs, gewicht, masse, "
    "gesamtgewicht, bruttogewicht, poids, peso",
    Column.CONTENTS: "contents, content, what is inside, inside, holds, inhalt, contenu, contenido, contenuto, inhoud",
    Column.GROUP: "group, category, kind, area, gruppe, kategorie, bereich, groupe, categorie, grupo, categoria, "
    "gruppo, groep",
    Column.USE: "use, usage, frequency, how often, used, nutzung, gebrauch, haufigkeit, utilisation, frequence, uso, "
    "frecuencia, frequenza, gebruik",
    Column.NOTE: "note, notes, remark, remarks, comment, comments, bemerkung, bemerkungen, notiz, anmerkung, "
    "kommentar, remarque, commentaire, nota, notas, observacion, opmerking",
    Column.STATUS: "status, box status, statut",
    Column.QUANTITY: "quantity, qty, count, number, number of boxes, pieces, pcs, amount, how many, menge, anzahl, "
    "stuck, stuckzahl, quantite, nombre de boites, cantidad, quantita, aantal, n",
}
"""Headings in English, German, French, Spanish, Italian and Dutch, without accents, small."""

_WEAK = frozenset({"box", "kiste", "kasten", "caja", "boite", "scatola", "bak", "doos", "number", "what", "total"})
"""Words that tell a meaning only as a heading of their own."""

_INNER = frozenset({"inner", "inside", "internal", "usable", "innen", "innenmass", "interieur", "interior", "interno"})
"""Words of inside measures, which say nothing about the room that a box takes."""

_LENGTH_HEADINGS = frozenset(
    {"length", "long", "l", "outside length", "lange", "longueur", "largo", "lunghezza", "lengte"}
)
"""Which way a length lies is not said: it is the depth where a width stands beside it, and the width beside a depth."""

_MEANING = {phrase.strip(): column for column, phrases in _PHRASES.items() for phrase in phrases.split(",")}
_UNIT = re.compile(r"^(?P<what>.*?)\s*(?:[(\[]\s*(?P<bracket>[a-z\"]+)\s*[)\]]|[\s_,/]+(?:in\s+)?(?P<bare>[a-z]+))$")
_LENGTH_UNITS = frozenset({"mm", "cm", "m", "in", "inch", "inches", '"', "ft"})
_MASS_UNITS = frozenset({"kg", "g", "lb", "lbs"})
_HEADINGS_WITHIN_ROWS = 10


def column_meant(heading: str) -> Column | None:
    """What a heading most likely means; None where that is not clear."""
    phrase, _ = _phrase_and_unit(heading)
    if phrase in _MEANING:
        return _MEANING[phrase]
    if _INNER & set(phrase.split()):
        return None
    meanings = {_MEANING[word] for word in phrase.split() if len(word) > 1 and word in _MEANING and word not in _WEAK}
    return meanings.pop() if len(meanings) == 1 else None


def is_length_heading(heading: str) -> bool:
    """Whether the heading says “length”, which may be the width or the depth."""
    return _phrase_and_unit(heading)[0] in _LENGTH_HEADINGS


def unit_in_heading(heading: str, column: Column) -> str:
    """The unit that a heading such as “Height (cm)” or “mass_kg” gives its column; empty where it gives none."""
    unit = _phrase_and_unit(heading)[1]
    units = _LENGTH_UNITS if column in LENGTH_COLUMNS else _MASS_UNITS if column is Column.MASS else frozenset()
    return unit if unit in units else ""


def find_headings(rows: Sequence[Row]) -> int | None:
    """The place of the row of headings among the first rows, or None where there seems to be none."""
    for place, row in enumerate(rows[:_HEADINGS_WITHIN_ROWS]):
        phrases = [_phrase_and_unit(cell)[0] for cell in row.cells if cell]
        known = [phrase for phrase in phrases if phrase in _MEANING or phrase in _LENGTH_HEADINGS]
        if len(known) >= 2 or (place == 0 and known and len(phrases) == 1):
            return place
    return 0 if len(rows) > 1 and _stands_over_numbers(rows[0], rows[1:]) else None


def _stands_over_numbers(first: Row, others: Sequence[Row]) -> bool:
    """Whether the first row holds only words while numbers stand below one of them."""
    if any(any(sign.isdigit() for sign in cell) for cell in first.cells):
        return False
    return any(
        first.cell(column) and all(row.cell(column)[:1].isdigit() for row in others if row.cell(column))
        and any(row.cell(column) for row in others)
        for column in range(len(first.cells))
    )  # fmt: skip


def _phrase_and_unit(heading: str) -> tuple[str, str]:
    """The heading in small letters without accents and signs, and its unit if it ends in one."""
    plain = unicodedata.normalize("NFKD", heading.replace("ß", "ss")).lower()
    plain = "".join(sign for sign in plain if not unicodedata.combining(sign)).strip(" :*.")
    unit = ""
    match = _UNIT.match(plain)
    if plain in _MASS_UNITS:
        unit = plain
    elif match:
        candidate = match["bracket"] or match["bare"]
        if candidate in _LENGTH_UNITS | _MASS_UNITS:
            plain, unit = match["what"], candidate
    return " ".join(re.findall(r"[a-z0-9]+", plain)), unit
