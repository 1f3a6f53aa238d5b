"""A plain garage as files, to be spoiled cell by cell."""

import csv
import io
from pathlib import Path

import pytest

from partsplan.errors import InvalidGarage
from partsplan.intake import read_garage

Files = dict[str, str]

PLAIN: Files = {
    "garage.toml": """\
name = "Plain"
currency = "EUR"
start = "2027-01"
months = 6
budget = [200, "250.50"]
hours = 10

[rates]
JPY = 0.006
""",
    "vehicles.csv": """\
id,name,year,use,keep_months,driven_from,value,notes
v1,Small hatchback,2004,daily,36,,900.00,
v2,Diesel van,1999,stored,60,,,"two
lines"
""",
    "faults.csv": """\
id,vehicle,title,kind,system,severity,likelihood,inspection,drivability,\
loss_per_month,damage_chance,damage_cost,enjoyment,points,growth,lamps,codes,\
pair_with,after,fix_by,status
f1,v1,Pads worn,,brakes,2,C,major,1,0,0.1,120,0,,0.05,abs;brake-wear,P0171,,,,open
f2,v1,Disc scored,,brakes,3,D,none,0,,,,,,,,,f1,f1,2027-04,open
f3,v2,Rust,,body,,,,,,,,4,,,,,,,,open
""",
    "options.csv": """\
id,fixes,route,supplier,part_no,price,price_low,price_high,currency,quantity,\
core_deposit,core_chance,core_days,core_return_cost,coding,coding_cost,consumables,\
life_months,dud_chance,warranty_months,lead_days,hours,access,tools,min_temp,\
instalments,followup_within,not_before,not_after,road_legal,quoted_on,valid_until,notes
o1,f1,exchange,s1,,30.00,,,,2,5,0.9,30,4,none,,,48,0.02,24,5,1.5,a1,t1,5,\
0:0.25;1:0.75,,,,yes,2026-12-01,,
o2,f1:0.5,stand-in,,,4,,,,,,,,,,,,,,,,,,,,,2,,,,,,
o3,f2,economy,s2,,3000,2900,3100,,,,,,,,,,,,,,,,,,,,2027-01,2027-05,yes,,,
""",
    "suppliers.csv": """\
id,name,currency,shipping,free_over,tax,duty_rate,notes
s1,Parts counter,,6.90,100,included,0,
s2,Far away,JPY,900,,included,0.03,
""",
    "access.csv": "id,hours,title\na1,0.5,wheel off\n",
    "tools.csv": "id,name,price,owned\nt1,Press,39,no\n",
    "causes.csv": """\
fault,cause,chance,check_cost,check_hours,cure
f1,old,0.5,0,0.5,o1
f1,stuck,0.3,,,
""",
    "milestones.csv": "id,month,faults,title\nm1,2027-05,f1;f2,inspection\n",
}


def save(folder: Path, files: Files) -> Path:
    """The files in a folder."""
    for name, text in files.items():
        (folder / name).write_text(text, encoding="utf-8", newline="")
    return folder


def with_cells(file: str, line: int, **cells: str) -> Files:
    """The plain garage with other cells in one row; the header is line 1."""
    rows = list(csv.DictReader(io.StringIO(PLAIN[file])))
    rows[line - 2].update(cells)
    text = io.StringIO()
    writer = csv.DictWriter(text, rows[0].keys(), lineterminator="\n")
    writer.writeheader()
    writer.writerows(rows)
    return {**PLAIN, file: text.getvalue()}


def with_line(file: str, old: str, new: str) -> Files:
    """The plain garage with one text replaced, which must be there."""
    assert PLAIN[file].count(old) == 1
    return {**PLAIN, file: PLAIN[file].replace(old, new)}


def problems(folder: Path, files: Files) -> list[str]:
    """What is said to be wrong with a garage of these files."""
    with pytest.raises(InvalidGarage) as caught:
        read_garage(save(folder, files))
    return [str(problem) for problem in caught.value.problems]


def warnings(folder: Path, files: Files) -> tuple[str, ...]:
    """What is said to be odd about a garage of these files."""
    return read_garage(save(folder, files)).warnings
