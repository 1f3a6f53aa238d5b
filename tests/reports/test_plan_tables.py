from dataclasses import replace
from itertools import pairwise

import pytest

from partsplan.domain import (
    Choices,
    FaultStatus,
    Month,
    Needs,
    NotRoadLegal,
    Plan,
    PlanStatus,
    Skip,
    Stages,
)
from partsplan.reports import needs_tables, plan_tables
from partsplan.reports.plan_tables import certainty
from tests.reports.made import GARAGE, PLAN, SHORTFALLS, SKIPS, STOPPED

ESCAPE = "\x1b"


def shown(plan: Plan = PLAN, *, width: int = 100, colour: bool = False) -> str:
    return plan_tables(GARAGE, plan, SKIPS, SHORTFALLS, width=width, colour=colour)


def headings(text: str) -> list[str]:
    lines = text.splitlines()
    return [line for line, rule in pairwise(lines) if rule and set(rule) == {"="}]


def test_what_must_not_be_driven_and_what_to_buy_come_first() -> None:
    assert headings(shown()) == [
        "DO NOT DRIVE",
        "To buy this month, 2027-01 [EUR]",
        "Month by month [EUR]",
        "Cash [EUR] and own hours",
        "Money out by vehicle [EUR]",
        "Old units to send back [EUR]",
        "Tools to buy [EUR]",
        "Left alone, and why",
        "Missed deadlines",
        "Not drivable",
        "Warnings",
        "What this assumes",
        "Cautions",
    ]


@pytest.mark.parametrize("width", [80, 100, 120])
def test_no_line_is_longer_than_the_terminal(width: int) -> None:
    assert max(map(len, shown(width=width).splitlines())) <= width


def test_wide_terminals_are_used() -> None:
    assert max(map(len, shown(width=120).splitlines())) > 100


def test_without_colour_there_is_no_escape() -> None:
    assert ESCAPE not in shown()
    coloured = shown(colour=True)
    assert f"{ESCAPE}[1;31mDO NOT DRIVE" in coloured


def test_every_sum_of_the_first_month_is_accounted_for() -> None:
    text = shown()
    section = text[text.index("To pay") : text.index("Month by month [EUR]")]
    sums = [line.split()[-1] for line in section.splitlines()[2:] if line]
    *parts, total = (round(float(one) * 100) for one in sums)
    assert parts == [6900, 690, 1900, 900]
    assert sum(parts) == total == PLAN.ledger[0].out


def test_every_bar_of_a_fault_is_told() -> None:
    bars = [NotRoadLegal(option=one) for one in ("roof-film", "ecu-new")]
    skip = Skip(fault="paint", reason=bars[0], also=(bars[1],))
    text = plan_tables(GARAGE, PLAN, (skip,), ())
    assert "roof-film (refinish) is barred" in text
    assert "ecu-new (new) is barred" in " ".join(text.split())


def test_a_fault_without_an_option_asks_for_a_quote() -> None:
    assert "Hum at speed (hum): Nobody has quoted for it yet: ask for a quote." in (
        " ".join(shown().split())
    )


def test_what_it_would_take_is_told() -> None:
    text = " ".join(shown().split())
    assert "neither more money nor more own hours would do" in text
    assert (
        "it would take 2.5 more own hours in all and 45.00 EUR more in 2027-01 "
        "(the least that makes nothing else worse)" in text
    )
    assert (
        "To be drivable in 2027-01 to 2027-02, it would take 123.00 EUR more in "
        "2027-01 (less may do, that is not proven)." in text
    )


def test_a_deposit_that_cannot_be_trusted_is_not_counted_on() -> None:
    wary = replace(GARAGE, core_trust=GARAGE.core_trust + 1)
    assert "not counted on" in plan_tables(wary, PLAN, SKIPS, SHORTFALLS)
    assert "not counted on" not in shown()


def test_a_stopped_search_says_that_its_misses_are_not_explained() -> None:
    text = plan_tables(GARAGE, replace(PLAN, interrupted=True), SKIPS, ())
    assert "2. The search was stopped, so what it would take was not" in text


def test_an_empty_plan_says_so() -> None:
    empty = replace(
        PLAN,
        choices=Choices(orders={}, tools={}),
        jobs=(),
        tools=(),
        orders=(),
        ledger=tuple(replace(line, out=0) for line in PLAN.ledger),
    )
    text = shown(empty)
    assert "Nothing to order this month." in text
    assert "Nothing to pay this month." in text
    assert "No job is done in these months." in text
    assert "Cautions" not in text


def test_a_danger_that_comes_back_is_told_as_that() -> None:
    short = (replace(GARAGE.options[0], life_months=1), *GARAGE.options[1:])
    text = plan_tables(replace(GARAGE, options=short), PLAN, (), SHORTFALLS)
    assert (
        "Front brake hose bulges (hose), 2027-02 to 2027-03, since what cures it from "
        "2027-01 on lasts no longer."
    ) in " ".join(text.split())


def test_a_milestone_names_the_faults_it_waits_for() -> None:
    assert (
        "Milestone Coast trip, wanted by 2027-01, waits for Engine control unit drops "
        "out (ecu): it would take"
    ) in " ".join(shown().split())


def test_a_watched_danger_stays_a_danger() -> None:
    watched = replace(
        GARAGE,
        faults=(
            replace(GARAGE.faults[0], status=FaultStatus.WATCH),
            *GARAGE.faults[1:],
        ),
    )
    text = " ".join(plan_tables(watched, PLAN, (), ()).split())
    assert "small hatchback: Front brake hose bulges (hose), 2027-01 to 2027-03" in text


def say(plan: Plan) -> str:
    return " ".join(certainty(GARAGE, plan))


def test_a_proof_is_told_as_what_it_is() -> None:
    assert say(PLAN) == "Proven: no plan is better."
    nearly = replace(PLAN, gap=0.00006)
    assert say(nearly) == "Proven: no plan is better by more than 0.006 %."


def test_a_plan_cut_short_tells_what_is_not_ruled_out() -> None:
    assert say(STOPPED) == (
        "Not proven: 2 missed deadlines; as few as 1 are not ruled out. Within 0.8 % "
        "of the best possible, with these counts held. The solver had 30.2 s; more may "
        "find a better plan."
    )


def test_a_wide_gap_is_told_as_a_sum() -> None:
    poor = replace(
        PLAN,
        status=PlanStatus.FEASIBLE,
        gap=12.5,
        bound=1666575,
        interrupted=True,
        seconds=3.2,
    )
    assert say(poor) == (
        "Not proven: a net worth of up to 16,665.75 EUR is not ruled out. The solver "
        "was stopped after 3.2 s; more may find a better plan."
    )


def test_a_worse_bound_of_the_worth_is_no_missed_deadline() -> None:
    plan = replace(
        STOPPED,
        stage_bounds=Stages(
            missed_deadlines=2,
            unsafe_vehicle_months=0,
            undrivable_vehicle_months=2,
            net_worth=124438,
        ),
    )
    assert "Not proven" not in say(plan)


def test_an_impossible_plan_says_when_and_how_much() -> None:
    text = needs_tables(GARAGE, Needs(month=Month(2027, 2), money=12300))
    assert "2027-02" in text
    assert "123.00 EUR" in text
