"""Parts that another one came after are remembered."""

from partsplan.domain import PartState
from tests.support.small_logbook import folded


def test_the_part_before_a_second_order_is_kept_as_it_was() -> None:
    ledger = folded(
        "2027-01-05 ordered alternator amount=25000",
        "2027-01-28 arrived alternator",
        "2027-02-01 dud alternator",
        "2027-02-02 ordered alternator",
    )
    (bad,) = ledger.earlier
    assert (bad.option, bad.state, bad.price) == ("alternator", PartState.DUD, 25000)
    assert (ledger.parts["alternator"].price, bad.replaces) == (0, False)
    assert ledger.parts["alternator"].replaces


def test_a_replacement_that_merely_arrives_comes_after_a_dud_too() -> None:
    ledger = folded(
        "2027-01-05 ordered bulb",
        "2027-01-06 arrived bulb",
        "2027-01-07 dud bulb",
        "2027-01-09 arrived bulb",
    )
    assert [part.state for part in ledger.earlier] == [PartState.DUD]
    assert ledger.parts["bulb"].state is PartState.IN_HAND


def test_a_part_alone_has_none_before_it() -> None:
    ledger = folded(
        "2027-01-06 arrived bulb", "2027-01-06 ordered bulb", "2027-01-09 fitted bulb"
    )
    assert ledger.earlier == ()
