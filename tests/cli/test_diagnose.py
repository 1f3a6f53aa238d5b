"""``partsplan diagnose``"""

import json
from pathlib import Path

import pytest

from tests.cli.running import Capture, run, write_garage

CAUSES = """\
fault,cause,chance,check_cost,check_hours,cure
window,Motor worn,0.6,5.00,0.5,window-used
window,Fuse blown,0.4,,,
"""


@pytest.fixture
def suspecting(tmp_path: Path) -> Path:
    return write_garage(tmp_path / "suspecting", causes_csv=CAUSES)


def test_every_fault_with_suspected_causes(suspecting: Path, capsys: Capture) -> None:
    ran = run(capsys, "diagnose", suspecting)
    assert ran.code == 0
    assert "1. Fuse blown (free)" in ran.out
    found = json.loads(run(capsys, "diagnose", suspecting, "--json").out)
    assert [one["fault"] for one in found["faults"]] == ["window"]
    assert found["faults"][0]["expected_cost"] == 1200


def test_one_fault(suspecting: Path, capsys: Capture) -> None:
    ran = run(capsys, "diagnose", suspecting, "hose")
    assert ran.code == 0
    assert "No suspected cause is written down for it" in ran.out
    assert "Motor worn" not in ran.out


def test_a_fault_that_is_not_there(suspecting: Path, capsys: Capture) -> None:
    ran = run(capsys, "diagnose", suspecting, "windo")
    assert (ran.code, ran.out) == (2, "")
    assert 'There is no fault "windo". Did you mean "window"?' in ran.err


def test_a_garage_without_suspicions(garage: Path, capsys: Capture) -> None:
    ran = run(capsys, "diagnose", garage)
    assert ran.code == 0
    assert "No suspected cause is written down yet" in ran.out


def test_a_fixed_fault_is_left_out_unless_asked_for(
    tmp_path: Path, capsys: Capture
) -> None:
    mended = write_garage(
        tmp_path / "mended",
        causes_csv=CAUSES,
        faults_csv="id,vehicle,title,status\nhose,hatch,Hose,\nwindow,hatch,W,fixed\n",
    )
    assert "Fuse blown" not in run(capsys, "diagnose", mended).out
    assert "W (fixed)" in run(capsys, "diagnose", mended, "window").out
