"""What offers gain in the model; reliefs of one fault never add up."""

from collections import defaultdict

from partsplan.planning.benefits import Benefits
from partsplan.planning.draft import Draft

_Touch = tuple[int, int, tuple[int, ...]]
"""A place in the offers, the month it is fitted, and its benefit by month."""


def gain(draft: Draft) -> None:
    """Benefits less charges, each month and fault served by one offer at most."""
    benefits = Benefits(draft.garage)
    direct: dict[int, int] = defaultdict(int)
    touching: dict[str, dict[int, list[_Touch]]] = defaultdict(dict)
    for number, bundle in enumerate(draft.bundles):
        for place in bundle:
            offer = draft.offers[place]
            direct[place] -= offer.charge
            for fault in offer.faults:
                touch = place, offer.fitted, benefits.of(offer, fault)
                touching[fault].setdefault(number, []).append(touch)
    for fault, bundles in touching.items():
        if len(bundles) == 1:
            for touches in bundles.values():
                for place, _, months in touches:
                    direct[place] += sum(months)
        else:
            _serve(draft, fault, bundles, direct)
    draft.worth += [(draft.take[place], float(sum_)) for place, sum_ in direct.items()]


def _serve(
    draft: Draft,
    fault: str,
    bundles: dict[int, list[_Touch]],
    direct: dict[int, int],
) -> None:
    """Where offers of several bundles can be in force at once, the best one counts."""
    active: dict[int, dict[int, list[tuple[int, int]]]] = defaultdict(dict)
    for number, touches in bundles.items():
        for place, fitted, months in touches:
            for month, benefit in enumerate(months, start=fitted):
                active[month].setdefault(number, []).append((place, benefit))
    for month, by_bundle in sorted(active.items()):
        offers = [one for touches in by_bundle.values() for one in touches]
        if len(by_bundle) == 1:
            for place, benefit in offers:
                direct[place] += benefit
            continue
        levels: dict[int, list[int]] = defaultdict(list)
        for place, benefit in offers:
            if benefit:
                levels[benefit].append(place)
        served = []
        for benefit, places in sorted(levels.items()):
            column = draft.program.share(f"{fault} served in {month} at {benefit}")
            draft.worth.append((column, float(benefit)))
            served.append(column)
            terms = [(draft.take[place], -1.0) for place in places]
            name = f"who serves {fault} in {month} at {benefit}"
            draft.program.row(name, [(column, 1.0), *terms], high=0.0)
        once = [(column, 1.0) for column in served]
        draft.program.row(f"{fault} served once in {month}", once, high=1.0)
