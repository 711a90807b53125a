"""What the columns of an inventory table can mean, and how headings in several languages say it."""

from collections.abc import Collection, Sequence
from enum import StrEnum

from baywright.storage.headings import LENGTH_UNITS, MASS_UNITS, Headings, headings_place, phrase_and_unit
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

_HEADINGS = Headings(_PHRASES, _WEAK, _INNER)
KNOWN_HEADINGS = _HEADINGS.phrases | _LENGTH_HEADINGS
"""What headings of an inventory say, as the program recognises them."""


def column_meant(heading: str) -> Column | None:
    """What a heading most likely means; None where that is not clear."""
    return _HEADINGS.meant(heading)


def is_length_heading(heading: str) -> bool:
    """Whether the heading says “length”, which may be the width or the depth."""
    return phrase_and_unit(heading)[0] in _LENGTH_HEADINGS


def unit_in_heading(heading: str, column: Column) -> str:
    """The unit that a heading such as “Height (cm)” or “mass_kg” gives its column; empty where it gives none."""
    unit = phrase_and_unit(heading)[1]
    units = LENGTH_UNITS if column in LENGTH_COLUMNS else MASS_UNITS if column is Column.MASS else frozenset()
    return unit if unit in units else ""


def find_headings(rows: Sequence[Row], known: Collection[str] = KNOWN_HEADINGS) -> int | None:
    """The place of the row of headings among the first rows, or None where there seems to be none."""
    return headings_place(rows, known)
