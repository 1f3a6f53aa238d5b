"""Sentences made of reasons, and the words of the closed lists."""

from partsplan.domain import (
    AfterWatched,
    AlreadyBought,
    CrowdedOut,
    DamageRisk,
    DearerThanAllMoney,
    Dominated,
    DrivabilityGrade,
    EnjoymentGiven,
    FaultNotOpen,
    FaultStatus,
    Garage,
    Grows,
    InspectionClass,
    LongerThanAllHours,
    LossPerMonth,
    NoCodingTool,
    NoExposure,
    NoOption,
    NoRoomToFit,
    NotRoadLegal,
    OptionReason,
    OutsideWindow,
    OwnersPoints,
    PairRoute,
    QuoteOver,
    Reason,
    RiskCell,
    Route,
    RouteRule,
    System,
    TooCold,
    Use,
    VehicleGone,
    WorthLessThanCost,
)
from partsplan.pricing.routes import DOUBTFUL, RISKY_SYSTEMS
from partsplan.reports.demands import asked_for
from partsplan.reports.figures import month_name, number, percent, price

GRADES = (
    "does not hamper driving",
    "is a nuisance in driving",
    "hampers driving",
    "leaves the vehicle hardly drivable",
    "leaves the vehicle not drivable",
)
USES = {
    Use.DAILY: "used daily",
    Use.WEEKEND: "used at weekends",
    Use.PROJECT: "that is a project",
    Use.STORED: "in store",
}


def sentence(garage: Garage, reason: Reason) -> str:
    """What a reason says, as a sentence of plain words."""
    if isinstance(reason, OptionReason):
        return f"{option_name(garage, reason.option)} {_ruled_out(garage, reason)}"
    return _scored(garage, reason)


def option_name(garage: Garage, option: str) -> str:
    """An option by its id and its route."""
    return f"{option} ({garage.option[option].route})"


def _scored(garage: Garage, reason: Reason) -> str:
    match reason:
        case RiskCell(severity=severity, likelihood=likelihood, level=level):
            return (
                f"The risk to people is {level}: severity {int(severity)} "
                f"({severity.name.lower()}), likelihood {likelihood} "
                f"({likelihood.name.lower()})."
            )
        case NoExposure():
            return "The vehicle is not driven then, so nobody is exposed."
        case InspectionClass(inspection=inspection):
            return f"An inspection would call it a {inspection} deficiency."
        case DrivabilityGrade(grade=grade, use=use):
            return f"It {GRADES[grade]} (grade {grade}), on a vehicle {USES[use]}."
        case LossPerMonth(amount=amount):
            return f"Each month of waiting costs {price(garage.currency, amount)}."
        case DamageRisk(chance=chance, cost=cost):
            return (
                f"Each month it may do further damage of {price(garage.currency, cost)}"
                f", with a chance of {percent(chance)}."
            )
        case EnjoymentGiven(enjoyment=enjoyment):
            return f"Its owner would enjoy it {number(enjoyment)} of 10."
        case OwnersPoints(points=points):
            return f"Its owner gives it {number(points)} points."
        case Grows(growth=growth):
            return f"Its points grow by {percent(growth)} a month."
        case NoOption():
            return "Nobody has quoted for it yet: ask for a quote."
    return asked_for(garage, reason)


def _ruled_out(garage: Garage, reason: OptionReason) -> str:
    """What follows the name of the option."""
    currency = garage.currency
    match reason:
        case RouteRule(route=route, system=system):
            return _barred_route(route, system)
        case NotRoadLegal():
            return "is barred: it is not road legal, and the vehicle is driven."
        case NoCodingTool():
            return "must be coded by yourself, and the workshop has no coding tool."
        case AlreadyBought(bought=bought):
            return f"is not needed: {bought} is bought and waits to be fitted."
        case NoRoomToFit():
            return (
                "is bought, but no plan fits it beside as many others that are: money, "
                "hours or the links between jobs are in the way."
            )
        case TooCold(needed=needed, warmest=warmest):
            return (
                f"needs {number(needed)} C in the workshop; the warmest month in "
                f"reach has {number(warmest)} C."
            )
        case QuoteOver(valid_until=valid_until):
            return (
                f"could be ordered until {month_name(valid_until)} only: ask for a "
                "quote that still holds."
            )
        case OutsideWindow():
            return _outside(garage, reason)
        case VehicleGone():
            return "could be fitted only when the vehicle is gone."
        case AfterWatched(fault=fault):
            return (
                f"has to wait for {garage.fault[fault].title} ({fault}), which is "
                "only watched."
            )
        case PairRoute(other=other, route=route):
            return (
                f"cannot be fitted: its pair {garage.fault[other].title} ({other}) has "
                f"no job to go with one by the route {route}."
            )
        case FaultNotOpen(fault=fault, status=status):
            state = "fixed" if status is FaultStatus.FIXED else "only watched"
            return f"is for {garage.fault[fault].title} ({fault}), which is {state}."
        case DearerThanAllMoney(needed=needed, money=money):
            return (
                f"takes {price(currency, needed)}; no month in reach ever holds more "
                f"than {price(currency, money)}."
            )
        case LongerThanAllHours(needed=needed, hours=own):
            return (
                f"takes {number(needed)} own hours; no month in reach has more than "
                f"{number(own)}."
            )
        case WorthLessThanCost(worth=worth, cost=cost):
            return (
                f"costs {price(currency, cost)} and gains only "
                f"{price(currency, worth)}, even in its best month."
            )
        case Dominated(by=by):
            return (
                f"is beaten by {option_name(garage, by)} in all that this plan counts: "
                "no dearer for the months it lasts, no later, no more work."
            )
        case CrowdedOut(worth=worth, cost=cost):
            return (
                f"would gain {price(currency, worth)} for {price(currency, cost)}, but "
                "the money, the hours or the links between jobs go to better ones."
            )
    raise TypeError(f"no sentence for {type(reason).__name__}")


def _barred_route(route: Route, system: System) -> str:
    barred = f"is barred: by the route {route} no parts of the {system} come here"
    if system in RISKY_SYSTEMS and route in DOUBTFUL:
        return f"{barred}, unless allow_risky_routes is true."
    return f"{barred}."


def _outside(garage: Garage, reason: OutsideWindow) -> str:
    start, end = garage.start, garage.month(garage.months - 1)
    ends = month_name(end)
    if garage.option[reason.option].bought and reason.not_before:
        there = f"is bought and can be fitted from {month_name(reason.not_before)}"
        until = f" to {month_name(reason.not_after)}" if reason.not_after else " on"
        return f"{there}{until}; this plan goes from {month_name(start)} to {ends}."
    earliest = f"can be fitted in {month_name(reason.earliest)} at the earliest"
    if reason.not_before is None and reason.not_after is None:
        return f"{earliest}; this plan ends with {ends}."
    first = month_name(reason.not_before or start)
    last = month_name(reason.not_after or end)
    return f"{earliest} and is allowed from {first} to {last} only (plan until {ends})."
