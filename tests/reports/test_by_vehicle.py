from partsplan.domain import Needs
from partsplan.planning import plan
from partsplan.reports.by_vehicle import SHARED, TOTAL, outlays
from tests.support.small_garages import small_garage


def test_every_month_adds_up_to_what_the_ledger_pays() -> None:
    checked = 0
    for seed in range(40):
        garage = small_garage(seed)
        found = plan(garage)
        if isinstance(found, Needs) or not found.jobs:
            continue
        table = outlays(garage, found)
        paid = list(table.loc[TOTAL])[:-1]
        assert paid == [line.out for line in found.ledger]
        shared = [order.shipping for order in found.orders]
        shared += [buy.price for buy in found.tools]
        assert int(table[TOTAL].get(SHARED, 0)) == sum(shared)
        checked += 1
    assert checked > 20
