"""Options of unequal lives: the cheaper month of service wins, not the cheaper part.

Textbook machines become two options of a fault: the price is the present value of all
a machine costs over its life, and the life is that of the machine.
"""

from fractions import Fraction
from typing import Any

import numpy_financial
import pytest

from partsplan.domain import Candidate
from partsplan.pricing import compare
from partsplan.pricing.annuity import monthly_rate
from tests.support.building import garage, option, vehicle
from tests.support.published import published

SCALE = 10000
"""Minor units for one of the textbook's money."""

EXAMPLES: dict[str, Any] = {
    one["id"]: one
    for one in published("engineering_economy.json")["examples"]
    if "A" in one["data"]
}


def present_value(machine: Any, rate: float) -> float:
    years = int(machine["years"])
    flows = [float(machine["yearly_cost"])] * (years + 1)
    flows[0] = float(machine["first_cost"])
    flows[-1] -= float(machine.get("salvage", machine.get("deposit_back", 0)))
    return float(numpy_financial.npv(rate, flows))


def candidates(name: str) -> dict[str, Candidate]:
    """Both machines as options, cheapest month of service first."""
    data = EXAMPLES[name]["data"]
    rate = data["rate"]
    made = garage(
        discount_rate=Fraction(rate),
        vehicles=(vehicle(keep_months=120),),
        options=tuple(
            option(
                machine,
                price=round(SCALE * present_value(data[machine], float(rate))),
                life_months=int(12 * data[machine]["years"]),
            )
            for machine in "AB"
        ),
    )
    return {one.option.id: one for one in compare(made, "f1").candidates}


def yearly(candidate: Candidate, rate: float) -> float:
    """Payments at each month's end as one at the year's end, in textbook money."""
    assert candidate.per_month is not None
    return candidate.per_month * rate / monthly_rate(rate) / SCALE


@pytest.mark.parametrize("name", EXAMPLES)
@pytest.mark.parametrize("machine", ["A", "B"])
def test_cost_of_a_year_is_the_published_one(name: str, machine: str) -> None:
    example = EXAMPLES[name]
    rate = float(example["data"]["rate"])
    found = yearly(candidates(name)[machine], rate)
    computed = example["computed"][machine]
    annual = computed["annual"] if isinstance(computed, dict) else computed
    assert found == pytest.approx(float(annual), rel=2e-5)


@pytest.mark.parametrize("name", EXAMPLES)
def test_the_published_machine_is_the_cheaper_one(name: str) -> None:
    assert next(iter(candidates(name))) == EXAMPLES[name]["published"]["cheaper"]


@pytest.mark.parametrize(
    ("name", "cheaper_part", "cheaper_month"),
    [("unequal-lives-11", "A", "B"), ("brealey-myers", "B", "A")],
)
def test_the_cheaper_part_may_be_the_dearer_month(
    name: str, cheaper_part: str, cheaper_month: str
) -> None:
    found = candidates(name)
    assert min(found, key=lambda one: found[one].price.expected) == cheaper_part
    assert next(iter(found)) == cheaper_month


def test_life_counts_no_further_than_the_vehicle_is_kept() -> None:
    made = garage(
        vehicles=(vehicle(keep_months=10),),
        options=(
            option("long", price=9000, life_months=60),
            option("short", price=4000, life_months=5),
            option("endless", price=9500, lead_days=30),
        ),
    )
    found = {one.option.id: one for one in compare(made, "f1").candidates}
    services = {name: one.service for name, one in found.items()}
    assert services == {"short": 5, "long": 10, "endless": 9}
    months = [one.per_month for one in found.values()]
    assert months == pytest.approx([800, 900, 9500 / 9])
