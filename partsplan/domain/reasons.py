"""Reasons as data; reports make the sentences."""

from dataclasses import dataclass
from fractions import Fraction
from typing import ClassVar

from partsplan.domain.months import Month
from partsplan.domain.scales import (
    FaultStatus,
    Inspection,
    Likelihood,
    RiskLevel,
    Route,
    Severity,
    System,
    Use,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Reason:
    """Why something scores, is barred or is left alone."""

    code: ClassVar[str]


# Why a fault scores what it does.


@dataclass(frozen=True, slots=True, kw_only=True)
class RiskCell(Reason):
    """The cell of MIL-STD-882E, table III."""

    code = "risk_cell"
    severity: Severity
    likelihood: Likelihood
    level: RiskLevel


@dataclass(frozen=True, slots=True, kw_only=True)
class NoExposure(Reason):
    """The vehicle is not driven in that month."""

    code = "no_exposure"


@dataclass(frozen=True, slots=True, kw_only=True)
class InspectionClass(Reason):
    """What a roadworthiness inspection would call it."""

    code = "inspection_class"
    inspection: Inspection


@dataclass(frozen=True, slots=True, kw_only=True)
class DrivabilityGrade(Reason):
    """How much it hampers driving, and how the vehicle is used."""

    code = "drivability_grade"
    grade: int
    use: Use


@dataclass(frozen=True, slots=True, kw_only=True)
class LossPerMonth(Reason):
    """Money lost each month. [minor units a month]"""

    code = "loss_per_month"
    amount: int


@dataclass(frozen=True, slots=True, kw_only=True)
class DamageRisk(Reason):
    """Further damage: its chance a month and its cost. [minor units]"""

    code = "damage_risk"
    chance: Fraction
    cost: int


@dataclass(frozen=True, slots=True, kw_only=True)
class EnjoymentGiven(Reason):
    """What the owner would enjoy. [0-10]"""

    code = "enjoyment"
    enjoyment: Fraction


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnersPoints(Reason):
    """The owner's own figure stands instead of the weighted scores. [0-100]"""

    code = "owners_points"
    points: Fraction


@dataclass(frozen=True, slots=True, kw_only=True)
class Grows(Reason):
    """Its points grow. [share a month]"""

    code = "grows"
    growth: Fraction


# Why an option makes no offer, or a fault is left alone.


@dataclass(frozen=True, slots=True, kw_only=True)
class NoOption(Reason):
    """Nobody has quoted for it."""

    code = "no_option"


@dataclass(frozen=True, slots=True, kw_only=True)
class OptionReason(Reason):
    """A reason that rules one option out."""

    option: str


@dataclass(frozen=True, slots=True, kw_only=True)
class RouteRule(OptionReason):
    """Parts of this system never come by this route."""

    code = "route_rule"
    route: Route
    system: System


@dataclass(frozen=True, slots=True, kw_only=True)
class NotRoadLegal(OptionReason):
    """Not allowed on a vehicle that is driven."""

    code = "not_road_legal"


@dataclass(frozen=True, slots=True, kw_only=True)
class NoCodingTool(OptionReason):
    """Coding by the owner needs a tool that the workshop has not."""

    code = "no_coding_tool"


@dataclass(frozen=True, slots=True, kw_only=True)
class AlreadyBought(OptionReason):
    """Another part for all that it would cure is bought and waits to be fitted."""

    code = "already_bought"
    bought: str


@dataclass(frozen=True, slots=True, kw_only=True)
class NoRoomToFit(OptionReason):
    """It is bought, but no plan fits it beside as many others that are."""

    code = "no_room_to_fit"


@dataclass(frozen=True, slots=True, kw_only=True)
class TooCold(OptionReason):
    """No month in reach is warm enough. [C]"""

    code = "too_cold"
    needed: Fraction
    warmest: Fraction


@dataclass(frozen=True, slots=True, kw_only=True)
class QuoteOver(OptionReason):
    """The quote ends before the plan starts."""

    code = "quote_over"
    valid_until: Month


@dataclass(frozen=True, slots=True, kw_only=True)
class OutsideWindow(OptionReason):
    """No ordering month leads to a fitting month that is allowed."""

    code = "outside_window"
    earliest: Month
    not_before: Month | None
    not_after: Month | None


@dataclass(frozen=True, slots=True, kw_only=True)
class VehicleGone(OptionReason):
    """The vehicle is gone before it could be fitted."""

    code = "vehicle_gone"


@dataclass(frozen=True, slots=True, kw_only=True)
class AfterWatched(OptionReason):
    """It comes after a fault that is only watched."""

    code = "after_watched"
    fault: str


@dataclass(frozen=True, slots=True, kw_only=True)
class DearerThanAllMoney(OptionReason):
    """No month ever holds the money it takes. [minor units]"""

    code = "dearer_than_all_money"
    needed: int
    money: int


@dataclass(frozen=True, slots=True, kw_only=True)
class LongerThanAllHours(OptionReason):
    """No month ever holds the hours it takes. [h]"""

    code = "longer_than_all_hours"
    needed: Fraction
    hours: Fraction


@dataclass(frozen=True, slots=True, kw_only=True)
class WorthLessThanCost(OptionReason):
    """Even its best month gains less than it costs. [minor units]"""

    code = "worth_less_than_cost"
    worth: int
    cost: int


@dataclass(frozen=True, slots=True, kw_only=True)
class CrowdedOut(OptionReason):
    """Worth its cost alone, but the money, hours or links go to better jobs."""

    code = "crowded_out"
    worth: int
    cost: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Dominated(OptionReason):
    """Another option of the same faults is at least as good in every way."""

    code = "dominated"
    by: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PairRoute(OptionReason):
    """The other fault of its pair has no job that could go with it."""

    code = "pair_route"
    other: str
    route: Route


@dataclass(frozen=True, slots=True, kw_only=True)
class FaultNotOpen(OptionReason):
    """None of its faults is open, so it makes no offer."""

    code = "fault_not_open"
    fault: str
    status: FaultStatus


@dataclass(frozen=True, slots=True, kw_only=True)
class WaitsFor(Reason):
    """It comes after a fault that no plan can cure."""

    code = "waits_for"
    fault: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PairBars(Reason):
    """The other fault of its pair cannot be done with it."""

    code = "pair_bars"
    other: str


# What asks for a job besides its worth.


@dataclass(frozen=True, slots=True, kw_only=True)
class WaitsToBeFitted(Reason):
    """It is bought already."""

    code = "waits_to_be_fitted"


@dataclass(frozen=True, slots=True, kw_only=True)
class MeetsDeadline(Reason):
    """Without it a deadline or milestone is missed."""

    code = "meets_deadline"
    subject: str
    month: Month


@dataclass(frozen=True, slots=True, kw_only=True)
class MakesSafe(Reason):
    """Without it the vehicle must not be driven for more months."""

    code = "makes_safe"
    vehicle: str
    months: int


@dataclass(frozen=True, slots=True, kw_only=True)
class MakesDrivable(Reason):
    """Without it the vehicle cannot be driven for more months."""

    code = "makes_drivable"
    vehicle: str
    months: int


@dataclass(frozen=True, slots=True, kw_only=True)
class OneOfPair(Reason):
    """The other fault of a pair is done with it."""

    code = "one_of_pair"
    other: str


@dataclass(frozen=True, slots=True, kw_only=True)
class FollowsStandIn(Reason):
    """A stand-in has to come off again."""

    code = "follows_stand_in"
    stand_in: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ComesBefore(Reason):
    """Another job of the plan waits for it."""

    code = "comes_before"
    job: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SharesAccess(Reason):
    """The same panel is open for other jobs in that month."""

    code = "shares_access"
    access: str
    jobs: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SharesOrder(Reason):
    """It helps an order to free shipping. [minor units]"""

    code = "shares_order"
    supplier: str
    saved: int
