"""The matrix that is shown: MIL-STD-882E, 11 May 2012, table III."""

import json
from pathlib import Path

from partsplan.catalogue import risk_matrix

PUBLISHED = Path(__file__).parents[1] / "data" / "risk_matrix_mil_std_882e.json"


def test_every_cell_is_that_of_the_standard() -> None:
    matrix = json.loads(PUBLISHED.read_text("utf-8"))["matrix"]
    assert {
        f"{likelihood}{severity}": str(level).capitalize()
        for (severity, likelihood), level in risk_matrix().items()
    } == matrix
