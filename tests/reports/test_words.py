from collections.abc import Iterator
from dataclasses import fields, replace
from fractions import Fraction
from typing import Any, get_type_hints

import pytest

from partsplan import domain
from partsplan.domain import (
    Access,
    DamageRisk,
    DearerThanAllMoney,
    FaultStatus,
    Inspection,
    Likelihood,
    Month,
    OutsideWindow,
    Reason,
    RiskLevel,
    Route,
    Severity,
    System,
    Use,
)
from partsplan.pricing import bars
from partsplan.reports.words import sentence
from tests.reports.made import GARAGE
from tests.support.building import bought, garage

SOME_VALUE: dict[Any, Any] = {
    int: 3,
    str: "hose",
    Fraction: Fraction(1, 4),
    Month: Month(2027, 2),
    Month | None: None,
    Severity: Severity.CRITICAL,
    Likelihood: Likelihood.REMOTE,
    RiskLevel: RiskLevel.MEDIUM,
    Inspection: Inspection.MAJOR,
    Route: Route.USED,
    System: System.BRAKES,
    Use: Use.DAILY,
    FaultStatus: FaultStatus.WATCH,
    tuple[str, ...]: ("hose-new",),
}
NAMED = {
    "option": "hose-new",
    "by": "ecu-new",
    "job": "ecu-new",
    "stand_in": "ecu-new",
    "vehicle": "hatch",
    "supplier": GARAGE.suppliers[0].id,
    "access": "front",
}
"""What stands under these names is an id."""
WITH_ACCESS = replace(GARAGE, access=(Access(id="front", hours=Fraction(1)),))


def kinds_of_reasons(kind: type[Reason] = Reason) -> Iterator[type[Reason]]:
    """Every kind that has a code; not the classes from which slots were made."""
    if hasattr(kind, "code") and getattr(domain, kind.__name__) is kind:
        yield kind
    for narrower in kind.__subclasses__():
        yield from kinds_of_reasons(narrower)


def some(kind: type[Reason]) -> Reason:
    hints = get_type_hints(kind)
    names = [one.name for one in fields(kind)]
    return kind(**{one: NAMED.get(one) or SOME_VALUE[hints[one]] for one in names})


def test_there_are_reasons_to_try() -> None:
    assert len({kind.code for kind in kinds_of_reasons()}) >= 32


@pytest.mark.parametrize("kind", list(kinds_of_reasons()), ids=lambda kind: kind.code)
def test_every_reason_has_a_sentence(kind: type[Reason]) -> None:
    text = sentence(WITH_ACCESS, some(kind))
    assert text.endswith(".")
    assert text[0].isupper() or text.startswith(("hose-new (new) ", "ecu-new", "front"))
    assert "Fraction" not in text
    assert "None" not in text


def test_a_sentence_names_sums_with_their_currency() -> None:
    reason = DearerThanAllMoney(option="ecu-new", needed=61200, money=30000)
    assert sentence(GARAGE, reason) == (
        "ecu-new (new) takes 612.00 EUR; no month in reach ever holds more than "
        "300.00 EUR."
    )


def test_a_chance_is_told_in_per_cent() -> None:
    reason = DamageRisk(chance=Fraction(1, 40), cost=40000)
    assert "with a chance of 2.5 %" in sentence(GARAGE, reason)


def test_a_window_that_opens_too_late_is_told() -> None:
    reason = OutsideWindow(
        option="ecu-new",
        earliest=Month(2027, 2),
        not_before=Month(2027, 5),
        not_after=None,
    )
    text = sentence(GARAGE, reason)
    assert "2027-05" in text
    assert "2027-03" in text  # the plan's last month


def test_a_part_that_waits_is_not_said_to_be_there_before_it_comes() -> None:
    made = garage(options=(bought(not_before=Month(2027, 9)),))
    (reason,) = bars(made, made.options[0])
    assert sentence(made, reason) == (
        "o1 (new) is bought and can be fitted from 2027-09 on; this plan goes from "
        "2027-01 to 2027-03."
    )


def test_a_reason_nobody_knows_is_an_error_not_silence() -> None:
    class Odd(Reason):
        __slots__ = ()

    with pytest.raises(TypeError, match="no sentence for Odd"):
        sentence(GARAGE, Odd())
