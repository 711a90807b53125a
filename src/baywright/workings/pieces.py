"""The sizes of pieces, as far as they are the same wherever the piece stands.

Laws: every size is the finished one; what drawers weigh is reckoned to the safe side of their runners.
"""

from baywright.workings.formula import Formula

_PIECES = "Pieces"

PIECES: tuple[Formula, ...] = (
    Formula(
        "rail_length",
        "drawer rail length",
        "mm",
        "drawer_outside_width - 2 * drawer_side_thickness",
        _PIECES,
        "Front and rear rail stand between the sides.",
        per_kind=True,
    ),
    Formula(
        "bottom_width",
        "drawer bottom width",
        "mm",
        "drawer_inside_width + 2 * groove_depth - bottom_play",
        _PIECES,
        per_kind=True,
    ),
    Formula(
        "bottom_depth",
        "drawer bottom depth",
        "mm",
        "max(0, drawer_inside_depth + 2 * groove_depth - bottom_play)",
        _PIECES,
        per_kind=True,
    ),
    Formula(
        "groove_width",
        "width of the bottom's groove",
        "mm",
        "drawer_bottom_thickness + groove_play",
        _PIECES,
    ),
    Formula(
        "groove_wood",
        "wood left beside the groove",
        "mm",
        "drawer_side_thickness - groove_depth",
        _PIECES,
        "0 or less: the groove cuts through the side.",
    ),
    Formula(
        "wood_over_groove",
        "wood left over the groove",
        "mm",
        "drawer_rail_height - groove_offset - groove_width",
        _PIECES,
        "In the rails of the drawer.",
    ),
    Formula(
        "box_stop_length",
        "box stop length",
        "mm",
        "choose(has_box_stop, drawer_inside_width - box_stop_play, 0)",
        _PIECES,
        "0: there is none.",
        per_kind=True,
    ),
    Formula(
        "front_width",
        "front panel width",
        "mm",
        "choose(fronts == 0, 0, choose(fronts == 1, bay_clear_width - 2 * reveal, "
        "choose(own_uprights, bay_clear_width + 2 * upright_thickness - 2 * reveal, "
        "bay_clear_width + upright_thickness - 2 * reveal)))",
        _PIECES,
        "An overlay front reaches to the middle of a shared upright and over the whole of any other. 0: there is none.",
        per_kind=True,
    ),
    Formula(
        "front_end_extra",
        "front panel wider at an end upright",
        "mm",
        "choose(fronts == 2, choose(own_uprights, 0, upright_thickness / 2), 0)",
        _PIECES,
        "For each end upright beside the bay: an overlay front covers the whole of it.",
    ),
    Formula(
        "front_height",
        "front panel height",
        "mm",
        "choose(fronts == 0, 0, opening_height - 2 * reveal)",
        _PIECES,
        "Over an opening of whole rows; it is higher where the opening is.",
        per_size=True,
    ),
    Formula(
        "reckoned_front_height",
        "height of the front panels as weighed",
        "mm",
        "choose(fronts == 0, 0, ceil(max(seat + highest_box + clearance, drawer_side_height + gap_over_side) / pitch) "
        "* pitch + ceil(max(seat + lowest_box + clearance, drawer_side_height + gap_over_side) / pitch) * pitch "
        "+ max(0, lowest_drawer_edge) - 2 * reveal)",
        _PIECES,
        "No front is higher: that of the highest box, in an opening that is nearly high enough for one more drawer.",
    ),
    Formula(
        "front_mass",
        "mass of a front panel as reckoned",
        "kg",
        "choose(fronts == 0, 0, front_density * (front_width + 2 * front_end_extra) * reckoned_front_height "
        "* front_thickness / 1000000000)",
        _PIECES,
        "Of the largest there can be.",
        per_kind=True,
    ),
    Formula(
        "drawer_mass",
        "mass of the empty drawer",
        "kg",
        "(drawer_side_density * (2 * (drawer_outside_depth * drawer_side_height + rail_length * drawer_rail_height) "
        "+ box_stop_length * box_stop_height) * drawer_side_thickness "
        "+ drawer_bottom_density * bottom_width * bottom_depth * drawer_bottom_thickness) / 1000000000 + front_mass",
        _PIECES,
        "Two sides, two rails, the bottom, box stop and front panel, before grooves are cut; the runners carry it.",
        per_kind=True,
    ),
    Formula(
        "base_length",
        "base length",
        "mm",
        "choose(own_uprights, bay_clear_width + 2 * upright_thickness, run_length)",
        _PIECES,
        "With own uprights each bay has a base of its own.",
        per_kind=True,
    ),
    Formula("base_depth", "base depth", "mm", "max(0, upright_depth)", _PIECES),
    Formula("top_length", "top length", "mm", "run_length + left_end + right_end", _PIECES),
    Formula(
        "top_depth",
        "top depth",
        "mm",
        "choose(full_back, upright_depth + overhang_front + back_thickness, upright_depth + overhang_front)",
        _PIECES,
    ),
    Formula(
        "end_panel_height",
        "end panel height",
        "mm",
        "choose(left_panel + right_panel > 0, base_upper_height + upright_height, 0)",
        _PIECES,
        "From the floor to under the top. 0: there is none.",
        per_kind=True,
    ),
    Formula(
        "end_panel_depth",
        "end panel depth",
        "mm",
        "choose(left_panel + right_panel > 0, choose(full_back, max(0, upright_depth + back_thickness), "
        "max(0, upright_depth)), 0)",
        _PIECES,
        "From the uprights' front edges to the rear of the back, so that it covers the back's edge.",
    ),
    Formula(
        "shelf_length",
        "shelf length",
        "mm",
        "max(0, shelf_bay_clear_width - 2 * shelf_play)",
        _PIECES,
        "0: there is no shelf bay.",
    ),
)
