"""Reasons as data; reports make the sentences."""

from dataclasses import dataclass
from fractions import Fraction
from typing import ClassVar

from partsplan.domain.months import Month
from partsplan.domain.scales import (
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
