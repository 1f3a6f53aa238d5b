"""The tables that ship with the program, as frozen facts."""

from partsplan.catalogue.caution import cautions
from partsplan.catalogue.currency import currencies
from partsplan.catalogue.fault_kind import FaultKind, fault_kinds
from partsplan.catalogue.matrix import risk_matrix
from partsplan.catalogue.norms import RouteNorm, route_norm
from partsplan.catalogue.tables import BrokenCatalogue, data_folder
from partsplan.catalogue.trouble_code import TroubleCode, trouble_codes
from partsplan.catalogue.words import Word, scale, scales

__all__ = [
    "BrokenCatalogue",
    "FaultKind",
    "RouteNorm",
    "TroubleCode",
    "Word",
    "cautions",
    "currencies",
    "data_folder",
    "fault_kinds",
    "risk_matrix",
    "route_norm",
    "scale",
    "scales",
    "trouble_codes",
]
