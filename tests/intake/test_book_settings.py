"""The sheet of keys and values: what it means, and what is said of wrong cells."""

from decimal import Decimal
from fractions import Fraction
from typing import Any

import pytest
from pydantic import BaseModel

from partsplan.domain import Currency, Month, Stage, Weights
from partsplan.intake.setting_columns import LISTS, SECTIONS, SETTINGS
from partsplan.intake.settings import Settings, WeightSettings, WorkshopSettings
from partsplan.sheets.contents import Dated
from tests.intake.plain_book import garage, problems, sheets, with_setting

TWELVE = "3; 4; 7; 10; 14; 17; 19; 19; 16; 12; 7; 4.5"


@pytest.mark.parametrize(
    ("key", "value", "field", "means"),
    [
        ("name", "=Plain", "name", "=Plain"),
        ("name", Decimal(2027), "name", "2027"),
        ("months", Decimal("12"), "months", 12),
        ("budget", Decimal("220.5"), "budget", (22050,)),
        ("budget", "200; 220.50;;", "budget", (20000, 22050)),
        ("hours", "8;1/3", "hours", (Fraction(8), Fraction(1, 3))),
        ("opening_cash", Decimal("-75"), "opening_cash", -7500),
        ("carry_over", False, "carry_over", False),
        ("carry_over", "No", "carry_over", False),
        ("allow_risky_routes", "yes", "allow_risky_routes", True),
        ("priority", "worth;safety;mobility;deadlines", "priority", None),
        ("rates.USD", Decimal("0.92"), "rates", None),
        ("workshop.mean_temperature", TWELVE, "mean_temperature", None),
        ("workshop.coding_tool", True, "coding_tool", True),
        ("core_trust", None, "core_trust", Fraction(8, 10)),
    ],
)
def test_a_setting_means_what_garage_toml_would_mean(
    key: str, value: Any, field: str, means: object
) -> None:
    found = getattr(garage(with_setting(key, value)), field)
    if key == "priority":
        assert found == (Stage.WORTH, Stage.SAFETY, Stage.MOBILITY, Stage.DEADLINES)
    elif key == "rates.USD":
        assert found["USD"] == Fraction(92, 100)
    elif key == "workshop.mean_temperature":
        assert (len(found), found[-1]) == (12, Fraction(9, 2))
    else:
        assert found == means


def test_weights_are_keys_of_their_own() -> None:
    made = with_setting("weights.safety", Decimal("0.5"))
    made["garage"].append(["weights.enjoyment", "0"])
    assert garage(made).weights == Weights(
        safety=Fraction(1, 2), drivability=Fraction(3, 10), enjoyment=Fraction(0)
    )


def test_other_columns_and_blank_rows_say_nothing() -> None:
    made = sheets()
    made["garage"] = [
        ["meaning", "KEY", "", "Value"],
        *(["why", key, "x", value] for key, value in made["garage"][1:]),
        [None, None, None, None],
        ["a remark", None, None, None],
        ["unknown, but blank", "bugdet", None, None],
    ]
    assert garage(made) == garage(sheets())


def test_the_first_month_may_be_a_date() -> None:
    from datetime import date

    found = garage(with_setting("start", Dated(date(2027, 4, 1))))
    assert found.start == Month(2027, 4)
    assert found.currency == Currency("EUR", 2)


@pytest.mark.parametrize(
    ("key", "value", "message"),
    [
        ("months", "seven", 'expected a whole number, 1-36, got "seven"'),
        ("months", None, ""),
        ("start", Decimal(46000), "expected a month YYYY-MM, got the number 46000"),
        ("carry_over", "perhaps", 'expected yes or no, got "perhaps"'),
        ("carry_over", Decimal(1), 'expected yes or no, got "1"'),
        ("tax_rate", True, "expected 0-1, got TRUE"),
        ("bugdet", "1", 'no such key; did you mean "budget"?'),
        ("safety", "1", 'no such key; did you mean "weights.safety"?'),
        ("weights.budget", "1", 'no such key; did you mean "budget"?'),
        ("workshop.heat", "1", 'no such key; did you mean "workshop.heated"?'),
        ("weights", "1", 'expected a key like "weights.safety"'),
        ("rates", "1", 'expected a key like "rates.USD"'),
        ("colour", "1", "no such key"),
        ("rates.XXX", "1", 'expected an ISO 4217 code like EUR, got "XXX"'),
        ("rates.USD", "0", 'expected more than 0, got "0"'),
        ("rates.", "1", 'expected an ISO 4217 code like EUR, got ""'),
    ],
)
def test_a_wrong_setting_is_told_with_its_cell(
    key: str, value: Any, message: str
) -> None:
    made = with_setting(key, value)
    if not message:
        assert garage(made).months == 6
        return
    line = len(made["garage"])
    assert problems(made) == [f"garage!B{line}: {key}: {message}"]


def test_a_value_of_a_list_is_told_with_its_place() -> None:
    assert problems(with_setting("budget", "200;x;250")) == [
        'garage!B8: budget, value 2: expected an amount like 12.50, got "x"'
    ]


def test_a_needed_setting_is_missed() -> None:
    assert problems(with_setting("budget", None)) == [
        "garage!B8: budget: needed key is missing"
    ]
    made = sheets()
    made["garage"] = [row for row in made["garage"] if row[0] != "hours"]
    assert problems(made) == ["garage: hours: needed key is missing"]


def test_a_setting_that_cannot_be_read_is_not_missed_too() -> None:
    assert problems(with_setting("start", True)) == [
        "garage!B8: start: expected a month YYYY-MM, got TRUE"
    ]


def test_a_key_that_is_there_twice_is_told() -> None:
    made = sheets()
    made["garage"].append(["hours", "9"])
    assert problems(made) == [
        "garage!B9: hours: expected each key once (first in line 7)"
    ]


def test_a_value_without_a_key_is_told() -> None:
    made = sheets()
    made["garage"].append([None, "9"])
    assert problems(made) == ["garage!B9: expected a key beside this value"]


def test_without_the_two_columns_nothing_is_read() -> None:
    made = sheets()
    made["garage"][0] = ["key", "amount"]
    assert problems(made) == ["garage!A1: value: needed column is missing"]


def test_a_currency_without_a_rate_names_the_sheet() -> None:
    made = sheets()
    made["garage"] = [row for row in made["garage"] if row[0] != "rates.JPY"]
    assert problems(made) == [
        "suppliers!C3: currency: no rate for JPY under rates in garage"
    ]


def test_the_sheet_has_every_key_of_the_settings() -> None:
    sections: dict[str, type[BaseModel]] = {
        "weights": WeightSettings,
        "workshop": WorkshopSettings,
    }
    keys = [
        f"{key}.{inner}" if key in sections else key
        for key in Settings.model_fields
        for inner in (sections[key].model_fields if key in sections else [key])
    ]
    assert sorted(one.name.replace("rates.USD", "rates") for one in SETTINGS) == sorted(
        keys
    )
    assert {*sections, "rates"} == SECTIONS
    assert {one.name for one in SETTINGS} >= LISTS


def test_the_defaults_that_are_told_are_those_that_count() -> None:
    plain = sheets()
    told = [
        [one.name, one.default] for one in SETTINGS if one.default and not one.needed
    ]
    kept = [row for row in plain["garage"] if row[0] not in dict(told)]
    assert garage({**plain, "garage": [*kept, *told]}) == garage(plain)
    needed = {one.name for one in SETTINGS if one.needed}
    assert needed == {
        name for name, one in Settings.model_fields.items() if one.is_required()
    }
