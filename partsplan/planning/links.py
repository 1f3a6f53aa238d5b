"""What jobs have to do with each other."""

from collections import defaultdict

from partsplan.domain import Fault, FaultStatus, Option, Route
from partsplan.domain.numbers import CURED
from partsplan.planning.draft import Draft


def exclude(draft: Draft) -> None:
    """At most one offer of each bundle."""
    for bundle in draft.bundles:
        if len(bundle) > 1:
            name = f"one of {draft.offers[bundle[0]].option.id} and the like"
            draft.program.row(name, [(draft.take[p], 1.0) for p in bundle], high=1.0)


def follow(draft: Draft) -> None:
    """Faults that come after others wait until those are cured.

    An option waits for what any of its faults waits for, unless it cures that itself.
    """
    cures = _cures_by_fault(draft)
    for bundle in draft.bundles:
        waiting: dict[str, list[int]] = defaultdict(list)
        for place in bundle:
            for before in _waits_for(draft, draft.offers[place].option):
                waiting[before].append(place)
        for before, places in waiting.items():
            for month in sorted({draft.offers[place].fitted for place in places}):
                draft.at_most(
                    f"{before} before {draft.offers[places[0]].option.id} by {month}",
                    (p for p in places if draft.offers[p].fitted <= month),
                    (
                        draft.take[p]
                        for p in cures[before]
                        if draft.offers[p].fitted <= month
                    ),
                )


def pair(draft: Draft) -> None:
    """Both faults of a pair get as many lasting jobs each month, route by route."""
    fitted: dict[tuple[str, Route, int], list[int]] = defaultdict(list)
    for place, offer in enumerate(draft.offers):
        if offer.option.lasting:
            for cure in offer.option.fixes:
                key = cure.fault, offer.option.route, offer.fitted
                fitted[key].append(place)
    for one, other in pairs(draft.garage.faults):
        routes = [_lasting_routes(draft, fault) for fault in (one, other)]
        groups = [list(Route), *([route] for route in sorted(routes[0] & routes[1]))]
        for group in groups:
            for month in range(draft.garage.months):
                terms = [
                    (draft.take[place], sign)
                    for fault, sign in ((one, 1.0), (other, -1.0))
                    for route in group
                    for place in fitted[fault, route, month]
                ]
                if terms:
                    name = f"{one} and {other} alike in {month} by {'/'.join(group)}"
                    draft.program.row(name, terms, low=0.0, high=0.0)


def follow_up(draft: Draft) -> None:
    """A stand-in that runs out within the horizon is replaced by then."""
    lasting: dict[str, list[int]] = defaultdict(list)
    for place, offer in enumerate(draft.offers):
        if offer.option.lasting:
            for cure in offer.option.fixes:
                lasting[cure.fault].append(place)
    for place, offer in enumerate(draft.offers):
        within = offer.option.followup_within
        if offer.option.lasting or within is None:
            continue
        last = offer.fitted + within
        if last >= draft.garage.months:
            continue
        for cure in offer.option.fixes:
            draft.at_most(
                f"{cure.fault} after stand-in {offer.option.id} by {last}",
                (place,),
                (
                    draft.take[p]
                    for p in lasting[cure.fault]
                    if offer.fitted < draft.offers[p].fitted <= last
                ),
            )


def pairs(faults: tuple[Fault, ...]) -> list[tuple[str, str]]:
    """Every pair once, both faults open, whichever side names it."""
    open_ids = {fault.id for fault in faults if fault.status is FaultStatus.OPEN}
    named = {
        (min(fault.id, other), max(fault.id, other))
        for fault in faults
        for other in fault.pair_with
    }
    return sorted(pair for pair in named if open_ids.issuperset(pair))


def _cures_by_fault(draft: Draft) -> dict[str, list[int]]:
    cures: dict[str, list[int]] = defaultdict(list)
    for place, offer in enumerate(draft.offers):
        for cure in offer.option.fixes:
            if cure.cures:
                cures[cure.fault].append(place)
    return cures


def _waits_for(draft: Draft, option: Option) -> set[str]:
    """Faults to be cured first, less those that are, were, or the option cures."""
    faults = draft.garage.fault
    named = {before for cure in option.fixes for before in faults[cure.fault].after}
    itself = {cure.fault for cure in option.fixes if cure.cures}
    return {
        before
        for before in named - itself
        if faults[before].status is not FaultStatus.FIXED
        and not any(one.relief >= CURED for one in faults[before].fitted)
    }


def _lasting_routes(draft: Draft, fault: str) -> set[Route]:
    return {one.route for one in draft.garage.options_for[fault] if one.lasting}
