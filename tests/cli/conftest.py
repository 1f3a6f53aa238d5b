import os
from pathlib import Path

import pytest

from tests.cli.running import write_garage


@pytest.fixture(autouse=True)
def _nobodys_settings(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """No test sees the settings of whoever runs it."""
    for name in [one for one in os.environ if one.startswith("PARTSPLAN_")]:
        monkeypatch.delenv(name)
    for name in ("NO_COLOR", "COLUMNS"):
        monkeypatch.delenv(name, raising=False)
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path / "config"))


@pytest.fixture
def garage(tmp_path: Path) -> Path:
    """A small garage with one danger; its plan takes a moment."""
    return write_garage(tmp_path / "my-garage")
