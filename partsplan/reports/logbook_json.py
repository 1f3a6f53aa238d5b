"""Answers about a logbook as JSON, schema version 1: money in minor units."""

from typing import Any

from partsplan.domain import BroughtIn, Duty, Entered, Entry, MoneyNow, Now, Standing
from partsplan.ledger import holding
from partsplan.reports.changed_by import changed_by
from partsplan.reports.plain_data import SCHEMA, dumped, head, plain


def entries_json(standing: Standing) -> str:
    """All entries, undone ones too, and what is doubtful."""
    hold = {entry.number for entry in holding(standing.entries)[0]}
    return dumped(
        {
            **head(standing.garage),
            "entries": [
                {**_entry(entry), "undone": entry.number not in hold}
                for entry in standing.entries
            ],
            "doubts": plain(standing.ledger.flags),
        }
    )


def now_json(now: Now) -> str:
    """Where things stand on a day."""
    ledger = now.standing.ledger
    return dumped(
        {
            **head(now.standing.garage),
            "today": plain(now.today),
            "duties": [duty_data(duty) for duty in now.duties],
            "money": _money(now.money),
            "dues": plain(now.dues),
            "parts": plain(tuple(ledger.parts.values())),
            "checked": plain(ledger.checked),
            "tools": sorted(ledger.tools),
            "odometer": plain(ledger.odometer),
            "doubts": plain(ledger.flags),
        }
    )


def entered_json(entered: Entered) -> str:
    """An entry, and what it changes."""
    changed, after = changed_by(entered), entered.now.standing.ledger
    return dumped(
        {
            **head(entered.now.standing.garage),
            "entry": _entry(entered.entry),
            "quoted": plain(entered.quoted),
            "lifted": plain(entered.lifted),
            "spent": changed.spent,
            "received": changed.received,
            "silenced": [entry.number for entry in changed.silenced],
            "revived": [entry.number for entry in changed.revived],
            "doubts": plain(changed.doubts),
            "part": plain(after.parts.get(entered.entry.what.subject)),
            "money": _money(entered.now.money),
        }
    )


def brought_in_json(brought: BroughtIn) -> str:
    """A batch of past spending."""
    return dumped(
        {
            **head(brought.garage),
            "batch": brought.batch,
            "entries": len(brought.entries),
            "amount": sum(entry.what.amount or 0 for entry in brought.entries),
        }
    )


def restored_json(file: str, entries: int, plans: int) -> str:
    """A logbook that was made anew."""
    return dumped({"schema": SCHEMA, "file": file, "entries": entries, "plans": plans})


def _entry(entry: Entry) -> dict[str, Any]:
    return {
        "number": entry.number,
        "written": plain(entry.written),
        **plain(entry.what),
    }


def duty_data(duty: Duty) -> dict[str, Any]:
    """What is to be done, by its code."""
    return {"code": duty.code, **plain(duty)}


def _money(money: MoneyNow | None) -> dict[str, Any] | None:
    if money is None:
        return None
    return {**plain(money), "balance": money.balance, "free": money.free}
