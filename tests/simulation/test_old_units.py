"""Old units: the deposit comes back whole or not at all."""

from fractions import Fraction
from math import sqrt

import numpy as np
import pytest
from scipy.stats import binom

from partsplan.domain import Coding
from tests.simulation.one_job import FUTURES, SIGMAS, cost, one_job, settings

REFUSED = Fraction(3, 10)


@pytest.mark.parametrize("trust", [Fraction(1, 2), Fraction(9, 10)])
def test_refusals_are_binomial_whatever_the_plan_counts_on(trust: Fraction) -> None:
    made, plan, futures = one_job(
        {"core_trust": trust}, core_deposit=4000, core_chance=1 - REFUSED
    )
    counted = trust <= made.option["o1"].core_chance
    assert sum(line.back for line in plan.ledger) == (4000 if counted else 0)
    refused = int((cost(futures) == 14000).sum())
    assert (cost(futures) == 10000).sum() == FUTURES - refused
    told = binom(FUTURES, float(REFUSED))
    # scipy.stats.binom: outside these bounds once in a thousand seeds
    assert told.ppf(0.0005) <= refused <= told.ppf(0.9995)


def test_the_return_is_paid_even_where_the_old_unit_is_refused() -> None:
    _, _, futures = one_job(
        core_deposit=4000, core_chance=Fraction(1, 2), core_return_cost=150
    )
    assert set(cost(futures)) == {10150, 14150}


def test_the_old_unit_goes_back_after_the_part_that_works() -> None:
    made, plan, futures = one_job(
        core_deposit=4000,
        core_days=45,
        core_return_cost=150,
        dud_chance=Fraction(1, 5),
        warranty_months=12,
    )
    moved = np.diff(futures.balance, axis=1, prepend=0) - made.monthly_budget
    duds = futures.good["o1"] - plan.jobs[0].fitted
    for number in range(3):
        months = moved[duds == number]
        assert len(months)
        assert (months[:, 0] == -14000).all()
        assert (months[:, number + 2] == 3850).all()
        assert (months != 0).sum(axis=1).max() == 2


def test_what_comes_back_past_the_horizon_is_not_seen() -> None:
    _, _, futures = one_job({"months": 1}, core_deposit=4000, core_return_cost=150)
    assert (cost(futures) == 14000).all()


def test_a_late_part_moves_fitting_coding_and_old_unit_by_that_month() -> None:
    made, plan, futures = one_job(
        drawn_with=settings(late_chance=0.25),
        lead_days=5,
        coding=Coding.PAID,
        coding_cost=500,
        consumables=70,
        core_deposit=4000,
        core_return_cost=150,
        hours=Fraction(3),
    )
    fitted = plan.jobs[0].fitted
    late = futures.good["o1"] - fitted
    assert set(late) == {0, 1}
    error = sqrt(0.25 * 0.75 / FUTURES)
    assert abs(late.mean() - 0.25) < SIGMAS * error
    moved = np.diff(futures.balance, axis=1, prepend=0) - made.monthly_budget
    assert moved[late == 0][0][:3].tolist() == [-14570, 3850, 0]
    assert moved[late == 1][0][:3].tolist() == [-14000, -570, 3850]
    assert futures.hours[late == 1][0][:2].tolist() == [0, 3]
    for slip in (0, 1):
        alike = moved[late == slip]
        assert (alike == alike[0]).all()


def test_what_is_on_the_shelf_is_never_late() -> None:
    _, plan, futures = one_job(drawn_with=settings(late_chance=1.0), lead_days=0)
    assert (futures.good["o1"] == plan.jobs[0].fitted).all()
