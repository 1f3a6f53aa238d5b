"""A text read for the only vehicle of a garage, with the tables that ship."""

from typing import Any

from partsplan.domain import Fault, Proposal, Reading
from partsplan.signs import SignTables, find_signs, propose
from partsplan.usecases.from_codes import sign_tables
from tests.support.building import garage

TABLES = sign_tables()


def read(text: str, *faults: Fault, tables: SignTables = TABLES) -> Reading:
    """What a text comes to in a garage of these faults."""
    signs = find_signs(text, tables)
    return propose(garage(faults=faults, options=()), "v1", signs, tables)


def proposed(text: str, *faults: Fault, **settings: Any) -> list[Proposal]:
    """The faults that a text suggests."""
    return list(read(text, *faults, **settings).proposals)


def only(text: str, *faults: Fault) -> Proposal:
    """The one fault that a text suggests."""
    (one,) = proposed(text, *faults)
    return one
