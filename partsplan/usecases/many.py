"""Many plans at once: in this process, in several, or on other machines."""

import gc
import os
import signal
import threading
from collections.abc import Callable, Iterator, Mapping, Sequence
from concurrent.futures import (
    FIRST_EXCEPTION,
    BrokenExecutor,
    Executor,
    Future,
    ProcessPoolExecutor,
    wait,
)
from contextlib import contextmanager
from multiprocessing import get_context
from multiprocessing.connection import Connection
from typing import TYPE_CHECKING, Any, ParamSpec, TypeVar

from partsplan.domain import Needs, Plan
from partsplan.errors import InvalidRequest, SolverFailed, UnsoundPlan

if TYPE_CHECKING:
    from partsplan.explanation import AskAll, Question, Reply

Tell = Callable[[int], None]
"""Told how many plans are done."""

POLL_SECONDS = 0.1
"""How often Ctrl-C is looked for while plans are made. [s]"""
PATIENCE_SECONDS = 10.0
"""How long a cluster may take to answer at first. [s]"""

_P = ParamSpec("_P")
_T = TypeVar("_T")


def asker(executor: Executor, tell: Tell | None = None) -> "AskAll":
    """A way to ask for many plans that are made by ``executor``.

    What it answers does not depend on the executor. After Ctrl-C it answers what is
    known by then. It raises SolverFailed, or UnsoundPlan for a plan that its
    verification refuses.
    """
    done = 0

    def count(future: "Future[Reply]") -> None:
        nonlocal done
        if tell and not future.cancelled():
            done += 1
            tell(done)

    def ask(questions: "Sequence[Question]") -> Mapping[int, Plan | Needs | None]:
        from partsplan.explanation import reply

        asked: list[Future[Reply]] = []
        try:
            for question in questions:
                asked.append(executor.submit(reply, question))
                asked[-1].add_done_callback(count)
            while _going_on(asked):
                pass
        except KeyboardInterrupt:
            pass  # what is done by now is the answer
        except BrokenExecutor as error:
            raise _ended(error) from error
        try:
            return _answers(asked)
        finally:
            _give_up(executor, asked)

    return ask


@contextmanager
def executor(jobs: int | None = None, cluster: str = "") -> Iterator[Executor]:
    """Something that makes plans: ``jobs`` processes, one for each core if None.

    One process is this one. ``cluster`` is the address of a running scheduler of the
    library distributed instead; what it runs is not checked, so it must be trusted.

    Raises
    ------
    InvalidRequest
        If distributed is not installed, or nothing answers at the address.
    """
    if cluster:
        with _client(cluster) as client:
            yield client.get_executor(pure=False)
        return
    made = _local(jobs or cores())
    try:
        yield made
    finally:
        made.shutdown(cancel_futures=True)


def cores() -> int:
    """The cores that this process may use."""
    if hasattr(os, "sched_getaffinity"):
        return len(os.sched_getaffinity(0))
    return os.cpu_count() or 1


class InTurn(Executor):
    """Does everything at once, here, and in the order in which it is asked for."""

    def submit(
        self, fn: Callable[_P, _T], /, *args: _P.args, **kwargs: _P.kwargs
    ) -> Future[_T]:
        """What was done; Ctrl-C goes up to whoever asked."""
        future: Future[_T] = Future()
        try:
            future.set_result(fn(*args, **kwargs))
        except Exception as error:
            future.set_exception(error)
        return future


class Processes(ProcessPoolExecutor):
    """New processes that end at once when they are given up, or when this one ends.

    They do not hear Ctrl-C themselves, which would end them with a traceback each.
    """

    def __init__(self, jobs: int) -> None:
        context = get_context("spawn")
        reader, self._lifeline = context.Pipe(duplex=False)
        self._reader = reader
        super().__init__(
            jobs,
            mp_context=context,
            initializer=_live_on,
            initargs=(reader, gc.get_threshold()),
        )

    def submit(
        self, fn: Callable[_P, _T], /, *args: _P.args, **kwargs: _P.kwargs
    ) -> Future[_T]:
        """As usual, but for the signals that new processes and threads hear."""
        with _deaf():
            return super().submit(fn, *args, **kwargs)

    def shutdown(self, wait: bool = True, *, cancel_futures: bool = False) -> None:
        """End; what is being done is given up if futures are cancelled."""
        if cancel_futures:
            self._lifeline.close()
        super().shutdown(wait=wait, cancel_futures=cancel_futures)
        self._lifeline.close()
        self._reader.close()


def _live_on(
    lifeline: "Connection[Any, Any]", thresholds: tuple[int, int, int]
) -> None:
    """Begin a process that lives as long as the other end of its lifeline.

    It looks for garbage as often as the process that began it, by its thresholds.
    """
    gc.set_threshold(*thresholds)
    signal.signal(signal.SIGINT, signal.SIG_IGN)

    def end_with_it() -> None:
        try:
            lifeline.recv_bytes()
        except (EOFError, OSError):
            os._exit(1)

    threading.Thread(target=end_with_it, daemon=True).start()


@contextmanager
def _deaf() -> Iterator[None]:
    """Hold signals back for a moment, and for good in whatever begins meanwhile.

    New processes must not end by Ctrl-C on their own. The threads that talk to them
    must see a process that ended as an error, not as the signal that by default ends
    a program whose reader has gone.
    """
    if not hasattr(signal, "pthread_sigmask"):
        yield
        return
    held = {signal.SIGINT, signal.SIGPIPE}
    before = signal.pthread_sigmask(signal.SIG_BLOCK, held)
    try:
        yield
    finally:
        signal.pthread_sigmask(signal.SIG_SETMASK, before)


def _local(jobs: int) -> Executor:
    return InTurn() if jobs == 1 else Processes(jobs)


def _client(address: str) -> Any:
    try:
        from distributed import Client
    except ImportError as error:
        raise InvalidRequest(
            "cluster: the library distributed is not installed; "
            "pip install 'partsplan[cluster]' brings it"
        ) from error
    try:
        return Client(address, timeout=PATIENCE_SECONDS, set_as_default=False)
    except (OSError, ValueError) as error:
        raise InvalidRequest(f"cluster: nothing answers at {address}") from error


def _going_on(asked: "Sequence[Future[Reply]]") -> bool:
    """Whether some are still to come and none has failed, after a moment."""
    done, waiting = wait(asked, POLL_SECONDS, FIRST_EXCEPTION)
    failed = any(one.cancelled() or one.exception() for one in done)
    return bool(waiting) and not failed


def _answers(asked: "Sequence[Future[Reply]]") -> dict[int, Plan | Needs | None]:
    """What is known by now, by places."""
    found: dict[int, Plan | Needs | None] = {}
    for place, future in enumerate(asked):
        if future.cancelled() or not future.done():
            continue
        try:
            reply = future.result()
        except Exception as error:
            if _ends_abroad(error):
                raise _ended(error) from error
            raise
        if reply.broken:
            raise UnsoundPlan(reply.broken)
        found[place] = reply.found
    return found


def _give_up(executor: Executor, asked: "Sequence[Future[Reply]]") -> None:
    """Let nothing more be begun.

    Processes of our own end when they are shut down; a thread of theirs may stumble
    over plans that are cancelled before (Python 3.11).
    """
    if not isinstance(executor, Processes):
        for future in asked:
            future.cancel()


def _ends_abroad(error: Exception) -> bool:
    """Whether what failed is not the planning but what it ran on."""
    library = type(error).__module__.partition(".")[0]
    return isinstance(error, BrokenExecutor) or library == "distributed"


def _ended(error: Exception) -> SolverFailed:
    return SolverFailed(f"a process that made plans ended before its time: {error}")
