"""All options of one fault side by side, by the cost of a month of service."""

from collections.abc import Iterator

from partsplan.domain import (
    CURED,
    BreakEven,
    Candidate,
    Comparison,
    Garage,
    Option,
    instalments,
)
from partsplan.pricing.annuity import capital_recovery, monthly_rate
from partsplan.pricing.break_even import break_evens
from partsplan.pricing.landed import price
from partsplan.pricing.months import slots_or_bar
from partsplan.pricing.offers import service_months
from partsplan.pricing.pairs import pair_bar
from partsplan.pricing.routes import flagged


def compare(garage: Garage, fault: str) -> Comparison:
    """The options that name a fault, cheapest month of service first, barred last.

    With a discount rate the cost of a month is the expected cost times the capital
    recovery factor of its months of service, so unequal lives compare fairly.
    """
    candidates = sorted(
        (_candidate(garage, option) for option in garage.options_for[fault]),
        key=lambda one: (one.per_month is None, one.per_month or 0.0),
    )
    return Comparison(
        fault=fault,
        candidates=tuple(candidates),
        break_evens=tuple(_against_best_rival(garage, fault, candidates)),
    )


def _candidate(garage: Garage, option: Option) -> Candidate:
    priced = price(garage, option)
    found, bar = slots_or_bar(garage, option)
    if found and (bar := pair_bar(garage, option)):
        found = ()
    first = found[0] if found else None
    service = service_months(garage, option, first.fitted) if first else None
    due_now = sum(
        due for months, due in instalments(option, priced.landed) if not months
    )
    trusted = option.core_chance >= garage.core_trust
    return Candidate(
        option=option,
        price=priced,
        ordered=first.ordered if first else None,
        fitted=first.fitted if first else None,
        cash_now=due_now + priced.deposit,
        cash_back=priced.deposit if trusted else 0,
        service=service,
        per_month=priced.expected * _recovery(garage, service) if service else None,
        flagged=flagged(garage, option),
        bars=(bar,) if bar else (),
        assumed=tuple(
            one
            for one in garage.assumed
            if one.table == "options" and one.row == option.id
        ),
    )


def _recovery(garage: Garage, service: int) -> float:
    return capital_recovery(monthly_rate(float(garage.discount_rate)), service)


def _against_best_rival(
    garage: Garage, fault: str, candidates: list[Candidate]
) -> Iterator[BreakEven]:
    """Every lasting option against the cheapest other one that it could replace.

    What cures the fault is only compared with what does, and relief with relief.
    """
    vehicle = garage.vehicle[garage.fault[fault].vehicle]
    able = [
        one for one in candidates if one.option.lasting and one.per_month is not None
    ]
    for one in able:
        rivals = [
            other
            for other in able
            if other is not one and _cures(other, fault) == _cures(one, fault)
        ]
        rival = next(iter(rivals), None)
        if rival is None or rival.per_month is None:
            continue
        if one.service is None or one.fitted is None:
            continue
        yield from break_evens(
            garage,
            one.option,
            one.price,
            service=one.service,
            longest=vehicle.keep_months - one.fitted,
            recovery=_recovery(garage, one.service),
            rival=rival.option.id,
            rival_per_month=rival.per_month,
            rate=monthly_rate(float(garage.discount_rate)),
        )


def _cures(candidate: Candidate, fault: str) -> bool:
    return candidate.option.relief(fault) >= CURED
