"""``partsplan enter``"""

from datetime import date
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from partsplan.cli.command import Command
from partsplan.cli.days import Day, moment, today_option
from partsplan.cli.entry_arguments import About, Kind
from partsplan.cli.garages import garage_folder_argument
from partsplan.cli.look import Look, look_options

if TYPE_CHECKING:
    from partsplan.domain import EntryKind


@click.command(
    cls=Command,
    example="partsplan enter my-garage fitted hose-new --day 2027-02-12 --hours 2.5",
    short_help="Write down what has happened.",
    no_args_is_help=True,
)
@garage_folder_argument
@click.argument("kind", type=Kind())
@click.argument("subject", type=About(), default="", required=False)
@click.option("--day", type=Day(), help="When it happened; otherwise today.")
@click.option("--amount", help="Money; otherwise as quoted.")
@click.option("--deposit", help="Core deposit; otherwise as quoted.")
@click.option("--hours", metavar="H", help="Own hours; otherwise as quoted.")
@click.option("--cause", default="", help="The suspected cause, or how it begins.")
@click.option("--found/--ruled-out", default=None, help="What the check showed.")
@click.option("--reading", metavar="N", help="What the odometer shows.")
@click.option("--who", default="", help="Who did it, or writes it down.")
@click.option("--text", default="", help="Anything else.")
@click.option(
    "--anyway", is_flag=True, help="Even if it does not fit what is known; flagged."
)
@today_option
@look_options(headed=False, tables=False)
def enter(
    garage: Path,
    kind: "EntryKind",
    subject: str,
    day: date | None,
    anyway: bool,
    today: date,
    look: Look,
    **said: Any,
) -> None:
    """Write into GARAGE's logbook what has happened; nothing in it is ever changed.

    What KIND says, and which SUBJECT it takes:

    \b
    ordered    an option: --amount as billed, without shipping; --deposit
    arrived    an option: --amount paid at the door
    fitted     an option: --amount of coding and consumables; --hours
    dud        an option that is bad
    sent-back  an option whose old unit went back: --amount of freight
    credited   an option whose deposit came back: --amount, or all of it
    refused    an option whose deposit is lost: --amount that came all the same
    checked    a fault: --cause, --found or --ruled-out; --amount, --hours
    paid       --amount; for an option with instalments, a tool, anything, nothing
    money-in   --amount that came in besides the budget
    odometer   a vehicle: --reading
    undone     an entry's number, or import-1: it says nothing any more
    note       --text

    Amounts are decimal text in the garage's currency. Whatever does not fit what is
    known is refused with a reason; --anyway takes it all the same.
    """
    from partsplan import reports, usecases

    entered = usecases.enter(
        garage,
        usecases.Told(kind=kind, subject=subject, day=day or today, **said),
        anyway=anyway,
        today=today,
        now=moment(today),
    )
    look.tell(
        text=partial(reports.entered_text, entered),
        json=partial(reports.entered_json, entered),
    )
