"""Sums, months and days in the reader's way; programs never see it."""

import json
import re
from pathlib import Path

import pytest

from partsplan.reports import LOCALES
from tests.cli.answers import WITH_TABLES, WITHOUT, lived_in, words
from tests.cli.running import Capture, run

ISO = re.compile(r"\b20[0-9]{2}-[0-9]{2}(-[0-9]{2})?\b")
ENGLISH_SUM = re.compile(r"\b[0-9]+\.[0-9]{2}\b(?!\.20)")
TYPED = re.compile(r'"[^"]*"|--[a-z-]+[ =][^ ]+')
"""What is to be typed stays as it is to be typed."""


@pytest.mark.parametrize("command", [*WITH_TABLES, *WITHOUT])
def test_no_text_mixes_two_ways_of_writing(
    command: str, tmp_path: Path, capsys: Capture
) -> None:
    garage = lived_in(tmp_path / "g", capsys)
    plain = run(capsys, *words(command, garage))
    german = run(capsys, *words(command, garage), "--locale", "de")
    assert (german.code, german.err) == (plain.code, plain.err)
    said = TYPED.sub("", german.out)
    assert not ISO.findall(said), said
    assert not ENGLISH_SUM.findall(said), said
    if ISO.search(TYPED.sub("", plain.out)):
        assert re.search(r"\b[0-9]{1,2}/20[0-9]{2}\b|\b[0-9]+\.[0-9]+\.20", said)


@pytest.mark.parametrize("command", [*WITH_TABLES, *WITHOUT])
def test_json_is_the_same_in_every_locale(
    command: str, tmp_path: Path, capsys: Capture
) -> None:
    garage = lived_in(tmp_path / "g", capsys)
    asked = [*words(command, garage), "--json"]
    plain, german = (
        json.loads(run(capsys, *asked, *more).out) for more in ((), ("--locale", "de"))
    )
    for told in (plain, german):
        told.pop("seconds", None)
    assert plain == german


@pytest.mark.parametrize("command", ["plan", "now", "entries"])
def test_so_are_records(command: str, tmp_path: Path, capsys: Capture) -> None:
    garage = lived_in(tmp_path / "g", capsys)
    asked = [*words(command, garage), "--plain"]
    plain, german = (
        run(capsys, *asked, *more).out for more in ((), ("--locale", "de"))
    )
    assert plain == german


def test_what_was_entered_is_told_in_the_readers_way(
    tmp_path: Path, capsys: Capture
) -> None:
    garage = lived_in(tmp_path / "g", capsys)
    ran = run(
        capsys,
        *("enter", garage, "paid", "--amount", "1234.50", "--today", "2027-02-20"),
        *("--locale", "en-US"),
    )
    hard = "\N{NO-BREAK SPACE}"
    assert f"Entry 4 of Feb{hard}20,{hard}2027: paid" in ran.out
    assert "1,234.50 EUR" in ran.out


def test_it_may_be_set_once_for_all(
    garage: Path, tmp_path: Path, capsys: Capture, monkeypatch: pytest.MonkeyPatch
) -> None:
    config = tmp_path / "config" / "partsplan" / "config.toml"
    config.parent.mkdir(parents=True)
    config.write_text('locale = "fr"\n', encoding="utf-8")
    assert "34,50" in run(capsys, "plan", garage).out
    monkeypatch.setenv("PARTSPLAN_LOCALE", "en-GB")
    assert "34.50" in run(capsys, "plan", garage).out
    assert "34,50" in run(capsys, "plan", garage, "--locale", "DE").out


@pytest.mark.parametrize("told", ["locale = 7", 'locale = "xx"'])
def test_a_wrong_one_in_the_settings_is_told(
    told: str, garage: Path, tmp_path: Path, capsys: Capture
) -> None:
    config = tmp_path / "config" / "partsplan" / "config.toml"
    config.parent.mkdir(parents=True)
    config.write_text(told, encoding="utf-8")
    ran = run(capsys, "plan", garage)
    assert ran.code in (2, 3)
    assert "expected" in ran.err
    assert "en-GB" in ran.err


def test_an_unknown_one_is_refused_and_the_known_ones_are_named(
    garage: Path, capsys: Capture
) -> None:
    ran = run(capsys, "plan", garage, "--locale", "xx")
    assert ran.code == 2
    assert f"expected one of {', '.join(LOCALES)}, got 'xx'" in ran.err
