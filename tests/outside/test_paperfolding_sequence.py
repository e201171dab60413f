"""The creases of a strip halved again and again, read from left to right.

Source: OEIS A014577, the regular paper-folding sequence (oeis.org/A014577): its first 31 terms, and its rule
that each longer row is the row before, a 1, and the row before reversed with its signs changed.

The sheet lies printed side up; its right half is folded over its left, so that the leftmost panel stays as it
was; a valley is 1 and a mountain 0.
"""

import pytest
from strategies import folded

from foldmath.paper.state import Kind, Sheet
from foldmath.paper.steps import Edge, FoldEdge, TurnOver
from foldmath.plane.numbers import ZERO, exact

A014577 = [1, 1, 0, 1, 1, 0, 0, 1, 1, 1, 0, 0, 1, 0, 0, 1, 1, 1, 0, 1, 1, 0, 0, 0, 1, 1, 0, 0, 1, 0, 0]
STRIP = Sheet(exact(297), exact(20), "mm")


def signs(steps):
    creases = sorted(folded(STRIP, steps).creases, key=lambda crease: crease.start.x)
    return [int(crease.kind is Kind.VALLEY) for crease in creases]


def halved(times):
    return signs([FoldEdge(Edge.RIGHT, ZERO)] * times)


@pytest.mark.parametrize("times", range(1, 6))
def test_the_creases_after_n_halvings_are_the_first_terms(times):
    assert halved(times) == A014577[: 2**times - 1]


@pytest.mark.parametrize("times", range(1, 7))
def test_every_row_is_the_row_before_a_valley_and_its_reversed_complement(times):
    row = halved(times)
    assert halved(times + 1) == [*row, 1, *(1 - sign for sign in reversed(row))]


def test_seven_halvings_obey_the_rule_for_every_single_term():
    """a(n) is the complement of the bit to the left of the lowest 1 in n + 1."""
    expected = [1 - (n // (n & -n) >> 1 & 1) for n in range(1, 128)]
    assert halved(7) == expected


@pytest.mark.parametrize("times", range(1, 6))
def test_folding_the_paper_turned_over_changes_every_sign(times):
    turned = signs([TurnOver(), *[FoldEdge(Edge.LEFT, exact(1))] * times])
    assert turned == [1 - sign for sign in A014577[: 2**times - 1]]
