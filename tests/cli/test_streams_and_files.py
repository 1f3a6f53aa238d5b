"""What goes to stdout, comes from stdin, and lands in files: promises 1, 8, 9, 13."""

import io
import json
import os
import tarfile
from pathlib import Path

import pytest

from tests.cli.running import Capture, raising, run, start


def test_01_stdout_is_the_answer_and_nothing_else(garage: Path) -> None:
    ran = start("plan", garage, "--json")
    assert ran.returncode == 0
    found = json.loads(ran.stdout)
    assert found["status"] == "proven"
    assert [job["option"] for job in found["jobs"]] == ["hose-new", "window-used"]
    assert ran.stderr == b""


def test_01_a_letter_that_cannot_be_printed_is_no_crash(garage: Path) -> None:
    toml = (garage / "garage.toml").read_text().replace("test garage", "Gärage")
    (garage / "garage.toml").write_text(toml, encoding="utf-8")
    ran = start("check", garage, PYTHONIOENCODING="ascii")
    assert ran.returncode == 0
    assert ran.stdout.startswith(b"G?rage")


@pytest.mark.parametrize(
    "words",
    [
        ("plan", "GARAGE"),
        ("check", "GARAGE"),
        ("faults", "GARAGE"),
        ("compare", "GARAGE", "hose"),
        ("kinds", "hose"),
        ("words",),
        ("start", "NEW"),
    ],
    ids=lambda words: words[0],
)
def test_08_json_carries_its_schema_version(
    words: tuple[str, ...], garage: Path, tmp_path: Path, capsys: Capture
) -> None:
    places = {"GARAGE": str(garage), "NEW": str(tmp_path / "new")}
    ran = run(capsys, *(places.get(word, word) for word in words), "--json")
    assert ran.code == 0
    found = json.loads(ran.out)
    assert next(iter(found.items())) == ("schema", 1)


def test_08_plain_is_one_record_a_line(garage: Path, capsys: Capture) -> None:
    ran = run(capsys, "plan", garage, "--plain")
    kinds = [line.split("\t")[0] for line in ran.out.splitlines()]
    assert kinds == ["plan"] + ["stage"] * 4 + ["job"] * 2 + ["month"] * 3
    assert run(capsys, "plan", garage, "--plain", "--json").code == 2


def archive(folder: Path) -> bytes:
    made = io.BytesIO()
    with tarfile.open(fileobj=made, mode="w:gz") as tar:
        tar.add(folder, arcname="some/where")
    return made.getvalue()


def test_09_a_dash_is_stdin_and_stdout(garage: Path, tmp_path: Path) -> None:
    piped = start("plan", "-", "--json", "-o", "-", stdin=archive(garage))
    assert piped.returncode == 0
    assert json.loads(piped.stdout)["garage"] == "test garage"
    named = start("plan", garage, "--json", "-o", tmp_path / "plan.json")
    assert named.stdout == b""
    assert (tmp_path / "plan.json").read_bytes() == piped.stdout


def test_09_what_is_no_archive_is_refused() -> None:
    ran = start("check", "-", stdin=b"id,vehicle,title\n")
    assert ran.returncode == 3
    assert ran.stderr.decode() == (
        "standard input: expected a tar archive of a garage folder, or an .xlsx "
        "workbook\n"
    )


def test_09_an_archive_cannot_write_outside(tmp_path: Path) -> None:
    made = io.BytesIO()
    with tarfile.open(fileobj=made, mode="w") as tar:
        for name in ("../../escaped.csv", "/escaped.toml"):
            member = tarfile.TarInfo(name)
            member.size = 3
            tar.addfile(member, io.BytesIO(b"x,y"))
        link = tarfile.TarInfo("faults.csv")
        link.type, link.linkname = tarfile.SYMTYPE, "/etc/hostname"
        tar.addfile(link)
    from partsplan.cli.garages import unpack

    inside = tmp_path / "deep" / "inside"
    inside.mkdir(parents=True)
    unpack(made.getvalue(), inside)
    assert sorted(path.name for path in inside.iterdir()) == [
        "escaped.csv",
        "escaped.toml",
    ]
    assert not (tmp_path / "escaped.csv").exists()


def test_13_files_appear_whole_or_not_at_all(
    garage: Path, tmp_path: Path, capsys: Capture, monkeypatch: pytest.MonkeyPatch
) -> None:
    there = tmp_path / "out" / "plan.json"
    there.parent.mkdir()
    assert run(capsys, "plan", garage, "--json", "-o", there).code == 0
    before = there.read_text()
    assert json.loads(before)["schema"] == 1

    assert run(capsys, "plan", garage, "-o", there).code == 2
    assert there.read_text() == before

    monkeypatch.setattr("os.replace", raising(OSError(28, "disk full")))
    ran = run(capsys, "plan", garage, "-o", there, "--force")
    assert ran.code == 3
    assert "disk full" in ran.err
    assert there.read_text() == before
    assert list(there.parent.iterdir()) == [there]

    monkeypatch.undo()
    assert run(capsys, "plan", garage, "-o", there, "--force").code == 0
    assert "Plan for test garage" in there.read_text()


def test_13_a_folder_that_is_not_there_is_said_before_planning(
    garage: Path, tmp_path: Path, capsys: Capture
) -> None:
    ran = run(capsys, "plan", garage, "-o", tmp_path / "nowhere" / "plan.txt")
    assert ran.code == 2
    assert "nowhere" in ran.err


def test_13_a_device_is_written_to_and_a_link_is_followed(
    garage: Path, tmp_path: Path, capsys: Capture
) -> None:
    there, link = tmp_path / "plan.txt", tmp_path / "link.txt"
    there.write_text("old")
    link.symlink_to(there)
    assert run(capsys, "plan", garage, "-o", link, "--force").code == 0
    assert link.is_symlink()
    assert "Plan for test garage" in there.read_text()
    assert run(capsys, "plan", garage, "-o", os.devnull).code == 0
    assert not Path(os.devnull).is_file()
    assert run(capsys, "plan", garage, "-o", tmp_path, "--force").code == 2
