"""What a new garage holds, and what comes next."""

from collections.abc import Sequence

from partsplan.reports.figures import listed
from partsplan.reports.page import Page
from partsplan.reports.plain_data import SCHEMA, dumped


def started_text(folder: str, files: Sequence[str], *, width: int = 100) -> str:
    """The files that were written, as sentences."""
    page = Page(width)
    page.paragraph(f"{folder} now holds {listed(files)}.")
    page.paragraph(
        f'Fill them in, then try "partsplan check {folder}". "partsplan kinds" lists '
        'usual faults, "partsplan words" the words that a cell may hold.'
    )
    return str(page)


def started_json(folder: str, files: Sequence[str]) -> str:
    """The files that were written, as JSON."""
    return dumped({"schema": SCHEMA, "folder": folder, "files": list(files)})
