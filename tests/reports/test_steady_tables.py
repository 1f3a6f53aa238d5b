"""What is said about the steadiness of the next purchases; ranges made by hand."""

import json
from dataclasses import replace
from fractions import Fraction

from partsplan.domain import End, Sensitivity, Setting, SteadyRange
from partsplan.reports import steady_json, steady_tables
from tests.reports.made import GARAGE

FOUND = Sensitivity(
    purchases=("hose-new",),
    ranges=(
        SteadyRange(
            setting=Setting.MONEY_PER_POINT,
            now=Fraction(150),
            step=Fraction(1, 2),
            low=End(
                holds=Fraction(203, 2),
                breaks=Fraction(101),
                adds=("roof-film",),
                drops=("hose-new",),
            ),
            high=End(holds=Fraction(9600)),
        ),
        SteadyRange(
            setting=Setting.SAFETY,
            now=Fraction(6, 10),
            step=Fraction(1, 200),
            low=End(
                holds=Fraction(1, 2), breaks=Fraction(99, 200), drops=("hose-new",)
            ),
            high=End(
                holds=Fraction(4, 5), breaks=Fraction(161, 200), adds=("ecu-new",)
            ),
        ),
        SteadyRange(
            setting=Setting.RESERVE,
            now=Fraction(0),
            step=Fraction(50),
            low=End(holds=Fraction(0)),
            high=End(holds=Fraction(10000), breaks=Fraction(10050), possible=False),
        ),
    ),
    plans=71,
    proven=True,
    interrupted=False,
)


def flat(found: Sensitivity = FOUND) -> str:
    return " ".join(steady_tables(GARAGE, found, width=80).split())


def test_a_range_without_an_end_is_only_what_was_tried() -> None:
    shown = flat()
    assert "1.50 EUR at least from 1.015 EUR to 96.00 EUR tried" in shown
    assert "Weight of safety 0.6 from 0.5 to 0.8 " in shown
    assert "Reserve 0.00 EUR at least from 0.00 EUR to 100.00 EUR tried" in shown


def test_what_would_be_bought_beyond_is_named() -> None:
    shown = flat()
    assert (
        "Worth of a point-month at 1.01 EUR: roof-film (refinish) instead of "
        "hose-new (new)."
    ) in shown
    assert "Weight of safety at 0.495: not hose-new (new)." in shown
    assert "Weight of safety at 0.805: ecu-new (new) besides." in shown
    assert "Reserve at 100.50 EUR: no plan can hold it." in shown


def test_how_it_was_found_and_how_sure_it_is() -> None:
    assert "To buy in 2027-01: hose-new (new)." in flat()
    assert "(71 plans)" in flat()
    assert "proven" not in flat()
    assert "stopped" not in flat()
    assert "Not every plan is proven best" in flat(replace(FOUND, proven=False))
    assert "The search was stopped" in flat(replace(FOUND, interrupted=True))
    assert "To buy in 2027-01: nothing." in flat(replace(FOUND, purchases=()))


def test_no_heading_stands_over_nothing() -> None:
    ranges = tuple(
        replace(one, low=End(holds=one.now), high=End(holds=one.now))
        for one in FOUND.ranges
    )
    assert "What would change them" not in flat(replace(FOUND, ranges=ranges))


def test_json_has_both_sides_of_each_end() -> None:
    found = json.loads(steady_json(GARAGE, FOUND))
    assert found["purchases"] == ["hose-new"]
    assert found["plans"] == 71
    first = found["settings"][0]
    assert (first["setting"], first["now"]) == ("money_per_point", 150.0)
    assert first["low"] == {
        "holds": 101.5,
        "breaks": 101.0,
        "adds": ["roof-film"],
        "drops": ["hose-new"],
        "possible": True,
    }
    assert first["high"]["breaks"] is None
