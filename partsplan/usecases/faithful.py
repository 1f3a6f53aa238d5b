"""Stays with the plan that was kept where that costs little, and says where not."""

from dataclasses import replace
from typing import TYPE_CHECKING

from partsplan.domain import Faithfulness, Intentions, Plan
from partsplan.usecases.countdown import Clock, countdown
from partsplan.usecases.sound import sound

if TYPE_CHECKING:
    from partsplan.planning import Planner

STAY_SECONDS = 10.0
"""Longest search for the nearest plan, and for what departures would cost. [s]"""


def faithful(
    planner: "Planner",
    found: Plan,
    intentions: Intentions,
    spare: int,
    *,
    gap: float,
    seconds: float,
    clock: Clock | None,
) -> tuple[Plan, Faithfulness]:
    """The plan nearest to what was intended, and how it departs from that.

    ``spare`` is the net worth that may be given up for it. [minor units]

    Raises
    ------
    SolverFailed, UnsoundPlan
    """
    from partsplan.explanation import departures, wishes
    from partsplan.planning import Limits

    garage = planner.garage
    longest = min(seconds, STAY_SECONDS)
    limits = Limits(seconds=longest, gap=gap)
    left = countdown(clock, longest) if clock else lambda: longest
    near = found
    try:
        meant = wishes(garage, intentions)
        near = sound(garage, planner.staying(found, meant, spare, limits))
        told = departures(planner, near, intentions, limits, left)
    except KeyboardInterrupt:  # the plan is there, what departures cost is not
        near, told = replace(near, interrupted=True), ()
    ordered = near.choices.orders
    return near, Faithfulness(
        intentions=intentions,
        kept=tuple(
            option
            for option, month in intentions.orders.items()
            if option in ordered and garage.month(ordered[option]) == month
        ),
        departures=told,
        given_up=found.stages.net_worth - near.stages.net_worth,
    )
