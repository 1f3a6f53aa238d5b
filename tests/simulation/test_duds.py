"""Bad parts: the geometric distribution, and what each one costs."""

from fractions import Fraction
from math import log, sqrt
from typing import Any

import numpy as np
import pytest
from scipy.stats import geom

from partsplan.domain import Access
from tests.simulation.one_job import FUTURES, SIGMAS, cost, one_job
from tests.support.published import published

CASES: Any = published("duds.json")["cases"]


@pytest.mark.parametrize("case", CASES, ids=lambda one: str(float(one["dud_chance"])))
def test_a_dud_prone_part_is_bought_as_often_as_the_geometric_distribution_says(
    case: Any,
) -> None:
    # S. M. Ross, A First Course in Probability, chapter 4; scipy.stats.geom
    q = case["dud_chance"]
    _, _, futures = one_job(dud_chance=q)
    bought = cost(futures) // 10000
    assert (cost(futures) % 10000 == 0).all()
    error = sqrt(float(case["variance"]) / FUTURES)
    extra = float(case["expected_extra_fittings"])
    assert abs(bought.mean() - 1 - extra) < SIGMAS * error
    numbers = np.arange(1, 36)
    seen = np.searchsorted(np.sort(bought), numbers, "right") / FUTURES
    # Dvoretzky, Kiefer and Wolfowitz with Massart's constant, at 0.1 %
    bound = sqrt(log(2000) / (2 * FUTURES))
    assert np.abs(seen - geom(float(1 - q)).cdf(numbers)).max() < bound


@pytest.mark.parametrize(("lead_days", "apart"), [(0, 1), (20, 2), (50, 3)])
def test_each_dud_delays_the_cure_by_a_month_and_the_lead_time(
    lead_days: int, apart: int
) -> None:
    _, plan, futures = one_job(dud_chance=Fraction(1, 5), lead_days=lead_days)
    duds = cost(futures) // 10000 - 1
    shown = duds < 6  # later ones may lie past the horizon
    first = plan.jobs[0].fitted
    delay = futures.good["o1"] - first
    assert (delay[shown] == apart * duds[shown]).all()


def test_a_dud_costs_own_hours_and_access_again_in_its_month() -> None:
    _, _, futures = one_job(
        {"access": (Access(id="dash", hours=Fraction(1, 2)),)},
        dud_chance=Fraction(1, 5),
        hours=Fraction(2),
        access=("dash",),
    )
    duds = cost(futures) // 10000 - 1
    months = np.arange(36)
    fitted = months[None, :] <= duds[:, None]
    assert (futures.hours == 2.5 * fitted).all()


def test_under_warranty_only_the_time_is_lost() -> None:
    _, _, futures = one_job(dud_chance=Fraction(1, 2), warranty_months=12)
    assert (cost(futures) == 10000).all()
    assert futures.good["o1"].max() > 5


def test_the_replacement_is_paid_in_the_month_after() -> None:
    made, plan, futures = one_job(dud_chance=Fraction(1, 2))
    spent = np.diff(futures.balance, axis=1, prepend=0) - made.monthly_budget
    bought = cost(futures) // 10000
    first = plan.jobs[0].ordered
    for month in range(4):
        assert (spent[:, first + month] == np.where(bought > month, -10000, 0)).all()


def test_what_is_bought_past_the_horizon_is_not_counted() -> None:
    _, _, futures = one_job({"months": 1}, dud_chance=Fraction(1, 2))
    assert (cost(futures) == 10000).all()
    assert np.mean(futures.good["o1"] == 0) == pytest.approx(0.5, abs=0.02)
