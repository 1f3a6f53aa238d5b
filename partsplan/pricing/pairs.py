"""What the pair rule leaves of an option, whatever the plan."""

from partsplan.domain import FaultStatus, Garage, Option, PairRoute


def pair_bar(garage: Garage, option: Option) -> PairRoute | None:
    """That the other fault of a pair has no job that could go with this option.

    Both faults of a pair get as many lasting jobs each month, in all and by each route
    that both have. So a job by a route that only one has needs one of the other by a
    route that only that has. Jobs for both faults at once are left out of account.
    """
    fault = option.alone
    if fault is None or not option.lasting:
        return None
    for other in _others(garage, fault):
        mine, theirs = (_lasting(garage, one) for one in (fault, other))
        if any(one.alone is None for one in (*mine, *theirs)):
            continue
        shared = {one.route for one in mine} & {one.route for one in theirs}
        alone = option.route not in shared
        if alone and all(one.route in shared for one in theirs):
            return PairRoute(option=option.id, other=other, route=option.route)
    return None


def _others(garage: Garage, fault: str) -> list[str]:
    """The open faults that an open fault is paired with, on either side."""
    if garage.fault[fault].status is not FaultStatus.OPEN:
        return []
    return [
        one.id
        for one in garage.faults
        if one.status is FaultStatus.OPEN
        and (fault in one.pair_with or one.id in garage.fault[fault].pair_with)
    ]


def _lasting(garage: Garage, fault: str) -> list[Option]:
    return [one for one in garage.options_for[fault] if one.lasting]
