"""What an entry says, in words."""

from partsplan.domain import Currency, Happening
from partsplan.reports.figures import many, money, number


def deed(what: Happening) -> str:
    """What happened to what, without money and hours."""
    kind = str(what.kind).replace("-", " ")
    said = [f"{kind} {what.subject}".rstrip()]
    if what.cause:
        said.append(f"{'found' if what.found else 'ruled out'}: {what.cause}")
    if what.reading is not None:
        said.append(many(what.reading))
    return ", ".join(said)


def happened(currency: Currency, what: Happening) -> str:
    """What happened to what, with all figures but the amount."""
    said = [deed(what)]
    if what.deposit:
        said.append(f"deposit {money(currency, what.deposit)}")
    if what.hours:
        said.append(f"{number(what.hours)} h")
    return ", ".join(said)


def remark(what: Happening) -> str:
    """Who wrote it and what they added."""
    return ": ".join(part for part in (what.who, what.text) if part)
