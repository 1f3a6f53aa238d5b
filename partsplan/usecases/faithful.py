"""Stays with the plan that was kept where that costs little, and says where not."""

from dataclasses import replace

from partsplan.domain import Faithfulness, Garage, Intentions, Plan
from partsplan.errors import InvalidRequest
from partsplan.usecases.countdown import Clock, countdown
from partsplan.usecases.sound import sound

STAY_SECONDS = 10.0
"""Longest search for the nearest plan, and for what departures would cost. [s]"""


def faithful(
    garage: Garage,
    found: Plan,
    intentions: Intentions,
    stay: str,
    *,
    gap: float,
    seconds: float,
    clock: Clock | None,
) -> tuple[Plan, Faithfulness]:
    """The plan nearest to what was intended, and how it departs from that.

    ``stay`` is the net worth that may be given up for it, as decimal text.

    Raises
    ------
    SolverFailed, UnsoundPlan
    InvalidRequest
        If ``stay`` is no amount from 0 on.
    """
    from partsplan.explanation import departures, wishes
    from partsplan.planning import Limits, Planner

    planner = Planner(garage)
    longest = min(seconds, STAY_SECONDS)
    limits = Limits(seconds=longest, gap=gap)
    spare = _amount(garage, stay)
    near = sound(
        garage, planner.staying(found, wishes(garage, intentions), spare, limits)
    )
    left = countdown(clock, longest) if clock else lambda: longest
    try:
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


def _amount(garage: Garage, text: str) -> int:
    try:
        amount = garage.currency.parse(text)
    except ValueError as error:
        raise InvalidRequest(f"--stay: {error}") from error
    if amount < 0:
        raise InvalidRequest(f'--stay: expected 0 or more, got "{text}"')
    return amount
