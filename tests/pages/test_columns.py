"""Columns are filled in the order of reading, and are as shallow as they can be."""

from itertools import combinations

from hypothesis import given
from hypothesis import strategies as st

from foldmath.pages.pdf.columns import shared_out
from foldmath.pages.pdf.flowables import CutAcross

heights = st.lists(st.integers(1, 9), min_size=1, max_size=7)


def blocks(tenths):
    """Give flowables without spaces of their own, so high."""
    made = [CutAcross() for _ in tenths]
    for block, each in zip(made, tenths, strict=True):
        block.height = 10.0 * each
    return made


@given(heights, st.integers(1, 3))
def test_where_all_find_room_no_other_cut_makes_shallower_columns(tenths, columns):
    flowables = blocks(tenths)
    shares = shared_out(flowables, columns, 10_000.0, 1.0)
    assert [one for share in shares for one, _ in share] == flowables
    deepest = max(depth for share in shares for _, depth in share)
    places = range(1, len(flowables))
    cuts = (cut for count in range(columns) for cut in combinations(places, count))
    least = min(
        max(
            sum(one.height for one in flowables[start:end])
            for start, end in zip([0, *cut], [*cut, None], strict=True)
        )
        for cut in cuts
    )
    assert abs(deepest - least) < 0.01


@given(heights, st.integers(1, 3))
def test_what_finds_no_room_is_left_and_columns_are_as_deep_as_the_room(tenths, columns):
    flowables = blocks(tenths)
    room = max(one.height for one in flowables)
    shares = shared_out(flowables, columns, room, 1.0)
    placed = [one for share in shares for one, _ in share]
    assert placed == flowables[: len(placed)]
    assert all(depth <= room + 0.001 for share in shares for _, depth in share)
    if len(placed) < len(flowables):
        assert len(shares) == columns
        assert shares[-1][-1][1] + flowables[len(placed)].height > room
