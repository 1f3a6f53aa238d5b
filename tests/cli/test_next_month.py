"""The plan of a later month, by the commands that people use."""

import json
from pathlib import Path
from typing import Any

import pytest

from tests.cli.running import Ran, run, start, write_garage

DAY = ("--today", "2027-12-31")


class Owner:
    """Somebody who plans a garage and writes down what happens."""

    def __init__(self, capsys: pytest.CaptureFixture[str], folder: Path) -> None:
        self.capsys, self.folder = capsys, folder

    def asks(self, command: str, *words: str) -> Ran:
        return run(self.capsys, command, self.folder, *words)

    def plans(self, *flags: str) -> dict[str, Any]:
        done = self.asks("plan", "--json", *flags)
        assert done.code == 0, done.err
        found: dict[str, Any] = json.loads(done.out)
        return found

    def enters(self, *words: str) -> None:
        done = self.asks("enter", *words, *DAY)
        assert done.code == 0, done.err

    def first_job(self) -> tuple[dict[str, Any], dict[str, Any]]:
        plan = self.plans()
        return plan, plan["jobs"][0]


@pytest.fixture
def owner(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> Owner:
    return Owner(capsys, write_garage(tmp_path / "my-garage"))


def test_without_a_logbook_nothing_changes(owner: Owner) -> None:
    plan = owner.plans()
    assert plan == owner.plans("--from", plan["start"])
    assert not any("bought" in job for job in plan["jobs"])
    assert "since_kept" not in plan
    assert not list(owner.folder.glob("*.sqlite"))


def test_what_was_bought_is_fitted_and_not_paid_again(owner: Owner) -> None:
    plan, job = owner.first_job()
    owner.enters("ordered", job["option"], "--day", f"{job['ordered']}-02")
    later = owner.plans()
    again = next(one for one in later["jobs"] if one["option"] == job["option"])
    assert again["bought"] is True
    assert (again["ordered"], again["landed"]) == (job["ordered"], 0)
    assert again["fitted"] >= job["fitted"]
    shopping = owner.asks("plan").out.split("Month by month")[0]
    assert job["option"] not in shopping.split("To pay")[0]
    paid = job["landed"] + job["deposit"]
    assert opening(later) == opening(plan) - paid


def opening(plan: dict[str, Any]) -> int:
    first = plan["ledger"][0]
    moved: int = first["budget"] - first["out"] + first["in"]
    return int(first["balance"]) - moved


def test_what_was_fitted_is_fixed(owner: Owner) -> None:
    _, job = owner.first_job()
    for step in ("ordered", "arrived", "fitted"):
        owner.enters(step, job["option"], "--day", f"{job['fitted']}-20")
    later = owner.plans()
    assert job["option"] not in [one["option"] for one in later["jobs"]]
    assert not set(job["faults"]) & {skip["fault"] for skip in later["skipped"]}


def test_it_starts_in_the_month_of_the_latest_entry_or_when_asked(owner: Owner) -> None:
    first = owner.plans()["start"]
    owner.enters("note", "--day", "2027-03-09", "--text", "nothing new")
    assert owner.plans()["start"] == max(first, "2027-03")
    assert owner.plans("--from", "2027-05")["start"] == "2027-05"


@pytest.mark.parametrize("month", ["2027-02", "1999-01", "2027-13", "soon"])
def test_a_month_that_cannot_be_the_first_is_refused(owner: Owner, month: str) -> None:
    owner.enters("note", "--day", "2027-03-09", "--text", "nothing new")
    done = owner.asks("plan", "--from", month)
    assert done.code in (2, 3)
    assert done.out == ""
    assert "--from: expected" in done.err
    assert "Traceback" not in done.err


def test_the_next_plan_stays_with_the_one_that_was_kept(owner: Owner) -> None:
    done = owner.asks("plan", "--json", "--keep")
    assert done.code == 0
    plan = json.loads(done.out)
    assert "Kept as plan 1." in done.err
    again = owner.plans()
    assert again["jobs"] == plan["jobs"]
    since = again["since_kept"]
    assert since["kept_plan"] == 1
    assert since["moved"] == []
    assert since["given_up"] == 0
    assert sorted(since["as_intended"]) == sorted(job["option"] for job in plan["jobs"])
    assert "since_kept" not in owner.plans("--afresh")


def test_what_could_not_be_kept_is_told_with_its_price(owner: Owner) -> None:
    owner.asks("plan", "--keep")
    poorer = owner.plans("--budget", "20")
    assert poorer["since_kept"]["moved"]
    for moved in poorer["since_kept"]["moved"]:
        assert moved["reason"]["code"] != "not_worked_out"
    text = owner.asks("plan", "--budget", "20").out
    assert "Since plan 1, kept for" in text


@pytest.mark.parametrize("amount", ["-1", "much", "1.005"])
def test_a_sum_to_stay_is_an_amount(owner: Owner, amount: str) -> None:
    owner.asks("plan", "--keep")
    done = owner.asks("plan", "--stay", amount)
    assert done.code in (2, 3)
    assert "--stay: expected" in done.err


def test_a_wrong_sum_is_refused_without_a_kept_plan_too(owner: Owner) -> None:
    done = owner.asks("plan", "--stay", "much")
    assert done.code == 2
    assert done.out == ""
    assert "--stay: expected" in done.err


def test_an_archive_on_standard_input_keeps_no_plan(owner: Owner) -> None:
    import io
    import tarfile

    packed = io.BytesIO()
    with tarfile.open(fileobj=packed, mode="w") as archive:
        archive.add(owner.folder, "my-garage")
    done = start("plan", "-", "--keep", stdin=packed.getvalue())
    assert done.returncode == 2
    assert b"--keep: expected a folder" in done.stderr
