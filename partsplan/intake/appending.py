"""New faults as rows of a faults.csv that is there, whatever it looks like."""

import re
import shutil
import tempfile
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from partsplan.domain import Fault, System
from partsplan.errors import InvalidGarage, Problem
from partsplan.intake.columns import FAULTS
from partsplan.intake.reading import read_garage
from partsplan.intake.writing import write_texts
from partsplan.sheets.csv_text import csv_text
from partsplan.sheets.formulas import protected
from partsplan.sheets.tables import read_sheet, separator

_LINE_END = re.compile(r"\r\n|\n|\r")
_KEPT = (".csv", ".toml")


@dataclass(frozen=True, slots=True)
class NewRows:
    """Rows as they fit below a file.

    Attributes
    ----------
    text
        Without a header, each row ended as the file ends its lines.
    lost
        Columns that the file does not have, though the rows would fill them.
    """

    text: str
    lost: tuple[str, ...]


def fault_rows(folder: Path, faults: Sequence[Fault]) -> NewRows:
    """Faults as rows for a garage's faults.csv: its columns, separator and line ends.

    Written are id, vehicle, title, kind, system without a kind, lamps, codes, pair_with
    and after. The rest is filled by the kind, or by the owner.

    Raises
    ------
    InvalidGarage
        If the file cannot be read, or is none of a folder.
    """
    text, columns = _file(folder)
    known = [column.name for column in FAULTS.columns]
    cells = [_cells(fault, columns) for fault in faults]
    rows = csv_text(
        ([row.get(name, "") for name in columns] for row in cells),
        separator=separator(text.removeprefix("\ufeff"), known),
        line_end=_line_end(text),
    )
    filled = {name for row in cells for name, cell in row.items() if cell}
    lost = tuple(name for name in known if name in filled - set(columns))
    return NewRows(rows, lost)


def append_faults(folder: Path, faults: Sequence[Fault]) -> NewRows:
    """Add faults to a garage's faults.csv, which appears whole or stays as it is.

    Everything that stands in it is kept to the byte.

    Raises
    ------
    InvalidGarage
        If the garage would not read with the new rows; nothing is written then.
    InvalidRequest
        If the file cannot be written.
    """
    rows = fault_rows(folder, faults)
    if not faults:
        return rows
    text, _ = _file(folder)
    ended = text if text.endswith(("\n", "\r")) else text + _line_end(text)
    longer = ended + rows.text
    with tempfile.TemporaryDirectory(prefix="garage-") as trial:
        for path in folder.iterdir():
            if path.suffix.lower() in _KEPT and path.is_file():
                shutil.copyfile(path, Path(trial, path.name))
        write_texts(Path(trial), {FAULTS.file: longer})
        _check(read_garage(Path(trial)).faults, faults)
    file = (folder / FAULTS.file).resolve()
    write_texts(file.parent, {file.name: longer})
    return rows


def _file(folder: Path) -> tuple[str, list[str]]:
    """The text of faults.csv to the byte, and its columns in small letters."""
    if not folder.is_dir():
        what = "expected a folder; the rows go into its faults.csv"
        raise InvalidGarage([Problem(str(folder), 0, "", what)])
    path = folder / FAULTS.file
    sheet = read_sheet(path, [column.name for column in FAULTS.columns])
    if isinstance(sheet, Problem):
        raise InvalidGarage([sheet])
    return path.read_bytes().decode("utf-8"), sheet.header.cells


def _line_end(text: str) -> str:
    found = _LINE_END.search(text)
    return found[0] if found else "\n"


def _cells(fault: Fault, columns: Sequence[str]) -> Mapping[str, str]:
    kind_fills = fault.kind and "kind" in columns
    system = "" if kind_fills or fault.system is System.OTHER else fault.system
    cells = {
        "id": fault.id,
        "vehicle": fault.vehicle,
        "title": fault.title,
        "kind": fault.kind,
        "system": str(system),
        "lamps": ";".join(fault.lamps),
        "codes": ";".join(fault.codes),
        "pair_with": ";".join(fault.pair_with),
        "after": ";".join(fault.after),
    }
    return {name: protected(cell) for name, cell in cells.items()}


def _check(read: Sequence[Fault], faults: Sequence[Fault]) -> None:
    """The new rows come out as they were meant; raises InvalidGarage."""
    ids = [fault.id for fault in read[-len(faults) :]]
    if ids != [fault.id for fault in faults]:
        message = "the new rows would not read as they are meant"
        raise InvalidGarage([Problem(FAULTS.file, 0, "", message)])
