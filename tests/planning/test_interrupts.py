import os
import signal
from collections.abc import Iterator

import pytest

from partsplan.planning.interrupts import Interrupts


@pytest.fixture(autouse=True)
def kept_handler() -> Iterator[None]:
    before = signal.getsignal(signal.SIGINT)
    yield
    signal.signal(signal.SIGINT, before)


def test_ctrl_c_is_noted_and_not_raised() -> None:
    before = signal.getsignal(signal.SIGINT)
    with Interrupts() as interrupts:
        assert not interrupts.asked
        os.kill(os.getpid(), signal.SIGINT)
        assert interrupts.asked
    assert signal.getsignal(signal.SIGINT) is before


def test_the_inner_search_hears_it_and_tells_the_outer() -> None:
    with Interrupts() as outer:
        with Interrupts() as inner:
            os.kill(os.getpid(), signal.SIGINT)
        assert inner.asked
        assert outer.asked


def test_after_the_inner_search_the_outer_goes_on_listening() -> None:
    with Interrupts() as outer:
        with Interrupts() as inner:
            pass
        os.kill(os.getpid(), signal.SIGINT)
        assert outer.asked
        assert not inner.asked


@pytest.mark.parametrize("handler", [signal.SIG_IGN, signal.SIG_DFL])
def test_a_process_that_does_not_raise_it_is_left_as_it_is(
    handler: signal.Handlers,
) -> None:
    signal.signal(signal.SIGINT, handler)
    with Interrupts():
        assert signal.getsignal(signal.SIGINT) is handler
    assert signal.getsignal(signal.SIGINT) is handler
