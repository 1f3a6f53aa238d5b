"""New rows below a faults.csv that somebody keeps in their own way."""

import os
import stat
from pathlib import Path

import pytest

from partsplan.domain import Fault, FaultStatus, System
from partsplan.errors import InvalidGarage, InvalidRequest
from partsplan.intake import append_faults, fault_rows, read_garage
from tests.intake.plain_garage import PLAIN, save

NEW = Fault(
    id="new-1",
    vehicle="v1",
    title='Says "P0301", twice; or more',
    kind="ignition-coil-misfire",
    system=System.ELECTRICS,
    lamps=("engine",),
    codes=("P0301", "P0302"),
    after=("f1",),
)
OTHER = Fault(id="new-2", vehicle="v1", title="Code P1234", codes=("P1234",))


def content(folder: Path) -> bytes:
    return (folder / "faults.csv").read_bytes()


@pytest.fixture
def garage(tmp_path: Path) -> Path:
    folder = tmp_path / "garage"
    folder.mkdir()
    return save(folder, PLAIN)


def with_faults(folder: Path, faults: bytes) -> Path:
    (folder / "faults.csv").write_bytes(faults)
    return folder


def test_new_rows_read_as_they_were_meant(garage: Path) -> None:
    before = content(garage)
    append_faults(garage, [NEW, OTHER])
    assert content(garage).startswith(before)
    *old, one, other = read_garage(garage).faults
    assert [fault.id for fault in old] == ["f1", "f2", "f3"]
    assert (one.title, one.codes, one.lamps) == (NEW.title, NEW.codes, NEW.lamps)
    assert (one.kind, one.after) == (NEW.kind, ("f1",))
    assert one.system is System.ELECTRICS  # filled by the kind
    assert other.system is System.OTHER
    assert other.status is FaultStatus.OPEN


@pytest.mark.parametrize("end", [b"\n", b"\r\n", b"\r"])
@pytest.mark.parametrize("separator", [b",", b";", b"\t"])
@pytest.mark.parametrize("mark", [b"", b"\xef\xbb\xbf"])
@pytest.mark.parametrize("ended", [True, False])
def test_a_file_stays_as_it_is_kept(
    garage: Path, end: bytes, separator: bytes, mark: bytes, ended: bool
) -> None:
    rows = [b"id|vehicle|Title|codes|own notes", b"f1|v1|Pads|P0171|keep"]
    text = mark + end.join(rows).replace(b"|", separator) + (end if ended else b"")
    with_faults(garage, text)
    (garage / "options.csv").write_text("id,fixes,route,price\n")
    (garage / "causes.csv").unlink()
    (garage / "milestones.csv").unlink()
    append_faults(garage, [OTHER])
    added = separator.join([b"new-2", b"v1", b"Code P1234", b"P1234", b""]) + end
    assert content(garage) == text + (b"" if ended else end) + added
    assert read_garage(garage).faults[1].codes == ("P1234",)


def test_only_columns_that_are_there_are_written_and_the_others_told(
    garage: Path,
) -> None:
    with_faults(garage, b"title,id,vehicle\nPads,f1,v1\n")
    rows = fault_rows(garage, [NEW, OTHER])
    assert (
        rows.text == '"Says ""P0301"", twice; or more",new-1,v1\nCode P1234,new-2,v1\n'
    )
    assert rows.lost == ("kind", "system", "lamps", "codes", "after")


def test_without_a_column_for_kinds_the_system_is_written(garage: Path) -> None:
    with_faults(garage, b"id,vehicle,title,system\nf1,v1,Pads,brakes\n")
    assert ",electrics\n" in fault_rows(garage, [NEW]).text


def test_text_that_a_spreadsheet_would_count_is_protected(garage: Path) -> None:
    with_faults(garage, b"id,vehicle,title\nf1,v1,Pads\n")
    formula = Fault(id="x", vehicle="v1", title="=1+1")
    assert fault_rows(garage, [formula]).text == "x,v1,'=1+1\n"


def test_nothing_to_add_touches_nothing(garage: Path) -> None:
    before = (garage / "faults.csv").stat()
    append_faults(garage, [])
    after = (garage / "faults.csv").stat()
    assert (after.st_mtime_ns, after.st_ino) == (before.st_mtime_ns, before.st_ino)


@pytest.mark.parametrize(
    "broken",
    [
        Fault(id="f1", vehicle="v1", title="An id that is there"),
        Fault(id="x", vehicle="v9", title="On no vehicle"),
        Fault(id="x", vehicle="v1", title="Of no kind", kind="no-such-kind"),
        Fault(id="x", vehicle="v1", title="After nothing", after=("f9",)),
        Fault(id="a;b", vehicle="v1", title="An id of two"),
        Fault(id="x", vehicle="v1", title="Two\nlines"),
    ],
    ids=lambda fault: fault.title,
)
def test_what_would_not_read_is_refused_and_nothing_written(
    garage: Path, broken: Fault
) -> None:
    before = content(garage)
    with pytest.raises(InvalidGarage):
        append_faults(garage, [OTHER, broken])
    assert content(garage) == before
    assert not [one for one in os.listdir(garage) if one.endswith(".part")]


def test_a_garage_that_does_not_read_is_left_alone(garage: Path) -> None:
    with_faults(garage, b"id,vehicle,title,drivability\nf1,v1,Pads,9\n")
    before = content(garage)
    with pytest.raises(InvalidGarage):
        append_faults(garage, [OTHER])
    assert content(garage) == before


def test_a_missing_file_is_told(tmp_path: Path) -> None:
    with pytest.raises(InvalidGarage):
        fault_rows(tmp_path / "nowhere", [OTHER])
    with pytest.raises(InvalidGarage, match=r"faults\.csv"):
        fault_rows(tmp_path, [OTHER])


def test_who_may_read_the_file_stays_the_same(garage: Path) -> None:
    path = garage / "faults.csv"
    path.chmod(0o600)
    append_faults(garage, [OTHER])
    assert stat.S_IMODE(path.stat().st_mode) == 0o600


def test_a_link_stays_a_link(garage: Path, tmp_path: Path) -> None:
    real = tmp_path / "kept elsewhere.csv"
    (garage / "faults.csv").rename(real)
    (garage / "faults.csv").symlink_to(real)
    append_faults(garage, [OTHER])
    assert (garage / "faults.csv").is_symlink()
    assert b"new-2" in real.read_bytes()


def test_a_file_that_cannot_be_replaced_stays_whole(
    garage: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    before = content(garage)
    replaced = os.replace

    def full(source: Path, target: Path) -> None:
        if Path(target).parent == garage:
            raise OSError(28, "No space left on device")
        replaced(source, target)

    monkeypatch.setattr(os, "replace", full)
    with pytest.raises(InvalidRequest, match="No space left"):
        append_faults(garage, [OTHER])
    assert content(garage) == before
    assert not [one for one in os.listdir(garage) if one.endswith(".part")]
