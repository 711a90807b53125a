"""The words by which tables name kinds of hardware, in several languages."""

from baywright.model.catalogue import HardwareKind
from baywright.storage.words import plain_word

_WORDS: dict[HardwareKind, str] = {
    HardwareKind.RUNNER: "runner, drawer runner, drawer slide, slide, auszug, vollauszug, schubladenauszug, coulisse, "
    "guia, guida, ladegeleider",
    HardwareKind.SYSTEM_SCREW: "system screw, euro screw, systemschraube, euroschraube, vis systeme",
    HardwareKind.WOOD_SCREW: "wood screw, screw, holzschraube, schraube, spanplattenschraube, vis, vis a bois, "
    "tornillo, vite, houtschroef, schroef",
    HardwareKind.POCKET_SCREW: "pocket screw, pocket hole screw, taschenlochschraube",
    HardwareKind.TENON: "loose tenon, tenon, lose feder, formfeder, faux tenon, falso tenone",
    HardwareKind.DOWEL: "dowel, dubel, holzdubel, tourillon, spina, taco de madera, deuvel",
    HardwareKind.CONNECTOR: "connecting bolt, sleeve bolt, connector, verbindungsschraube, schrankverbinder",
    HardwareKind.PIN: "shelf pin, pin, bodentrager, taquet, soporte, reggipiano, plankdrager",
    HardwareKind.FOOT: "foot, feet, levelling foot, mobelfuss, fuss, stellfuss, pied, pata, piede, poot",
    HardwareKind.WALL_FIXING: "wall fixing, anchor, wall anchor, wall plug, wanddubel, fixation murale",
    HardwareKind.WALL_ANGLE: "wall angle, angle, angle bracket, winkel, equerre",
    HardwareKind.EDGING: "edging, edge band, banding, lipping, kante, umleimer, kantenband, chant, bordo, kantenband",
    HardwareKind.GLUE: "glue, wood glue, leim, holzleim, colle, cola, colla, lijm",
    HardwareKind.FINISH: "finish, oil, varnish, oil or varnish, ol, lack, oberflache, huile, vernis, aceite, barniz, "
    "olio, vernice, lak",
    HardwareKind.OTHER: "other, sonstiges, autre, otro, altro, overig",
}
_MEANT = {word.strip(): kind for kind, words in _WORDS.items() for word in words.split(",")}


def kind_meant(text: str) -> HardwareKind | None:
    """The kind that a cell names, in the singular or with a plural s; None where it names none."""
    word = plain_word(text)
    return _MEANT.get(word) or _MEANT.get(word.removesuffix("s"))
