"""What is odd, but can be planned with."""

from pathlib import Path

import pytest

from tests.intake.plain_garage import PLAIN, warnings, with_cells


def test_a_plain_garage_has_nothing_odd(tmp_path: Path) -> None:
    assert warnings(tmp_path, PLAIN) == ()


@pytest.mark.parametrize(
    ("file", "line", "cells", "message"),
    [
        (
            "faults.csv",
            3,
            {"status": "watch", "after": ""},
            "fix_by: cannot be met while the fault is only watched",
        ),
        (
            "faults.csv",
            3,
            {"pair_with": "f3"},
            'pair_with: fault "f3" is on another vehicle',
        ),
        (
            "faults.csv",
            3,
            {"codes": "P0171;p0171;C4001;12"},
            'codes: "p0171" is no code like P0171, so nothing looks it up',
        ),
        (
            "options.csv",
            2,
            {"coding_cost": "5"},
            "coding_cost: not counted unless coding is paid",
        ),
        (
            "options.csv",
            2,
            {"core_deposit": ""},
            "core_return_cost: not counted without a core_deposit",
        ),
        (
            "options.csv",
            2,
            {"followup_within": "2"},
            "followup_within: not used unless the route is stand-in",
        ),
        (
            "options.csv",
            2,
            {"quoted_on": "2026-06-30"},
            "quoted_on: 2026-06-30 is over 6 months before the start; ask again",
        ),
        ("suppliers.csv", 2, {"tax": "added"}, "tax: added, but tax_rate in"),
        (
            "causes.csv",
            2,
            {"cure": "o3"},
            'cure: option "o3" does not fix fault "f1"',
        ),
    ],
)
def test_what_is_odd_is_told_with_its_place(
    tmp_path: Path, file: str, line: int, cells: dict[str, str], message: str
) -> None:
    found = warnings(tmp_path, with_cells(file, line, **cells))
    places = [one for one in found if one.startswith(f"{file}:{line}: {message}")]
    assert len(places) == 1


def test_nothing_can_wait_for_a_watched_fault(tmp_path: Path) -> None:
    assert warnings(tmp_path, with_cells("faults.csv", 2, status="watch")) == (
        'faults.csv:3: after: fault "f1" is only watched; '
        "that blocks every option for this one",
        'milestones.csv:2: faults: fault "f1" is only watched; '
        "that keeps the milestone from being met",
    )


@pytest.mark.parametrize("day", ["2026-07-01", "2026-07", "2027-02-01", ""])
def test_a_quote_of_six_months_is_not_old(tmp_path: Path, day: str) -> None:
    assert warnings(tmp_path, with_cells("options.csv", 2, quoted_on=day)) == ()
