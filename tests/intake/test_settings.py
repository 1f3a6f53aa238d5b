"""garage.toml: what its keys mean, and what is said of wrong ones."""

from fractions import Fraction
from pathlib import Path

import pytest

from partsplan.domain import Currency, Garage, Month, Stage, Weights
from partsplan.intake import read_garage
from tests.intake.plain_garage import PLAIN, problems, save, with_line

SETTINGS = PLAIN["garage.toml"]
LAST = "[rates]"
TWELVE = "[3, 4, 7, 10, 14, 17, 19, 19, 16, 12, 7, 4]"


def settings(folder: Path, old: str, new: str) -> Garage:
    """The plain garage with other settings."""
    return read_garage(save(folder, with_line("garage.toml", old, new)))


def test_keys_that_are_left_out_mean_what_the_tables_say(tmp_path: Path) -> None:
    garage = settings(tmp_path, "months = 6\n", "")
    assert garage.currency == Currency("EUR", 2)
    assert garage.start == Month(2027, 1)
    assert garage.months == 6
    assert garage.budget == (20000, 25050)
    assert garage.hours == (Fraction(10),)
    assert (garage.opening_cash, garage.carry_over, garage.reserve) == (0, True, 0)
    assert (garage.hour_value, garage.look_beyond) == (0, 6)
    assert garage.tax_rate == 0
    assert garage.core_trust == Fraction(8, 10)
    assert not garage.allow_risky_routes
    assert garage.discount_rate == 0
    assert garage.weights == Weights(
        safety=Fraction(6, 10), drivability=Fraction(3, 10), enjoyment=Fraction(1, 10)
    )
    assert garage.mean_temperature is None
    assert not garage.coding_tool
    assert garage.priority == tuple(Stage)


def test_a_point_is_worth_a_200th_of_the_mean_budget_of_the_horizon(
    tmp_path: Path,
) -> None:
    garage = settings(tmp_path, "months = 6", "months = 3")
    assert garage.money_per_point == Fraction(20000 + 2 * 25050, 3) / 200


def test_money_per_point_may_be_finer_than_the_currency(tmp_path: Path) -> None:
    garage = settings(tmp_path, LAST, f"money_per_point = 1.0055\n{LAST}")
    assert garage.money_per_point == Fraction("100.55")


def test_a_worthless_point_stays_worthless(tmp_path: Path) -> None:
    garage = settings(tmp_path, LAST, f"money_per_point = 0\n{LAST}")
    assert garage.money_per_point == 0


def test_rates_turn_into_minor_units_for_a_minor_unit(tmp_path: Path) -> None:
    rates = f"{LAST}\nKWD = 3\nEUR = 1.0"
    garage = settings(tmp_path, LAST, rates)
    assert garage.rates == {
        "EUR": 1,
        "JPY": Fraction("0.6"),
        "KWD": Fraction("0.3"),
    }


def test_numbers_are_exact_as_written(tmp_path: Path) -> None:
    keys = 'budget = [0.10, "0.20", 3]\nhours = ["1/3", 0.1]'
    text = SETTINGS.replace('budget = [200, "250.50"]\nhours = 10', keys)
    garage = read_garage(save(tmp_path, {**PLAIN, "garage.toml": text}))
    assert garage.budget == (10, 20, 300)
    assert garage.hours == (Fraction(1, 3), Fraction(1, 10))


def test_a_cold_workshop_has_its_temperatures(tmp_path: Path) -> None:
    workshop = f"[workshop]\nmean_temperature = {TWELVE}\ncoding_tool = true\n{LAST}"
    garage = settings(tmp_path, LAST, workshop)
    assert garage.mean_temperature is not None
    assert garage.mean_temperature[6] == 19
    assert garage.coding_tool


@pytest.mark.parametrize(
    ("old", "new", "messages"),
    [
        (
            '"EUR"',
            '"EURO"',
            [
                ":2: currency: expected an ISO 4217 code like EUR, "
                'got "EURO"; did you mean "EUR"?'
            ],
        ),
        (
            "currency =",
            "curency =",
            [
                ': currency: needed key is missing; is it "curency"?',
                ':2: curency: no such key; did you mean "currency"?',
            ],
        ),
        ('"2027-01"', '"2027-13"', [":3: start: expected a month YYYY-MM, got"]),
        ('"2027-01"', "2027-01-01", [":3: start: expected a month YYYY-MM, got"]),
        ('"2027-01"', "2027-01", [":3: expected quotes around a month:"]),
        ("months = 6", "months = 37", [':4: months: expected 1-36, got "37"']),
        ("months = 6", "months = 0", [':4: months: expected 1-36, got "0"']),
        ("months = 6", "months = true", [':4: months: expected 1-36, got "true"']),
        ("months = 6", "months = 6.0", [":4: months: expected a whole number, 1-36"]),
        (
            'budget = [200, "250.50"]',
            'budget = [1, "a", -4, nan, inf, 1.5e1, 2.505, true, [1]]',
            [
                ':5: budget, value 2: expected an amount like 12.50, got "a"',
                ':5: budget, value 3: expected 0 or more, got "-4"',
                ':5: budget, value 4: expected an amount like 12.50, got "nan"',
                ':5: budget, value 5: expected an amount like 12.50, got "inf"',
                ':5: budget, value 6: expected an amount like 12.50, got "1.5e1"',
                ':5: budget, value 7: expected at most 2 decimals in EUR, got "2.505"',
                ':5: budget, value 8: expected an amount, 0 or more, got "true"',
                ":5: budget, value 9: expected an amount, 0 or more, got a list",
            ],
        ),
        ("hours = 10", "hours = []", [":6: hours: expected 1-36 values, got 0"]),
        ("hours = 10", "hours = -1", [':6: hours: expected 0 or more, got "-1"']),
        (
            LAST,
            f'opening_cash = -5\ncarry_over = "yes"\nreserve = -5\n{LAST}',
            [
                ':9: carry_over: expected true or false, got "yes"',
                ':10: reserve: expected 0 or more, got "-5"',
            ],
        ),
        (
            LAST,
            f"core_trust = 80\nlook_beyond = 601\n{LAST}",
            [
                ':8: core_trust: expected 0-1, got "80"',
                ':9: look_beyond: expected 0-600, got "601"',
            ],
        ),
        (
            LAST,
            f'priority = ["safety", "safety", "mobility", "worth"]\n{LAST}',
            [
                ":8: priority: expected deadlines, safety, mobility, worth in any "
                "order, each once, got safety, safety, mobility, worth"
            ],
        ),
        (
            LAST,
            f"[weights]\nsafety = 0\ndrivability = 0.0\nenjoyment = 0\n{LAST}",
            [":8: weights: expected a weight above 0, got 0 for all"],
        ),
        (
            LAST,
            f"[weights]\nsafty = 1\nenjoyment = -1\n{LAST}",
            [
                ':9: weights.safty: no such key; did you mean "safety"?',
                ':10: weights.enjoyment: expected 0 or more, got "-1"',
            ],
        ),
        (
            LAST,
            f"weights = 3\n{LAST}",
            [':8: weights: expected a section in brackets, got "3"'],
        ),
        (
            LAST,
            f"heated = true\n{LAST}",
            [":8: heated: no such key; it belongs in [workshop]"],
        ),
        (
            LAST,
            f"[workshop]\nbudget = 3\n{LAST}",
            [
                ":9: workshop.budget: no such key; it belongs above the first section",
            ],
        ),
        (
            LAST,
            f"{LAST}\nbudget = 3",
            [":9: rates.budget: no such key; it belongs above the first section"],
        ),
        (
            LAST,
            f"{LAST}\nUSX = 2\nUSD = -1\nGBP = 0",
            [
                ":9: rates.USX: expected an ISO 4217 code like EUR, got",
                ':10: rates.USD: expected more than 0, got "-1"',
                ':11: rates.GBP: expected more than 0, got "0"',
            ],
        ),
        (
            LAST,
            f"{LAST}\nEUR = 2",
            [":8: rates: expected 1 for the garage's own currency EUR"],
        ),
        (
            LAST,
            f"[workshop]\nmean_temperature = [1, 2]\n{LAST}",
            [
                ":9: workshop.mean_temperature: "
                "expected 12 numbers, January first, got 2"
            ],
        ),
        (
            LAST,
            f"[workshop]\nheated = false\n{LAST}",
            [":8: workshop: expected mean_temperature if it is not heated"],
        ),
        (
            LAST,
            f"[workshop]\nheated = true\nmean_temperature = {TWELVE}\n{LAST}",
            [":8: workshop: expected heated = true or mean_temperature, got both"],
        ),
        ('"Plain"', '""', [':1: name: expected text, got ""']),
        ('"Plain"', '"a\\u0007"', [":1: name: expected no control characters"]),
        ('"Plain"', "", [":1: expected TOML: Invalid value; text needs quotes"]),
        ('"Plain"', '"Plain"\nname = "a"', [":2: expected TOML: Cannot overwrite"]),
        ('"Plain"', '"""a', [": expected TOML: Unterminated string"]),
        (
            "months = 6",
            f"months = {'9' * 5000}",
            [": expected numbers of fewer digits"],
        ),
        ("months = 6", f"months = {'[' * 50_000}", [": expected fewer brackets"]),
        ("months = 6", '"a\\nb" = 1', [": a\\nb: no such key"]),
    ],
)
def test_wrong_keys_are_told_in_one_line_each(
    tmp_path: Path, old: str, new: str, messages: list[str]
) -> None:
    found = problems(tmp_path, with_line("garage.toml", old, new))
    assert len(found) == len(messages)
    for line, message in zip(found, messages, strict=True):
        assert line.startswith("garage.toml")
        assert message in line
        assert line.isprintable()


def test_needed_keys_are_told_all_at_once(tmp_path: Path) -> None:
    assert problems(tmp_path, {**PLAIN, "garage.toml": ""}) == [
        f"garage.toml: {key}: needed key is missing"
        for key in ("budget", "currency", "hours", "name", "start")
    ]


def test_tables_are_checked_even_without_settings(tmp_path: Path) -> None:
    files = {**PLAIN, "tools.csv": "id,name,price,owned\nt1,Press,a,no\n"}
    del files["garage.toml"]
    assert problems(tmp_path, files) == [
        "garage.toml: no such file",
        'tools.csv:2: price: expected an amount like 0.1250, got "a"',
    ]
