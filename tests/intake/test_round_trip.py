"""What is written reads back as the same garage."""

from pathlib import Path
from tempfile import TemporaryDirectory

from hypothesis import HealthCheck, given, settings

from partsplan.domain import Garage
from partsplan.intake import read_garage, write_garage
from tests.support.garages import garages


@settings(max_examples=25, suppress_health_check=[HealthCheck.too_slow])
@given(garages())
def test_a_written_garage_reads_back_as_the_same(garage: Garage) -> None:
    with TemporaryDirectory() as folder:
        write_garage(garage, Path(folder))
        again = read_garage(Path(folder))
    assert again == garage
    assert again.assumed == ()
