"""A garage whose parts have deposits, warranties and instalments, and its commands."""

from pathlib import Path
from typing import Any

from tests.cli.running import Capture, Ran, run, write_garage

TABLES = {
    "vehicles_csv": "id,name\nhatch,small hatchback\nvan,diesel van\n",
    "faults_csv": """\
id,vehicle,title,system,severity,likelihood,drivability,fix_by
hose,hatch,Brake hose bulges,brakes,1,B,0,
starter,hatch,Starter grinds,electrics,,,3,2027-03
belt,van,Timing belt overdue,engine,,,1,
""",
    "options_csv": """\
id,fixes,route,supplier,price,core_deposit,core_days,core_return_cost,consumables,\
warranty_months,lead_days,hours,instalments
hose-new,hose,new,,34.50,,,,2.50,,,2,
starter-exchange,starter,exchange,depot,109.00,35.00,30,9.90,,24,4,1.5,
belt-kit,belt,workshop,,200.00,,,,,,,,0:0.5;1:0.5
""",
    "suppliers_csv": "id,name,shipping\ndepot,the depot,6.90\n",
    "causes_csv": """\
fault,cause,chance,check_cost,check_hours,cure
starter,Solenoid sticks,0.6,5.00,0.5,starter-exchange
starter,Earth strap corroded,0.4,,0.2,
""",
}
BOOK = "logbook.sqlite"


def logged_garage(folder: Path, **tables: str) -> Path:
    """The garage on disk."""
    return write_garage(folder, **{**TABLES, **tables})


def entered(capsys: Capture, garage: Path, line: str, *more: str) -> Ran:
    """Enters ``day kind subject`` on that day; all has to go well."""
    day, *words = line.split()
    ran = run(capsys, "enter", garage, *words, "--today", day, *more)
    assert (ran.code, ran.err) == (0, "")
    return ran


def refused(capsys: Capture, garage: Path, line: str, *more: str) -> list[str]:
    """Enters what is refused, and tells what is said."""
    before = (garage / BOOK).read_bytes() if (garage / BOOK).exists() else None
    day, *words = line.split()
    ran = run(capsys, "enter", garage, *words, "--today", day, *more)
    assert (ran.code, ran.out) == (3, "")
    after = (garage / BOOK).read_bytes() if (garage / BOOK).exists() else None
    assert after == before
    return ran.err.splitlines()


def data(capsys: Capture, *words: Any) -> dict[str, Any]:
    """What a command says as JSON."""
    import json

    ran = run(capsys, *words, "--json")
    assert (ran.code, ran.err) == (0, "")
    found: dict[str, Any] = json.loads(ran.out)
    return found


def flowing(ran: Ran) -> str:
    """What it printed, its lines joined."""
    return " ".join(ran.out.split())
