"""A garage in which the best plan needs almost every rule; every name is invented."""

from fractions import Fraction
from functools import cache

from partsplan.domain import (
    Access,
    Coding,
    FaultStatus,
    Garage,
    Likelihood,
    Milestone,
    Month,
    Plan,
    Route,
    Severity,
    Supplier,
    System,
    Tool,
)
from partsplan.planning import plan
from tests.support.building import fault, garage, option, vehicle

# Mean air temperature by month, Nottingham 1920-39 [C], as carried by pydataset (MIT)
NOTTINGHAM = "4.3 4.0 5.7 7.9 11.4 14.5 16.6 15.8 13.6 9.7 5.9 4.2"


def full_garage() -> Garage:
    """May to August with money for all that is worth it.

    The unit is replaced by an exchange part in June, then its sensor; the lamps are
    fitted as a pair; the leak gets a stand-in in May and its hose by June; the film
    waits for July. Other options are there to be wrong.
    """
    return garage(
        start=Month(2027, 5),
        months=4,
        budget=(45000, 30000, 20000, 20000),
        hours=(Fraction(6),),
        reserve=1000,
        money_per_point=Fraction(300),
        mean_temperature=tuple(map(Fraction, NOTTINGHAM.split())),
        vehicles=(
            vehicle(),
            vehicle("v2", name="estate car", keep_months=2, driven_from=None),
        ),
        faults=(
            fault("hose", system=System.COOLING, drivability=4, fix_by=Month(2027, 6)),
            fault(
                "pads",
                system=System.BRAKES,
                severity=Severity.CATASTROPHIC,
                likelihood=Likelihood.PROBABLE,
            ),
            fault("left", pair_with=("right",)),
            fault("right"),
            fault("unit", system=System.ELECTRICS),
            fault("sensor", after=("unit",)),
            fault("film", points=Fraction(20), system=System.BODY),
            fault("seep", status=FaultStatus.WATCH),
            fault("wiper", status=FaultStatus.FIXED),
            fault("tank", vehicle="v2", points=Fraction(0)),
        ),
        options=(
            option(
                "hose-tape", "hose", route=Route.STAND_IN, followup_within=1, price=300
            ),
            option("hose-new", "hose", lead_days=20, price=4000, access=("front",)),
            option("pads-new", "pads", price=5000, supplier="mill", tools=("piston",)),
            option("pads-used", "pads", route=Route.USED, price=2000),
            option(
                "left-new", "left", price=3000, access=("front",), hours=Fraction(1)
            ),
            option(
                "right-new", "right", price=3000, access=("front",), hours=Fraction(1)
            ),
            option("right-used", "right", route=Route.USED, price=1000),
            option("left-used", "left", route=Route.USED, price=9000),
            option(
                "unit-exchange",
                "unit",
                route=Route.EXCHANGE,
                supplier="mill",
                price=9000,
                core_deposit=6000,
                core_return_cost=700,
                lead_days=20,
                coding=Coding.PAID,
                coding_cost=2500,
            ),
            option("unit-self", "unit", coding=Coding.SELF, price=8000),
            option(
                "sensor-new",
                "sensor",
                price=2000,
                tools=("piston",),
                valid_until=Month(2027, 6),
            ),
            option("film-roll", "film", price=2500, min_temp=Fraction(16)),
            option("film-show", "film", price=2400, road_legal=False),
            option("film-late", "film", price=9900, not_before=Month(2027, 8)),
            option("film-early", "film", price=60000, not_after=Month(2027, 5)),
            option("film-slow", "film", price=9900, hours=Fraction(9)),
            option("film-gold", "film", price=900000),
            option("seep-new", "seep", price=100),
            option("wiper-new", "wiper", price=100),
            option("tank-new", "tank", price=100, lead_days=30),
        ),
        suppliers=(
            Supplier(
                id="mill",
                name="Mill Lane Spares",
                currency="EUR",
                shipping=690,
                free_over=13000,
            ),
        ),
        access=(Access(id="front", hours=Fraction(2)),),
        tools=(
            Tool(id="piston", name="Piston tool", price=1900),
            Tool(id="jack", name="Jack", price=3000),
            Tool(id="stands", name="Axle stands", price=3000, owned=True),
        ),
        milestones=(
            Milestone(id="trip", month=Month(2027, 7), faults=("unit", "film")),
        ),
    )


@cache
def full_plan() -> Plan:
    """The best plan for it, proven."""
    found = plan(full_garage(), gap=0.0)
    assert isinstance(found, Plan)
    return found
