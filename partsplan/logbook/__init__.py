"""The logbook: one file beside the garage, to which entries are only ever added."""

from partsplan.logbook.entries import FILE, Check, append, read

__all__ = ["FILE", "Check", "append", "read"]
