"""Whatever stands in a workbook, only InvalidGarage comes out."""

import io
from datetime import date, datetime, time
from decimal import Decimal
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any
from zipfile import ZIP_DEFLATED, ZipFile

from hypothesis import example, given, settings
from hypothesis import strategies as st

from partsplan.errors import InvalidGarage, Problem
from partsplan.intake import read_garage
from partsplan.sheets.contents import Content, Dated, Wrong
from tests.intake.plain_book import book, garage, sheets

CONTENTS = st.one_of(
    st.none(),
    st.booleans(),
    st.decimals(allow_nan=False, allow_infinity=False),
    st.dates().map(Dated),
    st.just(Wrong("the error #N/A")),
    st.sampled_from(["=", "'", "1/0", "f1", "f1:", ";", "none", "9" * 5000, "v1"]),
    st.text(min_size=1, max_size=12),
)
CELLS = [
    (title, line, place)
    for title, rows in sheets().items()
    for line, row in enumerate(rows)
    for place in range(len(row))
]


def plain() -> bytes:
    file = io.BytesIO()
    made = sheets()
    made["options"][1][5:8] = [Decimal("30.10"), 29, "=31+0"]
    made["faults"][2][19] = datetime(2027, 4, 1)
    made["vehicles"][1][5] = date(2026, 1, 1)
    made["tools"][1][1] = time(1, 2)
    book(made).save(file)
    return file.getvalue()


PLAIN = plain()
with ZipFile(io.BytesIO(PLAIN)) as _archive:
    PARTS = {name: _archive.read(name) for name in _archive.namelist()}


def told(content: bytes) -> None:
    """Read a file; each problem is one line."""
    found: tuple[Problem, ...] = ()
    with TemporaryDirectory() as name:
        path = Path(name) / "garage.xlsx"
        path.write_bytes(content)
        try:
            read_garage(path)
        except InvalidGarage as error:
            found = error.problems
    assert all(str(problem).isprintable() for problem in found)


@settings(max_examples=60, deadline=None)
@given(st.integers(0, len(PLAIN)), st.binary(max_size=4))
@example(0, b"")
def test_any_damage_makes_a_garage_or_problems(at: int, content: bytes) -> None:
    told(PLAIN[:at] + content + PLAIN[at + len(content) :])


@settings(max_examples=60, deadline=None)
@given(
    st.sampled_from(sorted(PARTS)),
    st.integers(0, 5000),
    st.sampled_from([b"", b"<", b">", b'"', b"0", b"9999999999", b"A", b"/", b"\xff"]),
    st.integers(0, 20),
)
def test_any_damage_within_makes_a_garage_or_problems(
    name: str, at: int, content: bytes, width: int
) -> None:
    part = PARTS[name]
    at %= len(part)
    parts = {**PARTS, name: part[:at] + content + part[at + width :]}
    file = io.BytesIO()
    with ZipFile(file, "w", ZIP_DEFLATED) as archive:
        for one, inside in parts.items():
            archive.writestr(one, inside)
    told(file.getvalue())


@settings(max_examples=150, deadline=None)
@given(st.sampled_from(CELLS), CONTENTS)
def test_any_cell_makes_a_garage_or_problems(
    cell: tuple[str, int, int], content: Content | None
) -> None:
    title, line, place = cell
    made: dict[str, list[list[Any]]] = sheets()
    made[title][line][place] = content
    found: tuple[Problem, ...] = ()
    try:
        garage(made)
    except InvalidGarage as error:
        found = error.problems
    assert all(str(problem).isprintable() for problem in found)
