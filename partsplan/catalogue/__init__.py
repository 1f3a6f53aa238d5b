"""The tables that ship with the program, as frozen facts."""

from partsplan.catalogue.caution import cautions
from partsplan.catalogue.code_range import (
    CodeOwner,
    CodeRange,
    code_range,
    code_ranges,
)
from partsplan.catalogue.currency import currencies
from partsplan.catalogue.fault_kind import FaultKind, fault_kinds
from partsplan.catalogue.kind_check import KindCheck, kind_checks
from partsplan.catalogue.kind_link import KindLink, Link, kind_links
from partsplan.catalogue.matrix import risk_matrix
from partsplan.catalogue.norms import RouteNorm, route_norm
from partsplan.catalogue.sign_group import SignGroup, sign_groups
from partsplan.catalogue.tables import BrokenCatalogue, data_folder
from partsplan.catalogue.told_sign import (
    LampSign,
    UnitSign,
    lamp_signs,
    unit_signs,
)
from partsplan.catalogue.trouble_code import TroubleCode, codes_for, trouble_codes
from partsplan.catalogue.words import Word, scale, scales

__all__ = [
    "BrokenCatalogue",
    "CodeOwner",
    "CodeRange",
    "FaultKind",
    "KindCheck",
    "KindLink",
    "LampSign",
    "Link",
    "RouteNorm",
    "SignGroup",
    "TroubleCode",
    "UnitSign",
    "Word",
    "cautions",
    "code_range",
    "code_ranges",
    "codes_for",
    "currencies",
    "data_folder",
    "fault_kinds",
    "kind_checks",
    "kind_links",
    "lamp_signs",
    "risk_matrix",
    "route_norm",
    "scale",
    "scales",
    "sign_groups",
    "trouble_codes",
    "unit_signs",
]
