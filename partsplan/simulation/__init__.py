"""How a plan may turn out: prices, bad and late parts, old units, new faults."""

from partsplan.simulation.futures import Futures, drawn
from partsplan.simulation.simulate import simulate, summary

__all__ = ["Futures", "drawn", "simulate", "summary"]
