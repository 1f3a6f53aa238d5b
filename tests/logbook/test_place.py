from pathlib import Path

import pytest

from partsplan.logbook import FILE, beside


@pytest.mark.parametrize(
    ("name", "logbook"),
    [
        ("garage.xlsx", "garage.logbook.sqlite"),
        ("my.garage.XLSX", "my.garage.logbook.sqlite"),
        ("garage", "garage.logbook.sqlite"),
    ],
)
def test_a_workbook_has_its_logbook_next_to_it(
    tmp_path: Path, name: str, logbook: str
) -> None:
    (tmp_path / name).touch()
    assert beside(tmp_path / name) == tmp_path / logbook


def test_a_folder_has_its_logbook_inside_whatever_its_name(tmp_path: Path) -> None:
    folder = tmp_path / "garage.xlsx"
    folder.mkdir()
    assert beside(folder) == folder / FILE
