"""A hatch fills its polygon with lines at one slant, one distance apart."""

from itertools import pairwise
from math import sqrt

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from pictured import distance, inside

from foldmath.drawing.rendering.hatching import hatch_lines
from foldmath.drawing.scenes import Lean, Spot

NEARLY = pytest.approx
PITCH = 2.4
lengths = st.integers(1, 200).map(lambda tenths: tenths / 2)
leans = st.sampled_from(Lean)


def rectangle(width, height, left=0.0, bottom=0.0):
    return (
        Spot(left, bottom),
        Spot(left + width, bottom),
        Spot(left + width, bottom + height),
        Spot(left, bottom + height),
    )


triangles = st.builds(lambda w, h: (Spot(0, 0), Spot(w, 0), Spot(w / 3, h)), lengths, lengths)
polygons = st.one_of(st.builds(rectangle, lengths, lengths), triangles)


@given(polygons, leans)
@settings(max_examples=60, deadline=None)
def test_lines_lie_in_the_polygon_and_rise_the_way_they_lean(polygon, lean):
    for start, end in hatch_lines(polygon, lean, PITCH):
        assert inside(start, polygon)
        assert inside(end, polygon)
        rise, run = end.y - start.y, end.x - start.x
        assert rise == NEARLY(run if lean is Lean.RIGHT else -run)


@given(st.floats(10, 80), st.floats(10, 80), leans)
@settings(max_examples=40, deadline=None)
def test_lines_fill_the_area_evenly(width, height, lean):
    """A line every pitch, each as long as the paper there: length times pitch is the area."""
    lines = hatch_lines(rectangle(width, height), lean, PITCH)
    filled = sum(distance(start, end) for start, end in lines) * PITCH
    assert filled == NEARLY(width * height, abs=PITCH * (width + height))
    offsets = sorted(y - x if lean is Lean.RIGHT else y + x for (x, y), _ in lines)
    for one, other in pairwise(offsets):
        assert other - one == NEARLY(PITCH * sqrt(2))


@given(leans)
def test_neighbouring_panels_hatch_as_one(lean):
    whole = hatch_lines(rectangle(30, 20), lean, PITCH)
    halves = hatch_lines(rectangle(15, 20), lean, PITCH) + hatch_lines(
        rectangle(15, 20, left=15), lean, PITCH
    )
    assert sum(distance(*line) for line in whole) == NEARLY(sum(distance(*line) for line in halves))
