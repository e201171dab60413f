"""Foldings parallel to the sides of the sheet, and hands with round numbers, for tests of accuracy."""

from hypothesis import strategies as st
from strategies import edge_folds, folds_at, gates, halvings, other_steps, pleats

from foldmath.tolerance.assumed.spread import Spread

ONE_MM = Spread(edge_mm=1.0, eye_mm=3.0, tick_mm=0.5, cut_mm=2.0, thickness_mm=0.0)
"""Thin paper and hands with round numbers."""

BOOKLET = (
    "fold left edge to right edge",
    "open",
    "fold left edge to middle",
    "open",
    "fold right edge to middle",
    "open",
    "fold top edge to bottom edge",
    "open",
    "fold left edge to right edge",
    "slit at height 1/2 from left edge to 1/2",
    "open",
    "gather into booklet",
)

square_steps = st.lists(
    st.one_of(halvings, halvings, edge_folds, folds_at, gates, pleats, other_steps), min_size=1, max_size=6
)
