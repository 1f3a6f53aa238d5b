"""Plans by hand for tiny garages: only what comparing and telling them needs."""

from collections.abc import Mapping

from partsplan.domain import Choices, Garage, Job, Plan, PlanStatus, Stages
from partsplan.pricing import offers


def as_planned(
    garage: Garage, orders: Mapping[str, int], *, worth: int, bound: int | None = None
) -> Plan:
    """A plan that orders so, said to be worth so much; proven without a bound."""
    stages = Stages(
        missed_deadlines=0,
        unsafe_vehicle_months=0,
        undrivable_vehicle_months=0,
        net_worth=worth,
    )
    most = worth if bound is None else bound
    return Plan(
        status=PlanStatus.PROVEN if most == worth else PlanStatus.FEASIBLE,
        start=garage.start,
        choices=Choices(orders=dict(orders), tools={}),
        stages=stages,
        stage_bounds=stages,
        gap=(most - worth) / max(1, abs(worth)),
        bound=most,
        jobs=tuple(
            Job(
                option=offer.option.id,
                faults=offer.faults,
                route=offer.option.route,
                supplier=offer.option.supplier,
                ordered=offer.ordered,
                fitted=offer.fitted,
                landed=offer.price.landed,
                deposit=offer.price.deposit,
                charge=offer.charge,
                hours=offer.option.hours,
            )
            for offer in offers(garage)
            if orders.get(offer.option.id) == offer.ordered
        ),
        tools=(),
        orders=(),
        ledger=(),
        seconds=0.1,
        solver="HiGHS",
    )
