"""Guide sheets: takes a proved lesson, gives sheets to print at exact scale, with folds, ticks and cuts."""

from foldmath.guides.composing import guide_sheets

__all__ = ["guide_sheets"]
