"""The section of the form with what the checks of strength, stability and people assume."""

from baywright.gui.dimensions.entry import FormSection, choice, length, number
from baywright.gui.wording import BOARD_MATERIALS, CLIMATES, GRIPS

_S = "safety."

SAFETY = FormSection(
    "Checks",
    (
        choice(
            _S + "board_material", "Boards are of", "Another material is not checked for sag.", BOARD_MATERIALS,
        ),
        choice(_S + "climate", "Climate", "Damp makes boards creep more (service classes of EN 1995-1-1).", CLIMATES),
        number(
            _S + "span_ratio", "Sag allowed: span over",
            "200 or 300 is common practice, 144 and 240 stand in trade standards; from about 400 the eye sees nothing.",
            "",
        ),
        number(_S + "shelf_load_kg_m2", "Load of a shelf", "195 kg/m² is 40 lb/ft², books and tools.", "kg/m²"),
        number(_S + "point_load_kg", "One heavy thing on a shelf", "In the middle, besides the load above.", "kg"),
        number(_S + "top_load_kg_m2", "Load of the top", "What stands on the worktop.", "kg/m²"),
        number(_S + "lasting_share", "Share that stays for years", "From 0 to 1; it makes boards creep.", ""),
        number(_S + "load_allowance_kg", "Allowance for each box", "For what is put in later.", "kg"),
        length(_S + "raised_rear_mm", "Floor leans forward by", "Over the depth of the run; a carpet does it too."),
        length(_S + "set_down_height_mm", "Height of the bench", "Where a box is set down after lifting it out."),
        choice(_S + "grip", "Grips of the boxes", "Good: handles to close the hand around. Poor: none.", GRIPS),
        number(_S + "lifts_a_minute", "Lifts a minute", "Up to 0.2 is now and then.", ""),
        number(_S + "twist_degrees", "Turn to the bench", "By how much a person turns with the box.", "°"),
        length(_S + "reach_height_mm", "Highest reach", "Of the shortest person who uses the run."),
        length(_S + "connector_mm", "Plugs and handles", "How far they stand out at a box, front and rear together."),
        length(_S + "walkway_mm", "Floor before the run", "Free from the front of the run on.", "not measured"),
    ),
)  # fmt: skip
