"""In which months an option can be ordered, or why in none."""

from collections.abc import Callable
from dataclasses import dataclass
from functools import lru_cache

from partsplan.domain import (
    AfterWatched,
    AlreadyBought,
    Coding,
    FaultStatus,
    Garage,
    Month,
    NoCodingTool,
    Option,
    OutsideWindow,
    QuoteOver,
    Reason,
    TooCold,
    VehicleGone,
)
from partsplan.pricing.routes import route_bar


@dataclass(frozen=True, slots=True)
class Slot:
    """An ordering month and the fitting month it leads to."""

    ordered: int
    fitted: int


def fitting_month(option: Option, ordered: int) -> int:
    """The first month by whose middle the part is in hand."""
    return ordered + option.months_to_fitting


def slots(garage: Garage, option: Option) -> tuple[Slot, ...]:
    """Every ordering month that leads to a fitting within the horizon."""
    return slots_or_bar(garage, option)[0]


def bars(garage: Garage, option: Option) -> tuple[Reason, ...]:
    """Why the option can be ordered in no month; empty if it can."""
    bar = slots_or_bar(garage, option)[1]
    return (bar,) if bar else ()


def slots_or_bar(
    garage: Garage, option: Option
) -> tuple[tuple[Slot, ...], Reason | None]:
    """The ordering months, or what leaves none; what always bars comes first."""
    if bar := _standing_bar(garage, option):
        return (), bar
    left = _within(garage.months, fitting_month(option, 0))
    earliest = garage.month(left[0].fitted if left else fitting_month(option, 0))
    if not left:
        return (), OutsideWindow(
            option=option.id, earliest=earliest, not_before=None, not_after=None
        )
    for keeps, reason in _filters(garage, option, earliest):
        kept = tuple(slot for slot in left if keeps(slot))
        if not kept:
            return (), reason
        left = kept
    if cold := _too_cold(garage, option, left):
        return (), cold
    return tuple(slot for slot in left if _warm_enough(garage, option, slot)), None


@lru_cache
def _within(months: int, wait: int) -> tuple[Slot, ...]:
    """Every slot of a horizon, for options that take ``wait`` months to be fitted."""
    return tuple(Slot(month, month + wait) for month in range(months - wait))


def _standing_bar(garage: Garage, option: Option) -> Reason | None:
    if bar := route_bar(garage, option):
        return bar
    if option.coding is Coding.SELF and not garage.coding_tool:
        return NoCodingTool(option=option.id)
    if bought := _bought_instead(garage, option):
        return AlreadyBought(option=option.id, bought=bought)
    for cure in option.fixes:
        for before in garage.fault[cure.fault].after:
            if garage.fault[before].status is FaultStatus.WATCH:
                return AfterWatched(option=option.id, fault=before)
    return None


def _bought_instead(garage: Garage, option: Option) -> str | None:
    """The part in the house or on the way that cures all that this one would."""
    if option.bought or not option.lasting:
        return None
    parts = [garage.bought_for.get(cure.fault) for cure in option.fixes]
    return parts[0] if all(parts) else None


_Filter = tuple[Callable[[Slot], bool], Reason]


def _filters(garage: Garage, option: Option, earliest: Month) -> list[_Filter]:
    fault = garage.fault[option.fixes[0].fault]
    keep_months = garage.vehicle[fault.vehicle].keep_months
    filters: list[_Filter] = [
        (lambda slot: slot.fitted < keep_months, VehicleGone(option=option.id))
    ]
    if option.valid_until is not None:
        last_order = garage.index(option.valid_until)
        over = QuoteOver(option=option.id, valid_until=option.valid_until)
        filters.append((lambda slot: slot.ordered <= last_order, over))
    window = OutsideWindow(
        option=option.id,
        earliest=earliest,
        not_before=option.not_before,
        not_after=option.not_after,
    )
    if option.not_before is not None:
        first = garage.index(option.not_before)
        filters.append((lambda slot: slot.fitted >= first, window))
    if option.not_after is not None:
        last = garage.index(option.not_after)
        filters.append((lambda slot: slot.fitted <= last, window))
    return filters


def _too_cold(garage: Garage, option: Option, left: tuple[Slot, ...]) -> TooCold | None:
    """That every month left is too cold, if so."""
    means, needed = garage.mean_temperature, option.min_temp
    if means is None or needed is None:
        return None
    warmest = max(means[garage.month(slot.fitted).month - 1] for slot in left)
    if warmest >= needed:
        return None
    return TooCold(option=option.id, needed=needed, warmest=warmest)


def _warm_enough(garage: Garage, option: Option, slot: Slot) -> bool:
    return _too_cold(garage, option, (slot,)) is None
