"""The order of the leaves in the stack, and how many orders there are at all."""

from dataclasses import replace
from itertools import permutations

import pytest
from paper.layer_laws import no_layer_passes_through_another
from strategies import folded

from foldmath.paper.state import FoldedState, Placement, Sheet
from foldmath.paper.steps import Axis, Edge, FoldEdge, Pleat
from foldmath.plane.numbers import ZERO, exact

STRIP = Sheet(exact(320), exact(20), "mm")


def from_left_and_bottom(state):
    """Give the panels' indices as they lie on the opened sheet: column by column from the left."""
    return sorted(range(len(state.panels)), key=lambda index: min(state.panels[index].corners))


class TestLeavesAfterHalvings:
    """Source: OEIS A281589 (oeis.org/A281589): cells numbered from the left, read from the bottom of the
    stack, after folding the right part over the left until one cell wide; consecutive pairs sum to 2^n + 1.
    """

    ROWS = (
        [1],
        [1, 2],
        [1, 4, 3, 2],
        [1, 8, 5, 4, 3, 6, 7, 2],
        [1, 16, 9, 8, 5, 12, 13, 4, 3, 14, 11, 6, 7, 10, 15, 2],
    )
    START_OF_ROW_6 = (1, 32, 17, 16, 9, 24, 25, 8)

    def stack(self, times):
        state = folded(STRIP, [FoldEdge(Edge.RIGHT, ZERO)] * times)
        cells = from_left_and_bottom(state)
        places = {cell: state.panels[index].placements[-1].place for cell, index in enumerate(cells, start=1)}
        return sorted(places, key=places.__getitem__)

    @pytest.mark.parametrize("times", range(1, 5))
    def test_up_to_16_leaves_lie_in_the_printed_order(self, times):
        assert self.stack(times) == self.ROWS[times]

    def test_32_leaves_begin_in_the_printed_order(self):
        assert tuple(self.stack(5)[:8]) == self.START_OF_ROW_6

    @pytest.mark.parametrize("times", range(1, 7))
    def test_the_first_leaf_is_at_the_bottom_and_the_second_on_top(self, times):
        stack = self.stack(times)
        assert (stack[0], stack[-1]) == (1, 2)

    @pytest.mark.parametrize("times", range(1, 7))
    def test_each_leaf_and_the_next_are_as_far_from_the_two_ends_of_the_strip(self, times):
        stack = self.stack(times)
        pairs = zip(stack[::2], stack[1::2], strict=True)
        assert {one + other for one, other in pairs} == {2**times + 1}


class TestEveryWayToStack:
    """How many stacks the laws of layers allow, counted by trying them all.

    Source: OEIS A000136, foldings of a strip of n labelled stamps (1, 2, 6, 16, 50, ...), A001415, foldings
    of a 2 x n map (2, 8, 60, ...), and A001418, where the 8 stacks of 2 x 2 are printed; after J. E. Koehler,
    J. Combin. Theory 5 (1968) 135-152, and W. F. Lunnon, Math. Comp. 22 (1968) 193-199.
    """

    EIGHT_STACKS = ("1243", "1342", "2134", "2431", "3124", "3421", "4213", "4312")

    def stacks(self, state: FoldedState) -> list[tuple[int, ...]]:
        """Give every order of the panels, from the bottom, in which no layer passes through another."""
        return [
            order
            for order in permutations(range(len(state.panels)))
            if no_layer_passes_through_another(self.stacked(state, order)) == ()
        ]

    def stacked(self, state: FoldedState, order: tuple[int, ...]) -> FoldedState:
        panels = list(state.panels)
        for place, index in enumerate(order):
            *earlier, last = panels[index].placements
            panels[index] = panels[index]._replace(placements=(*earlier, Placement(last.motion, place)))
        return replace(state, panels=tuple(panels))

    @pytest.mark.parametrize(("stamps", "count"), [(2, 2), (3, 6), (4, 16), (5, 50)])
    def test_a_strip_of_stamps(self, stamps, count):
        assert len(self.stacks(folded(STRIP, [Pleat(Axis.WIDTH, stamps)]))) == count

    @pytest.mark.parametrize(("columns", "count"), [(1, 2), (2, 8), (3, 60)])
    def test_a_map_of_two_rows(self, columns, count):
        across = [Pleat(Axis.WIDTH, columns)] if columns > 1 else []
        state = folded(STRIP, [*across, FoldEdge(Edge.TOP, ZERO)])
        assert len(self.stacks(state)) == count

    def test_the_eight_stacks_of_a_map_of_four(self):
        """The map is numbered by rows: 1 2 above 3 4."""
        state = folded(STRIP, [Pleat(Axis.WIDTH, 2), FoldEdge(Edge.TOP, ZERO)])
        numbers = dict(zip(from_left_and_bottom(state), "3142", strict=True))
        found = {"".join(numbers[index] for index in order) for order in self.stacks(state)}
        assert found == set(self.EIGHT_STACKS)
