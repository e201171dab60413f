"""Marks on both sides of a sheet lie on each other, however the printer turns it.

Source:
    What a printer does: RFC 8011 (IPP/1.1, 2017), 5.2.8 "sides": two-sided-long-edge lays each pair of pages
    on the two sides of a sheet as if it were bound on the long edge, two-sided-short-edge on the short one
    (from memory). ISO 32000-1:2008, table 150, has the same two as DuplexFlipLongEdge and
    DuplexFlipShortEdge. So here the leaf is turned in space about its bound edge, half a turn, and then read.
"""

from typing import NamedTuple

import pytest
from guide_reading import FULL_SIZE, READERS, document, printed_case, proved_case
from hypothesis import given
from hypothesis import strategies as st

from foldmath.drawing.scenes import Meaning, Star
from foldmath.guides.composing import guide_pages
from foldmath.guides.marks.fold_lines import fold_lines
from foldmath.guides.marks.ticks import ticks
from foldmath.pages.page_fit import Turning, fit
from foldmath.pages.pdf.exact import Disc
from foldmath.paper.state import Sheet
from foldmath.plane.lines import Point
from foldmath.plane.numbers import exact

FINE_MM = 0.0005
"""What the readers' own numbers round away."""


LONGEST_TICK_MM = 25
"""Thin lines longer than this frame a sheet to cut out."""


class Pair(NamedTuple):
    """The pages of a front and its back, and the edge over which the leaf is turned."""

    front: int
    back: int
    turning: Turning


PAIRS = [Pair(3, 4, Turning.LONG_EDGE), Pair(5, 6, Turning.SHORT_EDGE)]

cases = pytest.mark.parametrize("case", FULL_SIZE.values(), ids=FULL_SIZE)
pairs = pytest.mark.parametrize("pair", PAIRS, ids=lambda pair: pair.turning.value)
read = pytest.mark.parametrize("lines_of", READERS.values(), ids=READERS)


def turned(point, width, height, turning):
    """Turn a leaf by half a turn in space about its bound edge, and give where a point of it then lies.

    A half turn about an axis along the unit vector d takes v to 2 (d · v) d - v. The axis runs through the
    middle of the page, so that the leaf lies where it lay.
    """
    upright_edge_is_long = height > width
    axis = (0, 1, 0) if upright_edge_is_long == (turning is Turning.LONG_EDGE) else (1, 0, 0)
    v = (point[0] - width / 2, point[1] - height / 2, 0)
    along = sum(one * other for one, other in zip(axis, v, strict=True))
    x, y, depth = (2 * along * d - part for d, part in zip(axis, v, strict=True))
    assert depth == 0
    return x + width / 2, y + height / 2


papers = st.builds(
    Sheet, st.integers(10, 190).map(exact), st.integers(10, 190).map(exact), st.just("mm")
) | st.sampled_from([Sheet(exact(11), exact(17, 2), "in"), Sheet(exact(17, 2), exact(11), "in")])
shares = st.tuples(st.integers(0, 24), st.integers(0, 24))


@given(papers, shares, st.sampled_from(Turning))
def test_what_is_printed_behind_a_point_is_exactly_behind_it(paper, share, turning):
    lies = fit(paper, "letter")
    point = Point(paper.width * share[0] / 24, paper.height * share[1] / 24)
    behind = turned(lies.on_front(point), lies.width, lies.height, turning)
    assert lies.on_back(point, turning) == behind


def marks_of(lines):
    """Give the ticks and the cross of a page: its thin short lines but for the ruler's."""
    thin = [line for line in lines if line.drawn_as(Meaning.TICK)]
    (base,) = (line for line in thin if line.length == pytest.approx(101.6, abs=0.01))
    return [line for line in thin if line.length < LONGEST_TICK_MM and not base.holds(line.start)]


@cases
@pairs
@read
def test_every_mark_on_the_front_has_one_on_the_back_right_behind_it(case, pair, lines_of):
    pdf = printed_case(case)
    page = document(pdf)[pair.front - 1]
    front, back = (marks_of(lines_of(pdf, number)) for number in (pair.front, pair.back))
    paper = proved_case(case).lesson.sheet
    cross = 2
    assert len(front) == len(back) == len(ticks(paper, fold_lines(proved_case(case)))) + cross
    for line in front:
        ends = {turned(end, page["width"], page["height"], pair.turning) for end in (line.start, line.end)}
        assert any(same(ends, {other.start, other.end}) for other in back), line


def same(ends, others):
    """Tell whether two lines have the same ends."""
    return any(
        all(one == pytest.approx(other, abs=FINE_MM) for one, other in zip(sorted(ends), order, strict=True))
        for order in (sorted(others), sorted(others, reverse=True))
    )


@cases
@pairs
def test_rings_and_the_star_lie_behind_each_other_and_the_one_behind_is_hollow(case, pair):
    pages = guide_pages(proved_case(case), case.page_paper)
    front, back = pages[pair.front - 1], pages[pair.back - 1]
    for kind in (Disc, Star):
        seen = [mark.middle for mark in front.marks if isinstance(mark, kind)]
        behind = sorted(mark.middle for mark in back.marks if isinstance(mark, kind))
        wanted = sorted(turned(place, front.width_mm, front.height_mm, pair.turning) for place in seen)
        assert len(wanted) == len(behind)
        for one, other in zip(wanted, behind, strict=True):
            assert one == pytest.approx(other, abs=1e-9)
    assert [mark.hollow for page in (front, back) for mark in page.marks if isinstance(mark, Star)] == [
        False,
        True,
    ]


@cases
@pairs
def test_the_sheet_itself_lies_behind_itself(case, pair):
    front, back = (document(printed_case(case))[number - 1] for number in (pair.front, pair.back))
    left, bottom, right, top = front["trimbox"]
    corners = [
        turned(corner, front["width"], front["height"], pair.turning)
        for corner in ((left, bottom), (right, top))
    ]
    assert sorted(corner[0] for corner in corners) == pytest.approx(back["trimbox"][::2], abs=0.001)
    assert sorted(corner[1] for corner in corners) == pytest.approx(back["trimbox"][1::2], abs=0.001)
    assert (front["width"], front["height"]) == (back["width"], back["height"])


@cases
@pairs
def test_words_on_the_back_are_not_mirrored_and_name_the_edge_to_turn_over(case, pair):
    page = document(printed_case(case))[pair.back - 1]
    for char in page["chars"]:
        a, b, c, d, *_ = char["matrix"]
        assert a * d - b * c > 0, char["text"]
    assert f"flip on {pair.turning.value.upper()} edge" in page["text"]
    assert f"pages {pair.front} and {pair.back} on both sides" in page["text"]


@cases
def test_a_pair_begins_on_an_odd_page_so_that_it_shares_a_leaf(case):
    texts = [page["text"] for page in document(printed_case(case))]
    fronts = [number for number, text in enumerate(texts, start=1) if "Marks, front" in text]
    backs = [number for number, text in enumerate(texts, start=1) if "Marks, back" in text]
    assert fronts == [3, 5]
    assert backs == [4, 6]
