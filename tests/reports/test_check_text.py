import json
from dataclasses import replace

from partsplan.domain import Assumed
from partsplan.reports import check_json, check_text
from partsplan.usecases.where_it_stands import after
from tests.reports.made import GARAGE
from tests.support.small_logbook import log


def test_counts_assumptions_and_warnings_are_told() -> None:
    text = " ".join(check_text(after(GARAGE, ())).split())
    assert (
        "Found 2 vehicles, 5 faults (4 open), 4 options, 2 suppliers, 1 tool and "
        "1 milestone."
    ) in text
    assert "300.00 EUR and 8 own hours a month" in text
    assert "options, roof-film: life_months 24" in text
    assert "faults.csv:6: seep: watched only" in text


def test_an_open_fault_without_an_option_is_pointed_out() -> None:
    text = check_text(after(GARAGE, ()))
    section = text[text.index("Open faults without an option") :]
    assert "Hum at speed (hum)" in section
    assert "seep" not in section[: section.index("Assumed")]


def test_equal_assumptions_are_told_together() -> None:
    first = GARAGE.assumed[0]
    more = (first, replace(first, row="ecu-new"), replace(first, row="x", value="36"))
    text = check_text(after(replace(GARAGE, assumed=more), ()), width=120)
    assert "options, roof-film, ecu-new: life_months 24 (route norm" in text


def test_json_counts_what_was_found() -> None:
    found = json.loads(check_json(after(GARAGE, ())))
    assert found["schema"] == 1
    assert found["found"]["vehicles"] == 2
    assert found["found"]["causes"] == 0
    assert found["without_option"] == ["hum"]


def test_nothing_assumed_says_nothing() -> None:
    quiet = replace(GARAGE, assumed=(), warnings=())
    text = check_text(after(quiet, ()))
    assert "Assumed" not in text
    assert "Warnings" not in text
    assert Assumed.__name__ not in text


def test_doubtful_entries_are_warnings() -> None:
    standing = after(GARAGE, log("2027-01-05 ordered gone"))
    text = " ".join(check_text(standing).split())
    assert "and 1 logbook entry." in text
    assert '- logbook: entry 1: there is no option "gone"' in text
    found = json.loads(check_json(standing))
    assert found["found"]["entries"] == 1
    assert found["warnings"][-1].startswith("logbook: entry 1: there is no option")
