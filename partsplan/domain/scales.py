"""The closed lists of words that a garage may use."""

from enum import Enum, IntEnum, StrEnum


class Severity(IntEnum):
    """Mishap severity categories of MIL-STD-882E, table I."""

    CATASTROPHIC = 1
    CRITICAL = 2
    MARGINAL = 3
    NEGLIGIBLE = 4


class Likelihood(StrEnum):
    """Probability levels of MIL-STD-882E, table II."""

    FREQUENT = "A"
    PROBABLE = "B"
    OCCASIONAL = "C"
    REMOTE = "D"
    IMPROBABLE = "E"
    ELIMINATED = "F"


class RiskLevel(StrEnum):
    """Risk levels of MIL-STD-882E, table III, worst first."""

    HIGH = "high"
    SERIOUS = "serious"
    MEDIUM = "medium"
    LOW = "low"
    ELIMINATED = "eliminated"


class Inspection(StrEnum):
    """Deficiency classes of Directive 2014/45/EU."""

    NONE = "none"
    MINOR = "minor"
    MAJOR = "major"
    DANGEROUS = "dangerous"


class System(StrEnum):
    """The part of the vehicle that a fault belongs to."""

    BRAKES = "brakes"
    STEERING = "steering"
    TYRES = "tyres"
    RESTRAINT = "restraint"
    FUEL = "fuel"
    ENGINE = "engine"
    ELECTRICS = "electrics"
    DRIVELINE = "driveline"
    COOLING = "cooling"
    EXHAUST = "exhaust"
    SUSPENSION = "suspension"
    BODY = "body"
    INTERIOR = "interior"
    OTHER = "other"


class Use(StrEnum):
    """How a vehicle is used."""

    DAILY = "daily"
    WEEKEND = "weekend"
    PROJECT = "project"
    STORED = "stored"


class FaultStatus(StrEnum):
    """Open faults are planned, fixed ones count as cured, watched ones only show."""

    OPEN = "open"
    FIXED = "fixed"
    WATCH = "watch"


class Route(StrEnum):
    """How an option is sourced."""

    NEW = "new"
    OEM_SPEC = "oem-spec"
    EXCHANGE = "exchange"
    SEND_IN = "send-in"
    USED = "used"
    UPRATED = "uprated"
    ECONOMY = "economy"
    STAND_IN = "stand-in"
    REFINISH = "refinish"
    WORKSHOP = "workshop"


class Coding(StrEnum):
    """Who matches a control unit to the car."""

    NONE = "none"
    SELF = "self"
    PAID = "paid"


class Tax(StrEnum):
    """Whether a supplier's prices have tax in them."""

    INCLUDED = "included"
    ADDED = "added"


class Stage(StrEnum):
    """What a plan optimises, one after the other."""

    DEADLINES = "deadlines"
    SAFETY = "safety"
    MOBILITY = "mobility"
    WORTH = "worth"


class PlanStatus(Enum):
    """What is known of a plan."""

    PROVEN = "proven"
    FEASIBLE = "feasible"
    INFEASIBLE = "infeasible"
    FAILED = "failed"
