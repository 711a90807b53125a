"""Strips of edging and rails cut from bars and rolls: every edge has its strip, stock and kerf are kept."""

from decimal import Decimal

from baywright.making.cutting.plan import cutting_plan
from baywright.model.construction import EdgingKind
from baywright.model.cutting import CuttingPlan
from baywright.model.machining import Side
from baywright.model.making import Part
from baywright.model.project import Project
from baywright.model.stock import Bar, BarUse, BoardRole, CuttingRules
from tests.oracle.sawshop import made, part, sheet, shop
from tests.oracle.sawyer import check_plan

FRONT_AND_ENDS = (Side.FRONT, Side.START, Side.END)


def cut(project: Project, *parts: Part, effort: int = 0) -> CuttingPlan:
    """The plan, checked at the saw."""
    plan = cutting_plan(project, made(*parts), effort=effort)
    check_plan(project, parts, plan)
    return plan


def test_every_banded_edge_has_a_strip_that_is_cut_longer() -> None:
    top, upright = (
        part("T1", 1200, 400, banded=FRONT_AND_ENDS, thickness_mm=27),
        part("U1", 900, 350, 2, banded=(Side.FRONT,)),
    )
    plan = cut(shop(sheet(), bars=(Bar(id="roll", length_mm=10_000),)), top, upright)
    assert [cutting.name for cutting in plan.bars] == ["Edging for boards of 27 mm", "Edging for boards of 18 mm"]
    (wide,), (narrow,) = (cutting.layouts for cutting in plan.bars)
    assert sorted(piece.length_mm for piece in wide.pieces) == [420, 420, 1220]  # 20 mm over the edge each
    assert [(piece.part_number, piece.piece, piece.length_mm) for piece in narrow.pieces] == [
        ("U1", 1, 920),
        ("U1", 2, 920),
    ]
    assert (wide.number, narrow.number) == ("L1", "L2")


def test_edging_is_cut_from_few_bars_and_paid_for() -> None:
    bars = (Bar(id="strip", length_mm=2500, price=Decimal("7.20")),)
    plan = cut(shop(sheet(), bars=bars), part("U1", 800, 300, 7, banded=(Side.FRONT,)))
    (cutting,) = plan.bars
    assert (cutting.bought, cutting.cost, cutting.is_proved) == (3, Decimal("21.60"), True)
    assert (cutting.value, cutting.bound) == (21.6, 21.6)
    assert not cutting.counts_length


def test_owned_bars_are_taken_first_and_no_more_than_there_are() -> None:
    bars = (Bar(id="strip", length_mm=2500, price=Decimal(7)), Bar(id="left", length_mm=830, quantity=2, is_owned=True))
    plan = cut(shop(sheet(), bars=bars), part("U1", 800, 300, 5, banded=(Side.FRONT,)))
    assert [layout.bar_id for layout in plan.bars[0].layouts] == ["left", "left", "strip"]


def test_sections_share_the_bars_of_their_use_and_what_is_short_is_named() -> None:
    bars = (Bar(id="strip", length_mm=1300, quantity=2, price=Decimal(7)),)
    top, upright = (
        part("T1", 1200, 400, banded=FRONT_AND_ENDS, thickness_mm=27),
        part("U1", 1000, 350, banded=(Side.FRONT,)),
    )
    plan = cut(shop(sheet(), bars=bars), top, upright)
    wide, narrow = plan.bars
    assert (wide.bought, narrow.bought) == (2, 0)
    assert narrow.unplaced[0].part_number == "U1"
    assert narrow.unplaced[0].reason.startswith("The bars for “Edging for boards of 18 mm” are used up")
    assert not narrow.is_proved


def test_sections_that_take_nothing_from_each_other_are_proved_each_by_itself() -> None:
    bars = (Bar(id="strip", length_mm=2500, price=Decimal(7)),)
    top, upright = (
        part("T1", 1200, 400, banded=FRONT_AND_ENDS, thickness_mm=27),
        part("U1", 1000, 350, 3, banded=(Side.FRONT,)),
    )
    wide, narrow = cut(shop(sheet(), bars=bars), top, upright).bars
    assert (wide.bound, wide.value, wide.is_proved) == (7, 7, True)
    assert (narrow.bound, narrow.value, narrow.is_proved) == (14, 14, True)


def test_where_a_limited_bar_was_taken_the_bound_is_what_its_section_needs_with_all_of_them() -> None:
    """By hand: the top takes the only bar of the rack; the uprights buy three, and would buy two with it."""
    bars = (
        Bar(id="strip", length_mm=1300, price=Decimal(7)),
        Bar(id="left", length_mm=1300, quantity=1, is_owned=True),
    )
    top, upright = (
        part("T1", 1200, 400, banded=(Side.FRONT,), thickness_mm=27),
        part("U1", 1000, 350, 3, banded=(Side.FRONT,)),
    )
    wide, narrow = cut(shop(sheet(), bars=bars), top, upright, effort=50).bars
    assert (wide.value, wide.is_proved) == (0, True)
    assert (narrow.bound, narrow.value, narrow.is_proved) == (14, 21, False)


def test_no_bound_is_told_where_pieces_are_missing_that_a_bar_could_give() -> None:
    bars = (Bar(id="strip", length_mm=1300, quantity=1, price=Decimal(7)),)
    (cutting,) = cut(shop(sheet(), bars=bars), part("U1", 1000, 350, 3, banded=(Side.FRONT,))).bars
    assert (cutting.bound, cutting.value, cutting.is_proved) == (0, 7, False)


def test_a_strip_longer_than_every_bar_is_named_with_by_how_much() -> None:
    bars = (Bar(id="strip", length_mm=1000),)
    plan = cut(
        shop(sheet(), bars=bars),
        part("U1", 1100, 300, 2, banded=(Side.FRONT,)),
        part("S1", 700, 300, banded=(Side.FRONT,)),
    )
    (unplaced,) = plan.bars[0].unplaced
    assert (unplaced.part_number, unplaced.pieces) == ("U1", 2)
    assert unplaced.reason.startswith("Its strip is 1120 mm long, 120 mm more than the longest bar")
    assert len(plan.bars[0].layouts) == 1


def test_without_bars_in_stock_a_roll_or_a_length_is_assumed_and_said() -> None:
    upright = part("U1", 2600, 300, banded=(Side.FRONT,))
    project = shop(sheet(length_mm=3000))
    assert cut(project, upright).bars[0].layouts[0].length_mm == 25_000
    lipped = cut(shop(sheet(length_mm=3000), edging=EdgingKind.LIPPING), upright)
    assert lipped.bars[0].name == "Lipping for boards of 18 mm"
    assert lipped.bars[0].layouts[0].length_mm == 2620
    assert (lipped.bars[0].is_assumed, lipped.bars[0].cost) == (True, None)
    assert any("a length of 2620 mm was assumed" in remark for remark in lipped.remarks)


def test_rails_come_from_bars_where_the_owner_wants_it() -> None:
    rails = part("R4", 1800, 100, 3, role=BoardRole.BRACE)
    rules = CuttingRules(rails_from_bars=True, bar_kerf_mm=4, bar_rest_mm=500)
    project = shop(sheet(), bars=(Bar(id="stick", use=BarUse.RAIL, length_mm=4000, price=Decimal(9)),), rules=rules)
    plan = cut(project, rails, part("U1", 900, 300))
    assert [(cutting.id, cutting.bought, cutting.cost) for cutting in plan.bars] == [("rail-100x18", 2, Decimal(18))]
    assert [layout.number for layout in plan.bars[0].layouts] == ["L1", "L2"]
    rests = sorted((layout.rest_mm, layout.is_rest_reusable) for layout in plan.bars[0].layouts)
    assert rests == [(392, False), (2196, True)]
    assert "R4" not in {piece.part_number for layout in plan.sheet_layouts for piece in layout.pieces}


def test_a_strip_covers_boards_up_to_its_width_less_what_is_trimmed_off() -> None:
    bars = (
        Bar(id="wide", length_mm=2500, width_mm=29, price=Decimal(5)),
        Bar(id="narrow", length_mm=2500, width_mm=20, price=Decimal(5)),
        Bar(id="rest", length_mm=1500, width_mm=20, quantity=1, is_owned=True),
    )
    parts = part("T1", 1200, 400, banded=(Side.FRONT,), thickness_mm=27), part("U1", 1000, 350, 2, banded=(Side.FRONT,))
    wide, narrow = cut(shop(sheet(), bars=bars), *parts, effort=50).bars
    assert [(layout.bar_id, layout.width_mm) for layout in wide.layouts] == [("wide", 29)]
    assert [(layout.bar_id, layout.width_mm) for layout in narrow.layouts] == [("rest", 20), ("narrow", 20)]
    assert wide.is_proved
    assert narrow.is_proved
    (covers_both,) = (bar.replace(width_mm=None) for bar in bars[:1])
    any_board = cut(shop(sheet(), bars=(covers_both,)), *parts).bars
    assert {layout.bar_id for cutting in any_board for layout in cutting.layouts} == {"wide"}


def test_where_no_bar_is_wide_enough_one_is_assumed_and_its_width_said() -> None:
    parts = part("T1", 1200, 400, banded=(Side.FRONT,), thickness_mm=27), part("U1", 1000, 350, banded=(Side.FRONT,))
    project = shop(sheet(), bars=(Bar(id="narrow", length_mm=2500, width_mm=20),), edging=EdgingKind.LIPPING)
    plan = cut(project, *parts)
    assert [cutting.is_assumed for cutting in plan.bars] == [True, False]
    assert (
        "Nothing is in stock to cut “Lipping for boards of 27 mm” from: a length of 2500 mm, 29 mm or more wide, was "
        "assumed. Enter what you can get, with prices."
    ) in plan.remarks


def test_a_rail_is_cut_from_a_bar_of_its_own_width() -> None:
    bars = tuple(Bar(id=f"stick-{mm}", use=BarUse.RAIL, length_mm=4000, width_mm=mm) for mm in (60, 100, 120))
    project = shop(sheet(), bars=bars, rules=CuttingRules(rails_from_bars=True))
    (rails,) = cut(project, part("R4", 1800, 100, role=BoardRole.BRACE)).bars
    assert [layout.bar_id for layout in rails.layouts] == ["stick-100"]


def test_without_edging_there_are_no_strips() -> None:
    assert cut(shop(sheet(), edging=EdgingKind.NONE), part("U1", 900, 300)).bars == ()
