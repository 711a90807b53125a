"""What the columns of a catalogue table can mean, how headings in several languages say it, and the proposed matching.

Laws: as for inventories: the guess is only ever a proposal.
"""

import re
from dataclasses import dataclass, replace
from enum import StrEnum

from baywright.storage.headings import LENGTH_UNITS, MASS_UNITS, Headings, headings_place, phrase_and_unit
from baywright.storage.matching import ColumnChoice
from baywright.storage.table import Table


class CatalogueColumn(StrEnum):
    """What a column of a catalogue table can say about an item."""

    KIND = "kind"
    NAME = "name"
    LENGTH = "length"
    DIAMETER = "diameter"
    THICKNESS = "thickness"
    """Room a runner takes on each side of the drawer; thickness of a tenon or an edging."""
    WIDTH = "width"
    LOAD = "load"
    """Rated load of a pair of runners, or of a foot."""
    PACK = "pack"
    """How many pieces, pairs, metres or litres are in a pack."""
    PRICE = "price"
    """Of one pack."""
    MASS = "mass"
    """Of one piece."""
    SUPPLIER = "supplier"
    ORDER_NUMBER = "order-number"
    NOTE = "note"


MEASURES = {
    CatalogueColumn.LENGTH: "length_mm",
    CatalogueColumn.DIAMETER: "diameter_mm",
    CatalogueColumn.THICKNESS: "thickness_mm",
    CatalogueColumn.WIDTH: "width_mm",
}
"""The columns that hold lengths, and the fields of an item that they fill."""
_MASSES = (CatalogueColumn.LOAD, CatalogueColumn.MASS)

_PHRASES: dict[CatalogueColumn, str] = {
    CatalogueColumn.KIND: "kind, type, category, group, what, art, kategorie, gruppe, warengruppe, typ, genre, "
    "categorie, sorte, tipo, categoria, soort",
    CatalogueColumn.NAME: "name, item, article, description, title, designation, bezeichnung, artikel, beschreibung, "
    "nom, libelle, nombre, articulo, descripcion, nome, articolo, descrizione, naam, omschrijving",
    CatalogueColumn.LENGTH: "length, long, l, lange, longueur, largo, longitud, lunghezza, lengte",
    CatalogueColumn.DIAMETER: "diameter, dia, thick, durchmesser, diametre, diametro",
    CatalogueColumn.THICKNESS: "thickness, side clearance, clearance, dicke, starke, einbaubreite, epaisseur, espesor, "
    "spessore, dikte",
    CatalogueColumn.WIDTH: "width, wide, w, breite, b, largeur, ancho, anchura, larghezza, breedte",
    CatalogueColumn.LOAD: "load, load class, rated load, capacity, carries, tragkraft, belastbarkeit, traglast, "
    "charge, capacite, carga, portata, draagkracht, belasting",
    CatalogueColumn.PACK: "pack, pack size, packs of, in a pack, quantity, qty, contents, content, packung, menge, "
    "inhalt, packungsgrosse, vpe, stuck, conditionnement, quantite, contenu, paquete, cantidad, contenido, confezione, "
    "quantita, contenuto, verpakking, aantal, inhoud",
    CatalogueColumn.PRICE: "price, cost, price per pack, preis, prix, precio, prezzo, prijs, eur, gbp, usd, chf",
    CatalogueColumn.MASS: "mass, weight, kg, g, gewicht, masse, poids, peso, gewicht je stuck",
    CatalogueColumn.SUPPLIER: "supplier, shop, source, vendor, dealer, lieferant, handler, laden, fournisseur, "
    "magasin, proveedor, tienda, fornitore, negozio, leverancier, winkel",
    CatalogueColumn.ORDER_NUMBER: "order number, number, article number, item number, no, nr, part number, sku, "
    "bestellnummer, artikelnummer, numero, reference, referencia, codice, bestelnummer, order-number",
    CatalogueColumn.NOTE: "note, notes, remark, remarks, comment, comments, bemerkung, notiz, anmerkung, remarque, "
    "nota, notas, opmerking",
}
"""Headings in English, German, French, Spanish, Italian and Dutch, without accents, small."""

_CURRENCIES = frozenset(
    {
        "EUR",
        "GBP",
        "USD",
        "CHF",
        "SEK",
        "NOK",
        "DKK",
        "PLN",
        "CZK",
        "HUF",
        "RON",
        "CAD",
        "AUD",
        "NZD",
        "JPY",
        "CNY",
        "INR",
    }
)
"""Currencies that headings name by their letters (ISO 4217)."""
_CURRENCY_SIGNS = {"€": "EUR", "£": "GBP"}

_WEAK = frozenset({"what", "no", "nr", "thick", "long", "wide", "content", "contents", "number", "group", "item"})
_HEADINGS = Headings(_PHRASES, _WEAK)


@dataclass(frozen=True)
class CatalogueMatching(ColumnChoice[CatalogueColumn]):
    """Which column of a catalogue table means what."""


def with_catalogue_headings(table: Table) -> Table:
    """The table with its row of headings found by the words of catalogues."""
    return replace(table, heading_index=headings_place(table.filled_rows, _HEADINGS.phrases))


def propose_catalogue_matching(table: Table) -> CatalogueMatching:
    """What the columns most likely mean; without headings nothing is guessed."""
    columns: dict[CatalogueColumn, int] = {}
    for place, heading in enumerate(table.headings):
        meaning = _HEADINGS.meant(heading)
        if meaning is not None:
            columns.setdefault(meaning, place)
    return CatalogueMatching(columns)


def unit_of_column(heading: str, column: CatalogueColumn) -> str:
    """The unit that a heading such as “Length (mm)” gives its column; empty where it gives none."""
    unit = phrase_and_unit(heading)[1]
    units = LENGTH_UNITS if column in MEASURES else MASS_UNITS if column in _MASSES else frozenset()
    return unit if unit in units else ""


def currency_of_column(heading: str) -> str:
    """The currency that a heading such as “Price (CHF)” or “Preis in €” gives its column; empty where it gives none."""
    named = [sign for sign in heading if sign in _CURRENCY_SIGNS]
    words = [word for word in re.findall("[A-Z]+", heading.upper()) if word in _CURRENCIES]
    found = {_CURRENCY_SIGNS[sign] for sign in named} | set(words)
    return found.pop() if len(found) == 1 else ""
