"""The rules of the house: layers, types, style."""

import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
TOOLS = Path(sys.executable).parent


@pytest.mark.parametrize(
    "command",
    [
        ("lint-imports",),
        ("ruff", "check"),
        ("ruff", "format", "--check"),
        ("mypy",),
    ],
    ids=" ".join,
)
def test_the_house_is_in_order(command: tuple[str, ...]) -> None:
    tool, *arguments = command
    done = subprocess.run(
        [TOOLS / tool, *arguments], cwd=ROOT, capture_output=True, text=True
    )
    assert done.returncode == 0, done.stdout + done.stderr
