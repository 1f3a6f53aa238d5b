"""Proposes faults from the text of a scan tool, or from any other text."""

import codecs
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from partsplan.domain import Reading, Vehicle
from partsplan.errors import InvalidRequest

if TYPE_CHECKING:
    from partsplan.signs import SignTables

MOST_MIB = 4
"""Longest text that is read; it takes some ten seconds. [MiB]"""

_UTF_16 = (codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE)


@dataclass(frozen=True, slots=True)
class CodesAnswer:
    """What a text comes to.

    Attributes
    ----------
    rows
        The proposed faults as rows for the garage's faults.csv, without a header.
    lost
        Columns that this file does not have, though the rows would fill them.
    appended
        Whether the rows were added to it.
    """

    reading: Reading
    rows: str
    lost: tuple[str, ...]
    appended: bool


def from_codes(
    folder: Path,
    content: bytes,
    *,
    vehicle: str | None = None,
    as_bytes: bool = False,
    append: bool = False,
) -> CodesAnswer:
    """Faults that the trouble codes, lamps and silent units of a text suggest.

    Without a vehicle it is the only one of the garage. ``as_bytes`` takes every four
    hexadecimal digits for a code of two bytes.

    Raises
    ------
    InvalidGarage
        Also if the garage would not read with the new rows; then nothing is written.
    InvalidRequest
        If there is no such vehicle, the text is too long, or the file cannot be
        written.
    DamagedLogbook, LogbookUnavailable
    """
    from partsplan.intake import append_faults, fault_rows
    from partsplan.signs import find_signs, propose
    from partsplan.usecases.opening import opening_garage

    garage = opening_garage(folder)
    tables = sign_tables()
    signs = find_signs(_text(content), tables, as_bytes=as_bytes)
    reading = propose(garage, _vehicle(garage.vehicle, vehicle), signs, tables)
    faults = [one.fault for one in reading.proposals]
    rows = append_faults(folder, faults) if append else fault_rows(folder, faults)
    return CodesAnswer(reading, rows.text, rows.lost, appended=append and bool(faults))


def sign_tables() -> "SignTables":
    """The tables that ship with the program."""
    from partsplan import catalogue
    from partsplan.signs import SignTables

    return SignTables(
        codes=catalogue.trouble_codes(),
        range_of=catalogue.code_range,
        lamps=catalogue.lamp_signs(),
        units=catalogue.unit_signs(),
        groups=catalogue.sign_groups(),
        kinds=catalogue.fault_kinds(),
        links=catalogue.kind_links(),
    )


def _text(content: bytes) -> str:
    """Whatever can be read; a tool's text may be in any encoding."""
    if len(content) > MOST_MIB * 1024 * 1024:
        raise InvalidRequest(f"expected a text of at most {MOST_MIB} MiB, got more")
    encoding = "utf-16" if content.startswith(_UTF_16) else "utf-8-sig"
    return content.decode(encoding, errors="replace")


def _vehicle(known: Mapping[str, Vehicle], asked: str | None) -> str:
    from partsplan.usecases.unknown import unknown

    if asked is None and len(known) == 1:
        return next(iter(known))
    if asked is None:
        raise InvalidRequest(f"--vehicle: expected one of {', '.join(known)}")
    if asked not in known:
        raise unknown("vehicle", asked, known)
    return asked
