"""The wheel carries all it needs: built, installed apart, and planned from."""

import json
import os
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[1]


def run(*command: str, **environment: str) -> str:
    done = subprocess.run(
        command,
        cwd=ROOT,
        capture_output=True,
        text=True,
        env={**os.environ, **environment},
    )
    assert done.returncode == 0, done.stdout + done.stderr
    return done.stdout


def test_a_wheel_installs_and_plans(tmp_path: Path) -> None:
    pip = (sys.executable, "-m", "pip")
    built, apart = tmp_path / "built", tmp_path / "apart"
    run(
        *(*pip, "wheel", "--quiet", "--no-deps", "--no-build-isolation"),
        *("--wheel-dir", str(built), str(ROOT)),
    )
    (wheel,) = built.glob("partsplan-*.whl")
    run(*pip, "install", "--quiet", "--no-deps", "--target", str(apart), str(wheel))
    assert (apart / "partsplan" / "data" / "fault_kinds.csv").is_file()
    assert (apart / "partsplan/reports/html/templates/report.html").is_file()
    # -P keeps the checkout off the path, so the installed package answers.
    python = (sys.executable, "-P", "-c")
    where = run(
        *python, "import partsplan; print(partsplan.__file__)", PYTHONPATH=str(apart)
    )
    assert Path(where.strip()).is_relative_to(apart)
    start = "from partsplan.cli.main import run; run()"
    garage = str(tmp_path / "garage")
    run(*python, start, "start", garage, PYTHONPATH=str(apart))
    told = run(*python, start, "plan", garage, "--json", PYTHONPATH=str(apart))
    assert json.loads(told)["status"] == "proven"
    page = run(*python, start, "report", garage, PYTHONPATH=str(apart))
    assert page.startswith("<!doctype html>")
