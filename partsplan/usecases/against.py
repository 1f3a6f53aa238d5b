"""Holds a plan that was kept against what happened."""

from datetime import date
from pathlib import Path

from partsplan.domain import Garage, PlanAgainst
from partsplan.errors import InvalidRequest, NoKeptPlan
from partsplan.usecases.where_it_stands import where_it_stands


def against(
    folder: Path, *, today: date, number: int | None = None
) -> tuple[Garage, PlanAgainst]:
    """The kept plan of that number, else the last one, against the logbook.

    Raises
    ------
    InvalidGarage, DamagedLogbook, LogbookUnavailable
    NoKeptPlan
        If no plan was kept, or its text cannot be read.
    InvalidRequest
        If plans were kept, but none of that number.
    """
    from partsplan.intake import read_kept_plan
    from partsplan.ledger import against as held_against
    from partsplan.logbook import beside, kept_plans

    stands = where_it_stands(folder)
    garage = stands.garage
    plans = {plan.number: plan for plan in kept_plans(beside(folder))}
    if not plans:
        raise NoKeptPlan(
            "no plan was kept yet; "
            '"partsplan plan --keep" keeps the one you mean to follow'
        )
    chosen = max(plans) if number is None else number
    if chosen not in plans:
        last = max(plans)
        raise InvalidRequest(f"There is no kept plan {chosen}; the last is {last}.")
    kept = plans[chosen]
    paper = read_kept_plan(
        kept.text,
        number=kept.number,
        kept=kept.written.date(),
        currency=garage.currency.code,
    )
    return garage, held_against(garage, stands.ledger, paper, today)
