"""Every table that ships says where it comes from."""

import re

from partsplan.catalogue import data_folder

ROW = re.compile(r"\| `([^`]+)` \|(.+)\|(.+)\|(.+)\|(.+)\|")


def test_every_file_has_a_row_and_every_row_a_file() -> None:
    text = (data_folder() / "SOURCES.md").read_text("utf-8")
    rows = [found for line in text.splitlines() if (found := ROW.fullmatch(line))]
    files = {path.name for path in data_folder().iterdir()} - {"SOURCES.md"}
    assert sorted(row[1] for row in rows) == sorted(files)
    for row in rows:
        assert all(cell.strip() for cell in row.groups())
