"""The border to the solver: small programs in, our own words out."""

from math import inf

import pytest

from partsplan.domain import Plan, PlanStatus
from partsplan.errors import SolverFailed
from partsplan.planning import plan
from partsplan.planning.model import build
from partsplan.planning.program import Program
from partsplan.planning.solver import Solver, Tuning, solver_name
from partsplan.pricing import offers
from tests.support.building import garage
from tests.support.larger_garages import larger_garage
from tests.support.published import Item, as_garage, published

# Winston, Operations Research, 4th ed., section 9.2, example 1 (Stockco)
VALUES, OUTLAYS, BUDGET = (16, 22, 12, 8), (5, 7, 4, 3), 14


def stockco(*, whole: bool = True) -> Program:
    program = Program()
    for number in range(4):
        name = f"investment {number + 1}"
        _ = program.binary(name) if whole else program.share(name)
    program.row("budget", enumerate(map(float, OUTLAYS)), high=float(BUDGET))
    return program


def objective() -> list[tuple[int, float]]:
    return list(enumerate(map(float, VALUES)))


def test_optimum_of_whole_numbers_is_proven() -> None:
    run = Solver(stockco()).maximise(objective(), Tuning(seconds=10.0, gap=0.0))
    assert run.status is PlanStatus.PROVEN
    assert [round(value) for value in run.values] == [0, 1, 1, 1]
    assert run.bound == pytest.approx(42)


def test_optimum_of_shares_is_its_own_bound() -> None:
    run = Solver(stockco(whole=False)).maximise(
        objective(), Tuning(seconds=10.0, gap=0.0)
    )
    assert run.status is PlanStatus.PROVEN
    assert run.values == pytest.approx([1, 1, 0.5, 0])
    assert run.bound == pytest.approx(44)


@pytest.mark.parametrize("start", [(0, 1), (1, 2, 3), (0, 1, 2, 3), ()])
def test_any_start_ends_at_the_optimum(start: tuple[int, ...]) -> None:
    run = Solver(stockco()).maximise(
        objective(), Tuning(seconds=10.0, gap=0.0), start=start
    )
    assert run.status is PlanStatus.PROVEN
    assert [round(value) for value in run.values] == [0, 1, 1, 1]


def test_rows_that_are_held_bind_the_next_run() -> None:
    solver = Solver(stockco())
    solver.hold([(1, 1.0), (3, 1.0)], high=1.0)  # 2 excludes 4: 38, computed
    run = solver.maximise(objective(), Tuning(seconds=10.0, gap=0.0))
    assert run.bound == pytest.approx(38)
    solver.hold([(0, 1.0)], low=0.0, high=0.0)
    run = solver.maximise(objective(), Tuning(seconds=10.0, gap=0.0))
    assert [round(value) for value in run.values] == [0, 1, 1, 0]


def test_a_program_without_solution_is_infeasible() -> None:
    solver = Solver(stockco())
    solver.hold(enumerate(map(float, OUTLAYS)), low=15.0)
    run = solver.maximise(objective(), Tuning(seconds=10.0, gap=0.0))
    assert run.status is PlanStatus.INFEASIBLE
    assert run.values == ()
    assert run.bound == -inf


def test_a_run_stopped_before_its_start_knows_nothing() -> None:
    run = Solver(stockco()).maximise(
        objective(), Tuning(seconds=10.0, gap=0.0), stopped=True
    )
    assert run.status is PlanStatus.FAILED
    assert run.values == ()
    assert run.bound == inf


def test_a_run_cut_short_is_not_proven() -> None:
    # Khan's I03 takes seconds; PuLP calls a run that the clock cut short "Optimal"
    problem = published("mmkp_khan.json")["problems"][2]
    classes = [
        [Item(value=value, outlays=tuple(use)) for value, *use in items]
        for items in problem["items"]
    ]
    made = as_garage(classes, problem["capacity"])
    model = build(made.garage, offers(made.garage), ())
    run = Solver(model.program).maximise(model.worth, Tuning(seconds=0.3, gap=0.0))
    assert run.status is (PlanStatus.FEASIBLE if run.values else PlanStatus.FAILED)
    assert run.bound / made.scale >= problem["published_optimum"]


def test_an_option_that_the_solver_refuses_is_told() -> None:
    with pytest.raises(SolverFailed, match="refused the option mip_rel_gap"):
        Solver(stockco()).maximise(objective(), Tuning(seconds=10.0, gap=-1.0))


def test_terms_of_one_column_are_summed_and_zeros_dropped() -> None:
    program = Program()
    one, other = program.share("one"), program.share("other")
    program.row("sum", [(one, 2.0), (other, 1.0), (one, 1.0), (other, -1.0)], high=1.5)
    assert program.rows[0].columns == (one,)
    run = Solver(program).maximise([(one, 1.0)], Tuning(seconds=10.0, gap=0.0))
    assert run.values == pytest.approx([0.5, 0])


def test_the_solver_prints_nothing(capfd: pytest.CaptureFixture[str]) -> None:
    # HiGHS 1.16 prints a banner to file descriptor 1 when it is made
    plan(garage())
    assert capfd.readouterr() == ("", "")


def test_a_plan_names_the_solver_and_its_version() -> None:
    found = plan(garage())
    assert isinstance(found, Plan)
    assert found.solver == solver_name()
    assert found.solver.startswith("HiGHS 1.")


def test_another_number_of_threads_finds_the_same_worth() -> None:
    # HiGHS refuses another number of threads within a process unless it is reset
    made = larger_garage(2, faults=8, months=4)
    worths = []
    for threads in (1, 2, 1):
        found = plan(made, gap=0.0, threads=threads)
        assert isinstance(found, Plan)
        assert found.status is PlanStatus.PROVEN
        worths.append(found.stages.net_worth)
    assert len(set(worths)) == 1


def test_progress_tells_stage_seconds_figure_and_bound() -> None:
    told: list[tuple[str, float, float | None, float | None]] = []

    def until_a_plan_is_known(
        stage: str, seconds: float, figure: float | None, bound: float | None
    ) -> None:
        told.append((stage, seconds, figure, bound))
        if figure is not None and bound is not None:
            raise KeyboardInterrupt

    plan(
        larger_garage(1, faults=30, months=12),
        seconds=30.0,
        progress=until_a_plan_is_known,
    )
    assert {stage for stage, *_ in told} == {"worth"}
    seconds = [one for _, one, _, _ in told]
    assert seconds == sorted(seconds)
    *_, (_, _, figure, bound) = told
    assert figure is not None
    assert bound is not None
    assert figure <= bound
