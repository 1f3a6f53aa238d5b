"""A part is fitted in the month by whose middle it is in hand."""

import pytest

from partsplan.domain import Month
from partsplan.pricing import offers
from tests.support.building import garage, option


@pytest.mark.parametrize(
    ("lead_days", "months_later"),
    [
        (0, 0),
        (14, 0),
        (15, 1),
        (30, 1),
        (44, 1),
        (45, 2),
        (74, 2),
        (75, 3),
        (365, 12),
    ],
)
def test_months_from_order_to_fitting(lead_days: int, months_later: int) -> None:
    made = garage(months=14, options=(option(lead_days=lead_days),))
    found = {offer.ordered: offer.fitted for offer in offers(made)}
    assert found == {month: month + months_later for month in range(14 - months_later)}


def test_offers_end_with_the_horizon() -> None:
    made = garage(months=3, options=(option(lead_days=30),))
    assert [offer.fitted for offer in offers(made)] == [1, 2]


def test_windows_are_of_fitting_months_and_quotes_of_ordering_months() -> None:
    part = option(
        lead_days=30,
        not_before=Month(2027, 3),
        not_after=Month(2027, 5),
        valid_until=Month(2027, 3),
    )
    made = garage(months=6, options=(part,))
    assert [(offer.ordered, offer.fitted) for offer in offers(made)] == [(1, 2), (2, 3)]
