"""What goes with the kinds: links, checks, own hours, sources."""

import csv
import re
from collections import Counter
from graphlib import TopologicalSorter
from pathlib import Path

import pytest

from partsplan.catalogue import (
    Link,
    data_folder,
    fault_kinds,
    kind_checks,
    kind_links,
    trouble_codes,
)
from partsplan.domain import Inspection, System
from partsplan.scoring import forbids_driving

KINDS = fault_kinds()
ROADWORTHINESS = Path(__file__).parents[1] / "data" / "roadworthiness_2014_45.csv"
SOURCES = {  # how a class was read, by the words of the published table
    "annex": r"Directive 2014/45/EU.*; verified",
    "british-manual": r"DVSA .*; verified",
    "part-memory": r".*; .*letters? partly from memory",
    "memory": r"Annex I, from memory; memory",
}


def published() -> dict[str, str]:
    with ROADWORTHINESS.open(encoding="utf-8", newline="") as file:
        return {
            row["ref"]: f"{row['source']}; {row['confidence']}"
            for row in csv.DictReader(file, strict=True)
        }


def test_there_are_many_kinds_links_and_checks() -> None:
    assert len(KINDS) >= 120
    assert len(kind_links()) >= 100
    assert len(kind_checks()) >= 100


def test_the_source_of_a_class_is_that_of_its_item() -> None:
    items = published()
    for kind in KINDS.values():
        assert (kind.source == "practice") == (not kind.inspection_ref), kind.key
        if kind.inspection_ref in items:
            told = items[kind.inspection_ref]
            assert re.fullmatch(SOURCES[kind.source], told), kind.key
        elif kind.inspection_ref:  # sections 6 and 7 of the same manual
            assert kind.source == "british-manual", kind.key
            assert kind.inspection_ref[0] in "67", kind.key


def test_a_kind_without_an_inspector_has_no_item() -> None:
    for kind in KINDS.values():
        if kind.inspection is Inspection.NONE:
            assert not kind.inspection_ref, kind.key


def test_own_hours_are_those_of_a_home_job() -> None:
    hours = [kind.hours for kind in KINDS.values() if kind.hours is not None]
    assert min(hours) > 0
    assert max(hours) <= 14
    assert len(hours) > len(KINDS) * 9 / 10
    assert KINDS["windscreen-cracked"].hours is None


@pytest.mark.parametrize(
    ("shorter", "longer"),
    [  # common practice, no source
        ("spark-plugs-worn", "timing-belt-overdue"),
        ("brake-pads-worn-out", "brake-pipe-corroded"),
        ("battery-weak", "alternator-not-charging"),
        ("track-rod-end-worn", "steering-gear-leaking"),
        ("thermostat-stuck-open", "heater-core-leaking"),
        ("gearbox-speed-sensor-failed", "automatic-gearbox-slipping"),
    ],
)
def test_a_bigger_job_takes_longer(shorter: str, longer: str) -> None:
    short, long = KINDS[shorter].hours, KINDS[longer].hours
    assert short is not None
    assert long is not None
    assert short < long


def test_links_name_kinds_that_exist_once() -> None:
    for one in kind_links():
        assert {one.kind, one.other} <= set(KINDS), one
    named = Counter(
        (one.link, frozenset((one.kind, one.other))) for one in kind_links()
    )
    assert max(named.values()) == 1


def test_every_link_says_why_in_words_of_its_own() -> None:
    reasons = [one.why for one in kind_links()]
    assert len(set(reasons)) == len(reasons)
    assert all(15 < len(why) <= 100 and not why.endswith(".") for why in reasons)


def test_nothing_waits_for_itself_by_way_of_others() -> None:
    waits: dict[str, set[str]] = {}
    for one in kind_links():
        if one.link is Link.AFTER:
            waits.setdefault(one.kind, set()).add(one.other)
    order = list(TopologicalSorter(waits).static_order())  # raises on a circle
    assert len(order) > 50


def test_no_danger_waits_for_something_else() -> None:
    for one in kind_links():
        if one.link is Link.AFTER:
            assert not forbids_driving(KINDS[one.kind]), one


@pytest.mark.parametrize(
    ("kind", "other"),
    [  # custom of the trade: dampers and brakes per axle, oxygen sensors in pairs
        ("damper-leaking", "damper-leaking"),
        ("brake-pads-worn-out", "brake-pads-worn-out"),
        ("brake-disc-worn", "brake-disc-worn"),
        ("brake-disc-worn", "brake-pads-worn-out"),
        ("oxygen-sensors-aged", "oxygen-sensors-aged"),
    ],
)
def test_what_is_changed_in_twos_is_a_pair(kind: str, other: str) -> None:
    pairs = {
        frozenset((one.kind, one.other))
        for one in kind_links()
        if one.link is Link.PAIR
    }
    assert frozenset((kind, other)) in pairs


def test_checks_name_kinds_and_leave_room_for_something_else() -> None:
    for key, checks in kind_checks().items():
        assert key in KINDS
        assert sum(one.chance for one in checks) <= 1, key
        assert len({one.cause for one in checks}) == len(checks), key


def test_checks_are_short_and_likely_enough_to_be_worth_it() -> None:
    for checks in kind_checks().values():
        for one in checks:
            assert 0 < one.chance < 1, one
            assert 0 < one.hours <= 3, one


def test_no_unit_is_suspected_before_its_supply() -> None:
    """The best first check is never that of the dear unit itself."""
    units = [key for key in kind_checks() if "-unit-" in key or key.startswith("gatew")]
    assert len(units) >= 10
    for key in units:
        best = max(kind_checks()[key], key=lambda one: one.chance / one.hours)
        assert not best.cause.endswith("unit itself"), key


def test_no_text_stands_twice() -> None:
    checks = [one for several in kind_checks().values() for one in several]
    for texts in (
        [one.check for one in checks],
        [one.cause for one in checks],
        [kind.title for kind in KINDS.values()],
    ):
        assert len(set(texts)) == len(texts)
        assert all(3 < len(text) <= 90 for text in texts)


def test_every_row_says_what_it_rests_on() -> None:
    for table in ("kind_checks.csv", "kind_links.csv", "lamp_signs.csv"):
        with (data_folder() / table).open(encoding="utf-8", newline="") as file:
            assert {row["source"] for row in csv.DictReader(file)} == {"practice"}


def test_wires_of_airbags_are_never_probed_at_home() -> None:
    licensed = ("licensed", "scan tool", "read", "fuse", "look", "see", "watch")
    for key, checks in kind_checks().items():
        if KINDS[key].system is System.RESTRAINT:
            for one in checks:
                assert any(word in one.check for word in licensed), one
                assert "measure" not in one.check, one


def test_what_codes_point_to_first_mostly_has_checks() -> None:
    first = {code.kinds[0] for code in trouble_codes().values()}
    assert len(first & set(kind_checks())) >= len(first) * 9 / 10
