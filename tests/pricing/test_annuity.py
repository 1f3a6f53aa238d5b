"""Factors of engineering economy; sources in the data file."""

from typing import Any

import numpy_financial
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from partsplan.pricing.annuity import capital_recovery, monthly_rate, periods_for
from tests.support.published import published

TABLES: Any = published("engineering_economy.json")
EXAMPLES = {one["id"]: one for one in TABLES["examples"]}
FACTORS = [
    (
        float(one["rate"]),
        int(one["periods"]),
        float(one["capital_recovery_A_over_P"]),
        float(one["sinking_fund_A_over_F"]),
    )
    for one in TABLES["factors"]
]
PRINTED = 0.51e-6
"""Half of the last printed digit."""

RATES = st.floats(0, 0.5)
PERIODS = st.floats(1, 600)


def test_all_factors_of_the_file_are_tried() -> None:
    assert len(FACTORS) == 29


@pytest.mark.parametrize(("rate", "periods", "recovery", "sinking"), FACTORS)
def test_factor_of_the_compound_interest_tables(
    rate: float, periods: int, recovery: float, sinking: float
) -> None:
    # Blank and Tarquin, Compound Interest Factor Tables
    assert capital_recovery(rate, periods) == pytest.approx(recovery, abs=PRINTED)
    assert capital_recovery(rate, periods) - rate == pytest.approx(sinking, abs=PRINTED)


@pytest.mark.parametrize(("rate", "periods", "recovery", "sinking"), FACTORS)
def test_factor_is_the_payment_of_a_loan_of_one(
    rate: float, periods: int, recovery: float, sinking: float
) -> None:
    # second witness: numpy-financial 1.0.0 (BSD-3)
    payment = -numpy_financial.pmt(rate, periods, 1.0)
    assert capital_recovery(rate, periods) == pytest.approx(payment, rel=1e-12)


def test_payment_of_a_published_loan() -> None:
    # numpy-financial's documentation: pmt(0.075/12, 180, 200000)
    payment = 200000 * capital_recovery(0.075 / 12, 180)
    assert payment == pytest.approx(1854.0247200054619, abs=1e-9)


@pytest.mark.parametrize("periods", [1, 2, 36, 2.5])
def test_without_interest_a_cost_is_spread_evenly(periods: float) -> None:
    assert capital_recovery(0.0, periods) == 1 / periods


@pytest.mark.parametrize("name", ["capital-recovery", "annual-worth"])
def test_first_cost_less_salvage_a_year(name: str) -> None:
    # Blank and Tarquin, Engineering Economy: (P - S) x A/P + S x i
    data, wanted = EXAMPLES[name]["data"], EXAMPLES[name]["published"]
    rate, salvage = float(data["rate"]), float(data["salvage"])
    spread = float(data["first_cost"]) - salvage
    yearly = spread * capital_recovery(rate, int(data["years"])) + salvage * rate
    published_recovery = wanted.get("capital_recovery", wanted["annual"])
    assert yearly == pytest.approx(float(published_recovery), abs=0.5)
    whole = yearly + float(data.get("yearly_cost", 0))
    assert whole == pytest.approx(float(wanted["annual"]), abs=0.5)


def test_monthly_rate_compounds_to_the_yearly_one() -> None:
    wanted = TABLES["monthly_rate_from_10_percent"]
    effective = float(wanted["effective_monthly"])
    assert monthly_rate(0.10) == pytest.approx(effective, abs=0.5e-8)
    recovery = capital_recovery(monthly_rate(0.10), 36)
    assert recovery == pytest.approx(float(wanted["A_over_P_36"]), abs=0.5e-7)
    nominal = float(wanted["nominal_A_over_P_36"])
    assert recovery != pytest.approx(nominal, abs=1e-5)


@given(RATES)
def test_twelve_months_make_a_year(yearly: float) -> None:
    assert (1 + monthly_rate(yearly)) ** 12 == pytest.approx(1 + yearly, rel=1e-12)


def test_periods_of_a_published_loan() -> None:
    # numpy-financial's documentation: nper(0.07/12, -150, 8000) = 64.07335
    assert periods_for(0.07 / 12, 8000, 150) == pytest.approx(64.07335, abs=0.5e-5)


@given(st.one_of(st.just(0.0), st.floats(1e-4, 0.1)), PERIODS)
def test_periods_undo_the_capital_recovery(rate: float, periods: float) -> None:
    payment = 1000 * capital_recovery(rate, periods)
    assume(payment > 1000 * rate * (1 + 1e-9))  # else it is as good as interest alone
    assert periods_for(rate, 1000, payment) == pytest.approx(periods, rel=1e-4)


@pytest.mark.parametrize(
    ("rate", "present", "payment"),
    [(0.01, 1000, 10), (0.01, 1000, 9), (0.0, 1000, 0), (0.01, 0, 5)],
)
def test_interest_alone_never_recovers_a_cost(
    rate: float, present: float, payment: float
) -> None:
    assert periods_for(rate, present, payment) is None
