"""Tables say in words what has no figure."""

from tests.benchmarks.contest.cell import Cell, Task
from tests.benchmarks.contest.contest_tables import report
from tests.benchmarks.contest.events import Event

FIGURES = {"deadlines": 0, "safety": 1, "mobility": 0}


def cell(name: str, seed: int, events: list[Event], **known: object) -> Cell:
    task = Task(faults=12, months=6, seed=seed, seconds=30.0, gap=1e-4, threads=2)
    made = Cell(task=task, contestant=name, ended="out of time", events=events)
    for field, value in known.items():
        setattr(made, field, value)
    return made


def row(text: str, *starts: str) -> list[list[str]]:
    """The cells of every row that begins like this."""
    rows = [[one.strip() for one in line.split("|")[1:-1]] for line in text.split("\n")]
    return [one for one in rows if tuple(one[: len(starts)]) == starts]


CELLS = [
    cell(
        "partsplan",
        1,
        [Event(2.0, "worth", 100_000, 101_000)],
        figures={**FIGURES, "worth": 100_000},
        broken=0,
        peak=50.0,
    ),
    cell(
        "plain HiGHS",
        1,
        [Event(5.0, "worth", 90_000, 108_000), Event(20.0, "worth", 100_000, 104_000)],
        figures={**FIGURES, "worth": 100_000},
        broken=0,
        peak=60.0,
    ),
    cell(
        "CP-SAT",
        1,
        [Event(5.0, "worth", 150_000, 150_000)],
        figures={**FIGURES, "safety": 2, "worth": 150_000},
        broken=2,
        peak=70.0,
    ),
]


def test_medians_tell_times_gaps_and_what_never_came() -> None:
    medians, *_ = row(report(CELLS), "12x6", "plain HiGHS")
    assert medians[2:8] == ["1", "5.00", "20.00", "never", "never", "never"]
    assert medians[8:11] == ["20.000", "4.000", "4.000"]
    assert medians[11:] == ["60", "-", "0"]


def test_a_rival_with_worse_early_stages_is_shown_as_such() -> None:
    medians, ratios = row(report(CELLS), "12x6", "CP-SAT")
    assert medians[3:5] == ["never", "never"]
    assert medians[-2:] == ["1", "2"]
    assert ratios[2] == "no plan / no plan"
    (details,) = row(report(CELLS), "12x6 seed 1", "CP-SAT")
    assert details[4] == "0, 2, 0 (worse)"


def test_every_garage_tells_value_bound_and_gap_of_each_moment() -> None:
    (plain,) = row(report(CELLS), "12x6 seed 1", "plain HiGHS")
    assert plain[6:] == ["900.00, 1080.00, 20.000 %", "1000.00, 1040.00, 4.000 %"]
    early = [cell("plain HiGHS", 1, [Event(20.0, "worth", None, 104_000)])]
    (plain,) = row(report(early), "12x6 seed 1", "plain HiGHS")
    assert plain[4] == "unknown"
    assert plain[6:] == ["-, -, no plan", "-, 1040.00, no plan"]


def test_ratios_are_the_smallest_and_the_median() -> None:
    _, ratios = row(report(CELLS), "12x6", "plain HiGHS")
    assert ratios[2:6] == ["20 / 20", "4 / 4", "2.5 / 2.5", "10 / 10"]
    assert ratios[6:] == ["-", "-", "-"]


def test_a_garage_where_partsplan_has_nothing_counts_against_it() -> None:
    late = [
        cell("partsplan", 2, []),
        cell("plain HiGHS", 2, CELLS[1].events, figures=CELLS[1].figures, broken=0),
    ]
    _, ratios = row(report([*CELLS, *late]), "12x6", "plain HiGHS")
    assert ratios[4] == "0 (partsplan never) / 1.25"


def test_a_bound_that_a_legal_plan_refutes_is_named() -> None:
    assert "Wrong" not in report(CELLS)
    low = cell(
        "CP-SAT",
        1,
        [Event(1.0, "worth", 90_000, 95_000)],
        figures={**FIGURES, "worth": 90_000},
        broken=0,
    )
    assert "above the bound of CP-SAT" in report([*CELLS[:2], low])
