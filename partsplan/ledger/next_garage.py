"""The garage of a later month: what happened is taken into account, then planned on."""

from collections.abc import Iterable, Iterator
from dataclasses import replace
from datetime import date
from fractions import Fraction
from typing import TypeVar

from partsplan.domain import (
    Assumed,
    Due,
    DueKind,
    Flow,
    Garage,
    Ledger,
    Month,
    Option,
    Part,
    PartState,
    Purchase,
    Tool,
    Vehicle,
)
from partsplan.domain.numbers import ONE
from partsplan.domain.option import Instalment
from partsplan.ledger.money import deposits_back, money_now, owed
from partsplan.ledger.next_causes import next_causes
from partsplan.ledger.next_faults import next_faults

_T = TypeVar("_T")


def next_garage(garage: Garage, ledger: Ledger, month: Month, today: date) -> Garage:
    """The garage as it stands in ``month``, with that as its first month.

    - Money is what is there: opening cash and the budgets of the months before, less
      what was spent; what moved in the month itself is off its opening cash.
    - What was bought and not fitted is planned to be fitted, at no price; what is still
      to be paid for it, and deposits that come back, move whatever is planned.
    - What was fitted cures its faults, or relieves them for as long as it lasts.
    - A dud opens its fault again; under warranty its option costs nothing.

    Raises
    ------
    ValueError
        If the month lies before the garage's first.
    """
    place = garage.index(month)
    money = money_now(garage, ledger, month, today)
    moved = ledger.money.get(month)
    worked = moved.hours if moved else Fraction(0)
    hours = _from(garage.hours, place, garage.months)
    return replace(
        garage,
        start=month,
        budget=_from(garage.budget, place, garage.months),
        hours=(max(Fraction(0), hours[0] - worked), *hours[1:]),
        opening_cash=money.opening + money.received - money.spent,
        vehicles=tuple(_vehicle(one, place) for one in garage.vehicles),
        faults=next_faults(garage, ledger, month),
        options=tuple(_option(garage, ledger, month, one) for one in garage.options),
        tools=tuple(_tool(ledger, one) for one in garage.tools),
        causes=next_causes(garage, ledger),
        promised=_promised(garage, ledger, month, today),
        grown=garage.grown + place,
        assumed=(*garage.assumed, *_claims(garage, ledger)),
    )


def _from(values: tuple[_T, ...], place: int, months: int) -> tuple[_T, ...]:
    """A value a month from a place on; the last one repeats."""
    last = len(values) - 1
    return tuple(values[min(place + month, last)] for month in range(months))


def _vehicle(vehicle: Vehicle, place: int) -> Vehicle:
    return replace(vehicle, keep_months=max(0, vehicle.keep_months - place))


def _tool(ledger: Ledger, tool: Tool) -> Tool:
    return replace(tool, owned=tool.owned or tool.id in ledger.tools)


def _option(garage: Garage, ledger: Ledger, month: Month, option: Option) -> Option:
    """The option as it can be had from that month on."""
    part = ledger.parts.get(option.id)
    if part is None or part.state is PartState.FITTED:
        return option
    if part.state is PartState.DUD:
        return _replaced(garage, option, part)
    return _bought(garage, option, part, month)


def _bought(garage: Garage, option: Option, part: Part, month: Month) -> Option:
    """A part that is bought: nothing but its fitting is still to be planned."""
    if part.state is PartState.IN_HAND:
        there = month
    else:
        ordered = Month.of(part.ordered)
        there = max(month, ordered.plus(option.months_to_fitting))
    deposit = part.deposit.amount if part.deposit and part.deposit.open else 0
    earliest = max(option.not_before, there) if option.not_before else there
    return replace(
        _at_no_price(garage, option),
        core_deposit=deposit,
        lead_days=0,
        not_before=earliest,
        valid_until=None,
        bought=Purchase(month=Month.of(part.ordered), supplier=option.supplier),
    )


def _replaced(garage: Garage, option: Option, part: Part) -> Option:
    """A dud's option: free of charge while under warranty, else as quoted."""
    if not part.to_be_replaced or part.warranty_until is None:
        return option
    return replace(
        _at_no_price(garage, option),
        core_deposit=0,
        valid_until=Month.of(part.warranty_until),
    )


def _claims(garage: Garage, ledger: Ledger) -> Iterator[Assumed]:
    """That duds under warranty are replaced free of charge."""
    for part in ledger.parts.values():
        if part.option not in garage.option or part.state is not PartState.DUD:
            continue
        if part.to_be_replaced and part.warranty_until is not None:
            yield Assumed(
                table="options",
                row=part.option,
                column="price",
                value=garage.currency.format(0),
                source=f"claimed under warranty by {part.warranty_until}",
            )


def _at_no_price(garage: Garage, option: Option) -> Option:
    return replace(
        option,
        supplier=None,
        price=0,
        price_low=None,
        price_high=None,
        currency=garage.currency.code,
        quantity=ONE,
        instalments=(Instalment(months=0, share=ONE),),
    )


def _promised(
    garage: Garage, ledger: Ledger, month: Month, today: date
) -> tuple[Flow, ...]:
    """Money for what was bought before, by month from ``month`` on. [minor units]"""
    out = (
        (due.month, due.amount) for due in owed(ledger, today) if _standing(ledger, due)
    )
    back = (
        (one.month, one.amount)
        for one in deposits_back(garage, ledger, month, today)
        if not _to_be_fitted(ledger, one.option)
    )
    outs, backs = _by_month(out, month), _by_month(back, month)
    return tuple(
        Flow(month=at, out=outs.get(at, 0), back=backs.get(at, 0))
        for at in sorted(outs.keys() | backs.keys())
    )


def _standing(ledger: Ledger, due: Due) -> bool:
    """Whether it is due whenever the part is fitted."""
    return due.kind is DueKind.INSTALMENT or not _to_be_fitted(ledger, due.option)


def _to_be_fitted(ledger: Ledger, option: str) -> bool:
    part = ledger.parts.get(option)
    return part is not None and part.state in (PartState.ON_THE_WAY, PartState.IN_HAND)


def _by_month(sums: Iterable[tuple[Month, int]], first: Month) -> dict[int, int]:
    """Sums by months after ``first``; what is overdue counts in it."""
    found: dict[int, int] = {}
    for month, amount in sums:
        at = max(0, month.since(first))
        found[at] = found.get(at, 0) + amount
    return found
