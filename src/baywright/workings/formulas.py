"""Every derived dimension, declared once, in the order in which a person would work it out.

The laws behind them stand in DEVELOPERS.md under “Geometry”. All lengths are mm. The 32 mm hole grid and the rule
that a panel of n pitches with half-pitch ends measures n × 32 are common practice; no standard defines them.
"""

from baywright.workings.formula import Formula
from baywright.workings.pieces import PIECES

_ACROSS = "Across the wall"
_UP = "Up the wall"
_ROWS = "Openings by box size"
_DEEP = "Front to back"

FORMULAS: tuple[Formula, ...] = (
    Formula(
        "drawer_inside_width", "drawer inside width", "mm", "bay_box_width + 2 * lateral_play", _ACROSS, per_kind=True
    ),
    Formula(
        "drawer_outside_width",
        "drawer outside width",
        "mm",
        "bay_box_width + 2 * lateral_play + 2 * drawer_side_thickness",
        _ACROSS,
        per_kind=True,
    ),
    Formula(
        "bay_clear_width",
        "bay clear width",
        "mm",
        "drawer_outside_width + 2 * runner_thickness",
        _ACROSS,
        "Clear width between two uprights: the drawer and a runner on each side.",
        per_kind=True,
    ),
    Formula(
        "bay_pitch",
        "bay pitch",
        "mm",
        "choose(own_uprights, bay_clear_width + 2 * upright_thickness, bay_clear_width + upright_thickness)",
        _ACROSS,
        "What one more bay adds to the run.",
        per_kind=True,
    ),
    Formula(
        "left_end",
        "left end beyond the first upright",
        "mm",
        "choose(left_panel, overhang_side + end_panel_thickness, overhang_side)",
        _ACROSS,
        "The top's side overhang, and the end panel where there is one.",
    ),
    Formula(
        "right_end",
        "right end beyond the last upright",
        "mm",
        "choose(right_panel, overhang_side + end_panel_thickness, overhang_side)",
        _ACROSS,
        "The top's side overhang, and the end panel where there is one.",
    ),
    Formula("room_for_run", "room for the run", "mm", "wall_length - left_end - right_end", _ACROSS),
    Formula(
        "shelf_room",
        "room kept for the shelf bay",
        "mm",
        "choose(shelf_bay_wanted, choose(wished_shelf_width > 0, wished_shelf_width + "
        "choose(own_uprights, 2 * upright_thickness, upright_thickness), 0), 0)",
        _ACROSS,
        "Only where a clear width is wished for it; else it takes what is left.",
    ),
    Formula(
        "bays_that_fit",
        "bays that fit the wall",
        "bays",
        "choose(laid_out, laid_out_bays, max(0, choose(own_uprights, floor((room_for_run - shelf_room) / bay_pitch), "
        "floor((room_for_run - shelf_room - upright_thickness) / bay_pitch))))",
        _ACROSS,
    ),
    Formula(
        "bay_count",
        "drawer bays",
        "bays",
        "choose(planned_bays > 0, planned_bays, choose(fixed_bays > 0, fixed_bays, bays_that_fit))",
        _ACROSS,
        "Of the present plan; before there is one, the fixed number, else as many as fit.",
    ),
    Formula(
        "clear_of_bays",
        "clear width of the bays of this kind",
        "mm",
        "kind_bays * bay_clear_width",
        _ACROSS,
        kind_only=True,
    ),
    Formula(
        "total_clear_width",
        "clear width of all drawer bays",
        "mm",
        "(bay_count - other_bays) * bay_clear_width + total(clear_of_bays)",
        _ACROSS,
    ),
    Formula(
        "bays_run_length",
        "length of the drawer bays",
        "mm",
        "choose(laid_out, total_clear_width + choose(own_uprights, 2 * bay_count, bay_count + sections) "
        "* upright_thickness + gaps, "
        "choose(own_uprights, bay_count * bay_pitch, bay_count * bay_pitch + upright_thickness))",
        _ACROSS,
        "With all their uprights.",
    ),
    Formula(
        "left_over_clear_width",
        "left-over clear width",
        "mm",
        "max(0, choose(own_uprights, room_for_run - closed_wall - bays_run_length - 2 * upright_thickness, "
        "room_for_run - closed_wall - bays_run_length - upright_thickness))",
        _ACROSS,
        "Clear width of the rest of the wall once its own end upright (two with own uprights) is taken off.",
    ),
    Formula(
        "shelf_bay_clear_width",
        "shelf bay clear width",
        "mm",
        "choose(shelf_bay_wanted, choose(wished_shelf_width > 0, min(wished_shelf_width, left_over_clear_width), "
        "choose(left_over_clear_width >= shelf_bay_least_width, left_over_clear_width, 0)), 0)",
        _ACROSS,
        "0: there is no shelf bay.",
    ),
    Formula(
        "run_length",
        "run length",
        "mm",
        "choose(shelf_bay_clear_width > 0, choose(own_uprights, "
        "bays_run_length + shelf_bay_clear_width + 2 * upright_thickness, "
        "bays_run_length + shelf_bay_clear_width + upright_thickness), bays_run_length)",
        _ACROSS,
        "Outside to outside of the end uprights.",
    ),
    Formula("wall_left", "wall left free", "mm", "room_for_run - run_length", _ACROSS),
    Formula(
        "first_row",
        "first hole row",
        "mm",
        "choose(first_row_rule == 1, pitch / 2, choose(first_row_rule == 2, base_thickness / 2, set_first_row))",
        _UP,
        "Over the upright's lower end.",
    ),
    Formula("base_upper_height", "base upper side over the floor", "mm", "stand_height + base_thickness", _UP),
    Formula(
        "rows_that_fit",
        "rows that fit under the height limit",
        "rows",
        "max(0, floor((height_limit - base_upper_height - top_thickness - 2 * first_row) / pitch) + 1)",
        _UP,
    ),
    Formula(
        "upright_rows",
        "hole rows in an upright",
        "rows",
        "choose(bay_rows > 0, bay_rows, choose(planned_rows > 0, planned_rows, choose(fixed_rows > 0, fixed_rows, "
        "rows_that_fit)))",
        _UP,
        "Of the present plan; before there is one, the fixed number, else as many as fit.",
        per_kind=True,
    ),
    Formula(
        "last_row",
        "last hole row",
        "mm",
        "first_row + pitch * (upright_rows - 1)",
        _UP,
        "Over the upright's lower end.",
        per_kind=True,
    ),
    Formula(
        "upright_height",
        "upright height",
        "mm",
        "pitch * (upright_rows - 1) + 2 * first_row",
        _UP,
        "Whole rows with equal ends, so that the panel can be turned end for end.",
        per_kind=True,
    ),
    Formula(
        "unit_height",
        "height of the whole run",
        "mm",
        "base_upper_height + upright_height + top_thickness",
        _UP,
        "Floor to the upper side of the top: the worktop's height.",
        per_kind=True,
    ),
    Formula(
        "lowest_start_row",
        "rows lost under the lowest drawer",
        "rows",
        "max(0, ceil((gap_under_lowest + line_offset - first_row) / pitch))",
        _UP,
        "So many rows at the bottom can carry no drawer.",
    ),
    Formula(
        "lowest_drawer_edge",
        "lowest drawer's lower edge over the base",
        "mm",
        "first_row + pitch * lowest_start_row - line_offset",
        _UP,
    ),
    Formula(
        "usable_rows",
        "whole rows from the lowest drawer to the top",
        "rows",
        "max(0, floor((upright_height - lowest_drawer_edge) / pitch))",
        _UP,
        per_kind=True,
    ),
    Formula(
        "seat", "seat of the box over the drawer's lower edge", "mm", "groove_offset + drawer_bottom_thickness", _UP
    ),
    Formula(
        "drawer_rail_height",
        "height of the drawer's rails",
        "mm",
        "choose(tray, set_rail_height, drawer_side_height)",
        _UP,
        "Front and rear; as high as the sides unless the drawer is a tray.",
    ),
    Formula(
        "need_height",
        "height that the drawer needs",
        "mm",
        "max(seat + box_height + clearance, drawer_side_height + gap_over_side)",
        _ROWS,
        per_size=True,
    ),
    Formula("opening_rows", "opening in rows", "rows", "ceil(need_height / pitch)", _ROWS, per_size=True),
    Formula("opening_height", "opening", "mm", "opening_rows * pitch", _ROWS, per_size=True),
    Formula("opening_spare", "air to spare in the opening", "mm", "opening_height - need_height", _ROWS, per_size=True),
    Formula(
        "before_uprights",
        "depth before the uprights",
        "mm",
        "choose(fronts == 2, max(overhang_front, front_thickness), overhang_front)",
        _DEEP,
        "What stands out before their front edges: the top, or overlay fronts where they stand out more.",
    ),
    Formula(
        "upright_depth",
        "upright depth",
        "mm",
        "choose(full_back, space_depth - before_uprights - back_thickness, space_depth - before_uprights)",
        _DEEP,
    ),
    Formula(
        "runner_room",
        "room for the runner",
        "mm",
        "choose(fronts == 1, upright_depth - front_thickness - rear_gap - zone_depth, "
        "upright_depth - rear_gap - zone_depth)",
        _DEEP,
        "Behind the front panel where that lies between the uprights.",
        per_kind=True,
    ),
    Formula(
        "runner_length",
        "runner length",
        "mm",
        "choose(set_runner_length > 0, choose(set_runner_length <= runner_room + 0.000000001, set_runner_length, 0), "
        "longest_up_to(runner_room, standard_runner_length))",
        _DEEP,
        "0: no runner fits.",
        per_kind=True,
    ),
    Formula("drawer_outside_depth", "drawer outside depth", "mm", "max(0, runner_length)", _DEEP, per_kind=True),
    Formula(
        "drawer_inside_depth",
        "drawer inside depth",
        "mm",
        "max(0, drawer_outside_depth - 2 * drawer_side_thickness)",
        _DEEP,
        "Between the front and the rear rail, which are as thick as the sides.",
        per_kind=True,
    ),
    Formula(
        "box_stop_place",
        "box stop behind the front rail",
        "mm",
        "box_depth + stop",
        _DEEP,
        "Front face of the strip that keeps the box from sliding back, where there is room for it behind the box.",
        per_size=True,
    ),
    Formula("depth_needed", "depth that the deepest box needs", "mm", "deepest_box + stop", _DEEP),
    Formula("depth_spare", "depth to spare", "mm", "drawer_inside_depth - depth_needed", _DEEP),
    Formula(
        "hole_columns_apart",
        "front to rear hole column",
        "mm",
        "upright_depth - front_setback - rear_setback",
        _DEEP,
    ),
    *PIECES,
)
