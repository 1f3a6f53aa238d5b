"""A small garage and a plan for it, both made by hand; every name is invented."""

from dataclasses import replace
from fractions import Fraction

from partsplan.domain import (
    Assumed,
    Choices,
    Coding,
    CrowdedOut,
    Cure,
    Currency,
    Fault,
    FaultStatus,
    Garage,
    Inspection,
    Job,
    LedgerLine,
    Likelihood,
    Milestone,
    Month,
    NoOption,
    Option,
    Order,
    Plan,
    PlanStatus,
    Route,
    Severity,
    Shortfall,
    Skip,
    Stage,
    Stages,
    Supplier,
    System,
    Tool,
    ToolBuy,
    Use,
    Vehicle,
)

EUR = Currency("EUR", 2)

GARAGE = Garage(
    name="two old cars",
    currency=EUR,
    start=Month(2027, 1),
    months=3,
    budget=(30000,),
    hours=(Fraction(8),),
    money_per_point=Fraction(150),
    vehicles=(
        Vehicle(id="hatch", name="small hatchback"),
        Vehicle(id="van", name="diesel van", use=Use.WEEKEND),
    ),
    faults=(
        Fault(
            id="hose",
            vehicle="hatch",
            title="Front brake hose bulges",
            system=System.BRAKES,
            severity=Severity.CATASTROPHIC,
            likelihood=Likelihood.PROBABLE,
            inspection=Inspection.DANGEROUS,
        ),
        Fault(
            id="ecu",
            vehicle="van",
            title="Engine control unit drops out",
            system=System.ENGINE,
            severity=Severity.MARGINAL,
            likelihood=Likelihood.OCCASIONAL,
            drivability=4,
            damage_chance=Fraction(1, 20),
            damage_cost=40000,
            fix_by=Month(2027, 1),
        ),
        Fault(
            id="paint",
            vehicle="hatch",
            title="Lacquer peels off the roof",
            system=System.BODY,
            enjoyment=Fraction(6),
        ),
        Fault(id="hum", vehicle="van", title="Hum at speed"),
        Fault(id="seep", vehicle="van", title="Oil seeps", status=FaultStatus.WATCH),
    ),
    options=(
        Option(
            id="hose-new",
            fixes=(Cure(fault="hose"),),
            route=Route.NEW,
            supplier="mill",
            part_no="BH-1",
            price=3450,
            currency="EUR",
            quantity=Fraction(2),
            consumables=900,
            hours=Fraction(3, 2),
            tools=("spanner",),
        ),
        Option(
            id="ecu-exchange",
            fixes=(Cure(fault="ecu"),),
            route=Route.EXCHANGE,
            supplier="mill",
            price=21000,
            currency="EUR",
            core_deposit=8000,
            core_chance=Fraction(9, 10),
            core_return_cost=1200,
            lead_days=20,
            hours=Fraction(1),
            coding=Coding.PAID,
            coding_cost=4000,
            dud_chance=Fraction(1, 20),
        ),
        Option(
            id="ecu-new",
            fixes=(Cure(fault="ecu"),),
            route=Route.NEW,
            supplier="north",
            price=60000,
            price_low=55000,
            price_high=70000,
            currency="EUR",
        ),
        Option(
            id="roof-film",
            fixes=(Cure(fault="paint"),),
            route=Route.REFINISH,
            price=9000,
            currency="EUR",
            life_months=24,
        ),
    ),
    suppliers=(
        Supplier(id="mill", name="Mill Lane Spares", currency="EUR", shipping=690),
        Supplier(id="north", name="North Yard Parts", currency="EUR"),
    ),
    tools=(Tool(id="spanner", name="Brake pipe spanner", price=1900),),
    milestones=(
        Milestone(id="trip", month=Month(2027, 1), faults=("ecu",), title="Coast trip"),
    ),
    assumed=(
        Assumed(
            table="options",
            row="roof-film",
            column="life_months",
            value="24",
            source="route norm, refinish x body",
        ),
    ),
    warnings=("faults.csv:6: seep: watched only",),
)

PLAN = Plan(
    status=PlanStatus.PROVEN,
    start=GARAGE.start,
    choices=Choices(orders={"hose-new": 0, "ecu-exchange": 1}, tools={"spanner": 0}),
    stages=Stages(
        missed_deadlines=2,
        unsafe_vehicle_months=0,
        undrivable_vehicle_months=2,
        net_worth=123450,
    ),
    stage_bounds=Stages(
        missed_deadlines=2,
        unsafe_vehicle_months=0,
        undrivable_vehicle_months=2,
        net_worth=123450,
    ),
    gap=0.0,
    bound=123450,
    jobs=(
        Job(
            option="hose-new",
            faults=("hose",),
            route=Route.NEW,
            supplier="mill",
            ordered=0,
            fitted=0,
            landed=6900,
            deposit=0,
            charge=1950,
            hours=Fraction(3, 2),
        ),
        Job(
            option="ecu-exchange",
            faults=("ecu",),
            route=Route.EXCHANGE,
            supplier="mill",
            ordered=1,
            fitted=2,
            landed=21000,
            deposit=8000,
            charge=8247,
            hours=Fraction(1),
        ),
    ),
    tools=(ToolBuy(tool="spanner", month=0, price=1900),),
    orders=(
        Order(supplier="mill", month=0, goods=6900, shipping=690),
        Order(supplier="mill", month=1, goods=21000, shipping=690),
    ),
    ledger=(
        LedgerLine(
            month=0,
            budget=30000,
            out=10390,
            back=0,
            balance=19610,
            hours=Fraction(3, 2),
        ),
        LedgerLine(
            month=1, budget=30000, out=29690, back=0, balance=19920, hours=Fraction(0)
        ),
        LedgerLine(
            month=2, budget=30000, out=4000, back=0, balance=45920, hours=Fraction(1)
        ),
    ),
    seconds=0.1,
    solver="HiGHS",
)

SKIPS = (
    Skip(fault="paint", reason=CrowdedOut(option="roof-film", worth=12000, cost=9000)),
    Skip(fault="hum", reason=NoOption()),
)

SHORTFALLS = (
    Shortfall(
        stage=Stage.DEADLINES,
        subject="ecu",
        faults=("ecu",),
        months=(0,),
        money=None,
        hours=None,
        exact=True,
    ),
    Shortfall(
        stage=Stage.DEADLINES,
        subject="trip",
        faults=("ecu",),
        months=(0,),
        money=4500,
        hours=Fraction(5, 2),
        exact=True,
    ),
    Shortfall(
        stage=Stage.MOBILITY,
        subject="van",
        faults=("ecu",),
        months=(0, 1),
        money=12300,
        hours=Fraction(0),
        exact=False,
    ),
)

STOPPED = replace(
    PLAN,
    status=PlanStatus.FEASIBLE,
    gap=0.008,
    bound=124438,
    seconds=30.2,
    stage_bounds=replace(PLAN.stage_bounds, missed_deadlines=1, net_worth=124438),
)
