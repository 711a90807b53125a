"""A sawyer for tests: takes a cutting plan to the saw of `tests.oracle.saw` and tells what is not as it should be.

Everything is asked anew of project and parts: which material each part is of, its size to cut, whether it may be
turned, how many sheets there are. Lengths are hundredths of a mm. Whatever is wrong raises `NotSawn`.
"""

from collections import Counter
from collections.abc import Iterable, Sequence
from decimal import Decimal

from baywright.model.cutting import BarCutting, CuttingPlan, SheetCutting, SheetLayout
from baywright.model.machining import Side
from baywright.model.making import Grain, Part
from baywright.model.project import Project
from baywright.model.stock import Bar, BarUse, BoardRole
from baywright.workings.material import material_of
from tests.oracle.saw import Lying, NotSawn, Plank, Stroke, Wanted, check_parts, cut_apart, replayed


def u(length_mm: float) -> int:
    """Hundredths of a mm."""
    return round(length_mm * 100)


def check_plan(project: Project, parts: Sequence[Part], plan: CuttingPlan) -> None:
    """Every piece of every part is cut once or told to be left over, and every sheet and bar can be sawn as told."""
    from_bars = project.stock.rules.rails_from_bars
    on_sheets = [part for part in parts if not (from_bars and part.role is BoardRole.BRACE)]
    told = [cutting.material_id for cutting in plan.sheets]
    if sorted(told) != sorted({part.material_id for part in on_sheets}):
        raise NotSawn(f"materials are told {told}")
    numbers = [layout.number for layout in plan.sheet_layouts]
    if numbers != [f"C{number}" for number in range(1, len(numbers) + 1)]:
        raise NotSawn(f"sheets are numbered {numbers}")
    bars = [layout.number for each in plan.bars for layout in each.layouts]
    if bars != [f"L{number}" for number in range(1, len(bars) + 1)]:
        raise NotSawn(f"bars are numbered {bars}")
    if both := {part.number for part in parts} & {*numbers, *bars}:
        raise NotSawn(f"parts and layouts share the numbers {both}")
    for cutting in plan.sheets:
        check_sheets(project, [part for part in on_sheets if part.material_id == cutting.material_id], cutting)
    check_stock(project, plan)
    check_strips(project, parts, plan.bars)


def check_sheets(project: Project, parts: Sequence[Part], cutting: SheetCutting) -> None:
    """All sheets of one material."""
    left = Counter[str]()
    for each in cutting.unplaced:
        left[each.part_number] += each.pieces
        _expect(each.pieces > 0 and bool(each.reason), f"{each.part_number} is left over without a reason")
    pieces = Counter((piece.part_number, piece.piece) for layout in cutting.layouts for piece in layout.pieces)
    wanted = {part.number: part for part in parts}
    counted = Counter(number for number, _ in pieces)
    for number, part in wanted.items():
        cut = [piece for name, piece in pieces.elements() if name == number]
        _expect(sorted(cut) == list(range(1, len(cut) + 1)), f"pieces of {number} are numbered {sorted(cut)}")
        _expect(len(cut) + left[number] == part.quantity, f"{number}: {len(cut)} of {part.quantity} cut")
    _expect({*counted, *left} <= wanted.keys(), "parts are cut that nobody wants")
    for layout in cutting.layouts:
        _check_layout(project, wanted, layout)
    _check_cost(project, cutting)


def _check_layout(project: Project, wanted: dict[str, Part], layout: SheetLayout) -> None:
    rules = project.stock.rules
    plank = Plank(u(layout.length_mm), u(layout.width_mm), u(rules.kerf_mm), u(layout.trim_mm))
    lying = [
        Lying((p.part_number, p.piece), u(p.x_mm), u(p.y_mm), u(p.length_mm), u(p.width_mm)) for p in layout.pieces
    ]
    _expect(bool(lying), f"nothing is cut from {layout.number}")
    sawn = cut_apart(plank, lying)
    check_parts([_wanted(project, wanted[p.part_number], p.piece) for p in layout.pieces], sawn.parts)
    for piece in layout.pieces:
        part = wanted[piece.part_number]
        turned = part.cut_width_mm, part.cut_length_mm
        lies = tuple(u(turned[way] if piece.is_turned else turned[1 - way]) for way in (0, 1))
        as_told = lies == (u(piece.length_mm), u(piece.width_mm))
        if part.grain is not Grain.ANY and material_of(project, part.role or BoardRole.UPRIGHT).has_grain:
            as_told = as_told and piece.is_turned is (part.grain is Grain.WIDTH)
        _expect(as_told, f"{piece.part_number} is not told to be turned as it lies")
    stages = rules.stages
    _expect(stages is None or layout.stages <= stages, f"{layout.number} takes {layout.stages} stages")
    _expect(sawn.stages_before_trimming <= layout.stages, f"{layout.number} is told too few stages")
    _check_cuts(layout, plank, lying)
    _check_rests(project, layout, lying)


def _wanted(project: Project, part: Part, piece: int) -> Wanted:
    length, width = u(part.cut_length_mm), u(part.cut_width_mm)
    if part.role is None:
        raise NotSawn(f"{part.number} has no role")
    material = material_of(project, part.role)
    if part.grain is Grain.WIDTH and material.has_grain:
        length, width = width, length
    return Wanted((part.number, piece), length, width, part.grain is Grain.ANY or not material.has_grain)


def _check_cuts(layout: SheetLayout, plank: Plank, lying: Sequence[Lying]) -> None:
    """The list of cuts, followed blindly, gives the pieces where they lie; every line tells the panel in hand."""
    strokes, occurrences = [], Counter[str]()
    for cut in layout.cuts:
        names: list[object] = []
        for name in cut.gives:
            occurrences[name] += 1
            is_panel = name == "sheet" or name[0].isdigit()
            names.append(None if name == "waste" else name if is_panel else (name, occurrences[name]))
        strokes.append(Stroke(cut.panel, cut.is_across, u(cut.at_mm), names[0], names[1]))
    trims = 4 if plank.trim else 0
    bare, whole = strokes[trims:], Plank(plank.length, plank.width, plank.kerf)
    _expect([cut.number for cut in layout.cuts] == list(range(1, len(strokes) + 1)), "cuts are not numbered in order")
    if plank.trim >= plank.kerf:
        in_hand = replayed(whole, "sheet", strokes)
        for number, cut in enumerate(layout.cuts):
            panel = replayed(whole, "sheet", strokes[:number])[cut.panel]
            told = u(cut.x_mm), u(cut.y_mm), u(cut.length_mm), u(cut.width_mm)
            _expect(told == (panel.x, panel.y, panel.length, panel.width), f"cut {cut.number} tells another panel")
            _check_measure(cut.is_across, u(cut.at_mm), u(cut.measure_mm), panel, plank)
    else:
        in_hand = replayed(plank, "sheet", bare)
    if len(strokes) == 0 or (trims and not bare and len(lying) == 1 and "sheet" in in_hand):
        _expect(len(lying) == 1, f"{layout.number} has no cuts")
        return
    got = sorted((str(name[0]), at.x, at.y, at.length, at.width) for name, at in in_hand.items()
                 if isinstance(name, tuple) and name[0] != "rest")  # fmt: skip
    meant = sorted((str(part.name[0]), part.x, part.y, part.length, part.width) for part in lying
                   if isinstance(part.name, tuple))  # fmt: skip
    _expect(got == meant, f"{layout.number}: the cuts give {got}, not {meant}")
    kept = sorted((at.x, at.y, at.length, at.width) for name, at in in_hand.items()
                  if isinstance(name, tuple) and name[0] == "rest")  # fmt: skip
    rests = sorted((u(r.x_mm), u(r.y_mm), u(r.length_mm), u(r.width_mm)) for r in layout.rests if r.is_reusable)
    _expect(kept == rests, f"{layout.number}: the cuts leave the rests {kept}, told are {rests}")


def _check_measure(across: bool, at: int, measure: int, panel: Lying, plank: Plank) -> None:
    start, size = (panel.x, panel.length) if across else (panel.y, panel.width)
    before, behind = at - start, start + size - at - plank.kerf
    _expect(measure in (before, behind), f"the fence is set to {measure}, but the cut gives {before} and {behind}")


def _check_rests(project: Project, layout: SheetLayout, lying: Sequence[Lying]) -> None:
    rules = project.stock.rules
    least = sorted((rules.rest_length_mm, rules.rest_width_mm))
    for rest in layout.rests:
        sides = sorted((rest.length_mm, rest.width_mm))
        fits = sides[0] >= least[0] and sides[1] >= least[1]
        _expect(rest.is_reusable is fits, f"a rest of {layout.number} is not judged by the owner's rule")
        x, y, length, width = u(rest.x_mm), u(rest.y_mm), u(rest.length_mm), u(rest.width_mm)
        _expect(length > 0 and width > 0, f"a rest of {layout.number} has no size")
        trim = u(layout.trim_mm)
        inside = x >= trim and y >= trim
        inside = inside and x + length <= u(layout.length_mm) - trim and y + width <= u(layout.width_mm) - trim
        _expect(inside, f"a rest of {layout.number} lies over its edge")
        for part in lying:
            apart = (
                x + length <= part.x or part.x + part.length <= x or y + width <= part.y or part.y + part.width <= y
            )  # fmt: skip
            _expect(apart, f"a rest of {layout.number} lies over {part.name}")


def check_stock(project: Project, plan: CuttingPlan) -> None:
    """No more is cut than there is, of the sizes that there are."""
    sheets = {sheet.id: sheet for sheet in project.stock.sheets}
    used = Counter(layout.sheet_id for layout in plan.sheet_layouts)
    for layout in plan.sheet_layouts:
        if not layout.sheet_id:
            continue
        sheet = sheets[layout.sheet_id]
        told = layout.length_mm, layout.width_mm, layout.material_id, layout.is_owned
        _expect(told == (sheet.length_mm, sheet.width_mm, sheet.material_id, sheet.is_owned), "another sheet is cut")
        _expect(layout.trim_mm == (project.stock.rules.trim_mm if sheet.is_trimmed else 0), "trimming is not as ruled")
        most = 1 if sheet.is_owned and sheet.quantity is None else sheet.quantity
        _expect(most is None or used[sheet.id] <= most, f"{used[sheet.id]} of {most} sheets {sheet.id} are cut")


def _check_cost(project: Project, cutting: SheetCutting) -> None:
    bought = [layout for layout in cutting.layouts if not layout.is_owned]
    prices = {sheet.id: sheet.price for sheet in project.stock.sheets}
    paid = [prices.get(layout.sheet_id) for layout in bought]
    _expect(cutting.bought == len(bought), "sheets to buy are miscounted")
    known = [price for price in paid if price is not None]
    _expect(cutting.cost == (sum(known, Decimal(0)) if len(known) == len(paid) else None), "the cost is not the sum")
    _expect(cutting.bound <= cutting.value + 1e-9, "the bound is above the value")
    value = (
        sum(layout.length_mm * layout.width_mm for layout in bought) / 1e6 if cutting.counts_area else sum(known)
    )  # fmt: skip
    _expect(abs(float(value) - cutting.value) < 1e-6, f"the value is told {cutting.value} and not {value}")


def check_strips(project: Project, parts: Sequence[Part], cuttings: Iterable[BarCutting]) -> None:
    """Every banded edge has its strip and every rail its length; no bar is cut longer than it is."""
    cuttings = list(cuttings)
    wanted = Counter[tuple[str, int]]()
    over = project.construction.edging.overlength_mm
    for part in parts:
        for side in part.banded:
            edge = part.width_mm if side in (Side.START, Side.END) else part.length_mm
            wanted[part.number, u(edge + over)] += part.quantity
        if project.stock.rules.rails_from_bars and part.role is BoardRole.BRACE:
            wanted[part.number, u(part.cut_length_mm)] += part.quantity
    cut = Counter(
        (piece.part_number, u(piece.length_mm)) for each in cuttings for bar in each.layouts for piece in bar.pieces
    )
    _expect(cut <= wanted, "strips are cut that nobody wants")
    left = Counter[str]()
    for each in cuttings:
        for unplaced in each.unplaced:
            left[unplaced.part_number] += unplaced.pieces
    missing = Counter[str]()
    for (number, _), count in (wanted - cut).items():
        missing[number] += count
    _expect(missing == left, f"strips are missing: {missing}, told are {left}")
    for each in cuttings:
        _check_bars(project, each)
    bars = {bar.id: bar for bar in project.stock.bars}
    used = Counter(bar.bar_id for each in cuttings for bar in each.layouts if bar.bar_id)
    for identifier, count in used.items():
        bar = bars[identifier]
        most = 1 if bar.is_owned and bar.quantity is None else bar.quantity
        _expect(most is None or count <= most, f"{count} of {most} bars {identifier} are cut")


def _is_as_wide(bar: Bar, cutting: BarCutting) -> bool:
    """Whether a bar is wide enough for a section, read off its id: 2 mm over the board, or as wide as the rail."""
    kind, _, measures = cutting.id.partition("-")
    asked, is_rail = float(measures.partition("x")[0]), kind == "rail"
    _expect(cutting.width_mm == (asked if is_rail else asked + 2), f"{cutting.name} is told another width")
    if bar.width_mm is None:
        return True
    return abs(bar.width_mm - asked) < 0.06 if is_rail else bar.width_mm > asked + 1.94


def _check_bars(project: Project, cutting: BarCutting) -> None:
    kerf = u(project.stock.rules.bar_kerf_mm)
    use = BarUse.RAIL if cutting.id.startswith("rail") else BarUse.EDGING
    bars = {bar.id: bar for bar in project.stock.bars if bar.use is use and _is_as_wide(bar, cutting)}
    _expect(cutting.is_assumed is not bool(bars), "bars are assumed though there are some, or the other way round")
    for layout in cutting.layouts:
        _expect(not layout.bar_id or bars[layout.bar_id].length_mm == layout.length_mm, "another bar is cut")
        _expect(not layout.bar_id or bars[layout.bar_id].width_mm == layout.width_mm, "its width is told wrong")
        at = 0
        for piece in layout.pieces:
            _expect(u(piece.from_mm) >= at, f"strips of {layout.number} overlap, or no room is left for the blade")
            at = u(piece.from_mm) + u(piece.length_mm) + kerf
        _expect(bool(layout.pieces) and at - kerf <= u(layout.length_mm), f"{layout.number} is cut longer than it is")
        _expect(u(layout.rest_mm) == max(0, u(layout.length_mm) - at), f"the rest of {layout.number} is not told right")


def _expect(holds: bool, message: str) -> None:
    if not holds:
        raise NotSawn(message)
