"""What options cost, when the money moves, and which months allow them."""

from partsplan.pricing.cash import flows
from partsplan.pricing.compare import compare
from partsplan.pricing.landed import price
from partsplan.pricing.months import bars
from partsplan.pricing.offers import offers
from partsplan.pricing.routes import flagged

__all__ = ["bars", "compare", "flagged", "flows", "offers", "price"]
