"""Blanks that the catalogue fills."""

from dataclasses import fields
from fractions import Fraction
from pathlib import Path

import pytest

from partsplan import catalogue
from partsplan.catalogue import FaultKind, RouteNorm
from partsplan.domain import (
    Assumed,
    Fault,
    Inspection,
    Likelihood,
    Route,
    Severity,
    System,
)
from partsplan.intake import fill, read_garage, write_garage
from tests.intake.plain_garage import Files, save

KIND = FaultKind(
    key="thing-worn",
    title="Thing worn",
    system=System.BRAKES,
    severity=Severity.CRITICAL,
    likelihood=Likelihood.REMOTE,
    inspection=Inspection.MAJOR,
    inspection_ref="",
    drivability=2,
    loss_per_month=Fraction(10),
    damage_chance=Fraction(1, 10),
    damage_cost=Fraction("99.99"),
    enjoyment=Fraction(0),
    growth=Fraction(1, 20),
    lamps=("abs",),
    hours=Fraction(1),
    source="practice",
)
NORM = RouteNorm(
    life_months=60, dud_chance=Fraction(1, 50), warranty_months=24, lead_days=5
)


@pytest.fixture(autouse=True)
def _catalogue(monkeypatch: pytest.MonkeyPatch) -> None:
    """A catalogue of one kind, and norms for brake parts by one route."""

    def norm(route: Route, system: System) -> RouteNorm:
        known = (route, system) == (Route.NEW, System.BRAKES)
        return NORM if known else RouteNorm(core_days=20, life_months=7)

    monkeypatch.setattr(catalogue, "fault_kinds", lambda: {KIND.key: KIND})
    monkeypatch.setattr(catalogue, "route_norm", norm)


def garage_files(faults: str, options: str = "", settings: str = "") -> Files:
    """A garage of these rows."""
    return {
        "garage.toml": 'name = "G"\ncurrency = "EUR"\nstart = "2027-01"\n'
        f"budget = 100\nhours = 5\n{settings}",
        "vehicles.csv": "id,name\nv,Van\n",
        "faults.csv": "id,vehicle,title,kind,system,severity,likelihood,inspection,"
        f"drivability,damage_cost,growth,lamps\n{faults}",
        "options.csv": "id,fixes,route,price,life_months,dud_chance,warranty_months,"
        f"lead_days,core_deposit,followup_within\n{options}",
    }


def test_a_kind_fills_every_blank_of_its_row(tmp_path: Path) -> None:
    garage = read_garage(save(tmp_path, garage_files("f,v,x,thing-worn,,,,,,,,\n")))
    (fault,) = garage.faults
    filled = {
        "system": System.BRAKES,
        "severity": Severity.CRITICAL,
        "likelihood": Likelihood.REMOTE,
        "inspection": Inspection.MAJOR,
        "drivability": 2,
        "loss_per_month": 1000,
        "damage_cost": 9999,
        "damage_chance": Fraction(1, 10),
        "growth": Fraction(1, 20),
        "lamps": ("abs",),
    }
    assert {name: getattr(fault, name) for name in filled} == filled
    assert fault.title == "x"
    assert {one.column for one in garage.assumed} == filled.keys()
    assert (
        Assumed(
            table="faults",
            row="f",
            column="loss_per_month",
            value="10.00",
            source="fault kind thing-worn",
        )
        in garage.assumed
    )


def test_what_is_written_stays_a_written_0_too(tmp_path: Path) -> None:
    row = "f,v,x,thing-worn,fuel,none,F,none,0,0,0,none\n"
    garage = read_garage(save(tmp_path, garage_files(row)))
    (fault,) = garage.faults
    assert (fault.system, fault.severity) == (System.FUEL, None)
    assert fault.likelihood is Likelihood.ELIMINATED
    assert fault.inspection is Inspection.NONE
    assert (fault.drivability, fault.damage_cost) == (0, 0)
    assert fault.growth == 0
    assert fault.lamps == ()
    assert {one.column for one in garage.assumed} == {"loss_per_month", "damage_chance"}


def test_a_fault_without_a_kind_keeps_its_blanks(tmp_path: Path) -> None:
    files = garage_files("f,v,x,,,,,,,,,\n", "o,f,new,5,,,,,,\n")
    garage = read_garage(save(tmp_path, files))
    assert garage.fault["f"].severity is None
    assert garage.option["o"].life_months is None
    assert garage.assumed == ()


def test_norms_fill_options_for_faults_of_a_kind(tmp_path: Path) -> None:
    files = garage_files(
        "f,v,x,thing-worn,,,,,,,,\ng,v,x,,,,,,,,,\n",
        "o,g;f,new,5,,,,9,,\np,f,new,5,none,0,0,0,,\nq,g,new,5,,,,,,\n",
    )
    garage = read_garage(save(tmp_path, files))
    filled = garage.option["o"]
    assert filled.life_months == 60
    assert filled.dud_chance == Fraction(1, 50)
    assert (filled.warranty_months, filled.lead_days) == (24, 9)
    kept = garage.option["p"]
    assert kept.life_months is None
    assert kept.dud_chance == 0
    assert (kept.warranty_months, kept.lead_days) == (0, 0)
    assert garage.option["q"].life_months is None
    options = [one for one in garage.assumed if one.table == "options"]
    assert [(one.row, one.column, one.value) for one in options] == [
        ("o", "life_months", "60"),
        ("o", "dud_chance", "0.02"),
        ("o", "warranty_months", "24"),
    ]
    assert {one.source for one in options} == {"norm for new, brakes"}


def test_norms_go_by_the_system_that_the_row_itself_names(tmp_path: Path) -> None:
    files = garage_files("f,v,x,thing-worn,fuel,,,,,,,\n", "o,f,new,5,,,,,,\n")
    assert read_garage(save(tmp_path, files)).option["o"].life_months == 7


def test_only_what_counts_is_filled(tmp_path: Path) -> None:
    files = garage_files(
        "f,v,x,thing-worn,,,,,,,,\n",
        "o,f,used,5,,,,,,\np,f,used,5,,,,,3,\nq,f,stand-in,5,,,,,,2\n",
    )
    garage = read_garage(save(tmp_path, files))
    found = [(one.row, one.column) for one in garage.assumed if one.table == "options"]
    assert found == [("o", "life_months"), ("p", "life_months"), ("p", "core_days")]
    assert garage.option["q"].life_months is None


def test_money_is_turned_into_the_garages_currency(tmp_path: Path) -> None:
    files = garage_files("f,v,x,thing-worn,,,,,,,,\n", settings="[rates]\nEUR = 160\n")
    files["garage.toml"] = files["garage.toml"].replace('"EUR"', '"JPY"')
    garage = read_garage(save(tmp_path, files))
    assert garage.fault["f"].loss_per_month == 1600
    assert garage.fault["f"].damage_cost == 15998  # 99.99 x 160 = 15,998.4
    assert garage.warnings == ()


def test_without_a_rate_for_the_euro_money_stays_0_with_a_warning(
    tmp_path: Path,
) -> None:
    files = garage_files("f,v,x,thing-worn,,,,,,,,\n")
    files["garage.toml"] = files["garage.toml"].replace('"EUR"', '"USD"')
    garage = read_garage(save(tmp_path, files))
    assert garage.fault["f"].loss_per_month == 0
    assert garage.fault["f"].damage_cost == 0
    assert garage.fault["f"].drivability == 2
    assert garage.warnings == (
        "garage.toml: rates: no rate for EUR, the currency of the catalogue: "
        "blanks in loss_per_month and damage_cost stay 0",
    )


def test_a_filled_garage_is_written_with_nothing_left_to_fill(tmp_path: Path) -> None:
    files = garage_files("f,v,x,thing-worn,,none,,,,,,none\n", "o,f,new,5,none,,,,,\n")
    garage = read_garage(save(tmp_path, files))
    write_garage(garage, tmp_path / "again")
    again = read_garage(tmp_path / "again")
    assert again == garage
    assert again.assumed == ()


def test_what_a_kind_fills_is_what_a_fault_and_a_kind_share() -> None:
    shared = {one.name for one in fields(FaultKind)} & {
        one.name for one in fields(Fault)
    }
    assert set(fill.FROM_KIND) == shared - {"title"}
