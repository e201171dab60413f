"""Teach fraction multiplication by folding one sheet of paper."""

__version__ = "0.1.0"
