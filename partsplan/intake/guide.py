"""The page that explains every table and column, made from what reads them."""

from collections.abc import Iterator

from partsplan import catalogue
from partsplan.intake.cells import LONGEST_ID
from partsplan.intake.columns import FAULTS, MOST_FAULTS, TABLES
from partsplan.intake.explained import blank, expected, meaning
from partsplan.intake.fill import FROM_KIND, FROM_NORM
from partsplan.intake.option_columns import OPTIONS
from partsplan.intake.schema import Table

_INTRODUCTION = f"""\
# Tables and columns

One row is one fact; the first row names the columns, in any order. Only the needed
columns must be there, and only the needed cells must be filled; what a blank cell means
stands in the tables below. Commas, semicolons or tabs separate cells; save as UTF-8.

- Ids are names of your own, of at most {LONGEST_ID} characters, without `;` and `:`.
- Amounts are decimal, like 12.50, without thousand separators. They are in the currency
  of the garage, but where the tables say that they are in the row's own.
- Months are YYYY-MM. Lists inside a cell are separated by `;`, so put quotes around the
  cell in a file that semicolons separate.
- Numbers are decimal, like 0.25, or fractions, like 1/3. Shares and chances are 0-1.
- Text that starts like a formula (`=`, or `+`, `-`, `@` before anything but a number)
  needs a `'` before it.
"""

_REMARKS = {
    FAULTS.name: (
        f"At most {MOST_FAULTS:,} rows. Where a fault has a `kind`, the catalogue "
        f"fills blanks in `{'`, `'.join(FROM_KIND)}`."
    ),
    OPTIONS.name: (
        "Where an option fixes a fault that has a `kind`, the catalogue fills "
        f"blanks in `{'`, `'.join(FROM_NORM)}`."
    ),
}


def columns_page() -> str:
    """All tables and columns with meaning, unit, default and words, in Markdown."""
    lines = [_INTRODUCTION]
    for table in TABLES:
        lines += [f"## {table.file}", "", *_table(table), ""]
    lines += ["## Words", "", *_words()]
    lines += ["## Fault kinds", "", *_fault_kinds()]
    return "\n".join(lines)


def _table(table: Table) -> Iterator[str]:
    needed = "Needed, at least its header." if table.needed else "May be left out."
    yield f"{table.meaning} {needed}"
    yield ""
    yield "| column | meaning | expected | blank means |"
    yield "|---|---|---|---|"
    for column in table.columns:
        cells = (meaning(column), expected(column, ".csv"), blank(column))
        yield f"| `{column.name}` | {' | '.join(cells)} |"
    if table.name in _REMARKS:
        yield ""
        yield _REMARKS[table.name]


def _words() -> Iterator[str]:
    for name, words in catalogue.scales().items():
        yield f"**{name}**"
        yield ""
        for word in words:
            named = "" if word.name == word.value else f"{word.name}: "
            yield f"- `{word.value}` {named}{word.meaning}"
        yield ""


def _fault_kinds() -> Iterator[str]:
    for kind in catalogue.fault_kinds().values():
        yield f"- `{kind.key}` {kind.title}"
    yield ""
