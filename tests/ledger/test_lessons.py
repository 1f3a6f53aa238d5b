"""How good estimates were, by hand."""

from dataclasses import replace
from datetime import date
from fractions import Fraction

import pytest

from partsplan.domain import (
    Delays,
    Grouping,
    Lesson,
    Lessons,
    Norm,
    NormColumn,
    Ratio,
    Route,
)
from partsplan.ledger import fold, lessons
from tests.support.small_logbook import GARAGE, QUOTES, log

TODAY = date(2027, 6, 30)
SOLD = replace(
    GARAGE,
    options=tuple(
        replace(
            one,
            supplier=None if one.route is Route.WORKSHOP else "counter",
            lead_days=5,
            dud_chance=Fraction("0.02"),
        )
        for one in GARAGE.options
    ),
)


def learned(*lines: str, today: date = TODAY) -> Lessons:
    ledger = fold(SOLD, QUOTES, log(*lines))
    return lessons(SOLD, QUOTES, ledger, today)


def of(found: Lessons, name: str) -> Lesson:
    (one,) = [one for one in found.lessons if one.name == name]
    return one


def norm(found: Lessons, column: NormColumn, name: str = "counter") -> Norm | None:
    return next(
        (one for one in found.norms if (one.name, one.column) == (name, column)), None
    )


def arrival(option: str, month: int, days: int, price: int = 1200) -> list[str]:
    """Ordered on the first, there that many days later, and fitted."""
    return [
        f"2027-0{month}-01 ordered {option} amount={price}",
        f"2027-0{month}-{1 + days:02d} arrived {option}",
        f"2027-0{month}-{1 + days:02d} fitted {option}",
    ]


def test_nothing_happened_teaches_nothing() -> None:
    assert learned() == Lessons(today=TODAY, lessons=(), norms=(), fewest=3)


def test_every_part_of_an_option_is_a_case() -> None:
    found = learned(
        *arrival("bulb", 1, 10), *arrival("bulb", 2, 20), *arrival("bulb", 3, 15)
    )
    one = of(found, "counter")
    assert one.cases == 3
    assert one.delays == Delays(
        cases=3, mean=Fraction(10), worst=15, said=Fraction(5), same=True
    )
    assert one == replace(of(found, "new"), grouping=one.grouping, name="counter")


def test_a_lead_time_is_offered_with_its_cases() -> None:
    lines = [*arrival("bulb", 1, 10), *arrival("bulb", 2, 20)]
    assert norm(learned(*lines), NormColumn.LEAD_DAYS) is None  # two cases
    assert norm(learned(*lines, *arrival("bulb", 3, 12)), NormColumn.LEAD_DAYS) == Norm(
        grouping=Grouping.SUPPLIER,
        name="counter",
        column=NormColumn.LEAD_DAYS,
        said=Fraction(5),
        found=Fraction(14),
        value=Fraction(14),
        more=9,
        cases=3,
    )


def test_lead_times_that_differ_are_offered_as_days_to_add() -> None:
    other = [replace(one, lead_days=len(one.id)) for one in SOLD.options]
    garage = replace(SOLD, options=tuple(other))
    lines = [*arrival("bulb", 1, 9), *arrival("reseal", 2, 11)]
    ledger = fold(garage, QUOTES, log(*lines, *arrival("bulb", 3, 9)))
    offered = norm(lessons(garage, QUOTES, ledger, TODAY), NormColumn.LEAD_DAYS)
    assert offered is not None
    assert (offered.more, offered.value) == (5, None)


def test_a_part_on_the_way_is_overdue_and_nothing_else() -> None:
    line = "2027-01-01 ordered bulb amount=1200"
    assert of(learned(line, today=date(2027, 1, 6)), "new").overdue == 0
    one = of(learned(line, today=date(2027, 1, 7)), "new")
    assert (one.overdue, one.delays, one.duds) == (1, None, None)


def test_orders_that_are_not_known_tell_no_delay() -> None:
    lines = ("2027-01-09 arrived bulb", "2027-01-09 fitted reseal")
    one = of(learned(*lines), "counter")
    assert (one.cases, one.delays, one.prices) == (0, None, None)
    assert one.duds is not None
    assert one.duds.cases == 2


def test_an_order_after_its_arrival_tells_no_delay() -> None:
    lines = ("2027-01-09 arrived bulb", "2027-01-20 ordered bulb amount=1200")
    assert of(learned(*lines), "counter").delays is None


def test_duds_are_counted_over_replaced_parts() -> None:
    lines = [*arrival("bulb", 1, 5), "2027-01-20 dud bulb", *arrival("bulb", 2, 5)]
    duds = of(learned(*lines), "counter").duds
    assert duds is not None
    assert (duds.duds, duds.cases, duds.share) == (1, 2, Fraction(1, 2))
    assert duds.low < 0.5 < duds.high


def test_a_chance_of_duds_is_offered_only_if_the_cases_speak_against_the_quote() -> (
    None
):
    good = [line for month in (1, 2) for line in arrival("bulb", month, 5)]
    one_bad = [*good, *arrival("reseal", 3, 5), "2027-03-20 dud reseal"]
    assert norm(learned(*good, *arrival("bulb", 3, 5)), NormColumn.DUD_CHANCE) is None
    offered = norm(learned(*one_bad), NormColumn.DUD_CHANCE)
    assert offered is not None  # 1 of 3 is 7.83 % at least, and 2 % were said
    assert (offered.found, offered.value) == (Fraction(1, 3), Fraction("0.078"))


def test_prices_are_compared_without_free_replacements() -> None:
    lines = [
        *arrival("alternator", 1, 5, price=26400),
        "2027-01-20 dud alternator",
        "2027-02-01 ordered alternator",
        "2027-02-06 arrived alternator",
    ]
    assert of(learned(*lines), "exchange").prices == Ratio(
        cases=1, mean=Fraction("1.1")
    )


@pytest.mark.parametrize(
    ("price", "offered"), [(1200, None), (1211, None), (1212, "1.01"), (1080, "0.9")]
)
def test_prices_are_offered_from_one_per_cent_on(
    price: int, offered: str | None
) -> None:
    lines = [line for m in (1, 2, 3) for line in arrival("bulb", m, 5, price=price)]
    found = norm(learned(*lines), NormColumn.PRICE)
    assert (found and found.value) == (Fraction(offered) if offered else None)


def test_hours_are_offered_by_route_only() -> None:
    lines = [
        f"2027-0{month}-09 fitted radiator hours={hours}"
        for month, hours in ((1, 3), (2, 3), (3, 3))
    ]
    again = [f"2027-0{month}-01 ordered radiator amount=10001" for month in (1, 2, 3)]
    found = learned(*again, *lines)
    assert of(found, "new").hours == Ratio(cases=3, mean=Fraction("1.5"))
    offered = norm(found, NormColumn.HOURS, "new")
    assert offered is not None
    assert offered.value == Fraction("1.5")
    assert norm(found, NormColumn.HOURS) is None


def test_an_option_without_supplier_counts_for_its_route() -> None:
    found = learned(*arrival("tracking", 1, 5, price=7000))
    assert [one.grouping for one in found.lessons] == [Grouping.ROUTE]


def test_options_that_are_gone_say_nothing() -> None:
    assert learned("2027-01-05 ordered gone amount=150").lessons == ()
