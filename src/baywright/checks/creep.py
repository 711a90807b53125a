"""How much further a load that stays bends a board: u_fin = u_inst · (1 + k_def).

Source: EN 1995-1-1:2004, table 3.2 (read second-hand, in a national standard that reprints it). Service class 1 is a
heated room, 2 an unheated but roofed one, 3 the open air. A dash in the table stands for a use that the standard does
not know; here it is None.
"""

from collections.abc import Mapping
from enum import StrEnum


class ServiceClass(StrEnum):
    """The climate that the run stands in, after EN 1995-1-1, 2.3.1.3."""

    HEATED = "1"
    ROOFED = "2"
    OUTDOORS = "3"


DEFORMATION_FACTORS: Mapping[str, tuple[float | None, float | None, float | None]] = {
    "solid timber": (0.60, 0.80, 2.00),
    "plywood": (0.80, 1.00, 2.50),
    "osb/2": (2.25, None, None),
    "osb/3": (1.50, 2.25, None),
    "particleboard p4": (2.25, None, None),
    "particleboard p5": (2.25, 3.00, None),
    "particleboard p6": (1.50, None, None),
    "particleboard p7": (1.50, 2.25, None),
    "hardboard hb.la": (2.25, None, None),
    "hardboard hb.hla": (2.25, 3.00, None),
    "fibreboard mbh.la": (3.00, None, None),
    "fibreboard mbh.hls": (3.00, 4.00, None),
    "mdf.la": (2.25, None, None),
    "mdf.hls": (2.25, 3.00, None),
}
"""k_def by material and service class 1, 2, 3."""


def deformation_factor(material: str, service_class: ServiceClass) -> float | None:
    """k_def of a material in a climate; None where the table has none for it. KeyError for a material not in it."""
    return DEFORMATION_FACTORS[material][int(service_class.value) - 1]


def final_deflection_mm(instantaneous_mm: float, factor: float) -> float:
    """Deflection after years under a load that stays, in mm."""
    return instantaneous_mm * (1.0 + factor)
