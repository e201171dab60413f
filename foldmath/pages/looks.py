"""The names of the looks that pages are laid out in."""

REGULAR, LARGE, SLIDES = "regular", "large", "slides"
"""At 12 points, large print at 18, and slides."""
