"""The harm a fault can do, after MIL-STD-882E."""

from fractions import Fraction
from typing import Protocol

from partsplan.domain import (
    Fault,
    Inspection,
    InspectionClass,
    Likelihood,
    NoExposure,
    Reason,
    RiskCell,
    RiskLevel,
    Score,
    Severity,
)
from partsplan.domain.numbers import ZERO

SEVERITY_POINTS = dict(zip(Severity, (100, 70, 30, 5), strict=True))
LIKELIHOOD_FACTOR = dict(
    zip(Likelihood, map(Fraction, ("1", "0.8", "0.5", "0.25", "0.1", "0")), strict=True)
)
_LEVELS = dict(zip("HSML-", RiskLevel, strict=True))
_TABLE_III = dict(
    zip(Likelihood, ("HHSM", "HHSM", "HSML", "SMML", "MMML", "----"), strict=True)
)
"""Rows A to F, columns severity 1 to 4: MIL-STD-882E, 11 May 2012, table III."""


def risk_level(severity: Severity, likelihood: Likelihood) -> RiskLevel:
    """The risk level of MIL-STD-882E, table III."""
    return _LEVELS[_TABLE_III[likelihood][severity - 1]]


def safety(fault: Fault, *, driven: bool) -> Score:
    """Points for the harm a fault can do in a month. [0-100]

    After MIL-STD-882E, tables I and II; the factors are ours, and keep the order of
    table III.
    """
    reasons: list[Reason] = []
    if fault.inspection is not Inspection.NONE:
        reasons.append(InspectionClass(inspection=fault.inspection))
    if fault.severity is None:
        return Score(ZERO, tuple(reasons))
    if not driven:
        return Score(ZERO, (NoExposure(), *reasons))
    level = risk_level(fault.severity, fault.likelihood)
    cell = RiskCell(severity=fault.severity, likelihood=fault.likelihood, level=level)
    reasons.insert(0, cell)
    points = SEVERITY_POINTS[fault.severity] * LIKELIHOOD_FACTOR[fault.likelihood]
    return Score(points, tuple(reasons))


class Hazard(Protocol):
    """What can do harm: a fault, or a kind of fault."""

    @property
    def severity(self) -> Severity | None: ...

    @property
    def likelihood(self) -> Likelihood: ...

    @property
    def inspection(self) -> Inspection: ...


def forbids_driving(fault: Hazard) -> bool:
    """Whether a vehicle with this fault must not be driven.

    A High risk cell (MIL-STD-882E), or a dangerous deficiency, with which use is
    restricted or prohibited (Directive 2014/47/EU, article 14(3)).
    """
    if fault.inspection is Inspection.DANGEROUS:
        return True
    return (
        fault.severity is not None
        and risk_level(fault.severity, fault.likelihood) is RiskLevel.HIGH
    )
