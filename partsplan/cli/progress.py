"""A bar on stderr while something takes long."""

import sys
import threading
import time
from math import isfinite
from types import TracebackType

PATIENCE = 2.0
"""Nothing is shown before that. [s]"""
EACH = 0.2
"""Time between two drawings. [s]"""
ECHO = 2
"""What a terminal echoes of Ctrl-C. [characters]"""
BAR = 20
"""Length of the bar. [characters]"""

STAGES = {
    "deadlines": "deadlines, missed",
    "safety": "safety, unsafe months",
    "mobility": "mobility, months not drivable",
    "worth": "worth",
    "reasons": "finding out why",
}


class Bar:
    """Draws what it was told last; shown only on a terminal, and only after 2 s."""

    def __init__(self, seconds: float) -> None:
        self.seconds = seconds
        self.told = "reading"
        self.begun = time.monotonic()
        self.drawn = 0
        self.done = threading.Event()
        self.thread = threading.Thread(target=self._draw, daemon=True)

    def __call__(
        self, stage: str, seconds: float, best: float | None, bound: float | None
    ) -> None:
        """Take note of how far a stage is."""
        self.told = STAGES.get(stage, stage) + _figures(stage, best, bound)

    def __enter__(self) -> "Bar":
        if sys.stderr.isatty():
            self.thread.start()
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self.done.set()
        if self.thread.ident is not None:
            self.thread.join()
        if self.drawn:
            self._show("")

    def line(self, elapsed: float, width: int) -> str:
        """The bar after so many seconds, cut to the width of the terminal."""
        share = min(1.0, elapsed / self.seconds)
        full = int(BAR * share)
        bar = "#" * full + "." * (BAR - full)
        return f"[{bar}] {elapsed:.0f} s of {self.seconds:.0f} s, {self.told}"[:width]

    def _draw(self) -> None:
        while not self.done.wait(EACH):
            elapsed = time.monotonic() - self.begun
            if elapsed > PATIENCE:
                from shutil import get_terminal_size

                self._show(self.line(elapsed, get_terminal_size().columns - ECHO - 1))

    def _show(self, line: str) -> None:
        sys.stderr.write("\r" + line.ljust(self.drawn + ECHO) + "\r" * (not line))
        sys.stderr.flush()
        self.drawn = len(line)


def _figures(stage: str, best: float | None, bound: float | None) -> str:
    """How good the best is that was found, and how good one can be at most."""
    if best is None:
        return ""
    if stage != "worth":
        return f": {best:.0f}" + ("" if bound is None else f", at least {bound:.0f}")
    if bound is None or not isfinite(bound):
        return f": {best:,.0f} found"
    gap = (bound - best) / max(1.0, abs(best))
    return f": {best:,.0f}, at most {bound:,.0f} ({100 * gap:.2g} %)"
