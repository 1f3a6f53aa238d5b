"""Rows become the text of a CSV file."""

import csv
import io
from collections.abc import Iterable

CRLF = "\r\n"
"""Ends a line by RFC 4180."""


def csv_text(
    rows: Iterable[Iterable[str]], *, separator: str = ",", line_end: str = CRLF
) -> str:
    """The rows by RFC 4180: a cell with a separator, quote or line end is quoted."""
    file = io.StringIO()
    csv.writer(file, delimiter=separator, lineterminator=line_end).writerows(rows)
    return file.getvalue()
