"""The published JSON Schemas, held against what is really printed."""

import copy
import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from jsonschema import Draft202012Validator

from partsplan.domain import Garage, Needs, OptionReason, Reason, Standing
from partsplan.explanation import shortfalls, skips
from partsplan.ledger import fold
from partsplan.planning import plan
from partsplan.reports import check_json, needs_json, plan_json
from tests.cli.answers import lived_in
from tests.cli.running import Capture, run, write_garage
from tests.support.garages import garages
from tests.support.small_garages import small_garage

ROOT = Path(__file__).parents[2]
SCENARIOS = ("household", "project-car", "transport-club")


def schema(name: str) -> Any:
    return json.loads((ROOT / "data" / f"{name}.schema.json").read_text("utf-8"))


PLAN, GARAGE = schema("plan"), schema("garage")


def told(document: Any, against: Any) -> list[str]:
    """What is wrong with a document."""
    return [one.message for one in Draft202012Validator(against).iter_errors(document)]


@pytest.mark.parametrize("one", [PLAN, GARAGE])
def test_each_is_a_schema(one: Any) -> None:
    Draft202012Validator.check_schema(one)


@pytest.mark.parametrize("name", SCENARIOS)
def test_the_scenarios_are_printed_by_them(name: str, capsys: Capture) -> None:
    folder = ROOT / "scenarios" / name
    found = run(capsys, "check", folder, "--json", "--rows")
    assert told(json.loads(found.out), GARAGE) == []
    planned = run(capsys, "plan", folder, "--json", "--seconds", "10")
    assert told(json.loads(planned.out), PLAN) == []


@settings(
    max_examples=40,
    deadline=None,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large],
)
@given(garages())
def test_so_is_any_garage(garage: Garage) -> None:
    standing = Standing(
        garage=garage, entries=(), quotes={}, ledger=fold(garage, {}, ())
    )
    document = json.loads(check_json(standing, rows=True))
    assert told(document, GARAGE) == []


@pytest.mark.parametrize("seed", range(60))
def test_so_is_any_plan(seed: int) -> None:
    garage = small_garage(seed)
    found = plan(garage)
    if isinstance(found, Needs):
        printed = needs_json(garage, found)
    else:
        missed = shortfalls(garage, found)
        printed = plan_json(garage, found, skips(garage, found), missed)
    assert told(json.loads(printed), PLAN) == []


def test_so_is_a_plan_after_one_that_was_kept(tmp_path: Path, capsys: Capture) -> None:
    garage = lived_in(tmp_path / "g", capsys)
    document = json.loads(run(capsys, "plan", garage, "--json").out)
    assert "since_kept" in document
    assert told(document, PLAN) == []


def test_so_is_a_plan_that_is_impossible(tmp_path: Path, capsys: Capture) -> None:
    debt = write_garage(tmp_path / "debt")
    with (debt / "garage.toml").open("a") as file:
        file.write('opening_cash = "-150.00"\n')
    document = json.loads(run(capsys, "plan", debt, "--json").out)
    assert document["status"] == "infeasible"
    assert told(document, PLAN) == []


def _places(document: Any, path: tuple[Any, ...] = ()) -> Iterator[tuple[Any, ...]]:
    """The way to every value of a document."""
    parts = (
        document.items()
        if isinstance(document, dict)
        else enumerate(document)
        if isinstance(document, list)
        else ()
    )
    for key, value in parts:
        yield (*path, key)
        yield from _places(value, (*path, key))


def _holder(document: Any, path: tuple[Any, ...]) -> Any:
    for key in path[:-1]:
        document = document[key]
    return document


@pytest.mark.parametrize(("command", "against"), [("plan", PLAN), ("check", GARAGE)])
def test_they_refuse_what_is_spoiled_anywhere(
    command: str, against: Any, tmp_path: Path, capsys: Capture
) -> None:
    garage = lived_in(tmp_path / "g", capsys)
    more = ["--rows"] if command == "check" else []
    document = json.loads(run(capsys, command, garage, "--json", *more).out)
    free = ("weights", "rates")
    for path in [*_places(document)]:
        key = path[-1]
        spoiled = copy.deepcopy(document)
        _holder(spoiled, path)[key] = {"no": "such thing"}
        assert told(spoiled, against), path
        if isinstance(key, str) and not {*path[:-1]} & {*free}:
            lacking = copy.deepcopy(document)
            del _holder(lacking, path)[key]
            may_lack = key in ("since_kept", "bought")
            assert bool(told(lacking, against)) is not may_lack, path
            longer = copy.deepcopy(document)
            _holder(longer, path)["more"] = 1
            assert told(longer, against), path


def test_every_reason_for_skipping_is_in_it() -> None:
    def below(one: type[Reason]) -> Iterator[type[Reason]]:
        for other in one.__subclasses__():
            if "code" in vars(other):
                yield other
            yield from below(other)

    known = {
        one["properties"]["code"]["const"] for one in PLAN["$defs"]["reason"]["oneOf"]
    }
    assert {one.code for one in below(OptionReason)} <= known
