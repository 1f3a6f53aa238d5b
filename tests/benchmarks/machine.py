"""Names the machine that figures were taken on."""

import os
import platform
from importlib.metadata import version
from pathlib import Path

CPU_FACTS = Path("/proc/cpuinfo")


def machine() -> str:
    """Processor, cores, Python and solver, in one line."""
    return (
        f"{_processor()}, {os.cpu_count()} cores, "
        f"Python {platform.python_version()}, HiGHS {version('highspy')}"
    )


def load() -> float:
    """How many processes want to run, on the mean of the last minute."""
    return round(os.getloadavg()[0], 1)


def _processor() -> str:
    if CPU_FACTS.exists():
        for line in CPU_FACTS.read_text(encoding="utf-8").splitlines():
            key, _, value = line.partition(":")
            if key.strip() == "model name":
                return value.strip()
    return platform.processor() or platform.machine()
