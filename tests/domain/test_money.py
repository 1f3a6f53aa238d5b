"""Money as decimal text, with the minor digits of ISO 4217."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from partsplan.domain import Currency

EUR, JPY, KWD = Currency("EUR", 2), Currency("JPY", 0), Currency("KWD", 3)


@pytest.mark.parametrize(
    ("currency", "text", "amount"),
    [
        (EUR, "12.50", 1250),
        (EUR, "12.5", 1250),
        (EUR, "12", 1200),
        (EUR, "0.01", 1),
        (EUR, "-3.07", -307),
        (EUR, "1.500", 150),  # zeros beyond the minor digits say nothing
        (JPY, "1250", 1250),
        (JPY, "1250.0", 1250),
        (KWD, "1.25", 1250),
        (KWD, "0.001", 1),
    ],
)
def test_decimal_text_is_whole_minor_units(
    currency: Currency, text: str, amount: int
) -> None:
    assert currency.parse(text) == amount


@pytest.mark.parametrize(
    ("currency", "text"), [(EUR, "1.005"), (JPY, "0.5"), (KWD, "1.0001")]
)
def test_more_decimals_than_the_currency_has_are_refused(
    currency: Currency, text: str
) -> None:
    wanted = f"expected at most {currency.digits} decimals in {currency.code}"
    with pytest.raises(ValueError, match=wanted):
        currency.parse(text)


@pytest.mark.parametrize(
    "text", ["", "12,50", "1e3", "1.", ".5", "+1", " 1", "0x10", "1 000", "٣", "nan"]
)
def test_what_is_not_plain_decimal_is_refused(text: str) -> None:
    with pytest.raises(ValueError, match=r"expected an amount like 12\.50, got"):
        EUR.parse(text)


@pytest.mark.parametrize(
    ("currency", "amount", "text"),
    [
        (EUR, 5, "0.05"),
        (EUR, -5, "-0.05"),
        (EUR, -1250, "-12.50"),
        (JPY, -7, "-7"),
        (KWD, 1250, "1.250"),
    ],
)
def test_amounts_are_written_with_all_minor_digits(
    currency: Currency, amount: int, text: str
) -> None:
    assert currency.format(amount) == text


@given(st.sampled_from((EUR, JPY, KWD)), st.integers(-(10**11), 10**11))
def test_what_is_written_reads_back(currency: Currency, amount: int) -> None:
    assert currency.parse(currency.format(amount)) == amount
