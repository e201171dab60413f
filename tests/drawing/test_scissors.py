"""Scissors about to cut: their blades open along the cut, and they lie in front of it."""

from math import cos, dist, pi, sin

import pytest

from foldmath.drawing.scenes import Spot
from foldmath.drawing.sheets.scissors import scissors

START, LONG_MM = Spot(30.0, 20.0), 24.0


def along(spot, way):
    """Give how far a spot lies along a cut, from its beginning."""
    return (spot.x - START.x) * cos(way) + (spot.y - START.y) * sin(way)


@pytest.mark.parametrize("turn", range(8))
def test_blades_open_along_the_cut_and_grips_lie_behind_them(turn):
    way = turn * pi / 4
    marks = scissors(START, Spot(START.x + LONG_MM * cos(way), START.y + LONG_MM * sin(way)))
    tips = [max(mark.spots, key=lambda spot: along(spot, way)) for mark in marks if not mark.closed]
    rings = [spot for mark in marks if mark.closed for spot in mark.spots]
    assert dist(*tips) > 2
    assert max(along(spot, way) for spot in rings) < min(along(spot, way) for spot in tips) - 5


@pytest.mark.parametrize("turn", range(8))
def test_the_cut_lies_between_the_tips_alone(turn):
    """Along the whole of the blades its thick line would make an arrow of them, against the cut."""
    way = turn * pi / 4
    marks = scissors(START, Spot(START.x + LONG_MM * cos(way), START.y + LONG_MM * sin(way)))
    for blade in (mark for mark in marks if not mark.closed):
        reach = sorted(along(spot, way) for spot in blade.spots)
        assert 0 < reach[-1] < 2
        assert reach[-2] < 0
