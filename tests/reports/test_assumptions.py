from dataclasses import replace
from fractions import Fraction

from partsplan.domain import Assumed, Garage, System
from partsplan.reports.assumptions import MOST_FILLED, assumptions, cautions, settings
from partsplan.reports.page import Page
from tests.reports.made import GARAGE, PLAN


def told(garage: Garage) -> str:
    page = Page(width=200)
    assumptions(page, garage)
    return str(page)


def test_the_settings_that_decide_most_are_told() -> None:
    cold = replace(
        GARAGE,
        hour_value=500,
        mean_temperature=(Fraction(3), *[Fraction(20)] * 11),
    )
    text = " ".join(settings(cold))
    assert "One point borne for one month is worth 1.50 EUR." in text
    assert "counts for 6 months after" in text
    assert "at least 80 %" in text
    assert "An own hour is worth 5.00 EUR." in text
    assert "3 C in its coldest month and 20 C in its warmest" in text


def test_deposits_are_told_of_only_where_there_are_some() -> None:
    assert "deposit" in " ".join(settings(GARAGE))
    none = tuple(replace(option, core_deposit=0) for option in GARAGE.options)
    assert "deposit" not in " ".join(settings(replace(GARAGE, options=none)))


def test_a_long_list_is_cut_and_says_where_the_rest_is() -> None:
    many = tuple(
        Assumed(
            table="faults", row=f"f{n}", column="growth", value=f"0.{n}", source="s"
        )
        for n in range(MOST_FILLED + 3)
    )
    text = told(replace(GARAGE, assumed=many))
    assert "3 more, all listed by partsplan check." in text
    assert text.count("faults, f") == MOST_FILLED
    assert "more, all listed" not in told(replace(GARAGE, assumed=many[:-3]))


def test_cautions_are_those_of_the_systems_touched() -> None:
    def of(garage: Garage) -> str:
        page = Page(width=200)
        cautions(page, garage, PLAN)
        return str(page)

    assert "After brake work" in of(GARAGE)
    cabin = tuple(replace(one, system=System.INTERIOR) for one in GARAGE.faults)
    assert "After brake work" not in of(replace(GARAGE, faults=cabin))
