"""Where the program starts."""

import io
import signal
import sys

import click

from partsplan.cli.against import against
from partsplan.cli.beside import beside
from partsplan.cli.bring_in import bring_in
from partsplan.cli.calendar import calendar
from partsplan.cli.check import check
from partsplan.cli.command import Group
from partsplan.cli.compare import compare
from partsplan.cli.curve import curve
from partsplan.cli.diagnose import diagnose
from partsplan.cli.enter import enter
from partsplan.cli.entries import entries
from partsplan.cli.exits import guarded
from partsplan.cli.export import export
from partsplan.cli.faults import faults
from partsplan.cli.from_codes import from_codes
from partsplan.cli.garbage import collect_seldom
from partsplan.cli.kinds import kinds
from partsplan.cli.lessons import lessons
from partsplan.cli.now import now
from partsplan.cli.plan import plan
from partsplan.cli.report import report
from partsplan.cli.restore import restore
from partsplan.cli.risk import risk
from partsplan.cli.start import start
from partsplan.cli.steady import steady
from partsplan.cli.version import version_option
from partsplan.cli.whatif import whatif
from partsplan.cli.why import why
from partsplan.cli.words import words
from partsplan.cli.workbook import workbook

NAME = "partsplan"


@click.group(cls=Group, example="partsplan plan my-garage")
@version_option
def cli() -> None:
    """Decide which car repairs to buy this month, from where, and why.

    Write what is wrong with your vehicles, and what parts cost where, into a folder of
    tables ("partsplan start" makes one) or a workbook ("partsplan workbook"); the plan
    tells what to order and fit in which month, what to leave alone, and why. A garage
    may also come as a tar archive on standard input: tar c my-garage | partsplan plan -
    """


for one in (
    plan,
    check,
    start,
    workbook,
    from_codes,
    faults,
    compare,
    why,
    whatif,
    beside,
    curve,
    steady,
    risk,
    diagnose,
    enter,
    now,
    entries,
    bring_in,
    export,
    restore,
    calendar,
    report,
    against,
    lessons,
    kinds,
    words,
):
    cli.add_command(one)


def run() -> None:
    """Run the command line and leave with its exit code."""
    collect_seldom()
    if hasattr(signal, "SIGPIPE"):  # a reader that has enough is no error
        signal.signal(signal.SIGPIPE, signal.SIG_DFL)
    for stream in (sys.stdout, sys.stderr):  # no letter is worth a crash
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="replace")
    sys.exit(guarded(lambda: cli.main(prog_name=NAME, standalone_mode=False)))
