"""What the run costs and weighs: every line to buy, by material and by bay, with and without tax.

Laws: the shares of the materials and of the bays each add up exactly to the lines; a missing price is named and never
reckoned as nothing; where a mass is not known, that is said.
"""

from collections.abc import Sequence
from decimal import Decimal

from baywright.making.frame import SHELF_BAY, frame_of
from baywright.making.purchases import BARS_NAME, HARDWARE_NAME, Bays, Purchase, purchases
from baywright.making.shares import divided, pieces_in, reaches, used_in
from baywright.model.cost import Cost, CostShare
from baywright.model.cutting import CuttingPlan
from baywright.model.making import Manufacture, Part
from baywright.model.money import Pricing, decimals_of, to_coin
from baywright.model.project import Project
from baywright.workings import Workings, derive


def cost(
    project: Project, manufacture: Manufacture, cutting: CuttingPlan | None, workings: Workings | None = None
) -> Cost:
    """The cost and mass of everything in `manufacture`; without a cutting plan the sheets count as missing.

    `workings` are the project's own, if the caller has them already.
    """
    pricing = project.pricing
    bays: Bays = {}
    if project.arrangement.bay_count:
        bays = reaches(frame_of(project, workings or derive(project)))
    bought = purchases(project, manufacture, cutting, bays)
    net, vat, gross = taxed(_known(bought), pricing)
    boards_kg = sum(_mass(part) for part in manufacture.parts)
    hardware_kg = sum(item.mass_kg or 0.0 for item in manufacture.hardware)
    return Cost(
        currency=pricing.currency, lines=tuple(each.line for each in bought),
        by_material=_by_material(bought, manufacture), by_bay=_by_bay(bought, manufacture, bays, pricing.currency),
        net=net, vat=vat, gross=gross, missing=tuple(dict.fromkeys(each.missing for each in bought if each.missing)),
        mass_kg=boards_kg + hardware_kg, not_weighed=_not_weighed(manufacture),
        prices_include_vat=pricing.prices_include_vat,
    )  # fmt: skip


def taxed(amount: Decimal, pricing: Pricing) -> tuple[Decimal, Decimal, Decimal]:
    """Net, tax and gross of a sum of prices as entered, each to the smallest coin; net and tax make the gross."""
    rate = pricing.vat_percent / 100
    if pricing.prices_include_vat:
        gross = to_coin(amount, pricing.currency)
        net = to_coin(amount / (1 + rate), pricing.currency)
    else:
        net = to_coin(amount, pricing.currency)
        gross = net + to_coin(net * rate, pricing.currency)
    return net, gross - net, gross


def _known(bought: Sequence[Purchase]) -> Decimal:
    """What everything that has a price costs together."""
    return sum((each.line.cost for each in bought if each.line.cost is not None), Decimal(0))


def _by_material(bought: Sequence[Purchase], manufacture: Manufacture) -> tuple[CostShare, ...]:
    groups = (BARS_NAME, HARDWARE_NAME)
    masses = {each.material: 0.0 for each in bought if each.material not in groups}
    for part in manufacture.parts:
        masses[part.material] = masses.get(part.material, 0.0) + _mass(part)
    for name in groups:
        if any(each.material == name for each in bought):
            masses[name] = sum(item.mass_kg or 0.0 for item in manufacture.hardware) * (name == HARDWARE_NAME)
    shares = []
    for name, mass_kg in masses.items():
        own = [each for each in bought if each.material == name]
        missing = sum(bool(each.missing) for each in own)
        shares.append(CostShare(name=name, cost=_known(own), missing=missing, mass_kg=mass_kg))
    return tuple(shares)


def _by_bay(bought: Sequence[Purchase], manufacture: Manufacture, bays: Bays, currency: str) -> tuple[CostShare, ...]:
    if not bays:
        return ()
    coin = Decimal(1).scaleb(-decimals_of(currency))
    costs, missing = dict.fromkeys(bays, Decimal(0)), dict.fromkeys(bays, 0)
    for each in bought:
        weights = [each.weights[bay] for bay in bays]
        if each.line.cost is None:
            for bay, weight in zip(bays, weights, strict=True):
                missing[bay] += weight > 0
        else:
            for bay, share in zip(bays, divided(each.line.cost, weights, coin), strict=True):
                costs[bay] += share
    masses = _masses(manufacture, bays)
    return tuple(
        CostShare(name=bay_name(bay), cost=costs[bay], missing=missing[bay], mass_kg=masses[bay]) for bay in bays
    )


def bay_name(bay: int) -> str:
    """What a share of a bay is called."""
    return "Shelf bay" if bay == SHELF_BAY else f"Bay {bay + 1}"


def _masses(manufacture: Manufacture, bays: Bays) -> dict[int, float]:
    """What each bay weighs, as far as it is known, in kg."""
    masses = dict.fromkeys(bays, 0.0)
    for part in manufacture.parts:
        for bay, pieces in pieces_in(part, bays).items():
            masses[bay] += pieces * (part.mass_kg or 0.0)
    for item in manufacture.hardware:
        weights = used_in(item, bays)
        for bay, weight in weights.items():
            masses[bay] += (item.mass_kg or 0.0) * weight / sum(weights.values())
    return masses


def _mass(part: Part) -> float:
    return part.quantity * (part.mass_kg or 0.0)


def _not_weighed(manufacture: Manufacture) -> tuple[str, ...]:
    parts = [f"{part.name} ({part.number})" for part in manufacture.parts if part.mass_kg is None]
    hardware = [item.name for item in manufacture.hardware if item.mass_kg is None]
    return tuple(dict.fromkeys([*parts, *hardware]))
