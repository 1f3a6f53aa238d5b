"""What to check before anything is bought, in which order, and what that saves."""

from partsplan.diagnosis.diagnose import diagnose
from partsplan.diagnosis.lamps import lamps
from partsplan.diagnosis.shared import shared_causes

__all__ = ["diagnose", "lamps", "shared_causes"]
