"""Whether the drawer bottom goes into its groove, and whether the side is thick enough for one, as boards really are.

Laws: the groove is as wide as the bottom is reckoned and its play; a bottom thicker than that does not go in, a much
thinner one rattles. A side that is left too thin beside the groove splits. What the boards measure is their batch's own
range, else what a standard allows.
"""

from baywright.checks.thickness import Thickness, thickness
from baywright.making.material import material_of
from baywright.model.finding import CheckKind, Finding, Given, Mend, Severity
from baywright.model.project import Project
from baywright.model.stock import BoardRole
from baywright.workings import Workings

SUBJECT = "Drawer bottoms in their grooves"
LEAST_WOOD_SHARE = 1 / 3
"""A third of the side is to stay beside a groove: common practice."""
RATTLES_MM = 1.0
"""From so much air on the groove's width a bottom rattles: common practice."""
PRACTICE = "width of the groove, rattling and what must stay of the side: common practice"
HOW = (
    "Measure the bottoms at several places and enter the readings, and cut the groove to a piece of the thickest; "
    "where they differ much, plane the bottom's edges thinner all round."
)


def groove_findings(project: Project, workings: Workings) -> list[Finding]:
    """How bottoms and sides go together, from the least to the most; nothing where no drawer is made."""
    if workings.value("runner_length") <= 0:
        return []
    bottom, side = (thickness(project, role) for role in (BoardRole.DRAWER_BOTTOM, BoardRole.DRAWER_SIDE))
    found = [_width(workings, bottom) if bottom is not None else _unknown(project, BoardRole.DRAWER_BOTTOM)]
    return [*found, *(_wood(workings, side) if side is not None else [])]


def _unknown(project: Project, role: BoardRole) -> Finding:
    name = material_of(project, role).name
    return Finding(
        kind=CheckKind.TOLERANCE, severity=Severity.UNCHECKED, subject=SUBJECT, source=PRACTICE,
        message=f"It is not known how exactly “{name}” keeps to its thickness.", mends=(Mend(text=HOW),),
    )  # fmt: skip


def _width(workings: Workings, bottom: Thickness) -> Finding:
    groove = workings.value("groove_width")
    least, most = groove - bottom.most_mm, groove - bottom.least_mm
    fits = least >= -1e-9 and most <= RATTLES_MM
    if least < -1e-9:
        words = "The thickest would not go in: cut the groove to the boards that you have."
    else:
        words = "All go in." if fits else "The thinnest would rattle."
    return Finding(
        kind=CheckKind.TOLERANCE, severity=Severity.KEPT if fits else Severity.NEAR, subject=SUBJECT,
        message=f"The groove is {groove:.1f} mm wide, the bottoms are {bottom.least_mm:.1f} to {bottom.most_mm:.1f} mm "
        f"thick, which leaves {_signed(least)} to {_signed(most)} mm of air. {words}",
        value=least, limit=0.0, unit="mm", formula="width of the groove − thickness of the bottom",
        given=(
            Given(name="thickness of the bottom", value=_range(bottom)),
            Given(name="width of the groove", value=f"{groove:.1f} mm"),
        ),
        source=f"{bottom.source}; {PRACTICE}", mends=() if fits else (Mend(text=HOW),),
    )  # fmt: skip


def _wood(workings: Workings, side: Thickness) -> list[Finding]:
    """That the thinnest side keeps enough wood beside its groove; said only where it does not."""
    depth = workings.value("groove_depth")
    left, least = side.least_mm - depth, LEAST_WOOD_SHARE * side.reckoned_mm
    if left >= least - 1e-9:
        return []
    deepest = max(0.0, side.least_mm - least)
    return [Finding(
        kind=CheckKind.TOLERANCE, severity=Severity.BROKEN if left <= 0 else Severity.NEAR,
        subject="Drawer sides beside their grooves",
        message=f"The groove is {depth:g} mm deep, the sides are {side.least_mm:.1f} to {side.most_mm:.1f} mm thick: "
        + ("it cuts through the thinnest." if left <= 0 else f"only {left:.1f} mm stay of the thinnest."),
        value=left, limit=least, unit="mm", formula="thickness of the side − depth of the groove",
        given=(Given(name="thickness of the side", value=_range(side)),), source=f"{side.source}; {PRACTICE}",
        mends=(Mend(text=f"Make the groove at most {deepest:.1f} mm deep, or take thicker boards for the sides."),),
    )]  # fmt: skip


def _range(board: Thickness) -> str:
    how = "measured" if board.is_measured else "as allowed"
    return f"{board.least_mm:.2f} to {board.most_mm:.2f} mm {how}, reckoned {board.reckoned_mm:g} mm"


def _signed(value: float) -> str:
    return f"{value:.1f}".replace("-", "−")
