"""Signs that lead to the same kind of fault, gathered."""

from collections.abc import Iterator
from dataclasses import dataclass, field

from partsplan.domain import UNNAMED, Confidence, FoundCode, Signs
from partsplan.signs.groups import Match
from partsplan.signs.tables import SignTables


@dataclass(slots=True)
class Lead:
    """Signs that one fault may be behind.

    Attributes
    ----------
    kinds
        Keys of the kinds that it may be, the most usual one first, each once.
    suspected
        The kind that signs seen together point to, where they do.
    """

    codes: list[FoundCode] = field(default_factory=list)
    lamps: list[str] = field(default_factory=list)
    units: list[str] = field(default_factory=list)
    kinds: list[str] = field(default_factory=list)
    suspected: str | None = None

    def may_be(self, *kinds: str) -> None:
        """Add kinds that are not there yet."""
        self.kinds = list(dict.fromkeys((*self.kinds, *kinds)))

    def confidence(self, tables: SignTables) -> Confidence:
        """How far its signs lead."""
        if not self.kinds:
            return Confidence.LOW
        exact = any(len(tables.kinds_of_code(one.code)) == 1 for one in self.codes)
        return Confidence.HIGH if exact and not self.suspected else Confidence.MEDIUM


def gathered(signs: Signs, tables: SignTables, matches: list[Match]) -> list[Lead]:
    """One lead for each kind that the signs point to first, in their order.

    Signs that a group suspects a kind behind are taken together before that. A lamp
    belongs to the first lead whose kind lights it; codes without a meaning stay alone.
    """
    leads: dict[str, Lead] = {}
    grouped = {
        sign: match.group.kind
        for match in reversed(matches)
        if match.group.kind
        for sign in match.signs
    }

    def lead(sign: str, kinds: tuple[str, ...]) -> Lead:
        suspected = grouped.get(sign)
        first = suspected or (kinds[0] if kinds else sign)
        found = leads.setdefault(first, Lead(suspected=suspected))
        found.suspected = found.suspected or suspected
        found.may_be(*([suspected] if suspected else []), *kinds)
        return found

    for code in signs.codes:
        lead(code.code, tables.kinds_of_code(code.code)).codes.append(code)
    for unit in signs.units:
        sign = tables.silence(unit)
        kinds = () if unit == UNNAMED else tables.kinds_of_code(sign)
        lead(sign, kinds).units.append(unit)
    for lamp in signs.lamps:
        sign = f"lamp:{lamp}"
        lit = None if sign in grouped else next(_lighting(leads, lamp, tables), None)
        (lit or lead(sign, tables.lamps[lamp].kinds)).lamps.append(lamp)
    return list(leads.values())


def _lighting(leads: dict[str, Lead], lamp: str, tables: SignTables) -> Iterator[Lead]:
    """Leads whose first kind lights the lamp."""
    for one in leads.values():
        if one.kinds and lamp in tables.kinds[one.kinds[0]].lamps:
            yield one
