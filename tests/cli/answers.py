"""Every command that answers with text, on a garage in which much has happened."""

from pathlib import Path

from tests.cli.logged import TABLES, entered, logged_garage
from tests.cli.running import Capture, run

TODAY = ("--today", "2027-02-14")

WITH_TABLES = {
    "plan": (),
    "faults": (),
    "compare": ("starter",),
    "whatif": ("--budget", "1150"),
    "beside": (".", "--second", "budget=20"),
    "curve": ("--steps", "2", "--jobs", "1"),
    "steady": ("--jobs", "1"),
    "risk": ("--futures", "100"),
    "diagnose": (),
    "now": TODAY,
    "entries": (),
    "against": TODAY,
    "lessons": TODAY,
    "from-codes": ("scan.txt", "--vehicle", "hatch"),
}
"""What is said after the garage, by command; ``.`` is the garage again."""

WITHOUT = {"check": (), "why": ()}


def lived_in(folder: Path, capsys: Capture) -> Path:
    """A garage with a kept plan, entries and something for each command to tell."""
    header, *rows = TABLES["faults_csv"].splitlines()
    faults = [f"{header},kind", *(f"{row}," for row in rows)]
    faults.append("glow,van,Starts badly,,,,,,glow-plugs-dead\n")
    garage = logged_garage(folder, faults_csv="\n".join(faults))
    (folder / "garage.toml").write_text(
        'name = "test garage"\ncurrency = "EUR"\nstart = "2027-01"\nmonths = 4\n'
        'budget = "1200.00"\nhours = 8.5\nmoney_per_point = "12.5"\n',
        encoding="utf-8",
    )
    with (folder / "causes.csv").open("a", encoding="utf-8") as file:
        file.write("belt,Tensioner worn,0.7,1200.50,0.3,belt-kit\n")
    assert run(capsys, "plan", garage, "--keep").code == 0
    entered(capsys, garage, "2027-01-04 ordered starter-exchange", "--amount", "1109")
    entered(capsys, garage, "2027-01-09 arrived starter-exchange")
    entered(capsys, garage, "2027-02-12 fitted starter-exchange", "--hours", "1.75")
    (folder / "scan.txt").write_text("P0301 stored\nABS lamp\n", encoding="utf-8")
    return garage


def words(command: str, garage: Path) -> list[str]:
    """The words that ask for it."""
    more = {**WITH_TABLES, **WITHOUT}[command]
    paths = {".": str(garage), "scan.txt": str(garage / "scan.txt")}
    return [command, str(garage), *(paths.get(word, word) for word in more)]
