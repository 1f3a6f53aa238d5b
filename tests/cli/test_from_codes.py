"""``partsplan from-codes`` from pasted text to rows of faults.csv."""

import json
from pathlib import Path

import pytest

from partsplan.intake import read_garage
from tests.cli.running import Capture, on_terminal, run, start, write_garage

SCAN = "ABS lamp on\nstored: P0301 p0302-1c P1234\npending: P0420\n"


@pytest.fixture
def scan(tmp_path: Path) -> Path:
    path = tmp_path / "scan.txt"
    path.write_text(SCAN)
    return path


def test_faults_are_proposed_and_nothing_is_written(
    garage: Path, scan: Path, capsys: Capture
) -> None:
    before = (garage / "faults.csv").read_bytes()
    ran = run(capsys, "from-codes", garage, scan, "--vehicle", "hatch")
    assert ran.code == 0
    assert "Signs of small hatchback (hatch)" in ran.out
    assert "hatch-p0301" in ran.out
    assert (garage / "faults.csv").read_bytes() == before


def test_text_may_be_piped_in_in_any_encoding(garage: Path) -> None:
    for text in (
        SCAN.encode(),
        b"\xef\xbb\xbf" + SCAN.encode(),
        SCAN.encode("utf-16"),
        b"\x80\x81 " + SCAN.encode(),
    ):
        for words in ((), ("-",)):
            done = start("from-codes", garage, *words, stdin=text)
            assert done.returncode == 0, done.stderr
            assert b"hatch-p0301" in done.stdout


def test_the_rows_fit_below_the_file(garage: Path, scan: Path, capsys: Capture) -> None:
    ran = run(capsys, "from-codes", garage, scan, "--csv")
    assert ran.code == 0
    with (garage / "faults.csv").open("a") as file:
        file.write(ran.out)
    assert "faults.csv has no columns kind, lamps, codes and after" in ran.err
    new = read_garage(garage).faults[2:]
    assert [fault.id for fault in new] == [
        "hatch-abs-lamp",
        "hatch-p0301",
        "hatch-p0420",
        "hatch-p1234",
    ]


def test_append_writes_them_once(garage: Path, scan: Path, capsys: Capture) -> None:
    header = "id,vehicle,title,kind,system,lamps,codes,pair_with,after,severity"
    header += ",likelihood,drivability"
    (garage / "faults.csv").write_text(
        f"{header}\nhose,hatch,Brake hose bulges,,brakes,,,,,1,B,0\n"
        "window,hatch,Window stays down,,body,,,,,,,1\n"
    )
    ran = run(capsys, "from-codes", garage, scan, "--append")
    assert ran.code == 0
    assert "Added to faults.csv: hatch-abs-lamp, hatch-p0301, hatch-p0420" in ran.out
    faults = read_garage(garage).fault
    assert faults["hatch-p0301"].codes == ("P0301", "P0302")
    assert faults["hatch-p0420"].after == ("hatch-p0301",)
    assert faults["hatch-abs-lamp"].kind == "wheel-speed-sensor-failed"
    written = (garage / "faults.csv").read_bytes()
    again = run(capsys, "from-codes", garage, scan, "--append")
    assert again.code == 0
    assert "Nothing new to propose." in again.out
    assert "P0301 is left out" in again.out
    assert (garage / "faults.csv").read_bytes() == written


def test_columns_that_are_not_there_are_told(
    garage: Path, scan: Path, capsys: Capture
) -> None:
    ran = run(capsys, "from-codes", garage, scan, "--append")
    out = " ".join(ran.out.split())
    assert (
        "faults.csv has no columns kind, lamps, codes and after, so that stays out."
        in out
    )


def test_it_is_json_too(garage: Path, scan: Path, capsys: Capture) -> None:
    ran = run(capsys, "from-codes", garage, scan, "--json", "--append")
    found = json.loads(ran.out)
    assert found["appended"] is True
    assert found["columns_missing"] == ["kind", "lamps", "codes", "after"]
    assert found["proposed"][0]["id"] == "hatch-abs-lamp"


def test_two_bytes_are_read_when_asked_for(
    garage: Path, tmp_path: Path, capsys: Capture
) -> None:
    raw = tmp_path / "raw.txt"
    raw.write_text("0301 C121\n")
    assert "No trouble code" in run(capsys, "from-codes", garage, raw).out
    out = run(capsys, "from-codes", garage, raw, "--bytes").out
    assert "hatch-p0301" in out
    assert "hatch-u0121" in out


def test_the_vehicle_must_be_known(tmp_path: Path, scan: Path, capsys: Capture) -> None:
    two = write_garage(
        tmp_path / "two", vehicles_csv="id,name\nhatch,hatchback\nvan,van\n"
    )
    ran = run(capsys, "from-codes", two, scan)
    assert (ran.code, ran.out) == (2, "")
    assert "--vehicle: expected one of hatch, van" in ran.err
    ran = run(capsys, "from-codes", two, scan, "--vehicle", "hutch")
    assert ran.code == 2
    assert 'There is no vehicle "hutch". Did you mean "hatch"?' in ran.err
    assert run(capsys, "from-codes", two, scan, "--vehicle", "van").code == 0


@pytest.mark.parametrize(
    "flags", [("--csv", "--json"), ("--csv", "--append")], ids=" ".join
)
def test_answers_that_exclude_each_other(
    garage: Path, scan: Path, capsys: Capture, flags: tuple[str, ...]
) -> None:
    ran = run(capsys, "from-codes", garage, scan, *flags)
    assert ran.code == 2
    assert "excludes" in ran.err


def test_a_text_that_is_too_long_is_refused(garage: Path, tmp_path: Path) -> None:
    long = tmp_path / "long.txt"
    long.write_bytes(b"x" * (4 * 1024 * 1024 + 1))
    done = start("from-codes", garage, long)
    assert (done.returncode, done.stdout) == (2, b"")
    assert b"at most 4 MiB" in done.stderr


def test_what_is_no_file_or_no_garage_is_told(
    garage: Path, tmp_path: Path, scan: Path, capsys: Capture
) -> None:
    assert run(capsys, "from-codes", garage, tmp_path / "none.txt").code == 2
    assert run(capsys, "from-codes", garage, tmp_path).code == 2
    assert run(capsys, "from-codes", "-", scan).code == 2
    broken = write_garage(tmp_path / "broken", faults_csv="id,vehicle\nx,hatch\n")
    ran = run(capsys, "from-codes", broken, scan, "--append")
    assert ran.code == 3
    assert "faults.csv:1: title" in ran.err


def test_text_can_be_pasted_into_a_terminal(garage: Path) -> None:
    ran = on_terminal("from-codes", garage, typed="P0335\n\x04")
    assert ran.code == 0
    assert "Paste the text, then end it with Ctrl-D" in ran.out
    assert "hatch-p0335" in ran.out


def test_the_shell_completes_vehicles(garage: Path) -> None:
    done = start(
        _PARTSPLAN_COMPLETE="bash_complete",
        COMP_WORDS=f"partsplan from-codes {garage} --vehicle ",
        COMP_CWORD="4",
    )
    assert b"hatch" in done.stdout
