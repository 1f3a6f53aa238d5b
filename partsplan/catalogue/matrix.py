"""The risk matrix as a table to show."""

from collections.abc import Mapping
from functools import cache
from types import MappingProxyType

from partsplan.catalogue.tables import Row, read_table
from partsplan.domain import Likelihood, RiskLevel, Severity


@cache
def risk_matrix() -> Mapping[tuple[Severity, Likelihood], RiskLevel]:
    """The level of each cell of MIL-STD-882E, 11 May 2012, table III."""
    return MappingProxyType(dict(read_table("risk_matrix.csv", _cell)))


def _cell(row: Row) -> tuple[tuple[Severity, Likelihood], RiskLevel]:
    place = row.member("severity", Severity), row.member("likelihood", Likelihood)
    return place, row.member("level", RiskLevel)
