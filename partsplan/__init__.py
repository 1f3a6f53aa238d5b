"""Decides which car repairs to buy this month, from where, and why."""

__version__ = "0.1.0"
