"""The cutting plan as a whole: every part cut or told with the reason, stock and rules kept, costs summed up."""

from decimal import Decimal

import pytest

from baywright.making.cutting.plan import cutting_plan
from baywright.model.construction import Uprights
from baywright.model.cutting import CuttingPlan
from baywright.model.making import Grain, Part
from baywright.model.project import Project
from baywright.model.stock import BoardRole, CuttingRules, Material
from tests.oracle.sawshop import PLY, made, part, sheet, shop
from tests.oracle.sawyer import check_plan


def cut(project: Project, *parts: Part, effort: int = 300) -> CuttingPlan:
    """The plan, checked at the saw."""
    plan = cutting_plan(project, made(*parts), effort=effort)
    check_plan(project, parts, plan)
    return plan


def reasons(plan: CuttingPlan) -> dict[str, tuple[int, str]]:
    return {each.part_number: (each.pieces, each.reason) for cutting in plan.sheets for each in cutting.unplaced}


def test_parts_are_cut_from_few_sheets_with_kerf_and_trim() -> None:
    plan = cut(shop(sheet(price=Decimal("48.50"))), part("U1", 1200, 300, 8))
    (cutting,) = plan.sheets
    assert (cutting.bought, cutting.cost, cutting.is_proved) == (1, Decimal("48.50"), True)
    assert (cutting.value, cutting.bound, cutting.gap) == (48.5, 48.5, None)
    assert plan.is_finished
    assert plan.remarks == ()
    # 8 × 300 would fit across 4 × 300 + 3 × 3, along 2 × 1200 + 3; without room for the blade it is two sheets
    assert cut(shop(sheet(length_mm=2422, price=1)), part("U1", 1200, 300, 8)).sheets_bought == 2


def test_a_sheet_that_fits_to_the_hundredth_is_enough() -> None:
    project = shop(sheet(length_mm=2 * 400.25 + 3 + 20, width_mm=320))
    assert cut(project, part("U1", 400.25, 300, 2)).sheets_bought == 1
    less = shop(sheet(length_mm=2 * 400.25 + 3 + 20 - 0.01, width_mm=320))
    assert cut(less, part("U1", 400.25, 300, 2)).sheets_bought == 2


def test_grain_is_kept_and_only_what_may_lie_any_way_is_turned() -> None:
    project = shop(sheet(length_mm=1020, width_mm=520))
    along = cut(project, part("U1", 1000, 240, 2))
    assert [piece.is_turned for layout in along.sheet_layouts for piece in layout.pieces] == [False, False]
    across = cut(project, part("U1", 240, 1000, 2, grain=Grain.WIDTH))
    assert [piece.is_turned for layout in across.sheet_layouts for piece in layout.pieces] == [True, True]
    anyway = cut(project, part("U1", 240, 1000, 2, grain=Grain.ANY))
    assert anyway.sheets_bought == 1
    refused = cut(project, part("U1", 240, 1000, 2))
    assert refused.sheets[0].layouts == ()
    count, reason = reasons(refused)["U1"]
    assert count == 2
    assert reason.startswith("It would fit only with its grain across: 240 mm × 1000 mm along the grain")
    assert refused.sheets[0].has_grain
    plain = shop(sheet(length_mm=1020, width_mm=520), materials=[PLY.replace(has_grain=False)])
    whatever = cut(plain, part("U1", 240, 1000, 2))
    assert whatever.sheets_bought == 1
    assert not whatever.sheets[0].has_grain


def test_a_part_larger_than_every_sheet_is_named_with_by_how_much_and_the_rest_is_cut() -> None:
    plan = cut(
        shop(sheet(), sheet("small", length_mm=1000, width_mm=600)), part("T1", 2600, 1300), part("U1", 900, 300)
    )
    assert reasons(plan) == {
        "T1": (1, "It is 2600 mm × 1300 mm, 120 mm too long and 70 mm too wide for the sheet that comes nearest, which "
               "gives 2480 mm × 1230 mm after trimming; enter a larger sheet, or divide the part.")
    }  # fmt: skip
    assert [piece.part_number for layout in plan.sheet_layouts for piece in layout.pieces] == ["U1"]


@pytest.mark.parametrize(
    ("length_mm", "role", "uprights", "mend"),
    [
        (2490, BoardRole.BASE, Uprights.SHARED, "set the longest board, which is 2500 mm, to 2480 mm or less, so that "
         "it is joined over an upright."),
        (5600, BoardRole.BASE, Uprights.SHARED, "make the bay that it spans narrower; without an upright to join it "
         "over, it can only be joined over a support of its own."),
        (2490, BoardRole.BASE, Uprights.OWN, "make the bay that it spans narrower;"),
        (5600, BoardRole.SHELF, Uprights.SHARED, "make the bay that it spans narrower;"),
        (2490, BoardRole.UPRIGHT, Uprights.SHARED, "enter a larger sheet, or divide the part."),
    ],
)  # fmt: skip
def test_a_board_longer_than_every_sheet_is_told_with_what_mends_it(
    length_mm: float, role: BoardRole, uprights: Uprights, mend: str
) -> None:
    project = shop(sheet(), materials=[PLY.replace(roles=(role,))])
    project = project.replace(construction=project.construction.replace(uprights=uprights))
    _, reason = reasons(cut(project, part("X1", length_mm, 380, role=role)))["X1"]
    assert f"{length_mm - 2480:g} mm too long" in reason
    assert mend in reason


def test_a_part_no_wider_than_the_kerf_or_without_a_size_is_named() -> None:
    plan = cut(shop(sheet()), part("D4", 300, 2.5, 3), part("D5", 300, 0), part("U1", 900, 300))
    assert reasons(plan)["D4"][0] == 3
    assert reasons(plan)["D4"][1].startswith("It is 2.5 mm wide, no more than the blade takes (3 mm)")
    assert reasons(plan)["D5"][1].startswith("Nothing is left of it")
    assert len(plan.sheet_layouts) == 1


def test_an_exhausted_stock_is_told_for_the_pieces_that_are_left_over() -> None:
    plan = cut(shop(sheet(length_mm=1000, width_mm=320, quantity=2)), part("U1", 900, 300, 5))
    count, reason = reasons(plan)["U1"]
    assert count == 3
    assert reason.startswith("The sheets of “Plywood 18 mm” are used up")
    assert plan.sheets_bought == 2
    none = cut(shop(sheet(quantity=0)), part("U1", 900, 300, 5))
    assert reasons(none)["U1"][0] == 5


def test_pieces_that_fit_only_a_used_up_sheet_are_told_and_the_others_are_cut() -> None:
    """The small sheet is there, the large one is not: no bound may be asked of pieces larger than what is there."""
    project = shop(
        sheet("strip", length_mm=1525, width_mm=400, quantity=20),
        sheet("large", length_mm=2500, width_mm=1250, quantity=0),
    )
    plan = cut(project, part("U1", 1000, 300), part("T1", 900, 700))
    assert reasons(plan) == {
        "T1": (1, "The sheets of “Plywood 18 mm” are used up; add sheets to buy, or more of those that there are.")
    }
    assert [piece.part_number for layout in plan.sheet_layouts for piece in layout.pieces] == ["U1"]
    assert plan.sheets[0].is_proved


def test_a_sheet_that_trimming_uses_up_is_told() -> None:
    plan = cut(shop(sheet(width_mm=20)), part("U1", 900, 300))
    assert "Nothing is left of the sheet “full”" in plan.remarks[0]
    assert reasons(plan)["U1"][1].startswith("No sheet of “Plywood 18 mm” is large enough to be trimmed")


def test_owned_offcuts_are_used_where_that_saves_and_are_not_trimmed_unless_asked() -> None:
    offcut = sheet("left", length_mm=903, width_mm=300, is_owned=True, is_trimmed=False)
    project = shop(sheet(length_mm=1000, width_mm=320, price=10), offcut)
    plan = cut(project, part("U1", 900, 300, 2))
    assert [(layout.sheet_id, layout.trim_mm) for layout in plan.sheet_layouts] == [("left", 0), ("full", 10)]
    assert (plan.sheets_bought, plan.sheets[0].cost, plan.sheets[0].value) == (1, Decimal(10), 10)
    trimmed = shop(sheet(length_mm=1000, width_mm=320, price=10), offcut.replace(is_trimmed=True))
    assert cut(trimmed, part("U1", 900, 300, 2)).sheets_bought == 2


def test_an_offcut_is_left_alone_where_it_saves_nothing() -> None:
    offcut = sheet("left", length_mm=920, width_mm=320, quantity=3, is_owned=True)
    plan = cut(shop(sheet(price=10), offcut), part("U1", 900, 300, 9))
    assert [layout.sheet_id for layout in plan.sheet_layouts].count("full") == 1
    owned_only = cut(shop(sheet(price=10), offcut), part("U1", 900, 300, 3))
    assert owned_only.sheets_bought == 0
    assert owned_only.sheets[0].cost == 0
    assert owned_only.sheets[0].is_proved


def test_area_is_reckoned_where_a_price_is_missing_and_the_cost_is_told_as_missing() -> None:
    project = shop(sheet("large", length_mm=2500), sheet("small", length_mm=1250, price=20))
    plan = cut(project, part("U1", 1200, 300, 4))
    (cutting,) = plan.sheets
    assert cutting.counts_area
    assert [layout.sheet_id for layout in cutting.layouts] == ["small"]
    assert (cutting.value, cutting.cost) == (1.5625, Decimal(20))
    assert cut(shop(sheet()), part("U1", 1200, 300)).sheets[0].cost is None


def test_the_cheaper_sheets_are_bought() -> None:
    project = shop(sheet("large", price=50), sheet("small", length_mm=1250, price=20))
    assert [layout.sheet_id for layout in cut(project, part("U1", 1200, 300, 8)).sheet_layouts] == ["small", "small"]


def test_a_usual_sheet_is_assumed_where_there_is_none_and_said() -> None:
    plan = cut(shop(), part("U1", 1200, 300))
    (cutting,) = plan.sheets
    assert cutting.is_assumed
    assert cutting.cost is None
    assert [(layout.sheet_id, layout.length_mm, layout.width_mm) for layout in cutting.layouts] == [("", 2500, 1250)]
    assert "2500 mm × 1250 mm" in plan.remarks[0]
    longer = cut(shop(), part("B1", 2500, 300))  # which the longest board of 2,500 mm asks for
    assert longer.sheet_layouts[0].length_mm == 2520


def test_materials_are_cut_each_from_its_own_sheets_and_numbered_through() -> None:
    thin = Material(id="thin", name="Plywood 9 mm", roles=(BoardRole.BACK,))
    project = shop(sheet(), sheet("nine", material_id="thin"), materials=[PLY, thin])
    back = part("R1", 900, 600, 5, material="thin", role=BoardRole.BACK, thickness_mm=9)
    plan = cut(project, part("U1", 1200, 600, 5), back)
    assert [(cutting.material_id, cutting.thickness_mm) for cutting in plan.sheets] == [("ply", 18), ("thin", 9)]
    assert {layout.sheet_id for layout in plan.sheets[1].layouts} == {"nine"}


def test_parts_of_one_material_and_two_thicknesses_are_a_contradiction_that_is_told() -> None:
    plan = cut(shop(sheet()), part("U1", 1200, 300, 2), part("S1", 900, 300, thickness_mm=16))
    assert plan.sheets[0].thickness_mm == 18
    assert "16 mm and 18 mm thick" in plan.remarks[0]


@pytest.mark.parametrize("stages", [2, 3, None])
def test_the_limit_of_stages_is_kept(stages: int | None) -> None:
    rules = CuttingRules.model_validate({"stages": stages})
    sizes = [(700, 400), (600, 300), (500, 350), (450, 200), (300, 300), (220, 120)]
    cut(shop(sheet(), rules=rules), *(part(f"U{n}", *size, 3) for n, size in enumerate(sizes)))


def test_rests_worth_keeping_are_told_by_the_owners_rule() -> None:
    rules = CuttingRules(kerf_mm=3, trim_mm=0, rest_length_mm=500, rest_width_mm=200)
    project = shop(sheet(length_mm=1203, width_mm=600), rules=rules)
    (layout,) = cut(project, part("U1", 700, 600)).sheet_layouts
    assert [(rest.length_mm, rest.width_mm, rest.is_reusable) for rest in layout.rests] == [(500, 600, True)]
    strict = shop(sheet(length_mm=1202, width_mm=600), rules=rules.model_copy(update={"rest_length_mm": 601}))
    assert not any(rest.is_reusable for rest in cut(strict, part("U1", 700, 600)).sheet_layouts[0].rests)


def test_sheets_cut_alike_have_each_their_own_pieces() -> None:
    """Two parts of one size: sheets with the same places, the same cuts, and other numbers on the pieces."""
    board = sheet(length_mm=1000, width_mm=500, is_trimmed=False)
    one, other = part("U1", 490, 240, 8), part("U2", 490, 240, 8)
    layouts = cut(shop(board), one, other).sheet_layouts
    places = [[(piece.x_mm, piece.y_mm) for piece in layout.pieces] for layout in layouts]
    assert len(layouts) == 4
    assert all(place == places[0] for place in places)
    assert [layout.pieces[0].part_number for layout in layouts] == ["U1", "U1", "U2", "U2"]
    assert {name for layout in layouts[2:] for line in layout.cuts for name in line.gives} & {"U1", "U2"} == {"U2"}


def test_nothing_to_cut_is_an_empty_plan() -> None:
    assert cutting_plan(shop(sheet()), made()) == CuttingPlan()


def test_the_first_plan_is_told_at_once_and_a_stop_is_heard() -> None:
    told: list[CuttingPlan] = []
    project, parts = shop(sheet(price=1)), (part("U1", 700, 430, 9), part("U2", 510, 330, 11))
    stopped = cutting_plan(project, made(*parts), stop=lambda: bool(told), progress=told.append)
    assert not told[0].is_finished
    assert not stopped.is_finished
    check_plan(project, parts, stopped)
    whole = cutting_plan(project, made(*parts), effort=300, progress=told.append)
    assert whole.is_finished
    for plan in told:
        check_plan(project, parts, plan)


def test_the_same_project_and_effort_give_the_same_plan() -> None:
    parts = [part(f"U{n}", 300 + 37 * n, 200 + 23 * n, 3) for n in range(9)]
    first = cutting_plan(shop(sheet(price=1)), made(*parts), effort=200)
    assert first == cutting_plan(shop(sheet(price=1)), made(*parts), effort=200)
