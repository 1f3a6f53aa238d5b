"""What does not follow from what was known before an entry, and what to enter first."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from datetime import date

from partsplan.domain import (
    Currency,
    EntryKind,
    Garage,
    Happening,
    Option,
    Part,
    PartState,
    Route,
)
from partsplan.ledger.open_part import OpenPart


def out_of_step(
    garage: Garage,
    parts: Mapping[str, Part | OpenPart],
    odometer: Mapping[str, int],
    what: Happening,
) -> Iterable[str]:
    """One sentence for each thing that does not fit; ids must be known.

    ``parts`` and ``odometer`` are those of a ledger without the entry.
    """
    if what.kind in _RULES:
        option, part = garage.option[what.subject], parts.get(what.subject)
        yield from _RULES[what.kind](_Step(what, option, part, garage.currency))
    elif what.kind is EntryKind.ODOMETER:
        last = odometer.get(what.subject)
        if last is not None and what.reading is not None and what.reading < last:
            yield (
                f"expected a reading of {what.subject} from {last} on, "
                f"got {what.reading}"
            )


@dataclass(frozen=True, slots=True)
class _Step:
    """An entry of a part, and what was known of that part; None if nothing was."""

    what: Happening
    option: Option
    part: Part | OpenPart | None
    currency: Currency


def _ordered(step: _Step) -> Iterator[str]:
    name, day, part = step.option.id, step.what.day, step.part
    if part is None:
        return
    if part.state is PartState.ON_THE_WAY:
        yield f"{name} is on the way since {part.ordered}; enter its arrival first"
    elif part.state is PartState.IN_HAND:
        if part.order_known:
            yield f"{name} is in hand since {part.arrived}; enter its fitting first"
        elif part.arrived and day > part.arrived:
            yield f"{name} arrived on {part.arrived}, before this order"
    elif part.order_known:
        last = part.failed if part.state is PartState.DUD else part.fitted
        if last and day < last:
            yield (
                f"{name} was ordered on {part.ordered} and under way until {last}; "
                f"expected a day from then on"
            )


def _arrived(step: _Step) -> Iterator[str]:
    name, day, part = step.option.id, step.what.day, step.part
    if part is None:
        yield f"{name} was not ordered; enter its order first"
        return
    if part.state is PartState.DUD:
        yield _was_a_dud(step, part.failed)
    elif part.arrived is not None:
        yield f"{name} arrived on {part.arrived} already; enter a new order first"
    elif not part.order_known:
        yield f"{name} was not ordered; enter its order first"
    elif part.fitted is not None:
        yield f"{name} was fitted on {part.fitted} already, so it had arrived"
    if part.order_known and day < part.ordered:
        yield f"{name} was ordered on {part.ordered}; expected a day from then on"


def _fitted(step: _Step) -> Iterator[str]:
    name, day, part = step.option.id, step.what.day, step.part
    if part is None:
        yield f"{name} was not ordered; enter its order first"
        return
    if part.state is PartState.FITTED:
        yield f"{name} was fitted on {part.fitted} already; enter a new order first"
    elif part.state is PartState.DUD:
        yield _was_a_dud(step, part.failed)
    elif part.state is PartState.ON_THE_WAY and step.option.route is not Route.WORKSHOP:
        yield f"{name} has not arrived; enter its arrival first"
    if part.arrived is not None and day < part.arrived:
        yield f"{name} arrived on {part.arrived}; expected a day from then on"
    elif part.order_known and day < part.ordered:
        yield f"{name} was ordered on {part.ordered}; expected a day from then on"


def _dud(step: _Step) -> Iterator[str]:
    name, day, part = step.option.id, step.what.day, step.part
    if part is None or part.state is PartState.ON_THE_WAY:
        yield f"{name} has neither arrived nor is it fitted; enter its arrival first"
        return
    if part.state is PartState.DUD:
        yield _was_a_dud(step, part.failed)
    since = part.fitted or part.arrived
    if since is not None and day < since:
        done = "was fitted" if part.fitted else "arrived"
        yield f"{name} {done} on {since}; expected a day from then on"


def _sent_back(step: _Step) -> Iterator[str]:
    name, day, part = step.option.id, step.what.day, step.part
    if part is None or part.deposit is None:
        yield f"no deposit was paid for {name}; enter its order with a deposit first"
        return
    deposit = part.deposit
    if deposit.sent is not None:
        yield f"the old unit of {name} was sent back on {deposit.sent} already"
    elif not deposit.open:
        yield f"the deposit of {name} was {deposit.state} already"
    if deposit.send_by is None:
        yield f"{name} is not fitted; enter its fitting first"
    elif part.fitted is not None and day < part.fitted:
        yield f"{name} was fitted on {part.fitted}; expected a day from then on"


def _credited(step: _Step) -> Iterator[str]:
    name, day, part = step.option.id, step.what.day, step.part
    if part is None or part.deposit is None:
        yield f"no deposit was paid for {name}; enter its order with a deposit first"
        return
    deposit = part.deposit
    if not deposit.open:
        yield f"the deposit of {name} was {deposit.state} already"
    elif deposit.sent is None and step.what.kind is EntryKind.CREDITED:
        yield f"the old unit of {name} was not sent back; enter that first"
    elif deposit.sent is not None and day < deposit.sent:
        yield (
            f"the old unit of {name} was sent back on {deposit.sent}; "
            f"expected a day from then on"
        )
    if deposit.open and (step.what.amount or 0) > deposit.out:
        out = step.currency.format(deposit.out)
        got = step.currency.format(step.what.amount or 0)
        yield f"{out} of the deposit of {name} is out; expected no more, got {got}"


def _was_a_dud(step: _Step, failed: date | None) -> str:
    return (
        f"{step.option.id} was found to be a dud on {failed}; "
        f"enter the order of another one first"
    )


_RULES: Mapping[EntryKind, Callable[[_Step], Iterator[str]]] = {
    EntryKind.ORDERED: _ordered,
    EntryKind.ARRIVED: _arrived,
    EntryKind.FITTED: _fitted,
    EntryKind.DUD: _dud,
    EntryKind.SENT_BACK: _sent_back,
    EntryKind.CREDITED: _credited,
    EntryKind.REFUSED: _credited,
}
