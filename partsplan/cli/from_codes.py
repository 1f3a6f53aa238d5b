"""``partsplan from-codes``"""

import sys
from functools import partial
from pathlib import Path
from typing import BinaryIO

import click

from partsplan.cli.command import Command
from partsplan.cli.garages import FaultId, garage_folder_argument
from partsplan.cli.look import JSON, Look, look_options
from partsplan.cli.output import write_bytes


class VehicleId(FaultId):
    """The id of a vehicle; the shell completes those of the garage named before it."""

    name = "vehicle"

    def known(self, folder: Path, ctx: click.Context) -> tuple[str, ...]:
        """The ids that may stand here."""
        from partsplan import usecases

        return usecases.vehicle_ids(folder)


@click.command(
    cls=Command,
    example="partsplan from-codes my-garage --vehicle hatch scan.txt",
    short_help="Propose faults from the text of a scan tool.",
    no_args_is_help=True,
)
@garage_folder_argument
@click.argument("text", type=click.File("rb"), default="-", metavar="[FILE]")
@click.option(
    "--vehicle",
    metavar="ID",
    type=VehicleId(),
    help="The vehicle; not needed where the garage has only one.",
)
@click.option(
    "--bytes",
    "as_bytes",
    is_flag=True,
    help="Take every four hexadecimal digits for a code of two bytes.",
)
@click.option("--append", is_flag=True, help="Add the proposed faults to faults.csv.")
@click.option(
    "--csv", "as_csv", is_flag=True, help="Print them as rows of faults.csv, no header."
)
@look_options()
def from_codes(
    garage: Path,
    text: BinaryIO,
    vehicle: str | None,
    as_bytes: bool,
    append: bool,
    as_csv: bool,
    look: Look,
) -> None:
    """Propose faults for GARAGE from FILE, or from what is pasted or piped in.

    Any text will do. Trouble codes are found in it (P0301, p0301-1C; two bytes where
    it says so, as in "two bytes: 0143"), lamps that are lit ("ABS lamp"), and units
    that do not reply ("no reply from the ABS unit"). Codes with a maker's own meaning
    stay as they are. Nothing is claimed to be diagnosed, and nothing is written
    without --append.
    """
    from partsplan import reports, usecases

    if as_csv and (look.shape == JSON or append):
        raise click.UsageError("--csv excludes --json and --append")
    if text.isatty():
        print("Paste the text, then end it with Ctrl-D on a new line.", file=sys.stderr)
    answer = usecases.from_codes(
        garage, text.read(), vehicle=vehicle, as_bytes=as_bytes, append=append
    )
    if as_csv:
        write_bytes(answer.rows.encode())
        if said := reports.left_out_text(answer.reading, answer.lost):
            print(said, file=sys.stderr)
        return
    found, lost, appended = answer.reading, answer.lost, answer.appended
    look.tell(
        text=partial(reports.codes_tables, found, lost=lost, appended=appended),
        json=partial(reports.codes_json, found, lost=lost, appended=appended),
    )
