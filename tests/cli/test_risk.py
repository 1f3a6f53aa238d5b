"""``partsplan risk``"""

import json
from pathlib import Path

import pytest

from tests.cli.running import Capture, run, write_garage

OPTIONS = """\
id,fixes,route,price,price_low,price_high,hours,dud_chance,lead_days
hose-new,hose,new,34.50,30.00,48.00,2,0.1,3
window-used,window,used,20.00,,,1,0.2,
"""


@pytest.fixture
def risky(tmp_path: Path) -> Path:
    return write_garage(tmp_path / "risky", options_csv=OPTIONS)


def test_risk_tells_how_sure_the_money_is(risky: Path, capsys: Capture) -> None:
    ran = run(capsys, "risk", risky)
    assert ran.code == 0
    assert "Risk of the plan for test garage, 2027-01 to 2027-03" in ran.out
    assert "Carried out in 10,000 futures (seed 0)." in ran.out
    assert "hose-new" in ran.out


def test_the_same_seed_gives_the_same_text(risky: Path, capsys: Capture) -> None:
    words = ("risk", risky, "--futures", "500", "--json", "--seed")
    first, again, other = (run(capsys, *words, seed).out for seed in ("1", "1", "2"))
    assert first == again
    assert json.loads(first)["mean_cost"] != json.loads(other)["mean_cost"]


def test_flags_reach_the_futures_and_the_plan(risky: Path, capsys: Capture) -> None:
    flags = ("--new-faults", "0.5", "--late", "1", "--months", "2", "--budget", "150")
    ran = run(capsys, "risk", risky, "--json", *flags)
    found = json.loads(ran.out)
    assert found["settings"]["new_faults"] == 0.5
    assert found["settings"]["late_chance"] == 1
    assert len(found["months"]) == 2
    assert found["months"][0]["planned"] > 9000
    later = {one["subject"]: one["later"] for one in found["shares"]}
    assert later["hose-new"] == 1
    cure = found["promises"][0]
    assert (cure["subject"], cure["chance"]) == ("hose", 0)


def test_without_a_plan_it_tells_what_is_needed(
    tmp_path: Path, capsys: Capture
) -> None:
    debt = write_garage(tmp_path / "debt")
    with (debt / "garage.toml").open("a") as file:
        file.write('opening_cash = "-150.00"\n')
    ran = run(capsys, "risk", debt, "--json")
    assert ran.code == 4
    assert json.loads(ran.out)["needs"] == {"month": "2027-01", "money": 5000}
    assert "50.00 EUR" in run(capsys, "risk", debt).out


@pytest.mark.parametrize(
    "flags",
    [
        ("--futures", "99"),
        ("--futures", "100001"),
        ("--seed", "-1"),
        ("--new-faults", "nan"),
        ("--new-faults", "-1"),
        ("--late", "1.5"),
        ("--late", "nan"),
    ],
)
def test_figures_out_of_range_are_refused(
    flags: tuple[str, str], risky: Path, capsys: Capture
) -> None:
    ran = run(capsys, "risk", risky, *flags)
    assert ran.code == 2
    assert flags[0] in ran.err
    assert ran.out == ""


def test_it_fits_a_usual_terminal(
    risky: Path, capsys: Capture, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("COLUMNS", "80")
    lines = run(capsys, "risk", risky, "--new-faults", "0.1").out.splitlines()
    assert max(map(len, lines)) <= 80
