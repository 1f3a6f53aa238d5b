"""One wrong cell, one clear line."""

from pathlib import Path

import pytest

from tests.intake.plain_garage import problems, with_cells

SYSTEMS = (
    "brakes, steering, tyres, restraint, fuel, engine, electrics, driveline, cooling, "
    "exhaust, suspension, body, interior, other"
)
ROUTES = (
    "new, oem-spec, exchange, send-in, used, uprated, economy, stand-in, refinish, "
    "workshop"
)
AMOUNT = "expected an amount like 12.50, got"
COMMA = "; if figures are written so, say decimal_comma = true in garage.toml"
FORMULA = "; put ' before it if it is text"

VEHICLES = [
    (2, "name", "", "expected text, got a blank cell"),
    (2, "name", "a\x1bb", 'expected no control characters, got "a\\x1bb"'),
    (2, "name", "a\tb", 'expected no control characters, got "a\\tb"'),
    (2, "name", "a\nb", 'expected one line, got "a\\nb"'),
    (2, "name", "=1+1", f'expected no formula, got "=1+1"{FORMULA}'),
    (2, "name", "-sum", f'expected no formula, got "-sum"{FORMULA}'),
    (2, "name", "+A1", f'expected no formula, got "+A1"{FORMULA}'),
    (2, "name", "@x", f'expected no formula, got "@x"{FORMULA}'),
    (2, "value", "=A1", f'expected no formula, got "=A1"{FORMULA}'),
    (2, "notes", "a\x07b", 'expected no control characters, got "a\\x07b"'),
    (2, "year", "1850", 'expected 1880-2100, got "1850"'),
    (2, "year", "MMIV", 'expected a whole number, 1880-2100, got "MMIV"'),
    (2, "keep_months", "3.5", 'expected a whole number, 0-600, got "3.5"'),
    (2, "keep_months", "-1", 'expected 0-600, got "-1"'),
    (2, "driven_from", "2027-13", 'expected a month YYYY-MM, got "2027-13"'),
    (2, "driven_from", "maybe", 'expected a month YYYY-MM, or no, got "maybe"'),
    (2, "value", "-5", 'expected 0 or more, got "-5"'),
    (
        2,
        "use",
        "dayly",
        "expected one of daily, weekend, project, stored, "
        'got "dayly"; did you mean "daily"?',
    ),
]

FAULTS = [
    (2, "vehicle", "", "expected an id, got a blank cell"),
    (2, "vehicle", "v3", 'no vehicle "v3" in vehicles.csv'),
    (2, "vehicle", "V1", 'no vehicle "V1" in vehicles.csv; did you mean "v1"?'),
    (
        2,
        "kind",
        "brake-pads-worn",
        'no fault kind "brake-pads-worn" in the catalogue; '
        'did you mean "brake-pads-worn-out"?',
    ),
    (
        2,
        "system",
        "brake",
        f'expected one of {SYSTEMS}, got "brake"; did you mean "brakes"?',
    ),
    (2, "severity", "5", 'expected 1-4, got "5"'),
    (2, "severity", "critical", 'expected 1-4, got "critical"'),
    (2, "likelihood", "G", 'expected A-F, got "G"'),
    (2, "likelihood", "often", 'expected A-F, got "often"'),
    (
        2,
        "inspection",
        "fatal",
        'expected one of none, minor, major, dangerous, got "fatal"',
    ),
    (2, "drivability", "7", 'expected 0-4, got "7"'),
    (2, "drivability", "²", 'expected a whole number, 0-4, got "²"'),
    (2, "loss_per_month", "12,50", f'{AMOUNT} "12,50"{COMMA}'),
    (2, "loss_per_month", "1,200.00", f'{AMOUNT} "1,200.00"'),
    (2, "loss_per_month", "1 200", f'{AMOUNT} "1 200"'),
    (2, "loss_per_month", "1'200", f'{AMOUNT} "1\'200"'),
    (2, "loss_per_month", "1_200", f'{AMOUNT} "1_200"'),
    (2, "loss_per_month", "nan", f'{AMOUNT} "nan"'),
    (2, "loss_per_month", "inf", f'{AMOUNT} "inf"'),
    (2, "loss_per_month", "1e2", f'{AMOUNT} "1e2"'),
    (2, "loss_per_month", "EUR 5", f'{AMOUNT} "EUR 5"'),
    (2, "loss_per_month", "9" * 60, f'{AMOUNT} "{"9" * 37}..."'),
    (2, "loss_per_month", "12.505", 'expected at most 2 decimals in EUR, got "12.505"'),
    (2, "loss_per_month", "-1", 'expected 0 or more, got "-1"'),
    (2, "damage_chance", "1.5", 'expected 0-1, got "1.5"'),
    (2, "damage_chance", "10%", 'expected a number, 0-1, got "10%"'),
    (2, "damage_chance", "NaN", 'expected a number, 0-1, got "NaN"'),
    (2, "damage_chance", "1e-2", 'expected a number, 0-1, got "1e-2"'),
    (2, "damage_chance", "1/0", 'expected a number, 0-1, got "1/0"'),
    (2, "enjoyment", "11", 'expected 0-10, got "11"'),
    (2, "points", "101", 'expected 0-100, got "101"'),
    (2, "growth", "-0.1", 'expected 0-1, got "-0.1"'),
    (2, "lamps", "abs;abs", 'names "abs" twice'),
    (2, "lamps", ";", 'expected texts with ; between them, got ";"'),
    (2, "pair_with", "f1", "names the fault itself"),
    (2, "pair_with", "f9", 'no fault "f9" in faults.csv'),
    (2, "after", "f1", "names the fault itself"),
    (2, "after", "f2", "goes round in a circle: f1 after f2 after f1"),
    (2, "after", "f8", 'no fault "f8" in faults.csv'),
    (2, "fix_by", "2027-00", 'expected a month YYYY-MM, got "2027-00"'),
    (2, "fix_by", "May 2027", 'expected a month YYYY-MM, got "May 2027"'),
    (2, "status", "done", 'expected one of open, fixed, watch, got "done"'),
]

OPTIONS = [
    (
        2,
        "fixes",
        "",
        "expected fault or fault:relief, with ; between them, got a blank cell",
    ),
    (2, "fixes", ";", 'expected fault or fault:relief, got ";"'),
    (2, "fixes", ":0.5", 'expected fault or fault:relief, got ":0.5"'),
    (2, "fixes", "f1;f1:0.5", 'names "f1" twice'),
    (2, "fixes", "f1:0", 'expected a relief more than 0, at most 1, got "0"'),
    (2, "fixes", "f1:1.2", 'expected a relief more than 0, at most 1, got "1.2"'),
    (2, "fixes", "f1:x", 'expected a number, more than 0, at most 1, got "x"'),
    (2, "fixes", "f1:0.5:1", 'expected a number, more than 0, at most 1, got "0.5:1"'),
    (2, "fixes", "f1;f3", 'expected faults of one vehicle, got "v1", "v2"'),
    (2, "fixes", "f8", 'no fault "f8" in faults.csv'),
    (2, "route", "", f"expected one of {ROUTES}, got a blank cell"),
    (
        2,
        "route",
        "echange",
        f'expected one of {ROUTES}, got "echange"; did you mean "exchange"?',
    ),
    (2, "supplier", "s3", 'no supplier "s3" in suppliers.csv'),
    (2, "price", "", "expected an amount, 0 or more, got a blank cell"),
    (2, "price", "-1", 'expected 0 or more, got "-1"'),
    (4, "price", "3000.50", 'expected at most 0 decimals in JPY, got "3000.50"'),
    (2, "price_low", "31", "expected at most the price 30.00, got 31.00"),
    (2, "price_high", "29.99", "expected at least the price 30.00, got 29.99"),
    (4, "price_low", "3001", "expected at most the price 3000, got 3001"),
    (2, "currency", "USD", "no rate for USD under [rates] in garage.toml"),
    (
        2,
        "currency",
        "EURO",
        'expected an ISO 4217 code like EUR, got "EURO"; did you mean "EUR"?',
    ),
    (2, "quantity", "0", 'expected more than 0, got "0"'),
    (2, "quantity", "-1", 'expected more than 0, got "-1"'),
    (2, "core_deposit", "-1", 'expected 0 or more, got "-1"'),
    (2, "core_chance", "1.1", 'expected 0-1, got "1.1"'),
    (2, "core_days", "4000", 'expected 0-3650, got "4000"'),
    (2, "coding", "yes", 'expected one of none, self, paid, got "yes"'),
    (2, "life_months", "0", 'expected 1-600, got "0"'),
    (2, "dud_chance", "1", 'expected 0 or more, less than 1, got "1"'),
    (2, "lead_days", "soon", 'expected a whole number, 0-3650, got "soon"'),
    (2, "hours", "-1", 'expected 0 or more, got "-1"'),
    (2, "access", "a2", 'no access group "a2" in access.csv'),
    (2, "tools", "t1;t2", 'no tool "t2" in tools.csv'),
    (2, "min_temp", "100", 'expected -60 to 60, got "100"'),
    (
        2,
        "instalments",
        "0:0.4;1:0.5",
        'expected shares that sum to 1, got 0.9 in "0:0.4;1:0.5"',
    ),
    (2, "instalments", "0:0.5;0:0.5", 'names "month 0" twice'),
    (2, "instalments", "0.5;0.5", 'expected months:share like 0:0.25, got "0.5"'),
    (2, "instalments", "-1:1", 'expected months:share like 0:0.25, got "-1:1"'),
    (2, "instalments", "0:2", 'expected a share more than 0, at most 1, got "2"'),
    (2, "instalments", "99:1", 'expected an instalment within 60 months, got "99:1"'),
    (
        3,
        "followup_within",
        "",
        "expected the months that a stand-in holds, got a blank cell",
    ),
    (3, "followup_within", "0", 'expected 1-600, got "0"'),
    (
        4,
        "not_after",
        "2026-12",
        "expected a month from not_before 2027-01 on, got 2026-12",
    ),
    (2, "road_legal", "maybe", 'expected yes or no, got "maybe"'),
    (
        2,
        "quoted_on",
        "2026-02-30",
        'expected a day YYYY-MM-DD, or a month YYYY-MM, got "2026-02-30"',
    ),
    (2, "valid_until", "2027-1", 'expected a month YYYY-MM, got "2027-1"'),
]

SUPPLIERS = [
    (2, "tax", "plus", 'expected one of included, added, got "plus"'),
    (2, "duty_rate", "19", 'expected 0-1, got "19"'),
    (2, "shipping", "free", f'{AMOUNT} "free"'),
    (2, "currency", "XXX", 'expected an ISO 4217 code like EUR, got "XXX"'),
    (3, "currency", "USD", "no rate for USD under [rates] in garage.toml"),
]

ACCESS = [(2, "hours", "", "expected 0 or more, got a blank cell")]

TOOLS = [
    (2, "owned", "perhaps", 'expected yes or no, got "perhaps"'),
    (2, "price", "-1", 'expected 0 or more, got "-1"'),
]

CAUSES = [
    (2, "fault", "f7", 'no fault "f7" in faults.csv'),
    (2, "chance", "2", 'expected 0-1, got "2"'),
    (2, "cure", "o9", 'no option "o9" in options.csv'),
    (
        3,
        "chance",
        "0.6",
        'expected chances that sum to at most 1 for fault "f1", got 1.1 up to here',
    ),
    (
        3,
        "cause",
        "old",
        'expected each fault and cause once, got "f1", "old" again (first in line 2)',
    ),
]

MILESTONES = [
    (2, "id", "", "expected an id, got a blank cell"),
    (2, "id", "m:1", 'expected an id without ";" and ":", got "m:1"'),
    (2, "id", "m;1", 'expected an id without ";" and ":", got "m;1"'),
    (2, "id", "m" * 65, "expected an id of at most 64 characters, got 65"),
    (2, "month", "", "expected a month YYYY-MM, got a blank cell"),
    (2, "faults", "f1;f0", 'no fault "f0" in faults.csv'),
    (2, "faults", "", "expected ids with ; between them, got a blank cell"),
]

CASES = [
    (file, *case)
    for file, cases in {
        "vehicles.csv": VEHICLES,
        "faults.csv": FAULTS,
        "options.csv": OPTIONS,
        "suppliers.csv": SUPPLIERS,
        "access.csv": ACCESS,
        "tools.csv": TOOLS,
        "causes.csv": CAUSES,
        "milestones.csv": MILESTONES,
    }.items()
    for case in cases
]


@pytest.mark.parametrize(("file", "line", "column", "text", "message"), CASES)
def test_a_wrong_cell_is_told_in_one_line(
    tmp_path: Path, file: str, line: int, column: str, text: str, message: str
) -> None:
    found = problems(tmp_path, with_cells(file, line, **{column: text}))
    assert found == [f"{file}:{line}: {column}: {message}"]
