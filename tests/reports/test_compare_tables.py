import json
from dataclasses import replace
from fractions import Fraction

from partsplan.domain import BreakEven, Comparison, Lever, Option, Route, Supplier
from partsplan.pricing import compare
from partsplan.reports import compare_tables, comparison_json
from partsplan.reports.break_evens import break_even_sentence
from tests.reports.made import GARAGE


def turned(lever: Lever, now: float | None, at: float, above: bool, **who: str) -> str:
    comparison = compare(GARAGE, "ecu")
    one = BreakEven(
        option=who.get("option", "ecu-exchange"),
        rival=who.get("rival", "ecu-new"),
        lever=lever,
        now=now,
        at=at,
        cheaper_above=above,
    )
    return break_even_sentence(GARAGE, comparison, one)


def test_the_cheaper_option_stays_cheaper_as_long_as() -> None:
    assert turned(Lever.CORE_CHANCE, 0.9, 0.31, True) == (
        "ecu-exchange (exchange) stays cheaper than ecu-new (new) as long as the old "
        "unit is accepted with a chance above 31 % (now 90 %)."
    )


def test_the_dearer_option_would_be_cheaper_if() -> None:
    text = turned(
        Lever.PRICE, 60000, 28908, False, option="ecu-new", rival="ecu-exchange"
    )
    assert text == (
        "ecu-new (new) would be cheaper than ecu-exchange (exchange) if one piece "
        "costs less than 289.08 EUR (now 600.00 EUR)."
    )


def test_a_life_without_end_is_told_as_the_time_the_vehicle_is_kept() -> None:
    text = turned(Lever.LIFE, None, 74.68, True, option="ecu-new", rival="ecu-exchange")
    assert "would be cheaper" in text
    assert "longer than 74.7 months" in text
    assert "(now 36 months, as long as the vehicle is kept)" in text


def test_every_lever_has_a_clause() -> None:
    sentences = {turned(lever, 1.0, 2.0, False) for lever in Lever}
    assert len(sentences) == len(Lever)


def test_a_price_is_told_in_the_currency_of_the_quote() -> None:
    quoted = replace(GARAGE.option["ecu-exchange"], currency="JPY")
    garage = replace(
        GARAGE,
        options=(quoted, *(one for one in GARAGE.options if one.id != quoted.id)),
        rates={"JPY": Fraction(2, 3)},
    )
    one = BreakEven(
        option="ecu-exchange",
        rival="ecu-new",
        lever=Lever.PRICE,
        now=21000,
        at=40000,
        cheaper_above=False,
    )
    assert "40,000 JPY (now 21,000 JPY)" in break_even_sentence(
        garage, compare(garage, "ecu"), one
    )


def test_options_stand_side_by_side_with_every_figure() -> None:
    text = compare_tables(GARAGE, compare(GARAGE, "ecu"), width=100)
    lines = {line[:24].strip(): line[24:].split("  ") for line in text.splitlines()}
    cells = {label: [one.strip() for one in row if one] for label, row in lines.items()}
    assert cells["Route"] == ["exchange", "new"]
    assert cells["Landed price"] == ["210.00", "600.00"]
    assert cells["Core deposit"] == ["80.00"]
    assert cells["Cash now"] == ["290.00", "600.00"]
    assert cells["Coding"] == ["paid, 40.00"]
    assert cells["Earliest fitting"] == ["2027-02", "2027-01"]
    assert cells["Price range, a piece"] == ["550.00 to 700.00 EUR"]


def test_more_options_than_fit_stand_below_each_other() -> None:
    many = tuple(
        replace(
            GARAGE.option["ecu-new"], id=f"choice-number-{number}", price=60000 + number
        )
        for number in range(7)
    )
    garage = replace(GARAGE, options=many)
    text = compare_tables(garage, compare(garage, "ecu"), width=80)
    assert max(map(len, text.splitlines())) <= 80
    assert text.count("Landed price") == 3
    assert all(f"{number}" in text for number in range(7))


def test_a_barred_option_tells_why() -> None:
    used = Option(
        id="hose-used",
        fixes=GARAGE.option["hose-new"].fixes,
        route=Route.USED,
        price=500,
        currency="EUR",
    )
    garage = replace(GARAGE, options=(*GARAGE.options, used))
    text = " ".join(compare_tables(garage, compare(garage, "hose")).split())
    barred = "hose-used (used) is barred: by the route used no parts of the brakes come"
    assert barred in text
    found = json.loads(comparison_json(garage, compare(garage, "hose")))
    assert found["options"][-1]["barred"][0]["code"] == "route_rule"
    assert found["options"][-1]["fitted"] is None


def test_what_was_assumed_is_told() -> None:
    found = compare(GARAGE, "paint")
    film = replace(found.candidates[0], assumed=GARAGE.assumed)
    text = compare_tables(GARAGE, replace(found, candidates=(film,)))
    assert "options, roof-film: life_months 24" in text


def test_a_fault_without_options_asks_for_a_quote() -> None:
    text = compare_tables(GARAGE, compare(GARAGE, "hum"))
    assert "ask for a quote" in text


def test_json_has_the_sums_in_minor_units() -> None:
    found = json.loads(comparison_json(GARAGE, compare(GARAGE, "ecu")))
    assert list(found)[:5] == ["schema", "garage", "currency", "start", "fault"]
    first = found["options"][0]
    assert (first["option"], first["landed"], first["deposit"]) == (
        "ecu-exchange",
        21000,
        8000,
    )
    assert first["fitted"] == "2027-02"
    assert {one["lever"] for one in found["break_evens"]} <= {
        one.value for one in Lever
    }


def test_an_empty_comparison_is_still_json() -> None:
    nothing = Comparison(fault="hum", candidates=(), break_evens=())
    assert json.loads(comparison_json(GARAGE, nothing))["options"] == []


def test_suppliers_are_named_not_numbered() -> None:
    named = Supplier(id="mill", name="Corner Shop", currency="EUR")
    garage = replace(GARAGE, suppliers=(named, GARAGE.suppliers[1]))
    assert "Corner Shop" in compare_tables(garage, compare(garage, "ecu"))
