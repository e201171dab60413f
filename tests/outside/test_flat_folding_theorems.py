"""The theorems of flat folding, on random foldings, by measured angles and counts.

Sources:
    Kawasaki: alternate angles between the creases at a point sum to 180 degrees. Maekawa: mountains and
    valleys differ by 2. J. Justin, British Origami (June 1986) 28-30; T. Hull, Congressus Numerantium 100
    (1994) 215-224. Points on the edge of the sheet are exempt, and creases lying flat do not count.
"""

from collections import defaultdict
from math import atan2, degrees, isclose

from hypothesis import given
from hypothesis import strategies as st
from strategies import folded, halvings, often_enough, sheets, step_lists

from foldmath.paper.state import FoldedState, Kind
from foldmath.plane.lines import Point
from foldmath.plane.numbers import denominator, numerator


def measured(number) -> float:
    return numerator(number) / denominator(number)


def folded_creases_round_points(state: FoldedState) -> dict[Point, list[tuple[float, Kind]]]:
    """Give the direction in degrees and the kind of each folded crease at each point inside the sheet."""
    found = defaultdict(list)
    width, height = state.sheet.width, state.sheet.height
    for crease in state.creases:
        for start, end in ((crease.start, crease.end), (crease.end, crease.start)):
            if crease.folded and 0 < start.x < width and 0 < start.y < height:
                direction = degrees(atan2(measured(end.y - start.y), measured(end.x - start.x)))
                found[start].append((direction, crease.kind))
    return found


@given(sheets, step_lists)
@often_enough
def test_alternate_angles_round_a_point_make_a_straight_angle(sheet, steps):
    for spokes in folded_creases_round_points(folded(sheet, steps)).values():
        directions = sorted(direction for direction, _ in spokes)
        angles = [b - a for a, b in zip(directions, [*directions[1:], directions[0] + 360], strict=True)]
        assert len(angles) % 2 == 0
        assert isclose(sum(angles[::2]), 180, abs_tol=1e-6)


@given(sheets, step_lists)
@often_enough
def test_mountains_and_valleys_round_a_point_differ_by_two(sheet, steps):
    for spokes in folded_creases_round_points(folded(sheet, steps)).values():
        mountains = sum(kind is Kind.MOUNTAIN for _, kind in spokes)
        assert abs(mountains - (len(spokes) - mountains)) == 2


@given(sheets, st.lists(halvings, min_size=2, max_size=5))
@often_enough
def test_where_two_creases_of_repeated_halving_cross_three_are_of_one_kind(sheet, steps):
    """A consequence of Maekawa at a crossing of four creases."""
    for spokes in folded_creases_round_points(folded(sheet, steps)).values():
        assert sorted(sum(kind is one for _, kind in spokes) for one in (Kind.VALLEY, Kind.MOUNTAIN)) == [
            1,
            3,
        ]
