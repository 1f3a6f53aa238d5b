"""Where things stand while entries are taken, one after the other."""

from collections import defaultdict
from collections.abc import Mapping
from datetime import date
from fractions import Fraction
from itertools import chain

from partsplan.domain import (
    ZERO,
    CheckedCause,
    Due,
    DueKind,
    Flag,
    Garage,
    Ledger,
    Month,
    MonthMoney,
    Option,
    Quote,
    Route,
)
from partsplan.ledger.open_part import OpenPart

_NO_QUOTE = Quote()


class Book:
    """Collects what entries say; each kind of entry has a function that writes here."""

    def __init__(self, garage: Garage, quotes: Mapping[str, Quote]) -> None:
        self.garage = garage
        self.parts: dict[str, OpenPart] = {}
        self.earlier: list[OpenPart] = []
        self.checked: list[CheckedCause] = []
        self.tools: set[str] = set()
        self.odometer: dict[str, int] = {}
        self.flags: list[Flag] = []
        self.last: date | None = None
        self._quotes = quotes
        self._dues = defaultdict[str, list[Due]](list)
        self._spent = defaultdict[Month, int](int)
        self._received = defaultdict[Month, int](int)
        self._hours = defaultdict[Month, Fraction](Fraction)

    def option(self, name: str) -> Option:
        """The option of that id, or a bare one if the garage has it no more."""
        return self.garage.option.get(name) or Option(
            id=name,
            fixes=(),
            route=Route.NEW,
            price=0,
            currency=self.garage.currency.code,
        )

    def quote(self, name: str) -> Quote:
        """The option's quote; all 0 without one."""
        return self._quotes.get(name, _NO_QUOTE)

    def begin(self, part: OpenPart) -> None:
        """A part takes the place of the one of its option before it, if there was."""
        before = self.parts.get(part.terms.id)
        if before is not None and before is not part:
            self.earlier.append(before)
        self.parts[part.terms.id] = part

    def spend(self, day: date, amount: int) -> None:
        """Money left on a day. [minor units]"""
        if amount:
            self._spent[Month.of(day)] += amount

    def receive(self, day: date, amount: int) -> None:
        """Money came in on a day. [minor units]"""
        if amount:
            self._received[Month.of(day)] += amount

    def work(self, day: date, hours: Fraction) -> None:
        """Own hours were spent on a day. [h]"""
        if hours:
            self._hours[Month.of(day)] += hours

    def owe(self, option: str, kind: DueKind, month: Month, amount: int) -> None:
        """Money is to be paid in a month. [minor units]"""
        if amount:
            due = Due(option=option, kind=kind, month=month, amount=amount)
            self._dues[option].append(due)

    def owed(self, option: str, kind: DueKind) -> list[Due]:
        """Dues of a kind, by month."""
        owed = [due for due in self._dues.get(option, ()) if due.kind is kind]
        return sorted(owed, key=lambda due: due.month)

    def settle(self, option: str, kind: DueKind) -> None:
        """Nothing of that kind is to be paid for the option any more."""
        if owed := self._dues.get(option):
            self._dues[option] = [due for due in owed if due.kind is not kind]

    def put_off(self, option: str, kind: DueKind, month: Month) -> None:
        """What is owed of that kind is to be paid in that month instead."""
        owed = self.owed(option, kind)
        self.settle(option, kind)
        for due in owed:
            self.owe(option, kind, month, due.amount)

    def ledger(self) -> Ledger:
        """Everything so far, frozen."""
        months = self._spent.keys() | self._received.keys() | self._hours.keys()
        return Ledger(
            money={
                month: MonthMoney(
                    spent=self._spent.get(month, 0),
                    received=self._received.get(month, 0),
                    hours=self._hours.get(month, ZERO),
                )
                for month in sorted(months)
            },
            parts={name: part.frozen() for name, part in sorted(self.parts.items())},
            earlier=tuple(part.frozen() for part in self.earlier),
            dues=tuple(sorted(chain(*self._dues.values()), key=_by_month)),
            checked=tuple(self.checked),
            tools=frozenset(self.tools),
            odometer=dict(sorted(self.odometer.items())),
            flags=tuple(sorted(self.flags, key=lambda flag: flag.entry)),
            last=self.last,
        )


def _by_month(due: Due) -> tuple[Month, str, DueKind]:
    return due.month, due.option, due.kind
