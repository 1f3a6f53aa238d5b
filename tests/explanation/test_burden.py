"""Points borne month by month: 50 for each fault, unless it gives its own."""

from fractions import Fraction

from partsplan.domain import Choices, FaultStatus, Fitted, Garage, Month
from partsplan.explanation import points_borne
from tests.support.building import fault, garage, option, vehicle


def borne(made: Garage, **orders: int) -> list[Fraction]:
    return list(points_borne(made, Choices(orders=orders, tools={})))


def test_points_are_borne_until_a_job_is_fitted_and_after_it_wears_out() -> None:
    """Half relieved in the second and third month."""
    made = garage(
        months=6,
        options=(option("o1", "f1:0.5", lead_days=30, life_months=2),),
    )
    assert borne(made) == [50] * 6
    assert borne(made, o1=0) == [50, 25, 25, 50, 50, 50]


def test_reliefs_never_add_up() -> None:
    made = garage(options=(option("o1", "f1:0.5"), option("o2", "f1:0.3")))
    assert borne(made, o1=0, o2=0) == [25] * 3


def test_what_was_fitted_before_relieves_until_it_ends() -> None:
    fitted = Fitted(option="o0", relief=Fraction(2, 5), until=Month(2027, 3))
    made = garage(faults=(fault(fitted=(fitted,)),), options=(option("o1", "f1:0.5"),))
    assert borne(made) == [30, 30, 50]
    assert borne(made, o1=1) == [30, 25, 25]


def test_a_fixed_fault_is_not_borne_but_a_watched_one_is() -> None:
    made = garage(
        faults=(
            fault(status=FaultStatus.FIXED),
            fault("f2", status=FaultStatus.WATCH, points=Fraction(7)),
        ),
        options=(option(), option("o2", "f2")),
    )
    assert borne(made, o2=0) == [7] * 3


def test_nothing_is_borne_of_a_vehicle_that_is_gone() -> None:
    assert borne(garage(vehicles=(vehicle(keep_months=2),))) == [50, 50, 0]


def test_points_that_grow_are_borne_as_they_grow() -> None:
    made = garage(faults=(fault(growth=Fraction(1, 10)),))
    assert borne(made) == [50, 55, Fraction(605, 10)]
