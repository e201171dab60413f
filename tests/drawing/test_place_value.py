"""Place-value blocks: as many as the number says, all at one scale, none on another."""

from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from pictured import spots_of

from foldmath.drawing.place_value import (
    LARGEST,
    SMALLEST_UNIT_MM,
    BlocksRefused,
    blocks,
    least_height_mm,
    pieces_of,
)
from foldmath.drawing.scenes import Area, Meaning, Stroke, Tone

drawn = st.integers(1, LARGEST)
few_examples = settings(max_examples=15, deadline=None)


def box_of(spots):
    return (
        min(x for x, _ in spots),
        min(y for _, y in spots),
        max(x for x, _ in spots),
        max(y for _, y in spots),
    )


def front_faces(scene):
    """Give the boxes of all front faces, and of no face that slants back."""
    faces = [mark.spots for mark in scene.marks if isinstance(mark, Area) and mark.tone is Tone.PRINTED_SIDE]
    return [box_of(spots) for spots in faces]


@few_examples
@given(drawn)
def test_counted_block_by_block_the_picture_is_the_number(value):
    scene = blocks(value, 180, 250)
    faces = front_faces(scene)
    unit = min(min(right - left, top - bottom) for left, bottom, right, top in faces)
    backs = [mark for mark in scene.marks if isinstance(mark, Area) and mark.tone is Tone.BACK_SIDE]
    thousands, slanted = divmod(len(backs), 2)
    assert slanted == 0
    squares = sum(round((right - left) * (top - bottom) / unit**2) for left, bottom, right, top in faces)
    if value % 100:
        assert squares == 100 * thousands + value % 1000
    assert thousands == value // 1000


@few_examples
@given(drawn, st.integers(45, 120))
def test_blocks_stay_inside_their_picture_and_off_each_other(value, width):
    height = least_height_mm(value, width) + 3
    scene = blocks(value, width, height)
    assert scene.height_mm <= height
    for mark in scene.marks:
        for x, y in spots_of(mark):
            assert 0 <= x <= width
            assert 0 <= y <= scene.height_mm
    for one, other in combinations(front_faces(scene), 2):
        assert (
            one[2] <= other[0] + 1e-6
            or other[2] <= one[0] + 1e-6
            or one[3] <= other[1] + 1e-6
            or other[3] <= one[1] + 1e-6
        )


def test_more_room_makes_larger_blocks_up_to_a_limit():
    units = [
        min(right - left for left, _, right, _ in front_faces(blocks(348, width, 200)))
        for width in (20, 30, 200)
    ]
    assert SMALLEST_UNIT_MM <= units[0] < units[1] < units[2] == pytest.approx(5)


def test_a_thousand_is_a_block_with_ten_layers_to_be_seen():
    scene = blocks(1000, 60, 60)
    slanted = [
        mark
        for mark in scene.marks
        if isinstance(mark, Stroke) and mark.meaning is Meaning.CREASE and is_layer(mark, scene)
    ]
    assert len(slanted) == 2 * 9
    assert [piece.value for piece in pieces_of(1000)] == [1000]


def is_layer(mark, scene):
    """Tell whether a line lies on a face that slants back: above or right of the front face."""
    ((_, _, right, top),) = front_faces(scene)
    return all(x > right + 1e-6 or y > top + 1e-6 for x, y in mark.spots)


@pytest.mark.parametrize("value", [0, 10_000])
def test_numbers_without_blocks_are_refused(value):
    with pytest.raises(BlocksRefused, match="from 1 to 9999"):
        blocks(value, 100, 100)


def test_a_picture_too_small_to_count_in_is_refused():
    with pytest.raises(BlocksRefused, match="no room"):
        blocks(348, 58, 10)
    with pytest.raises(BlocksRefused, match="no room"):
        least_height_mm(348, 8)
