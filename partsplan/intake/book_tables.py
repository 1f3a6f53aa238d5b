"""A sheet of a workbook as rows of text, like those of a CSV file."""

from collections.abc import Iterator

from partsplan.errors import Problem
from partsplan.intake.cell_texts import any_text, as_text
from partsplan.intake.schema import Table
from partsplan.sheets.letters import letters
from partsplan.sheets.quoting import shown
from partsplan.sheets.tables import Record, Sheet
from partsplan.sheets.workbooks import Grid, GridRow


def table_sheet(grid: Grid, table: Table) -> Sheet | Problem:
    """The rows of a table; its first row that is not blank names the columns."""
    if not grid.rows:
        named = ", ".join([*(column.name for column in table.columns[:3]), "..."])
        message = f"empty; expected a header like {named}"
        return Problem(table.name, 0, "", message)
    header, *rows = grid.rows
    names = header_names(header)
    kind_of = {column.name: column.kind for column in table.columns}
    records = []
    for row in rows:
        cells = [
            any_text(content)
            if name not in kind_of
            else as_text(content, kind_of[name])
            for name, content in zip(names, row.cells, strict=False)
        ]
        cells += [""] * (len(names) - len(cells))
        if any(cell for cell, name in zip(cells, names, strict=True) if name):
            records.append(Record(row.line, cells))
    problems = (*_repeated(table, header), *_nameless(table, names, rows))
    return Sheet(
        table.name,
        Record(header.line, names),
        tuple(records),
        problems,
        whole=grid.whole,
    )


def header_names(header: GridRow) -> list[str]:
    """The names of columns, in small letters; "" where there is none."""
    return [any_text(content).lower() for content in header.cells]


def _repeated(table: Table, header: GridRow) -> Iterator[Problem]:
    names = header_names(header)
    for place, name in enumerate(names):
        if name and name in names[:place]:
            message = f"expected each column once, got another one named {shown(name)}"
            yield Problem(table.name, header.line, "", message, letters(place + 1))


def _nameless(table: Table, names: list[str], rows: list[GridRow]) -> Iterator[Problem]:
    """The first cell of each column that holds something, but has no name."""
    told = {place for place, name in enumerate(names) if name}
    for row in rows:
        for place, content in enumerate(row.cells):
            if content is not None and place not in told:
                told.add(place)
                message = "expected a name in the header for this column"
                yield Problem(table.name, row.line, "", message, letters(place + 1))
