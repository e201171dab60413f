"""Folding again: takes a crease pattern, gives the steps that make it, as a lesson."""
