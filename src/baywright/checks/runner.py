"""Whether each drawer's runner pair carries what is in it.

Laws: what is carried is the boxes with their contents, the drawer itself and an allowance for what is put in later; the
rated load is the maker's, for a pair, evenly loaded, at the maker's length and width: the data sheet decides.
"""

from baywright.checks.judging import judged, no_density, no_runner, not_weighed
from baywright.making.drawers import drawer_kinds, drawers_to_make, empty_drawer_kg
from baywright.model.finding import CheckKind, Finding, Given, Mend, Severity
from baywright.model.project import Project
from baywright.model.repair import FieldChange
from baywright.workings import Workings

SOURCE = (
    "Rated load of the runners' maker (EN 15338 and BHMA A156.9 say how it is tested); the allowance is common practice"
)


def runner_findings(project: Project, workings: Workings) -> list[Finding]:
    """One finding for each drawer, the worst first, and one for what was not weighed."""
    drawers = drawers_to_make(project)
    kinds = drawer_kinds(project, workings, drawers)
    empty_kg = {kind: empty_drawer_kg(workings, kind) for kind in set(kinds.values())}
    boxes = project.boxes_by_id
    rated = max(project.construction.runners.load_classes_kg)
    allowance = project.safety.load_allowance_kg
    found, unweighed = [], []
    hung = {place: team for place, team in drawers.items() if workings.at_kind("runner_length", kinds[place]) > 0}
    for place, placements in hung.items():
        here = [boxes[p.box_id] for p in placements]
        bare, drawer_kg = [box for box in here if box.loaded_mass_kg is None], empty_kg[kinds[place]]
        unweighed += [box.label for box in bare]
        if bare or drawer_kg is None:
            continue
        loaded = sum(box.loaded_mass_kg or 0.0 for box in here)
        carried = loaded + drawer_kg + allowance * len(here)
        heaviest = max(here, key=lambda box: box.loaded_mass_kg or 0.0)
        elsewhere = FieldChange(path=f"boxes[{heaviest.id}].status", value="elsewhere")
        mends = (
            Mend(text=f"Keep “{heaviest.label}” elsewhere, low, on something that carries it.", changes=(elsewhere,)),
            Mend(text="Or divide its contents, or take runners of a higher class and enter the maker's rating."),
        )  # fmt: skip
        labels = " and ".join(f"“{box.label}”" for box in here)
        found.append(Finding(
            kind=CheckKind.RUNNER_LOAD, severity=judged(carried, rated),
            subject=f"Bay {place[0] + 1}, row {place[1] + 1}: {labels}",
            message=f"The runners carry {carried:.1f} kg; the strongest class is rated for {rated:g} kg a pair.",
            value=carried, limit=rated, unit="kg", formula="boxes + drawer + allowance",
            given=(
                Given(name="boxes", value=f"{loaded:.1f} kg"),
                Given(name="drawer", value=f"{drawer_kg:.1f} kg"),
                Given(name="allowance", value=f"{allowance:g} kg a box"),
                Given(name="travel", value=f"{workings.at_kind('runner_length', kinds[place]):g} mm, full extension"),
            ),
            source=SOURCE, mends=mends if carried > rated else (), box_ids=tuple(box.id for box in here), drawer=place,
        ))  # fmt: skip
    found = _gathered(found)
    if missing := len(drawers) - len(hung):
        subject = "1 drawer" if missing == 1 else f"{missing} drawers"
        found.append(no_runner(CheckKind.RUNNER_LOAD, subject, SOURCE))
    if hung and None in empty_kg.values():
        found.append(no_density(CheckKind.RUNNER_LOAD, "Drawers", SOURCE))
    if unweighed:
        found.append(not_weighed(CheckKind.RUNNER_LOAD, "Drawers", unweighed, SOURCE))
    return found


def _gathered(found: list[Finding]) -> list[Finding]:
    """The worst first; of those well within their limit only the worst, and how many others there are."""
    found = sorted(found, key=lambda finding: -(finding.value or 0.0))
    kept = [finding for finding in found if finding.severity is Severity.KEPT]
    others = [finding for finding in found if finding.severity is not Severity.KEPT]
    if len(kept) > 1:
        number = len(kept) - 1
        drawers = f"{number} other drawers" if number > 1 else "1 other drawer"
        message = f"{'They carry' if number > 1 else 'It carries'} less than that."
        kept[1:] = [kept[0].replace(subject=drawers, message=message, value=None, box_ids=(), drawer=None, given=())]
    return [*others, *kept]
