"""What there is to spend in a month, after all that has happened."""

from collections.abc import Iterator
from datetime import date

from partsplan.domain import (
    DepositBack,
    DepositState,
    Due,
    DueKind,
    Garage,
    Ledger,
    MoneyNow,
    Month,
    MonthMoney,
    Part,
)

_NOTHING = MonthMoney()


def money_now(garage: Garage, ledger: Ledger, month: Month, today: date) -> MoneyNow:
    """Where the money of a month stands; the last budget holds past the horizon.

    What moved before the garage's first month is in its opening cash already.

    Raises
    ------
    ValueError
        If the month lies before the garage's first.
    """
    place = garage.index(month)
    if place < 0:
        raise ValueError(f"expected a month from {garage.start} on, got {month}")
    opening = garage.opening_cash
    for before in range(place):
        moved = ledger.money.get(garage.month(before), _NOTHING)
        opening += _budget(garage, before) + moved.received - moved.spent
        if not garage.carry_over:
            opening = min(0, opening)
    moved = ledger.money.get(month, _NOTHING)
    back = deposits_back(garage, ledger, month, today)
    return MoneyNow(
        month=month,
        opening=opening,
        budget=_budget(garage, place),
        spent=moved.spent,
        received=moved.received,
        promised=sum(due.amount for due in owed(ledger, today) if due.month <= month),
        expected_back=sum(one.amount for one in back if one.month == month),
        reserve=garage.reserve,
    )


def owed(ledger: Ledger, today: date) -> tuple[Due, ...]:
    """What is still to be paid on a day, by month.

    Without the freight of old units whose last day to be sent back is past.
    """
    return tuple(due for due in ledger.dues if not _missed(ledger, due, today))


def _missed(ledger: Ledger, due: Due, today: date) -> bool:
    part = ledger.parts.get(due.option)
    deposit = part.deposit if part else None
    if due.kind is not DueKind.RETURN or deposit is None or deposit.send_by is None:
        return False
    return deposit.state is DepositState.PAID and deposit.send_by < today


def deposits_back(
    garage: Garage, ledger: Ledger, month: Month, today: date
) -> tuple[DepositBack, ...]:
    """Deposits that should come back in a month or later, as seen from that month.

    Only those count whose acceptance can be trusted (``core_trust``), whose old unit is
    off, and whose last day to send it back is not past.
    """
    return tuple(
        DepositBack(option=part.option, month=max(month, back), amount=amount)
        for part in ledger.parts.values()
        for back, amount in _back(garage, part, today)
    )


def _back(garage: Garage, part: Part, today: date) -> Iterator[tuple[Month, int]]:
    option, deposit = garage.option.get(part.option), part.deposit
    if option is None or deposit is None or option.core_chance < garage.core_trust:
        return
    if not (deposit.open and deposit.out) or deposit.send_by is None:
        return
    if deposit.state is DepositState.PAID and deposit.send_by < today:
        return
    if part.fitted is None:  # the old unit came off for the part that it replaces
        yield Month.of(deposit.send_by), deposit.out
    else:
        yield Month.of(part.fitted).plus(option.core_months), deposit.out


def _budget(garage: Garage, month: int) -> int:
    return garage.budget[min(month, len(garage.budget) - 1)]
