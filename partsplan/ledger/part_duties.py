"""What is to be done about parts that were ordered."""

from collections.abc import Iterator
from datetime import date

from partsplan.domain import (
    AskForCredit,
    AskForPart,
    ClaimWarranty,
    DepositState,
    DueKind,
    Duty,
    FitPart,
    Ledger,
    Month,
    Part,
    PartDeposit,
    PartState,
    PayInstalment,
    ReturnMissed,
    SendBack,
)
from partsplan.ledger.days import days_after

CREDIT_DAYS = 30
"""From sending an old unit back to its credit; common practice, no source. [days]"""


def of_part(part: Part, today: date) -> Iterator[Duty]:
    """What a part and its old unit ask for."""
    if part.state is PartState.ON_THE_WAY and part.expected < today:
        yield AskForPart(option=part.option, day=part.expected)
    if part.state is PartState.IN_HAND and part.arrived is not None:
        yield FitPart(option=part.option, day=part.arrived)
    if part.to_be_replaced and part.warranty_until is not None:
        yield ClaimWarranty(option=part.option, day=part.warranty_until)
    if part.deposit is not None:
        yield from _of_deposit(part.option, part.deposit, today)


def instalments_to_pay(ledger: Ledger, today: date) -> Iterator[Duty]:
    """Instalments of this month, and of earlier ones that were not paid."""
    for due in ledger.dues:
        if due.kind is DueKind.INSTALMENT and due.month <= Month.of(today):
            yield PayInstalment(
                option=due.option, day=due.month.last_day, amount=due.amount
            )


def _of_deposit(option: str, deposit: PartDeposit, today: date) -> Iterator[Duty]:
    if deposit.state is DepositState.PAID and deposit.send_by is not None:
        kind = SendBack if today <= deposit.send_by else ReturnMissed
        yield kind(option=option, day=deposit.send_by, deposit=deposit.out)
    if deposit.state is DepositState.SENT_BACK and deposit.sent is not None:
        awaited = days_after(deposit.sent, CREDIT_DAYS)
        if awaited < today:
            yield AskForCredit(
                option=option, day=awaited, deposit=deposit.out, sent=deposit.sent
            )
