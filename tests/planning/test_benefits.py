"""What an offer gains, month by month, worked out by hand."""

from fractions import Fraction

from partsplan.planning.benefits import Benefits
from partsplan.pricing import offers
from tests.support.building import fault, garage, option


def test_gains_of_the_months_in_which_a_part_is_in_force() -> None:
    part = option("o1", "f1", "f2:0.3", lead_days=30, life_months=2)
    made = garage(
        months=4,
        faults=(
            fault(growth=Fraction(1, 5)),
            fault("f2", points=Fraction(5), loss_per_month=5),
        ),
        options=(part,),
    )
    first, _, last = offers(made)
    gains = Benefits(made)
    assert gains.of(first, "f1") == (6000, 7200)  # 50 points, a fifth more each month
    assert gains.of(last, "f1") == (8640,)  # the month after counts no more
    assert gains.of(first, "f2") == (152, 152)  # 0.3 x 505 = 151.5, half to even
    assert gains.total(first) == 13504
