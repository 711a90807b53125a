"""How far a board may sag, as its span over a ratio, and who says so.

Laws: the owner chooses the ratio; a ratio that stands in no source is the owner's own and is said to be. No limit of
EN 14749 or EN 16122 is known here, so none is claimed.
"""

from collections.abc import Mapping

ORIGINS: Mapping[float, str] = {
    140.0: "ANSI MH28.1, industrial shelving; read second-hand",
    144.0: "Architectural Woodwork Standards, 1st edition 2009, page 253; read second-hand",
    200.0: "common practice",
    240.0: "Composite Panel Association, particleboard and fibreboard; read second-hand",
    300.0: "common practice",
    384.0: "Building Furniture, 2007, page 25: from 1/32 in a foot on the eye notices it; read second-hand",
    600.0: "Building Furniture, 2007, page 25: 0.02 in a foot; read second-hand",
}


def allowed_mm(span_mm: float, ratio: float) -> float:
    """How far a board of that span may sag, in mm."""
    return span_mm / ratio


def origin(ratio: float) -> str:
    """Where a span ratio comes from."""
    return ORIGINS.get(float(ratio), "chosen by the owner")
