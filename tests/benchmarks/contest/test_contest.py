"""A small contest from the command line to the tables."""

import json
from pathlib import Path

import pytest
from click.testing import CliRunner

from tests.benchmarks.contest import __main__ as contest
from tests.benchmarks.contest.cell import Cell, Task
from tests.benchmarks.contest.record import read_cells
from tests.benchmarks.contest.running import OWN, RELAXATION, run
from tests.benchmarks.contest.summary import heats

SMALL = ["--sizes", "12x6", "--seeds", "1", "--seconds", "2"]


def ask(*arguments: str) -> str:
    done = CliRunner().invoke(contest.main, [*SMALL, *arguments])
    assert done.exit_code == 0, done.output
    return done.stdout


def test_a_contest_is_run_kept_and_resumed(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    record = tmp_path / "contest.json"
    some = ["--json", str(record), "--contestants"]
    ask(*some, f"{OWN},plain HiGHS")

    known = json.loads(record.read_text(encoding="utf-8"))
    cells = read_cells(record, known["machine"])
    (heat,) = heats(cells)
    own, plain = heat.cells
    assert [own.contestant, plain.contestant] == [OWN, "plain HiGHS"]
    assert own.ended == plain.ended == "proven"
    assert own.figures == plain.figures
    assert own.broken == plain.broken == 0
    assert heat.time_to(plain, 0.001) < 2
    assert not heat.refuted

    asked = []

    def only_once(contestant: str, task: Task, grace: float) -> Cell:
        asked.append(contestant)
        return run(contestant, task, grace=grace)

    monkeypatch.setattr(contest, "run", only_once)
    shown = ask(*some, f"{OWN},{RELAXATION}", "--resume")
    assert asked == [RELAXATION]
    assert "| 12x6 seed 1 |" in shown
    kept = read_cells(record, known["machine"])
    assert [one.contestant for one in kept] == [OWN, RELAXATION, "plain HiGHS"]
    assert kept[0] == own
    assert kept[1].after(2).bound >= own.after(2).value


def test_cells_of_another_machine_are_not_taken(tmp_path: Path) -> None:
    record = tmp_path / "contest.json"
    record.write_text('{"machine": "an abacus", "cells": [0]}', encoding="utf-8")
    assert read_cells(record, "another abacus") == []


def test_or_tools_reaches_the_same_plan() -> None:
    pytest.importorskip("ortools")
    task = Task(faults=12, months=6, seed=1, seconds=5.0, gap=1e-4, threads=1)
    own, rival = run(OWN, task), run("CP-SAT", task)
    assert rival.ended == "proven"
    assert rival.broken == 0
    assert rival.figures == own.figures
    assert rival.after(5).bound >= rival.after(5).value


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        (["--contestants", "an oracle"], "an oracle"),
        (["--resume"], "--json"),
        (["--seconds", "0"], "--seconds"),
    ],
)
def test_a_wrong_call_is_refused(arguments: list[str], message: str) -> None:
    done = CliRunner().invoke(contest.main, arguments)
    assert done.exit_code == 2
    assert message in done.stderr
