"""``partsplan lessons``"""

import json
from pathlib import Path

from tests.cli.running import Capture, run
from tests.support.kept_plans import enter

TODAY = ("--today", "2027-06-30")


def test_lessons_of_a_logbook(garage: Path, capsys: Capture) -> None:
    before = {path: path.read_bytes() for path in garage.glob("*.*")}
    enter(
        garage,
        *(
            line
            for month in (1, 2, 3)
            for line in (
                f"2027-0{month}-05 ordered window-used amount=2200",
                f"2027-0{month}-12 arrived window-used",
                f"2027-0{month}-13 fitted window-used hours=1",
            )
        ),
    )
    ran = run(capsys, "lessons", garage, *TODAY)
    assert ran.code == 0
    assert "used: bills 10 % more than it quotes, 3 cases." in ran.out
    found = json.loads(run(capsys, "lessons", garage, "--json", *TODAY).out)
    assert [one["column"] for one in found["norms"]] == ["lead_days", "price"]
    assert {path: path.read_bytes() for path in before} == before


def test_a_garage_without_a_logbook(garage: Path, capsys: Capture) -> None:
    ran = run(capsys, "lessons", garage, *TODAY)
    assert ran.code == 0
    assert "No part was ordered yet" in ran.out
