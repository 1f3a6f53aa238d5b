"""Options that another one of the same fault beats or equals in every way."""

from partsplan.domain import Dominated, Garage, Offer, Option
from partsplan.planning import reach


def dominated(
    garage: Garage, option: Option, offers: dict[str, list[Offer]]
) -> Dominated | None:
    """That another option is at least as good in every way, and dearer in none.

    ``offers`` are those of each option. Only lasting options that cure one fault alone
    are compared, of which a plan holds at most one for each fault, and only if they
    are fitted in the same months; where a pair asks for one route, of the same route.
    """
    mine = {offer.ordered: offer for offer in offers.get(option.id, [])}
    if not mine or option.alone is None or not option.lasting:
        return None
    for rival in garage.options_for[option.alone]:
        if rival.id == option.id or not _as_good(garage, rival, option):
            continue
        theirs = {offer.ordered: offer for offer in offers.get(rival.id, [])}
        if (
            mine.keys() <= theirs.keys()
            and all(_no_worse(garage, theirs[one], mine[one]) for one in mine)
            and any(theirs[one].charge < mine[one].charge for one in mine)
        ):
            return Dominated(option=option.id, by=rival.id)
    return None


def _as_good(garage: Garage, rival: Option, option: Option) -> bool:
    """As much relief, no more hours, tools or access, from no dearer a sender."""
    fault = option.fixes[0].fault
    paired = bool(garage.fault[fault].pair_with) or any(
        fault in other.pair_with for other in garage.faults
    )
    return (
        rival.alone == fault
        and rival.lasting
        and rival.relief(fault) >= option.relief(fault)
        and (not paired or rival.route is option.route)
        and rival.hours <= option.hours
        and set(rival.access) <= set(option.access)
        and set(rival.tools) <= set(option.tools)
        and rival.supplier in (None, option.supplier)
    )


def _no_worse(garage: Garage, theirs: Offer, mine: Offer) -> bool:
    paid = zip(
        reach.money_needed(garage, theirs),
        reach.money_needed(garage, mine),
        strict=True,
    )
    return (
        theirs.fitted == mine.fitted
        and theirs.until >= mine.until
        and theirs.charge <= mine.charge
        and all(one <= other for one, other in paid)
        and not _loses_free_shipping(garage, theirs, mine)
    )


def _loses_free_shipping(garage: Garage, theirs: Offer, mine: Offer) -> bool:
    """Whether cheaper goods might leave an order short of being sent for free."""
    supplier = garage.supplier.get(mine.option.supplier or "")
    if supplier is None or supplier.free_over is None:
        return False
    same = theirs.option.supplier == mine.option.supplier
    return (theirs.price.goods if same else 0) < mine.price.goods
