"""The booklet of eight pages from one sheet with one slit, against the layouts in common use.

Source:
    The slit runs along the middle crease across the two central panels only, with all art on one side of
    the sheet: mothwomanpress.blogspot.com/2012/12; the steps also at ehow.co.uk how_7824011. The page tables
    themselves are common practice, no library source: two layouts, P and Q, up to turning the sheet round.
"""

import pytest
from creased import A4_UPRIGHT, LETTER, after, creased, ring_sheet

from foldmath.paper.booklet.booklet import Face, WayUp
from foldmath.paper.booklet.gathering import booklet, gather
from foldmath.paper.sizes import paper_named, sheet
from foldmath.paper.state import Kind
from foldmath.paper.steps import Axis, Edge, FoldEdge, Open, Slit
from foldmath.plane.numbers import HALF, ONE, ZERO, exact
from foldmath.plane.polygons import box

LAYOUTS = {
    1: ("7 6 5 4", "8 1 2 3"),
    3: ("5 4 3 2", "6 7 8 1"),
}
"""By the column of the cover: the top row, upside down, and the bottom row; landscape, printed side up."""

FACING = {(8, 1), (2, 3), (4, 5), (6, 7)}
LEAVES = {(1, 2), (3, 4), (5, 6), (7, 8)}


def printed(state, made):
    """Give the numbers on the printed side, row by row from the top, with which of them are upside down."""
    places = {}
    for page in made.pages:
        bounds = box(state.panels[page.panel].corners)
        places[-bounds.bottom, bounds.left] = page
    pages = [places[place] for place in sorted(places)]
    half = len(pages) // 2
    rows = tuple(" ".join(str(page.number) for page in row) for row in (pages[:half], pages[half:]))
    return rows, [{page.way_up for page in row} for row in (pages[:half], pages[half:])]


@pytest.mark.parametrize("column", LAYOUTS)
@pytest.mark.parametrize("paper", [LETTER, A4_UPRIGHT])
def test_the_pages_lie_as_in_layouts_p_and_q(paper, column):
    state = ring_sheet(paper, 2)
    rows, ways = printed(state, booklet(state, column))
    assert rows == LAYOUTS[column]
    assert ways == [{WayUp.UPSIDE_DOWN}, {WayUp.UPRIGHT}]


def test_the_usual_layout_is_p():
    state = ring_sheet(LETTER, 2)
    assert booklet(state) == booklet(state, 1)


@pytest.mark.parametrize("column", LAYOUTS)
def test_facing_pages_and_leaves_are_the_usual_pairs(column):
    made = booklet(ring_sheet(LETTER, 2), column)
    assert {(spine.left, spine.right) for spine in made.spines} == FACING
    assert {(opening.left, opening.right) for opening in made.openings} == FACING - {(8, 1)}
    assert {(leaf.front, leaf.back) for leaf in made.leaves} == LEAVES
    assert {page.face for page in made.pages} == {Face.PRINTED}


def test_the_leaves_of_layout_p_are_the_outer_columns_and_the_middles_of_both_rows():
    state = ring_sheet(LETTER, 2)
    made = booklet(state)
    found = set()
    for leaf in made.leaves:
        boxes = [box(state.panels[made.page(number).panel].corners) for number in (leaf.front, leaf.back)]
        found.add(frozenset((int(4 * b.left / 11), "top" if b.bottom else "bottom") for b in boxes))
    assert found == {
        frozenset({(0, "bottom"), (0, "top")}),
        frozenset({(1, "bottom"), (2, "bottom")}),
        frozenset({(3, "bottom"), (3, "top")}),
        frozenset({(1, "top"), (2, "top")}),
    }


def test_the_creases_of_layout_p_fold_as_they_do_in_the_hand():
    """Middle line at both ends and middle upright: mountains; outer uprights: valleys but for the cover's."""
    closed = gather(ring_sheet(LETTER, 2))
    quarter, half = LETTER.width / 4, LETTER.height / 2
    kinds = {
        (line.start.x / quarter, line.start.y / half, line.end.y / half): line.kind for line in closed.creases
    }
    valley, mountain = Kind.VALLEY, Kind.MOUNTAIN
    assert kinds == {
        (0, 1, 1): mountain,
        (3, 1, 1): mountain,
        (1, 1, 1): Kind.CUT,
        (2, 1, 1): Kind.CUT,
        (1, 0, 1): mountain,
        (2, 0, 1): mountain,
        (3, 0, 1): valley,
        (1, 1, 2): valley,
        (2, 1, 2): mountain,
        (3, 1, 2): valley,
    }


@pytest.mark.parametrize(
    ("paper", "width", "height"),
    [
        ("letter", exact(11, 4), exact(17, 4)),
        ("A4", exact(297, 4), exact(105)),
        ("tabloid", exact(17, 4), exact(11, 2)),
    ],
)
def test_pages_have_the_usual_sizes(paper, width, height):
    """A quarter of the width by half of the height, worked out by hand: 2.75 × 4.25 in, 74.25 × 105 mm …"""
    made = booklet(ring_sheet(sheet(paper_named(paper), "landscape"), 2))
    assert (made.width, made.height) == (width, height)


def test_pupils_cut_from_the_folded_edge_to_the_next_crease():
    """Fold in half, cut along the crease to the next one, open: the booklet is the same."""
    halved = after(creased(LETTER, 4, 2), FoldEdge(Edge.LEFT, ONE))
    cut = after(halved, Slit(Axis.HEIGHT, HALF, ZERO, HALF), Open())
    assert booklet(cut).pages == booklet(ring_sheet(LETTER, 2)).pages
