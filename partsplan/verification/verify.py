"""The last word on a plan: every rule, then every figure."""

from partsplan.domain import Choices, Garage, Plan
from partsplan.verification import orders, together
from partsplan.verification.facts import Facts
from partsplan.verification.figures import figures
from partsplan.verification.violation import Violation

RULES = (
    orders.warm_enough,
    orders.coded,
    orders.by_allowed_route,
    orders.for_open_faults,
    orders.not_bought_twice,
    together.one_lasting,
    together.in_order,
    together.in_pairs,
    together.followed_up,
    together.with_tools,
    together.within_money,
    together.within_hours,
)


def broken_rules(garage: Garage, choices: Choices) -> tuple[Violation, ...]:
    """Every rule that choices break; empty if they are legal."""
    return _broken(Facts(garage, choices))


def violations(garage: Garage, plan: Plan) -> tuple[Violation, ...]:
    """Every broken rule, or every wrong figure; empty for a sound plan."""
    facts = Facts(garage, plan.choices)
    return _broken(facts) or tuple(figures(facts, plan))


def _broken(facts: Facts) -> tuple[Violation, ...]:
    for first in (orders.known, orders.in_time):  # the rest is worked out from these
        if broken := tuple(first(facts)):
            return broken
    return tuple(one for rule in RULES for one in rule(facts))
