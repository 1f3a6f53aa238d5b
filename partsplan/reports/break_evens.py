"""Where two options cost the same, as sentences."""

from partsplan.catalogue import currencies
from partsplan.domain import BreakEven, Comparison, Currency, Garage, Lever, Option
from partsplan.reports.figures import number, percent, price
from partsplan.reports.words import option_name


def break_even_sentence(garage: Garage, comparison: Comparison, one: BreakEven) -> str:
    """Where an option and its best rival cost the same, as a sentence."""
    found = {each.option.id: each for each in comparison.candidates}
    own, rival = found[one.option], found[one.rival]
    cheaper_now = (own.per_month or 0) < (rival.per_month or 0)
    verb, when = (
        ("stays cheaper than", "as long as")
        if cheaper_now
        else ("would be cheaper than", "if")
    )
    more, less = _CLAUSES[one.lever]
    names = option_name(garage, one.option), option_name(garage, one.rival)
    turn = f"{more if one.cheaper_above else less} {_value(garage, one, one.at)}"
    now = (
        f"{own.service} months, as long as the vehicle is kept"
        if one.now is None
        else _value(garage, one, one.now)
    )
    return f"{names[0]} {verb} {names[1]} {when} {turn} (now {now})."


_CLAUSES = {
    Lever.CORE_CHANCE: (
        "the old unit is accepted with a chance above",
        "the old unit is accepted with a chance below",
    ),
    Lever.DUD_CHANCE: (
        "the chance of a bad part is above",
        "the chance of a bad part is below",
    ),
    Lever.CODING_COST: ("coding costs more than", "coding costs less than"),
    Lever.PRICE: ("one piece costs more than", "one piece costs less than"),
    Lever.LIFE: ("it lasts longer than", "it lasts less than"),
}


def _value(garage: Garage, one: BreakEven, value: float) -> str:
    match one.lever:
        case Lever.CORE_CHANCE | Lever.DUD_CHANCE:
            return percent(value)
        case Lever.CODING_COST:
            return price(garage.currency, value)
        case Lever.PRICE:
            return price(quoted_in(garage, garage.option[one.option]), value)
        case Lever.LIFE:
            return f"{number(value, 1)} months"


def quoted_in(garage: Garage, option: Option) -> Currency:
    """The currency in which an option is quoted."""
    if option.currency == garage.currency.code:
        return garage.currency
    return Currency(option.currency, currencies()[option.currency])
