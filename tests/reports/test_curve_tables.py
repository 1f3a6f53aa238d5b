"""What a budget curve says, as text and as JSON; the curve is made by hand."""

import json
from dataclasses import replace

import pytest

from partsplan.domain import Bought, BudgetCurve, BudgetPoint, Month, Needs, Stay
from partsplan.reports import curve_json, curve_tables
from tests.reports.made import GARAGE, PLAN

HOSE, ECU, FILM = "hose-new", "ecu-exchange", "roof-film"


def bought(*jobs: str, worth: int = 5000, proven: bool = True) -> Bought:
    faults = {HOSE: "hose", ECU: "ecu", FILM: "paint"}
    return Bought(
        stages=replace(PLAN.stages, net_worth=worth),
        jobs=jobs,
        open_faults=tuple(name for job, name in faults.items() if job not in jobs),
        gap=0.0 if proven else 0.02,
        proven=proven,
    )


CURVE = BudgetCurve(
    points=(
        BudgetPoint(budget=5000, found=Needs(month=Month(2027, 1), money=1250)),
        BudgetPoint(budget=10000, found=bought(HOSE, FILM)),
        BudgetPoint(budget=20000, found=bought(HOSE, FILM, worth=6000)),
        BudgetPoint(budget=30000, found=bought(HOSE, ECU, worth=123400)),
        BudgetPoint(budget=40000, found=bought(HOSE, ECU, worth=123400)),
        BudgetPoint(budget=50000, found=bought(HOSE, ECU, FILM, proven=False)),
    ),
    stays=(
        Stay(option=HOSE, first=10000, last=50000, below=5000, above=None),
        Stay(option=FILM, first=10000, last=20000, below=5000, above=30000),
        Stay(option=ECU, first=30000, last=50000, below=20000, above=None),
        Stay(option=FILM, first=50000, last=50000, below=40000, above=None),
    ),
    resolution=200,
    finished=True,
    interrupted=False,
)


def text(curve: BudgetCurve = CURVE, usual: int | None = None, width: int = 100) -> str:
    return curve_tables(GARAGE, curve, usual, width=width)


def line(words: str, shown: str) -> str:
    return next(one for one in shown.splitlines() if words in one)


def test_a_row_for_each_sum_at_which_other_jobs_are_done() -> None:
    shown = text()
    assert line("no plan", shown).split()[0] == "50.00"
    assert "no plan: 12.50 EUR more in 2027-01" in " ".join(shown.split())
    assert line("100.00  ", shown).split()[:7] == [
        *("100.00", "50.00", "2", "0", "2", "1", "2")
    ]
    assert line("1,234.00", shown).split() == [
        *("300.00", "1,234.00", "2", "0", "2", "1", "2")
    ]
    assert "- 300.00 in: ecu-exchange; out: roof-film." in shown
    assert "200.00   " not in shown  # only months moved
    assert "400.00" not in shown


def test_the_garages_own_sum_is_marked_whether_it_changes_anything_or_not() -> None:
    for usual, sum_ in ((20000, "200.00"), (30000, "300.00")):
        (marked,) = [
            row for row in text(usual=usual).splitlines() if row.endswith("  now")
        ]
        assert marked.split()[0] == sum_
    assert "now" not in text().replace("known", "")


def test_every_sum_is_shown_where_the_sums_were_given() -> None:
    shown = text(replace(CURVE, resolution=None, finished=False))
    for budget in ("50.00", "100.00", "200.00", "300.00", "400.00", "500.00"):
        assert any(one.split()[:1] == [budget] for one in shown.splitlines())
    assert "What happens between two of them is not known." in shown


def test_where_each_job_enters_and_leaves_again() -> None:
    shown = " ".join(text().split())
    assert "A bigger budget can drop a job again" in shown
    assert "roof-film (refinish) Lacquer peels off the roof 100.00 to 200.00;" in shown
    assert "hose-new (new) Front brake hose bulges from 100.00 on" in shown
    entering = replace(CURVE, stays=CURVE.stays[:1])
    assert "can drop a job again" not in text(entering)


@pytest.mark.parametrize(
    ("below", "above", "span"),
    [
        (None, None, "all"),
        (None, 40000, "up to 300.00"),
        (100, None, "from 200.00 on"),
        (100, 40000, "200.00 to 300.00"),
    ],
)
def test_spans_say_where_they_have_no_end(
    below: int | None, above: int | None, span: str
) -> None:
    stay = Stay(option=HOSE, first=20000, last=30000, below=below, above=above)
    row = line("hose-new (new)", text(replace(CURVE, stays=(stay,))))
    assert row.endswith(f"  {span}")


def test_how_it_was_found_and_how_sure_it_is() -> None:
    shown = " ".join(text().split())
    assert "Found by planning for 6 sums from 50.00 to 500.00 EUR a month" in shown
    assert "Changes are placed to 2.00 EUR. Not proven best in the time: 500.00." in (
        shown
    )
    rough = " ".join(text(replace(CURVE, finished=False)).split())
    assert "2.00 EUR, but for some that were not closed in on: plans ran out." in rough
    stopped = " ".join(text(replace(CURVE, finished=False, interrupted=True)).split())
    assert "The search was stopped: this is what was known by then." in stopped
    assert "ran out" not in stopped


@pytest.mark.parametrize("width", [80, 100])
def test_no_line_is_longer_than_the_width(width: int) -> None:
    assert max(map(len, text(width=width).splitlines())) <= width


def test_json_has_every_sum_and_the_sums_beside_each_end() -> None:
    found = json.loads(curve_json(GARAGE, CURVE, 20000))
    assert found["schema"] == 1
    assert found["usual"] == 20000
    assert found["resolution"] == 200
    assert [one["budget"] for one in found["points"] if one["changes"]] == [
        *(5000, 10000, 30000, 50000)
    ]
    first, second, *_, last = found["points"]
    assert first["needs"] == {"month": "2027-01", "money": 1250}
    assert first["status"] == "infeasible"
    assert second["stages"]["net_worth"] == 5000
    assert second["open_faults"] == ["ecu"]
    assert (last["status"], last["gap"]) == ("feasible", 0.02)
    assert found["jobs"][-1] == {
        "option": FILM,
        "faults": ["paint"],
        "stays": [
            {"not_at": 5000, "from": 10000, "to": 20000, "no_more_at": 30000},
            {"not_at": 40000, "from": 50000, "to": 50000, "no_more_at": None},
        ],
    }
