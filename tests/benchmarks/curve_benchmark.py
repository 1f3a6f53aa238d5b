"""Times a budget curve against planning for the same sums one after another.

``python -m tests.benchmarks.curve_benchmark [GARAGE]``; both in one run, so that the
ratio says more than the seconds do. The curve's time has its processes' start in it.
"""

import sys
import time
from dataclasses import replace
from fractions import Fraction
from pathlib import Path

STEPS = 20
JOBS = 2
HOUSEHOLD = Path(__file__).parents[2] / "scenarios" / "household"


def main(folder: Path) -> None:
    """Print the seconds of both, and their ratio."""
    from partsplan import usecases
    from partsplan.domain import Needs
    from partsplan.intake import read_garage
    from partsplan.planning import plan
    from partsplan.verification import violations

    garage = read_garage(folder)
    low, high = garage.mean_budget / 2, garage.mean_budget * 2
    budgets = [low + (high - low) * Fraction(step, STEPS - 1) for step in range(STEPS)]

    begun = time.perf_counter()
    for budget in budgets:
        one = replace(garage, budget=(round(budget),))
        found = plan(one)
        assert isinstance(found, Needs) or not violations(one, found)
    in_turn = time.perf_counter() - begun

    begun = time.perf_counter()
    with usecases.executor(JOBS) as executor:
        usecases.curve(folder, executor=executor, steps=STEPS)
    curve = time.perf_counter() - begun

    print(f"{STEPS} sums for {garage.name}, {len(garage.faults)} faults")
    print(f"one after another  {in_turn:6.2f} s")
    print(f"curve, {JOBS} processes {curve:6.2f} s, {curve / in_turn:.2f} of it")


if __name__ == "__main__":
    main(Path(sys.argv[1]) if len(sys.argv) > 1 else HOUSEHOLD)
