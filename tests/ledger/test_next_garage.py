"""The garage of a later month, after what has happened until then."""

from dataclasses import replace
from datetime import date, timedelta

import pytest

from partsplan.domain import Choices, FaultStatus, Garage, Month, Plan, Stage
from partsplan.ledger import fold, next_garage
from partsplan.planning import plan
from partsplan.verification import broken_rules, violations
from partsplan.verification.facts import Facts
from tests.support.as_planned_entries import entries_until, quotes
from tests.support.small_garages import small_garage
from tests.support.small_logbook import GARAGE, folded

SEEDS = range(120)


def followed(seed: int) -> tuple[Garage, Plan] | None:
    garage = small_garage(seed)
    found = plan(garage, gap=0.0)
    if not isinstance(found, Plan) or not found.jobs:
        return None
    return garage, found


def after(garage: Garage, made: Plan, month: int) -> Garage:
    entries = entries_until(garage, made, month)
    first = garage.month(month)
    ledger = fold(garage, quotes(garage), entries)
    assert not ledger.flags
    shorter = replace(garage, months=garage.months - month)  # the same last month
    return next_garage(shorter, ledger, first, date(*first, 1))


def too_late_to_send_back(garage: Garage, made: Plan, month: int) -> bool:
    """Whether a plan counts on a deposit after the last day to send its unit back.

    Plans count whole months, the last day is counted in days.
    """
    for job in made.jobs:
        option = garage.option[job.option]
        last = garage.month(job.fitted).last_day + timedelta(days=option.core_days)
        late = last < date(*garage.month(month), 1)
        if job.deposit and late and job.fitted + option.core_months >= month:
            return True
    return False


def cured_for_good(now: Garage, made: Plan, month: int) -> bool:
    """Whether the plan goes on to do jobs for what is fixed for good meanwhile."""
    return any(
        all(now.fault[one].status is FaultStatus.FIXED for one in job.faults)
        for job in made.jobs
        if job.fitted >= month
    )


def rest_of(made: Plan, month: int) -> Choices:
    """The choices of a plan that are still to be made in a month, in its own time."""
    return Choices(
        orders={
            job.option: (job.fitted if job.ordered < month else job.ordered) - month
            for job in made.jobs
            if job.fitted >= month
        },
        tools={
            name: bought - month
            for name, bought in made.choices.tools.items()
            if bought >= month
        },
    )


@pytest.mark.parametrize("seed", SEEDS)
def test_a_plan_that_is_followed_goes_on_to_the_cent(seed: int) -> None:
    known = followed(seed)
    if known is None:
        return
    garage, made = known
    for month in range(1, garage.months):
        if too_late_to_send_back(garage, made, month):
            continue
        later = after(garage, made, month)
        if cured_for_good(later, made, month):
            continue
        rest = rest_of(made, month)
        assert broken_rules(later, rest) == ()
        facts = Facts(later, rest)
        ledger = made.ledger[month:]
        assert facts.balances() == [line.balance for line in ledger]
        assert facts.hours() == [line.hours for line in ledger]


@pytest.mark.parametrize("seed", SEEDS)
def test_the_next_plan_fits_what_is_bought_and_is_no_worse(seed: int) -> None:
    known = followed(seed)
    if known is None or too_late_to_send_back(*known, 1):
        return
    garage, made = known
    later = after(garage, made, 1)
    if cured_for_good(later, made, 1):
        return
    found = plan(later, gap=0.0)
    assert isinstance(found, Plan)
    assert violations(later, found) == ()
    rest = Facts(later, rest_of(made, 1))
    bought = {option.id for option in later.options if option.bought}
    assert bought <= found.choices.orders.keys()
    if garage.priority[0] is Stage.WORTH:
        assert found.stages.net_worth >= rest.net_worth()
    for job in found.jobs:
        assert job.bought == (job.option in bought)
        if job.bought:
            assert job.ordered == -1
            assert job.landed == 0


def test_a_dud_under_warranty_is_assumed_to_be_replaced_at_no_price() -> None:
    ledger = folded(
        "2027-01-05 ordered alternator",
        "2027-01-25 arrived alternator",
        "2027-02-01 fitted alternator",
        "2027-03-01 dud alternator",
    )
    march = Month(2027, 3)
    later = next_garage(GARAGE, ledger, march, date(2027, 3, 2))
    option = later.option["alternator"]
    assert (option.price, option.core_deposit, option.supplier) == (0, 0, None)
    assert option.bought is None
    assert option.valid_until == Month(2029, 1)
    assert later.fault["charging"].status is FaultStatus.OPEN
    claim = next(one for one in later.assumed if one.row == "alternator")
    assert claim.source == "claimed under warranty by 2029-01-25"
