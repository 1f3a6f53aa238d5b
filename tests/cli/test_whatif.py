"""``partsplan whatif`` and ``partsplan beside``."""

import json
import shutil
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from partsplan import planning, usecases
from partsplan.cli.whatif import CHANGES
from partsplan.domain import Plan, Purchase
from partsplan.errors import InvalidRequest
from partsplan.intake import read_garage
from partsplan.usecases.changes import READERS, read_changes
from tests.cli.running import TABLES, Capture, run, write_garage

SCENARIOS = Path(__file__).parents[2] / "scenarios"


@pytest.fixture
def wide(tmp_path: Path) -> Path:
    """A garage with a pair of routes, an id with an equals sign, and a fixed fault."""
    return write_garage(
        tmp_path / "wide",
        faults_csv=TABLES["faults.csv"]
        + "mended,hatch,Mended,body,,,\na=b,hatch,Odd name,body,,,1\n",
        options_csv=TABLES["options.csv"]
        + "window-new,window,new,45.00,1\nodd=new,a=b,new,5.00,0\n",
    )


def answer(capsys: Capture, *words: str | Path) -> dict[str, Any]:
    ran = run(capsys, "whatif", *words, "--json")
    assert ran.err == ""
    data: dict[str, Any] = json.loads(ran.out)
    return data


def options(plan: dict[str, Any]) -> set[str]:
    return {job["option"] for job in plan["jobs"]}


def test_every_kind_of_change_has_a_flag() -> None:
    assert {kind for kind, _, _ in CHANGES} == set(READERS)


def test_what_leaves_and_enters_is_told(garage: Path, capsys: Capture) -> None:
    ran = run(capsys, "whatif", garage, "--budget", "15")
    assert ran.code == 0
    assert "15.00 EUR a month instead of 100.00?" in ran.out
    assert "DO NOT DRIVE" in ran.out
    assert '"--park hatch=2027-03"' in " ".join(ran.out.split())


def test_forced_and_refused_choices_are_kept(wide: Path, capsys: Capture) -> None:
    assert "window-used" in options(answer(capsys, wide, "--months", "3")["before"])
    refused = answer(capsys, wide, "--refuse", "used")["after"]
    assert "window-used" not in options(refused)
    used = answer(capsys, wide, "--use", "window-new", "--refuse", "used:hatch")
    assert "window-new" in options(used["after"])
    left = answer(capsys, wide, "--leave", "window", "--avoid", "odd=new")
    assert options(left["after"]) == {"hose-new"}
    assert {one["fault"] for one in left["difference"]["left_alone"]} == {
        "window",
        "a=b",
    }
    taken = answer(capsys, wide, "--take", "a=b", "--price", "odd=new=50")
    (job,) = [one for one in taken["after"]["jobs"] if one["option"] == "odd=new"]
    assert job["landed"] == 5000


def test_months_and_sums_are_kept(wide: Path, capsys: Capture) -> None:
    data = answer(
        capsys,
        *(wide, "--months", "4", "--budget", "2027-04=9.50", "--budget", "20"),
        *("--reserve", "1", "--hours", "2027-01=0", "--hours", "3"),
    )
    after = [one["after"] for one in data["difference"]["money"]]
    assert [one["budget"] for one in after] == [2000, 2000, 2000, 950]
    assert min(one["balance"] for one in after) >= 100
    assert after[0]["hours"] == 0
    assert max(one["hours"] for one in after) <= 3


def test_a_vehicle_is_parked_or_given_up(garage: Path, capsys: Capture) -> None:
    parked = answer(capsys, garage, "--park", "hatch", "--budget", "0")
    assert parked["after"]["stages"]["unsafe_vehicle_months"] == 0
    assert parked["spared_by_parking"][0]["months"] == ["2027-01", "2027-02", "2027-03"]
    until = answer(capsys, garage, "--park", "hatch=2027-03", "--budget", "0")
    assert until["after"]["stages"]["unsafe_vehicle_months"] == 1
    gone = answer(capsys, garage, "--give-up", "hatch=2027-01")
    assert options(gone["after"]) == set()


@pytest.mark.parametrize(
    ("flags", "said"),
    [
        ("--take hosse", 'There is no fault "hosse". Did you mean "hose"?'),
        ("--leave windw", 'Did you mean "window"?'),
        ("--use hose-nww", 'There is no option "hose-nww". Did you mean "hose-new"?'),
        ("--avoid x", 'There is no option "x".'),
        ("--price hose-nw=3", 'Did you mean "hose-new"?'),
        ("--price hose-new", 'price: expected OPTION=AMOUNT, got "hose-new"'),
        ("--price hose-new=1.234", "price: expected at most 2 decimals in EUR"),
        ("--price hose-new=-1", 'price: expected 0 or more, got "-1"'),
        ("--refuse usd", 'There is no route "usd". Did you mean "used"?'),
        ("--refuse used:hatchh", 'Did you mean "hatch"?'),
        ("--park hatchh", 'There is no vehicle "hatchh". Did you mean "hatch"?'),
        ("--park hatch=soon", 'park: expected a month YYYY-MM, got "soon"'),
        ("--give-up hatch", 'give-up: expected VEHICLE=MONTH, got "hatch"'),
        ("--give-up hatch=2026-12", "give-up: expected 2027-01 or later"),
        ("--budget much", 'budget: expected an amount like 12.50, got "much"'),
        ("--budget 2027-04=5", "budget: expected a month from 2027-01 to 2027-03"),
        ("--budget -5", 'budget: expected 0 or more, got "-5"'),
        ("--hours 1e9", "hours: expected a number, 0-10000"),
        ("--hours 2027-13=1", 'hours: expected a month YYYY-MM, got "2027-13"'),
        ("--reserve -1", "reserve: expected 0 or more"),
        ("--months 37", 'months: expected 1-36, got "37"'),
        ("--months two", "months: expected a whole number, 1-36"),
        (
            "--take hose --leave hose",
            '"take hose" and "leave hose" contradict each other',
        ),
        (
            "--budget 5 --budget 6",
            '"budget 5" and "budget 6" contradict each other',
        ),
        ("", "Give at least one of --budget, --price"),
    ],
)
def test_what_cannot_be_asked_is_told_in_one_line(
    flags: str, said: str, garage: Path, capsys: Capture
) -> None:
    ran = run(capsys, "whatif", garage, *flags.split())
    assert ran.code == 2
    assert ran.out == ""
    assert said in ran.err
    assert len(ran.err.splitlines()) == 1 or not flags


def test_a_fault_that_is_not_open_cannot_be_taken(
    tmp_path: Path, capsys: Capture
) -> None:
    watched = write_garage(
        tmp_path / "watched",
        faults_csv="id,vehicle,title,status\nhose,hatch,Hose,watch\nwindow,hatch,W,\n",
    )
    ran = run(capsys, "whatif", watched, "--take", "hose")
    assert ran.code == 2
    assert 'take: expected an open fault, "hose" is watch' in ran.err


def test_the_same_change_twice_is_one(garage: Path) -> None:
    made = read_garage(garage)
    assert len(read_changes(made, [("budget", "5"), ("budget", "5.00")])) == 1


def test_what_is_bought_already_has_no_other_price(garage: Path) -> None:
    made = read_garage(garage)
    there = replace(made.option["hose-new"], bought=Purchase(month=made.start))
    later = replace(made, options=(there,))
    with pytest.raises(InvalidRequest, match="price: hose-new is bought already"):
        read_changes(later, [("price", "hose-new=5")])


def test_an_unknown_kind_of_change_is_told(garage: Path) -> None:
    with pytest.raises(InvalidRequest, match='Did you mean "budget"'):
        usecases.whatif(garage, [("budgt", "5")])
    with pytest.raises(InvalidRequest, match="nothing is changed"):
        usecases.whatif(garage, [])


def test_a_price_in_another_currency_has_its_digits(
    tmp_path: Path, capsys: Capture
) -> None:
    foreign = write_garage(
        tmp_path / "foreign",
        options_csv="id,fixes,route,price,currency\nhose-new,hose,new,3450,JPY\n",
    )
    with (foreign / "garage.toml").open("a") as file:
        file.write("[rates]\nJPY = 0.01\n")
    after = answer(capsys, foreign, "--price", "hose-new=2000")["after"]
    assert after["jobs"][0]["landed"] == 2000
    ran = run(capsys, "whatif", foreign, "--price", "hose-new=20.50")
    assert "at most 0 decimals in JPY" in ran.err


def test_what_no_plan_can_do_exits_with_4(garage: Path, capsys: Capture) -> None:
    ran = run(capsys, "whatif", garage, "--use", "hose-new", "--hours", "0")
    assert ran.code == 4
    assert "no plan does all that is asked" in ran.out
    poor = run(capsys, "whatif", garage, "--reserve", "500")
    assert poor.code == 4
    assert "Then: there is no plan" in poor.out


def test_a_search_that_was_stopped_is_told_by_its_exit_code(
    garage: Path, capsys: Capture, monkeypatch: pytest.MonkeyPatch
) -> None:
    real = planning.replan
    stops: list[bool] = []

    def stopped(*words: Any, **named: Any) -> Plan:
        found = real(*words, **named)
        assert isinstance(found, Plan)
        return replace(found, interrupted=stops.pop(0)) if stops else found

    monkeypatch.setattr(planning, "replan", stopped)
    stops[:] = [True]
    first = run(capsys, "whatif", garage, "--budget", "5")
    assert (first.code, first.out) == (130, "")
    stops[:] = [False, True]
    second = run(capsys, "whatif", garage, "--budget", "5")
    assert second.code == 130
    assert "What if" in second.out


def test_two_folders_side_by_side(wide: Path, tmp_path: Path, capsys: Capture) -> None:
    other = tmp_path / "other"
    shutil.copytree(wide, other)
    cheaper = (other / "options.csv").read_text().replace("45.00", "1.00")
    (other / "options.csv").write_text(cheaper)
    toml = (other / "garage.toml").read_text()
    (other / "garage.toml").write_text(toml.replace("test garage", "cheaper window"))
    ran = run(capsys, "beside", wide, other)
    assert ran.code == 0
    assert "- Second: cheaper window, 2027-01 to 2027-03" in ran.out
    assert "1 job is done another way" in ran.out
    assert "There is one input that differs:" in ran.out
    assert "price of the option window-new: 45.00 in the first, 1.00 in the" in ran.out
    same = run(capsys, "beside", wide, wide)
    assert "Nothing changes" in same.out


def test_one_folder_in_two_ways(wide: Path, capsys: Capture) -> None:
    ran = run(
        capsys,
        *("beside", wide, wide, "--json", "--first", "budget=60"),
        *("--second", "budget=20", "--second", "months=4"),
    )
    assert ran.code == 0
    data = json.loads(ran.out)
    assert (data["before"]["months"], data["after"]["months"]) == (3, 4)
    assert data["why"]["found"] in ("explained", "alike")
    ran = run(capsys, "beside", wide, wide, "--second", "budget")
    assert ran.code == 2
    assert '--second: expected KIND=VALUE, got "budget"' in ran.err
    ran = run(capsys, "beside", wide, wide, "--second", "take=hosse")
    assert 'Did you mean "hose"' in ran.err


def test_two_currencies_cannot_stand_side_by_side(
    garage: Path, tmp_path: Path, capsys: Capture
) -> None:
    toml = TABLES["garage.toml"].replace("EUR", "GBP")
    pounds = write_garage(tmp_path / "pounds", garage_toml=toml)
    ran = run(capsys, "beside", garage, pounds)
    assert ran.code == 2
    assert "count in EUR and GBP; expected one currency" in ran.err


def test_a_broken_garage_beside_is_told(
    garage: Path, tmp_path: Path, capsys: Capture
) -> None:
    broken = write_garage(tmp_path / "broken", vehicles_csv="id,name\n")
    assert run(capsys, "beside", garage, broken).code == 3


@pytest.mark.parametrize(
    ("scenario", "flags"),
    [
        ("household", ("--budget", "200", "--park", "hatch=2027-02")),
        ("transport-club", ("--refuse", "workshop", "--seconds", "20")),
        ("project-car", ("--give-up", "coupe=2027-06", "--gap", "0.01")),
    ],
)
def test_scenarios_fit_80_columns(
    scenario: str,
    flags: tuple[str, ...],
    capsys: Capture,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setenv("COLUMNS", "80")
    ran = run(capsys, "whatif", SCENARIOS / scenario, *flags)
    assert ran.code == 0, ran.err
    assert max(map(len, ran.out.splitlines())) <= 80
