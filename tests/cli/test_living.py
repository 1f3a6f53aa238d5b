"""Whole stories through ``enter``, ``now`` and ``entries``."""

from pathlib import Path

import pytest

from tests.cli.logged import data, entered, flowing, logged_garage, refused
from tests.cli.running import Capture, run


@pytest.fixture
def cars(tmp_path: Path) -> Path:
    return logged_garage(tmp_path / "cars")


def said(capsys: Capture, cars: Path, line: str, *more: str) -> str:
    return flowing(entered(capsys, cars, line, *more))


def on(capsys: Capture, cars: Path, day: str) -> str:
    return flowing(run(capsys, "now", cars, "--today", day))


def test_an_exchange_part_from_its_order_to_the_credit(
    cars: Path, capsys: Capture
) -> None:
    ordered = said(capsys, cars, "2027-01-05 ordered starter-exchange")
    assert ordered == (
        "Entry 1 of 2027-01-05: ordered starter-exchange. "
        "- Price 109.00 EUR (as quoted) and deposit 35.00 EUR (as quoted). "
        "- 144.00 EUR spent. - It should arrive by 2027-01-09. "
        "- Shipping is not in it; enter it by itself: "
        '"paid depot --amount AMOUNT". '
        "- Still to pay: 9.90 EUR in 2027-02 (return of the old unit). "
        "- Free to spend in 2027-01: -44.00 EUR."
    )
    late = on(capsys, cars, "2027-01-10")
    assert "Since 2027-01-09: starter-exchange should have arrived; ask" in late
    assert "That is 44.00 EUR too much spent or promised." in late

    arrived = said(capsys, cars, "2027-01-11 arrived starter-exchange")
    assert "Its warranty ends on 2029-01-11." in arrived
    assert "Since 2027-01-11: starter-exchange is in hand; fit it." in on(
        capsys, cars, "2027-01-12"
    )
    fitted = said(capsys, cars, "2027-02-12 fitted starter-exchange", "--hours", "2")
    assert "- Own hours 2." in fitted
    assert "Send the old unit back by 2027-03-14 or lose 35.00 EUR." in fitted
    assert (
        "By 2027-03-14: send the old unit of starter-exchange back, or lose 35.00 EUR."
    ) in on(capsys, cars, "2027-02-13")
    assert "is missed; 35.00 EUR are lost unless" in on(capsys, cars, "2027-03-15")

    sent = said(capsys, cars, "2027-02-20 sent-back starter-exchange")
    assert "Freight 9.90 EUR (as quoted). - 35.00 EUR should come back." in sent
    assert "ask for the credit of 35.00 EUR" in on(capsys, cars, "2027-03-30")
    credit = said(capsys, cars, "2027-03-31 credited starter-exchange")
    assert (
        "Credit 35.00 EUR (all that was out). - All of the deposit is back." in credit
    )

    end = data(capsys, "now", cars, "--today", "2027-03-31")
    assert end["money"]["spent"] == 0
    assert end["money"]["received"] == 3500
    assert end["money"]["opening"] == 2 * 10000 - 14400 - 990
    assert end["dues"] == []
    assert end["parts"][0]["deposit"]["state"] == "credited"
    assert [duty["code"] for duty in end["duties"]] == ["do_not_drive"]


def test_a_dud_under_warranty_is_replaced_for_nothing(
    cars: Path, capsys: Capture
) -> None:
    entered(capsys, cars, "2027-01-05 ordered starter-exchange")
    entered(capsys, cars, "2027-01-09 arrived starter-exchange")
    dud = said(capsys, cars, "2027-01-10 dud starter-exchange", "--text", "grinds")
    assert "It is under warranty until 2029-01-09: claim it." in dud
    assert "By 2029-01-09: claim starter-exchange under its warranty." in on(
        capsys, cars, "2027-01-10"
    )
    again = said(capsys, cars, "2027-01-11 ordered starter-exchange")
    assert "starter-exchange has come under warranty, no charge." in again
    assert "Shipping" not in again
    entries = data(capsys, "entries", cars)["entries"]
    assert (entries[3]["amount"], entries[3]["deposit"]) == (0, 0)
    assert data(capsys, "now", cars, "--today", "2027-01-11")["money"]["spent"] == 14400


def test_a_part_without_warranty_costs_again(cars: Path, capsys: Capture) -> None:
    entered(capsys, cars, "2027-01-05 ordered hose-new")
    entered(capsys, cars, "2027-01-05 arrived hose-new")
    assert "It has no warranty." in said(capsys, cars, "2027-01-06 dud hose-new")
    assert "Price 34.50 EUR (as quoted)." in said(
        capsys, cars, "2027-01-07 ordered hose-new"
    )


def test_a_fault_that_forbids_driving_is_told_until_it_is_cured(
    cars: Path, capsys: Capture
) -> None:
    entered(capsys, cars, "2027-01-05 ordered hose-new")
    entered(capsys, cars, "2027-01-05 arrived hose-new")
    told = run(capsys, "now", cars, "--today", "2027-01-05").out.splitlines()
    assert told[2:5] == [
        "DO NOT DRIVE",
        "============",
        "- small hatchback, until this is cured: Brake hose bulges (hose).",
    ]
    assert "hose-new* is in hand; fit it." in "\n".join(told)
    assert "* Work for a licensed person, or to be checked by one." in told
    fitted = said(capsys, cars, "2027-01-06 fitted hose-new")
    assert "Work for a licensed person, or to be checked by one." in fitted
    assert "DO NOT DRIVE" not in on(capsys, cars, "2027-01-06")


def test_instalments_are_paid_in_parts(cars: Path, capsys: Capture) -> None:
    ordered = said(capsys, cars, "2027-01-05 ordered belt-kit", "--amount", "210")
    assert "- Price 210.00 EUR. - 105.00 EUR spent. - It should be done by" in ordered
    assert "Still to pay: 105.00 EUR in 2027-02 (instalment)." in ordered
    now = on(capsys, cars, "2027-02-01")
    assert "By 2027-02-28: pay 105.00 EUR, an instalment of belt-kit." in now
    assert "ask the workshop" in now
    paid = said(capsys, cars, "2027-02-10 paid belt-kit", "--amount", "40")
    assert "Still to pay: 65.00 EUR in 2027-02 (instalment)." in paid
    late = on(capsys, cars, "2027-03-01")
    assert "OVERDUE since 2027-02-28: pay 65.00 EUR" in late
    assert "- 2027-02, overdue: 65.00 EUR, instalment, belt-kit." in late
    paid = said(capsys, cars, "2027-03-02 paid belt-kit", "--amount", "65")
    assert "All instalments of belt-kit are paid." in paid


def test_checks_lead_from_cause_to_cause(cars: Path, capsys: Capture) -> None:
    first = said(
        capsys, cars, "2027-01-05 checked starter", "--cause", "earth", "--ruled-out"
    )
    assert "checked starter, ruled out: Earth strap corroded." in first
    assert "- Own hours 0.2 (as quoted)." in first
    assert 'Not yet checked of Starter grinds (starter): "Solenoid sticks".' in first
    second = said(
        capsys, cars, "2027-01-06 checked starter", "--cause", "sol", "--found"
    )
    assert "- The check 5.00 EUR (as quoted) and own hours 0.5 (as quoted)." in second
    assert "- Its cure: starter-exchange." in second
    assert (
        'ruled out on 2027-01-05: "Earth strap corroded"; '
        'found on 2027-01-06: "Solenoid sticks".'
    ) in on(capsys, cars, "2027-01-07")


def test_what_does_not_fit_is_refused_with_all_reasons_or_taken_anyway(
    cars: Path, capsys: Capture
) -> None:
    assert refused(
        capsys, cars, "2027-01-05 fitted hose-new", "--day", "2027-01-06"
    ) == [
        "2027-01-06 is still to come; expected a day up to 2027-01-05",
        "hose-new was not ordered; enter its order first",
        "Nothing was written; --anyway writes it down all the same, flagged.",
    ]
    wrong = refused(
        capsys, cars, "2027-01-05 fitted hose-nw", "--deposit", "1", "--anyway"
    )
    assert wrong == [
        '"fitted" takes no deposit',
        'there is no option "hose-nw"; did you mean "hose-new"?',
        "Nothing was written.",
    ]
    taken = said(capsys, cars, "2027-01-05 fitted hose-new", "--anyway")
    assert "- Taken although hose-new was not ordered; enter its order first." in taken
    entries = data(capsys, "entries", cars)
    assert entries["entries"][0]["anyway"]
    assert entries["doubts"] == [
        {"entry": 1, "message": "hose-new was not ordered; enter its order first"}
    ]
    listed = flowing(run(capsys, "entries", cars))
    assert "fitted hose-new, 2 h TAKEN ANYWAY" in listed
    assert "Doubtful ======== - Entry 1: hose-new was not ordered" in listed
    assert '1 entry is doubtful, see "partsplan entries".' in on(
        capsys, cars, "2027-01-05"
    )
    assert "logbook: entry 1: hose-new was not ordered" in flowing(
        run(capsys, "check", cars)
    )
    later = said(capsys, cars, "2027-01-05 note", "--text", "fine", "--anyway")
    assert not data(capsys, "entries", cars)["entries"][1]["anyway"]
    assert later == "Entry 2 of 2027-01-05: note (fine)."


def test_what_is_undone_says_nothing_until_that_is_undone(
    cars: Path, capsys: Capture
) -> None:
    entered(capsys, cars, "2027-01-05 ordered hose-new", "--amount", "40")
    entered(capsys, cars, "2027-01-05 arrived hose-new")
    undone = said(capsys, cars, "2027-01-06 undone 1")
    assert "- 40.00 EUR less spent." in undone
    assert "- Entry 1 (ordered hose-new, 2027-01-05) says nothing any more." in undone
    assert "- Entry 2 is doubtful now: hose-new was not ordered; enter its" in undone
    assert "ordered hose-new UNDONE" in flowing(run(capsys, "entries", cars))
    marks = [one["undone"] for one in data(capsys, "entries", cars)["entries"]]
    assert marks == [True, False, False]
    again = said(capsys, cars, "2027-01-06 undone 3")
    assert "- Entry 1 (ordered hose-new, 2027-01-05) holds again." in again
    assert (
        refused(capsys, cars, "2027-01-06 undone 3")[0] == "entry 3 is undone already"
    )
    assert (
        refused(capsys, cars, "2027-01-06 undone 9")[0]
        == "there is no entry 9 before it"
    )


def test_entries_of_options_that_are_gone_break_nothing(
    cars: Path, tmp_path: Path, capsys: Capture
) -> None:
    for line in (
        "2027-01-05 ordered starter-exchange",
        "2027-01-09 arrived starter-exchange",
        "2027-01-05 ordered hose-new",
        "2027-01-09 odometer van --reading 120345",
        "2027-01-09 checked starter --cause sol --found",
    ):
        entered(capsys, cars, line)
    bare = logged_garage(
        tmp_path / "bare",
        vehicles_csv="id,name\nhatch,small hatchback\n",
        faults_csv="id,vehicle,title\nhose,hatch,Hose\n",
        options_csv="id,fixes,route,price\nhose-used,hose,used,9.00\n",
        causes_csv="fault,cause,chance\n",
    )
    (bare / "logbook.sqlite").write_bytes((cars / "logbook.sqlite").read_bytes())
    listed = run(capsys, "entries", bare)
    assert listed.code == 0
    assert '- Entry 1: there is no option "starter-exchange".' in listed.out
    assert '- Entry 4: there is no vehicle "van".' in listed.out
    now = on(capsys, bare, "2027-01-20")
    assert "Since 2027-01-09: starter-exchange is in hand; fit it." in now
    assert "5 entries are doubtful" in now
    assert data(capsys, "now", bare, "--today", "2027-01-20")["money"]["spent"] == 18350
    entered(capsys, bare, "2027-01-21 ordered hose-used")
    assert refused(capsys, bare, "2027-01-21 fitted hose-new")[0] == (
        'there is no option "hose-new"; did you mean "hose-used"?'
    )


@pytest.mark.parametrize("day", ["2026-12-31", "2027-01-01", "2040-06-30"])
def test_any_day_can_be_asked_about(day: str, cars: Path, capsys: Capture) -> None:
    entered(capsys, cars, "2026-12-30 paid", "--amount", "5")
    ran = run(capsys, "now", cars, "--today", day)
    assert ran.code == 0
    before = "2026-12 lies before 2027-01, this garage's first month."
    assert (before in flowing(ran)) == (day == "2026-12-31")
    found = data(capsys, "now", cars, "--today", day)["money"]
    assert (found is None) == (day == "2026-12-31")
    if day == "2040-06-30":  # the last budget holds
        assert found["budget"] == 10000
        assert found["opening"] == 10000 * (13 * 12 + 5)


def test_money_from_before_the_first_month_is_in_the_opening_cash(
    cars: Path, capsys: Capture
) -> None:
    told = said(capsys, cars, "2026-12-30 paid", "--amount", "5")
    assert "- It is older than 2027-01, so it is taken to be in the opening" in told
    assert data(capsys, "now", cars, "--today", "2027-01-01")["money"]["opening"] == 0


@pytest.mark.parametrize("columns", [40, 80])
def test_everything_fits_the_terminal(
    columns: int, cars: Path, capsys: Capture, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("COLUMNS", str(columns))
    told = [
        entered(capsys, cars, "2027-01-05 ordered starter-exchange", "--who", "Kim"),
        entered(capsys, cars, "2027-01-05 ordered belt-kit"),
        entered(capsys, cars, "2027-01-09 arrived starter-exchange"),
        entered(capsys, cars, "2027-01-09 checked starter --cause earth --ruled-out"),
        run(capsys, "now", cars, "--today", "2027-02-20"),
        run(capsys, "entries", cars),
    ]
    assert max(len(line) for ran in told for line in ran.out.splitlines()) <= columns
