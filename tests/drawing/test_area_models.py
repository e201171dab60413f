"""An area model shows one factor in columns, the other in rows, and the product where hatches cross."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from pictured import of_kind, strokes

from foldmath.drawing.area_models import Grid, blank_model, shaded_model
from foldmath.drawing.scenes import Hatching, Lean, Meaning, Star

NEARLY = pytest.approx


def taken(parts):
    return st.integers(1, parts)


grids = st.tuples(st.integers(2, 12), st.integers(2, 12)).flatmap(
    lambda sizes: st.builds(Grid, st.just(sizes[0]), st.just(sizes[1]), taken(sizes[0]), taken(sizes[1]))
)


def outline_of(scene):
    (outline,) = strokes(scene, Meaning.OUTLINE)
    (left, bottom), (right, top) = outline.spots[0], outline.spots[2]
    return left, bottom, right, top


def box(spots):
    xs, ys = [spot.x for spot in spots], [spot.y for spot in spots]
    return min(xs), min(ys), max(xs), max(ys)


@given(grids)
@settings(max_examples=40, deadline=None)
def test_rows_are_hatched_to_the_left_and_then_columns_to_the_right_inside_them(grid):
    scene = shaded_model(grid, 64, 44)
    left, bottom, right, top = outline_of(scene)
    rows, columns = of_kind(scene, Hatching)
    up = bottom + (top - bottom) * grid.up / grid.rows
    across = left + (right - left) * grid.across / grid.columns
    assert rows.lean is Lean.LEFT
    assert box(rows.spots) == NEARLY((left, bottom, right, up))
    assert columns.lean is Lean.RIGHT
    assert box(columns.spots) == NEARLY((left, bottom, across, up))


@given(grids)
@settings(max_examples=40, deadline=None)
def test_the_grid_cuts_the_whole_into_equal_columns_and_rows(grid):
    scene = shaded_model(grid, 64, 44)
    left, bottom, right, top = outline_of(scene)
    lines = strokes(scene, Meaning.GRID)
    upright = sorted(line.spots[0].x for line in lines if line.spots[0].x == line.spots[1].x)
    level = sorted(line.spots[0].y for line in lines if line.spots[0].y == line.spots[1].y)
    assert upright == NEARLY([left + (right - left) * n / grid.columns for n in range(1, grid.columns)])
    assert level == NEARLY([bottom + (top - bottom) * n / grid.rows for n in range(1, grid.rows)])
    assert len(lines) == len(upright) + len(level)


@given(grids)
@settings(max_examples=40, deadline=None)
def test_a_blank_model_gives_away_nothing_but_ticks_where_the_lines_will_be(grid):
    scene = blank_model(grid, 64, 44)
    left, bottom, right, top = outline_of(scene)
    assert of_kind(scene, Hatching) == []
    assert strokes(scene, Meaning.GRID) == []
    ticks = strokes(scene, Meaning.TICK)
    assert len(ticks) == 2 * (grid.columns - 1) + 2 * (grid.rows - 1)
    for tick in ticks:
        start, end = tick.spots
        on_side = start.x in (NEARLY(left), NEARLY(right))
        on_foot = start.y in (NEARLY(bottom), NEARLY(top))
        assert on_side or on_foot
        assert left < end.x < right or bottom < end.y < top


@given(grids)
@settings(max_examples=20, deadline=None)
def test_blank_and_shaded_models_have_one_size_one_outline_and_one_star(grid):
    blank, shaded = blank_model(grid, 64, 44), shaded_model(grid, 64, 44)
    assert (blank.width_mm, blank.height_mm) == (shaded.width_mm, shaded.height_mm) == (64, 44)
    assert outline_of(blank) == outline_of(shaded)
    assert of_kind(blank, Star) == of_kind(shaded, Star) != []


def test_the_words_of_a_model_count_the_parts_shaded_twice():
    """2/3 × 4/5 = 8/15: Common Core State Standards for Mathematics (2010), 5.NF.B.4.a."""
    assert "8 of 15 parts" in str(shaded_model(Grid(3, 5, 2, 4), 64, 44).words)
