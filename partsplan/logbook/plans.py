"""Plans that their owner means to follow are kept beside the entries."""

import sqlite3
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from partsplan.domain import Month
from partsplan.errors import InvalidRequest
from partsplan.logbook.chain import Row, Table, add, last, rows_after
from partsplan.logbook.failures import Unsound, told
from partsplan.logbook.opening import ensure, reading, writing
from partsplan.logbook.rows import in_utc, moment_text

PLANS = Table("plans", ("number", "written", "start", "text"))


@dataclass(frozen=True, slots=True, kw_only=True)
class KeptPlan:
    """A plan as it was when its owner decided to follow it.

    Attributes
    ----------
    number
        From 1 on; the last one holds.
    written
        When it was kept. [UTC]
    start
        First month of the plan.
    text
        The plan as JSON; the logbook does not look into it.
    """

    number: int
    written: datetime
    start: Month
    text: str


def keep_plan(path: Path, text: str, *, start: Month, now: datetime) -> KeptPlan:
    """Keep a plan; ``now`` comes with its zone. The file is made if need be.

    Raises
    ------
    DamagedLogbook, LogbookUnavailable
    InvalidRequest
        If the text cannot be stored.
    """
    ensure(path)
    with writing(path) as connection:
        number = last(connection, PLANS) + 1
        kept = KeptPlan(number=number, written=in_utc(now), start=start, text=text)
        add_plans(connection, [kept])
    return kept


def kept_plans(path: Path) -> tuple[KeptPlan, ...]:
    """All plans that were kept, oldest first; none without a file.

    Raises
    ------
    DamagedLogbook, LogbookUnavailable
    """
    with told(path):
        if not path.exists():
            return ()
        with reading(path) as connection:
            return plans(rows_after(connection, PLANS, 0))


def plans(rows: Iterable[Row]) -> tuple[KeptPlan, ...]:
    """The plans that rows hold.

    Raises
    ------
    Unsound
        If a value is none that was written.
    """
    try:
        return tuple(
            KeptPlan(
                number=number,
                written=datetime.fromisoformat(written),
                start=Month.parse(start),
                text=text,
            )
            for number, written, start, text in rows
        )
    except ValueError as error:
        raise Unsound(f"plans: {error}") from error


def add_plans(connection: sqlite3.Connection, kept: Iterable[KeptPlan]) -> None:
    """Write plans in the transaction that is open.

    Raises
    ------
    InvalidRequest
        If one cannot be stored, or does not carry the next number.
    """
    rows = (
        (one.number, moment_text(one.written), str(one.start), one.text) for one in kept
    )
    try:
        add(connection, PLANS, rows)
    except (sqlite3.IntegrityError, UnicodeEncodeError, OverflowError) as error:
        raise InvalidRequest(f"the plan cannot be kept: {error}") from error
