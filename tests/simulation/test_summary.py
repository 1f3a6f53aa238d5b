"""From futures to chances: quantiles, the extra reserve, shares, promises."""

from dataclasses import replace
from fractions import Fraction
from math import sqrt

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import lognorm

from partsplan.domain import (
    NEW_FAULT_MEDIAN,
    NEW_FAULT_SPREAD,
    QUANTILES,
    FaultStatus,
    Inspection,
    Milestone,
    Month,
    Option,
    Promise,
    RiskSettings,
    RiskSource,
    Route,
)
from partsplan.simulation import drawn, simulate
from partsplan.simulation.new_faults import new_faults
from partsplan.simulation.simulate import extra_reserve
from tests.simulation.one_job import FUTURES, SIGMAS, one_job, planned, settings
from tests.support.building import START, fault, garage, option, vehicle


@given(st.lists(st.integers(-1000, 1000), min_size=1, max_size=60))
def test_the_extra_reserve_is_the_least_that_keeps_nine_in_ten(
    lowest: list[int],
) -> None:
    extra = extra_reserve(np.array(lowest))

    def kept(more: int) -> Fraction:
        return Fraction(sum(one + more >= 0 for one in lowest), len(lowest))

    assert kept(extra) >= Fraction(9, 10)
    assert extra == 0 or kept(extra - 1) < Fraction(9, 10)


def test_months_count_the_futures() -> None:
    made, plan, futures = one_job(
        {"months": 3, "budget": (10500,), "reserve": 100},
        price_low=8000,
        price_high=15000,
    )
    risk = simulate(made, plan, settings())
    for month, one in enumerate(risk.months):
        ends = sorted(futures.balance[:, month].tolist())
        assert one.holds == sum(end >= 100 for end in ends) / FUTURES
        assert one.solvent == sum(end >= 0 for end in ends) / FUTURES
        # the least balance that at least that share of futures has or lies below
        assert one.quantiles == tuple(
            ends[-(-share * FUTURES // 100) - 1] for share in QUANTILES
        )
        assert one.mean == pytest.approx(sum(ends) / FUTURES)
    assert risk.solvent == risk.months[0].solvent < 1
    assert risk.holds < risk.solvent
    first = sorted(futures.balance[:, 0].tolist())
    assert risk.extra_reserve == -first[FUTURES // 10] > 0


def test_money_that_does_not_move_on_is_short_in_its_own_month_only() -> None:
    facts = {"months": 3, "budget": (10500,), "carry_over": False, "opening_cash": 40}
    made, plan, futures = one_job(facts, price_low=8000, price_high=15000)
    assert plan.jobs[0].ordered == 0
    assert (futures.balance[:, 1:] == 10500).all()
    assert (futures.balance[:, 0] != 540).any()
    spent = futures.costs[RiskSource.OPTION, "o1"]
    assert (futures.balance[:, 0] == 10540 - spent).all()
    risk = simulate(made, plan, settings())
    assert risk.shares[0].share == pytest.approx(1)


def two_jobs() -> tuple[Option, Option]:
    return (
        option(price_low=8000, price_high=15000),
        option("o2", "f2", price_low=9000, price_high=12000),
    )


def test_shares_are_those_of_the_variance_and_sum_to_one() -> None:
    made = garage(
        budget=(10**6,), faults=(fault(), fault("f2")), options=two_jobs(), months=3
    )
    risk = simulate(made, planned(made), settings())
    assert sum(one.share for one in risk.shares) == pytest.approx(1)
    assert [one.subject for one in risk.shares] == ["o1", "o2"]
    # independent triangles: (a^2 + b^2 + c^2 - ab - ac - bc) / 18, scipy.stats.triang
    wide, narrow = (
        (a * a + b * b + c * c - a * b - a * c - b * c) / 18
        for a, b, c in ((8000, 10000, 15000), (9000, 10000, 12000))
    )
    assert risk.shares[0].share == pytest.approx(wide / (wide + narrow), abs=0.02)
    assert risk.deviation == pytest.approx(sqrt(wide + narrow), rel=0.03)


def test_hours_run_over_as_often_as_a_bad_part_meets_a_full_month() -> None:
    made, plan, _ = one_job(
        {"months": 3, "hours": (Fraction(2), Fraction(1)), "look_beyond": 40},
        dud_chance=Fraction(1, 4),
        hours=Fraction(2),
    )
    risk = simulate(made, plan, settings())
    error = sqrt(0.25 * 0.75 / FUTURES)
    assert risk.months[0].hours_over == 0
    assert abs(risk.months[1].hours_over - 0.25) < SIGMAS * error
    assert risk.in_hours == 1 - risk.months[1].hours_over


def test_a_deadline_holds_unless_the_part_is_late_or_bad() -> None:
    made = garage(
        faults=(
            fault(fix_by=START, inspection=Inspection.DANGEROUS),
            fault("f2", status=FaultStatus.FIXED, fix_by=START),
            fault("f3", status=FaultStatus.WATCH, fix_by=START),
            fault("f4", fix_by=Month(2027, 9)),
        ),
        options=(option(lead_days=3, dud_chance=Fraction(1, 10)),),
        milestones=(Milestone(id="trip", month=Month(2027, 2), faults=("f1", "f2")),),
    )
    plan = planned(made)
    risk = simulate(made, plan, settings(late_chance=0.2))
    found = {(one.promise, one.subject): one for one in risk.promises}
    assert list(found) == [
        (Promise.DEADLINE, "f1"),
        (Promise.DEADLINE, "f2"),
        (Promise.DEADLINE, "f3"),
        (Promise.MILESTONE, "trip"),
        (Promise.CURE, "f1"),
    ]
    in_time = 0.8 * 0.9
    error = sqrt(in_time * (1 - in_time) / FUTURES)
    for promise in (Promise.DEADLINE, Promise.CURE):
        assert abs(found[promise, "f1"].chance - in_time) < SIGMAS * error
    assert found[Promise.DEADLINE, "f2"].chance == 1
    assert found[Promise.DEADLINE, "f3"].chance == 0
    assert not found[Promise.DEADLINE, "f3"].planned
    # a month later one slip or one bad part is made good, but not two
    by_trip = 0.8 * 0.9 + 0.2 * 0.9 + 0.8 * 0.1 * 0.8 * 0.9
    error = sqrt(by_trip * (1 - by_trip) / FUTURES)
    assert abs(found[Promise.MILESTONE, "trip"].chance - by_trip) < SIGMAS * error
    assert risk.shares[0].later == pytest.approx(1 - in_time, abs=0.02)


def test_a_stand_in_bridges_a_late_part_as_long_as_it_lasts() -> None:
    made = garage(
        months=4,
        faults=(fault(inspection=Inspection.DANGEROUS),),
        options=(
            option(lead_days=40, price=15000),
            option("o2", route=Route.STAND_IN, price=500, followup_within=1),
        ),
    )
    plan = planned(made)
    assert {job.option: job.fitted for job in plan.jobs} == {"o1": 1, "o2": 0}
    late = settings(late_chance=0.3)
    short = simulate(made, plan, late).promises[0]
    longer = replace(made.options[1], followup_within=2)
    bridged = simulate(
        replace(made, options=(made.options[0], longer)), plan, late
    ).promises[0]
    assert short.chance == pytest.approx(0.7, abs=0.02)
    assert bridged.chance == 1


def test_new_faults_are_poisson_and_their_cost_log_normal() -> None:
    made = garage(
        months=6,
        vehicles=(vehicle(keep_months=5, driven_from=Month(2027, 2)),),
        options=(),
    )
    rate = 0.3
    cost = new_faults(made, made.vehicles[0], settings(new_faults=rate))
    assert (cost[:, [0, 5]] == 0).all()
    months = cost[:, 1:5]
    # scipy.stats.lognorm; compound Poisson: mean r E(X), variance r E(X^2)
    one = lognorm(float(NEW_FAULT_SPREAD), scale=float(NEW_FAULT_MEDIAN * 20000))
    error = sqrt(rate * (one.var() + one.mean() ** 2) / months.size)
    assert abs(months.mean() - rate * one.mean()) < SIGMAS * error
    none = float(np.mean(months == 0))
    error = sqrt(none * (1 - none) / months.size)
    assert abs(none - np.exp(-rate)) < SIGMAS * error


def test_new_faults_come_out_of_the_money() -> None:
    made, plan, calm = one_job()
    rough = drawn(made, plan, settings(new_faults=0.2))
    cost = rough.costs[RiskSource.NEW_FAULTS, "v1"]
    assert (calm.balance[:, -1] - rough.balance[:, -1] == cost).all()
    assert cost.any()


@pytest.mark.parametrize(
    "wrong",
    [
        {"futures": 0},
        {"seed": -1},
        {"late_chance": 1.5},
        {"late_chance": float("nan")},
        {"new_faults": -0.1},
        {"new_faults": float("nan")},
    ],
)
def test_settings_out_of_range_are_refused(wrong: dict[str, float]) -> None:
    with pytest.raises(ValueError, match=f"{next(iter(wrong))}: expected"):
        RiskSettings(**wrong)  # type: ignore[arg-type]
