"""From the plan to the saw: boards measured, parts cut and checked by hand, rests kept, everything on paper."""

from decimal import Decimal
from pathlib import Path

import openpyxl

from baywright.app.commands import SetField
from baywright.app.edits.materials import UseBatch
from baywright.app.edits.rests import KeepRests
from baywright.app.files import open_project
from baywright.app.papers import Paper, write_paper
from baywright.app.session import Session
from baywright.model.making import Part
from baywright.model.stock import BoardRole
from tests.oracle.sawyer import check_plan

DEMO = Path(__file__).parents[2] / "resources" / "demo.baywright"


def parts_of(session: Session) -> tuple[Part, ...]:
    assert session.manufacture is not None
    return session.manufacture.parts


def part(session: Session, number: str) -> Part:
    return next(each for each in parts_of(session) if each.number == number)


def measure_the_boards(session: Session) -> None:
    """The drawer boards turn out thinner than they are sold: whatever depends on it follows."""
    before = part(session, "D2")
    session.do(UseBatch("birch-15", "delivery-1"))
    measured = session.project.boards.drawer_side_mm
    assert 14 < measured < 15
    assert part(session, "D1").thickness_mm == measured
    assert part(session, "D2").length_mm == before.length_mm, "the rail still spans the box and its play"
    clear = session.workings.value("bay_clear_width")
    drawer = part(session, "D2").length_mm + 2 * measured
    assert abs(clear - drawer - 2 * session.workings.value("runner_thickness")) < 1e-6


def cut_everything(session: Session) -> None:
    session.cutting.request()
    plan = session.cutting.plan
    assert plan is not None
    assert plan.is_finished
    assert plan.unplaced == ()
    check_plan(session.project, list(parts_of(session)), plan)
    cost = session.cutting.cost
    assert cost is not None
    assert sum((share.cost for share in cost.by_bay), Decimal(0)) == cost.gross == cost.net
    priced = sum((line.cost for line in cost.lines if line.cost is not None), Decimal(0))
    assert priced == cost.gross


def keep_the_rests(session: Session) -> None:
    before, plan = session.project, session.cutting.plan
    assert plan is not None
    session.do(KeepRests(plan))
    owned = {sheet.id for sheet in before.stock.sheets if sheet.is_owned}
    now = [sheet for sheet in session.project.stock.sheets if sheet.is_owned]
    kept = [rest for layout in plan.sheet_layouts for rest in layout.rests if rest.is_reusable]
    fresh = [sheet for sheet in now if sheet.id not in owned]
    assert sum(sheet.quantity or 0 for sheet in fresh) == len(kept)
    session.undo()
    assert session.project == before


def put_it_on_paper(session: Session, folder: Path) -> None:
    plan = session.cutting.plan
    assert plan is not None
    for paper in Paper:
        path = folder / f"{paper.name}.pdf"
        write_paper(path, paper, session.project, plan)
        assert path.read_bytes().startswith(b"%PDF")
    session.export_workbook(folder / "order.xlsx")
    book = openpyxl.load_workbook(folder / "order.xlsx", data_only=True)
    parts = {row[0]: row for row in book["Parts"].iter_rows(min_row=5, values_only=True) if row[0]}
    for each in parts_of(session):
        assert parts[each.number][2] == each.quantity
    cutting = [cell for row in book["Cutting"].iter_rows(values_only=True) for cell in row if cell is not None]
    for layout in plan.sheet_layouts:
        assert f"Cuts of {layout.number}" in cutting
    assert "Cost" in book.sheetnames


def test_from_the_plan_to_the_saw(tmp_path: Path) -> None:
    session = Session(open_project(DEMO), synchronous=True)
    measure_the_boards(session)
    session.request_plan()
    assert session.report.conflicts == ()
    cut_everything(session)
    keep_the_rests(session)
    put_it_on_paper(session, tmp_path)
    session.save_as(tmp_path / "shop.baywright")
    assert open_project(tmp_path / "shop.baywright") == session.project


def test_fronts_and_end_panels_come_with_everything_they_need(tmp_path: Path) -> None:
    """A later wish: overlay fronts and panels at both ends. Nothing has to be worked out by hand."""
    session = Session(open_project(DEMO), synchronous=True)
    session.do(SetField("construction.drawers.fronts", "overlay"))
    session.do(SetField("construction.end_panels.left", True))
    session.do(SetField("construction.end_panels.right", True))
    session.request_plan()
    roles = {each.role for each in parts_of(session)}
    assert {BoardRole.FRONT, BoardRole.END_PANEL} <= roles
    fronts = sum(each.quantity for each in parts_of(session) if each.role is BoardRole.FRONT)
    assert fronts == len(session.project.arrangement.drawers)
    cut_everything(session)
