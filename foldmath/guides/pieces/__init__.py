"""Pieces of guide pages: words set in the styles of all pages, the check ruler, numbers in circles."""
