"""Whatever stands in the files, only InvalidGarage comes out."""

from pathlib import Path
from tempfile import TemporaryDirectory

from hypothesis import example, given, settings
from hypothesis import strategies as st

from partsplan.errors import InvalidGarage, Problem
from partsplan.intake import read_garage
from tests.intake.plain_garage import PLAIN, save

NASTY = st.one_of(
    st.sampled_from(
        [
            "",
            "=",
            "-",
            "'",
            "1/0",
            "0/1",
            "-1",
            "1e999999999",
            "nan",
            "9" * 5000,
            "v1",
            "f1",
            "f1:",
            ";",
            "0:1",
            "none",
            "no",
            "9999-12",
            "0000-00-00",
            "\u0661",
            "\ud7ff\u2028\x85",
        ]
    ),
    st.text(max_size=12),
)
CELLS = [
    (name, line, cell)
    for name, text in PLAIN.items()
    if name.endswith(".csv") and name != "vehicles.csv"
    for line, row in enumerate(text.rstrip("\n").split("\n"))
    for cell in range(row.count(",") + 1)
]
KEYS = st.sampled_from(
    [
        *("name", "currency", "start", "months", "budget", "hours"),
        *("rates", "weights", "workshop", "priority", "heated", "safety", "EUR"),
    ]
)
VALUES = st.recursive(
    st.sampled_from(
        ["1", "-1", "nan", "1e9", '"x"', '""', "true", "2027-01-01", '"USD"', "'\"'"]
    ),
    lambda inner: (
        st.lists(inner, max_size=3).map(lambda items: f"[{', '.join(items)}]")
        | st.tuples(KEYS, inner).map(lambda pair: f"{{{pair[0]} = {pair[1]}}}")
    ),
    max_leaves=4,
)


def told(files: dict[str, bytes]) -> None:
    """Read the plain garage with other files; each problem is one line."""
    found: tuple[Problem, ...] = ()
    with TemporaryDirectory() as name:
        folder = save(Path(name), PLAIN)
        for file, content in files.items():
            (folder / file).write_bytes(content)
        try:
            read_garage(folder)
        except InvalidGarage as error:
            found = error.problems
    assert all(str(problem).isprintable() for problem in found)


@settings(max_examples=100)
@given(st.sampled_from(sorted(PLAIN)), st.binary(max_size=200))
@example("faults.csv", b'id,vehicle,title\n"\n')
@example("faults.csv", b"\xff\xfe")
@example("faults.csv", b"\xef\xbb\xbf")
def test_any_bytes_make_a_garage_or_problems(file: str, content: bytes) -> None:
    told({file: content})


@settings(max_examples=100)
@given(st.sampled_from(sorted(PLAIN)), st.integers(0, 2000), st.binary(max_size=4))
@example("access.csv", 2, b"\x01")  # once broke the line of the hint
def test_any_damage_makes_a_garage_or_problems(
    file: str, at: int, content: bytes
) -> None:
    whole = PLAIN[file].encode()
    at %= len(whole)
    told({file: whole[:at] + content + whole[at + len(content) :]})


@settings(max_examples=120)
@given(st.sampled_from(CELLS), NASTY)
def test_any_cell_makes_a_garage_or_problems(
    cell: tuple[str, int, int], text: str
) -> None:
    name, line, place = cell
    rows = PLAIN[name].split("\n")
    cells = rows[line].split(",")
    cells[place] = '"' + text.replace('"', '""') + '"'
    rows[line] = ",".join(cells)
    told({name: "\n".join(rows).encode("utf-8", "surrogatepass")})


@settings(max_examples=100)
@given(
    st.lists(st.tuples(KEYS, VALUES), min_size=1, max_size=3, unique_by=lambda p: p[0])
)
def test_any_settings_make_a_garage_or_problems(pairs: list[tuple[str, str]]) -> None:
    keys = dict(line.split(" = ") for line in PLAIN["garage.toml"].split("\n")[:6])
    text = "\n".join(f"{key} = {value}" for key, value in (keys | dict(pairs)).items())
    told({"garage.toml": text.encode()})
