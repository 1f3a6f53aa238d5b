"""Ctrl-C as a wish to stop, not as an error in the middle of something."""

import signal
import threading
from types import FrameType
from typing import Any


class Interrupts:
    """While it is open, Ctrl-C only sets ``asked``; the search looks at it.

    Python would else raise KeyboardInterrupt wherever it happens to be: between two
    lines that belong together, or while the solver's thread still runs. Outside the
    main thread, where no signals arrive, and in a process that ignores Ctrl-C, such as
    a worker, it changes nothing. One that is opened within another tells that one, too.
    """

    def __init__(self) -> None:
        self.asked = False
        self._before: Any = None
        self._open = False

    def __enter__(self) -> "Interrupts":
        self._before = signal.getsignal(signal.SIGINT)
        main = threading.current_thread() is threading.main_thread()
        if main and callable(self._before):  # neither ignored nor left to the system
            signal.signal(signal.SIGINT, self._note)
            self._open = True
        return self

    def __exit__(self, *error: object) -> None:
        if self._open:
            signal.signal(signal.SIGINT, self._before)
            self._open = False

    def _note(self, number: int, frame: FrameType | None) -> None:
        self.asked = True
        if isinstance(getattr(self._before, "__self__", None), Interrupts):
            self._before(number, frame)
