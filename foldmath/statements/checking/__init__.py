"""Checking: takes a claim of figures, gives whether it is true, and what was probably meant."""
